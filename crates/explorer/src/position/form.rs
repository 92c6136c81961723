//! The form of the section.

use crate::bench::field::Group;
use crate::layout::form::with_finer;
use crate::position::words::form as words;
use maud::Markup;

/// Both bikes, and what few need.
pub(crate) fn position() -> Markup {
    let groups = [
        (words::ROAD_BIKE, Group::RoadBike),
        (words::CROSS_BIKE, Group::CrossBike),
        (words::CROSS_FRAME, Group::CrossFrame),
    ];
    with_finer(&groups, Group::PositionFiner)
}
