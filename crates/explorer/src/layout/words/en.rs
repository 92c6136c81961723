//! English.

use crate::layout::sheet_checks::Concern;

/// Below a picture while nothing of it is looked at.
pub(crate) const POINT_AT_IT: &str =
    "Point at the picture, touch it, or step through it with the arrow keys.";
/// On the button that saves a picture.
pub(crate) const SAVE_PICTURE: &str = "Save as SVG";

/// What that button is called where it stands alone.
pub(crate) fn save_picture(title: &str) -> String {
    format!("{SAVE_PICTURE}: {title}")
}

/// In place of a value that is not the rider's.
pub(crate) const OPEN: &str = "not known ________";

/// The heading over what is to be checked.
pub(crate) const fn concern(concern: Concern) -> &'static str {
    match concern {
        Concern::Drivetrain => "Chain, cage, spokes",
        Concern::Wheels => "Tyre and rim",
        Concern::Cockpit => "Stem, post, bolts, brakes",
        Concern::Course => "On the course",
        Concern::Measuring => "How to measure",
    }
}

/// A value that nobody has stated.
pub(crate) fn usual(value: &str) -> String {
    format!("{value} (usual)")
}
