//! The position on the board.

use crate::position::report::PositionReport;
use crate::position::words::names::stem as stem_of;
use crate::units::whole_length as whole;

/// A measure is missing.
pub(crate) const NOT_KNOWN: &str = "which stem is not known";
/// A and B have one frame.
pub(crate) const ONE: &str = "one frame for both";

/// The stem that brings the bar there.
pub(crate) fn stem(position: &PositionReport) -> String {
    let stem = stem_of(&position.nearest().setup);
    if position.needs_post() {
        format!("another seat post, stem of {stem}")
    } else {
        format!("stem of {stem}")
    }
}

/// No stem does.
pub(crate) fn none(position: &PositionReport) -> String {
    format!("no stem does, {} off at best", whole(position.nearest().miss_mm))
}

/// Where the saddle goes.
pub(crate) fn saddle(position: &PositionReport) -> String {
    format!("saddle at {}", whole(position.cross.saddle_height_mm))
}
