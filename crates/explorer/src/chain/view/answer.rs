//! “Will the cage take it?”: the answer for both set-ups.

use crate::chain::section::ChainSection;
use crate::chain::words::answer as words;
use crate::chain::words::verdict::said;
use crate::side::Side;
use maud::{Markup, html};

/// The sentence that answers for both set-ups, and what to check by hand.
#[must_use]
pub(crate) fn answer(report: &ChainSection) -> Markup {
    html! {
        @for side in Side::BOTH { p.verdict { (said(report, side).marked(side)) } }
        p.more.care { (words::BY_HAND) }
        ul {
            @for check in words::TURNED_BY_HAND { li.care { (check) } }
            @for check in words::set_and_joined() { li.care { (check) } }
        }
    }
}

/// What it rests on, and what was not checked.
#[must_use]
pub(crate) fn why(report: &ChainSection) -> Markup {
    let asks_more = report.rings.setups.iter().any(|setup| !setup.cage.check.unknown.is_empty());
    html! {
        p {
            @for line in [words::avoided(report), words::basis(report)] {
                @if !line.is_empty() { (line) " " }
            }
            (words::certainty(report))
        }
        @if asks_more { p { (words::unknown(report)) } }
    }
}
