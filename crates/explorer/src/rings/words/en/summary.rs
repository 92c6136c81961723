//! A and B side by side in numbers.

use crate::units::Units;
use crate::words::gears_by;

pub(crate) const TITLE: &str = "A and B side by side";
pub(crate) const B_AGAINST_A: &str = "B against A";
pub(crate) const LOWEST: &str = "Lowest gear";
pub(crate) const HIGHEST: &str = "Highest gear";
pub(crate) const RANGE: &str = "Range, highest over lowest";
pub(crate) const GEARS: &str = "Gears (cross-chained)";
pub(crate) const USEFUL: &str = "Useful gears";

/// What the gear above is told by.
pub(crate) fn its_size() -> String {
    format!("Its {}", gears_by(Units::now().gears))
}

/// Speed of the gear above.
pub(crate) fn its_speed_at(cadence: &str) -> String {
    format!("Its speed at {cadence}")
}
