//! “Will the cage take it?” by geometry: what would help, least change first.

use crate::chain::report::ChainReport;
use crate::chain::section::ChainSection;
use crate::chain::words::remedies as words;
use crate::layout::head::Head;
use crate::layout::pieces::{heads_row, name, table};
use gear_math::chain::{CageOutcome, Remedy};
use maud::{Markup, html};

/// What would help where a gear does not run, least change first.
#[must_use]
pub(crate) fn remedies(report: &ChainSection) -> Markup {
    let chains = || {
        report.chain.solved().filter(|chain| report.rings.setup(chain.side).cage.outcome != CageOutcome::Fits)
    };
    let any = chains().any(|chain| !chain.advice.remedies.is_empty());
    let [setup, change, changes, links, gears] = words::HEADS;
    let [change, changes, gears] = [change, changes, gears].map(Head::Words);
    let head = heads_row(&[Head::Figures(setup), change, changes, Head::Figures(links), gears]);
    let body = html! {
        @for chain in chains() {
            @for remedy in &chain.advice.remedies { (remedy_row(chain, remedy)) }
        }
    };
    html! { @if any { (table(words::TITLE, words::REMARK, &head, &body)) } }
}

fn remedy_row(chain: &ChainReport, remedy: &Remedy) -> Markup {
    html! {
        tr {
            th scope="row" { (name(chain.side)) }
            td.words { (words::change(&chain.setup.drivetrain.cassette, &remedy.change)) }
            td.words { (words::what_changes(chain, remedy)) }
            td { (remedy.fit.links.count()) }
            td.words { (words::gears_then(&remedy.fit)) }
        }
    }
}
