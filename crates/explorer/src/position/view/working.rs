//! How the position was worked out.

use crate::layout::sum::shown;
use crate::position::section::PositionSection;
use crate::position::words::working as words;
use maud::{Markup, html};

/// The formulas with this scenario's numbers in them.
#[must_use]
pub(crate) fn working(report: &PositionSection) -> Markup {
    let position = &report.position;
    if !position.knows_stem() {
        return html! { p { (words::NOT_WORKED_OUT) } };
    }
    let bars = &position.inputs.bars;
    html! {
        p { (words::AXES) }
        (shown(&words::saddle_height(position)))
        (shown(&words::on_its_seat_angle(position)))
        @if position.inputs.changes.keep_knee_over_pedal { (shown(&words::setback(position))) }
        (shown(&words::rails(position)))
        (shown(&words::bar(position)))
        @if let Some(both) = bars.road.zip(bars.cross) { (shown(&words::other_handlebar(position, both))) }
        (shown(&words::stem(position)))
        p { (words::closer_and_higher()) }
        p { (words::BASIS) }
    }
}
