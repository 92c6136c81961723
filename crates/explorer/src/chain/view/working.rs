//! How chain and cage were worked out, with the numbers of the gear that is drawn.

use crate::chain::report::ChainReport;
use crate::chain::section::ChainSection;
use crate::chain::words::working as words;
use crate::layout::sum::shown;
use maud::{Markup, html};

/// The formulas with this scenario's numbers in them.
#[must_use]
pub(crate) fn working(report: &ChainSection) -> Markup {
    html! {
        @for setup in &report.rings.setups { (shown(&words::needed(setup))) }
        @for line in words::sums_explained() { p { (line) } }
        @if let Some(chain) = report.chain.solved().next() { (geometry(chain)) }
    }
}

/// The formulas with the numbers of the first set-up that has a chain.
fn geometry(chain: &ChainReport) -> Markup {
    html! {
        @for sum in [words::circles(chain), words::path(chain), words::window(chain)] { (shown(&sum)) }
        (rules(chain))
        (capacity(chain))
        p { (words::states()) }
        (shown(&words::sideways(chain)))
        p { (words::how_far_off()) }
    }
}

fn rules(chain: &ChainReport) -> Markup {
    html! {
        @if let Some(drive) = &chain.two_wheels {
            (shown(&words::workshop_rule(drive, &chain.advice.fit)))
            p { (words::workshop_sums(drive)) }
        }
        p { (words::links_to_fit()) }
    }
}

fn capacity(chain: &ChainReport) -> Markup {
    html! {
        @for sum in [words::capacity(&chain.advice.fit), words::curve(chain)] { (shown(&sum)) }
        @if chain.capacity_out_of_reach { p { (words::OUT_OF_REACH) } }
    }
}
