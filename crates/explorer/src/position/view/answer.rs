//! “Does it sit like the road bike?”: the answer.

use crate::position::report::SADDLE;
use crate::position::section::PositionSection;
use crate::position::words::answer as words;
use crate::position::words::names::caution;
use maud::{Markup, html};

/// The sentence that answers, where the saddle goes, and the care to take. What rests on the demo's values is marked, what
/// rests on what is not known is left out.
#[must_use]
pub(crate) fn answer(report: &PositionSection) -> Markup {
    let position = &report.position;
    html! {
        p { (words::bar(report)) " " (words::saddle(report)) }
        @if position.knows_stem() {
            @for it in position.nearest().setup.cautions() { p.care { (caution(it)) } }
            @if position.search.is_doubtful() { p.care { (words::is_every_measure_right(&position.inputs)) } }
        }
        p.care { (words::NO_ADVICE) }
    }
}

/// Where the saddle goes on its rails, and how good all of it is.
#[must_use]
pub(crate) fn why(report: &PositionSection) -> Markup {
    let position = &report.position;
    html! {
        p {
            @if position.knows(SADDLE) && position.knows(position.tip_fields()) { (words::rails(position)) " " }
            (words::as_a_tape())
        }
    }
}
