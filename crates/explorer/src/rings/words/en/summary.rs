//! A and B side by side in numbers.

pub(crate) const TITLE: &str = "A and B side by side";
pub(crate) const B_AGAINST_A: &str = "B against A";
pub(crate) const LOWEST: &str = "Lowest gear";
pub(crate) const HIGHEST: &str = "Highest gear";
pub(crate) const ITS_DEVELOPMENT: &str = "Its development";
pub(crate) const RANGE: &str = "Range, highest over lowest";
pub(crate) const GEARS: &str = "Gears (cross-chained)";
pub(crate) const USEFUL: &str = "Useful gears";

/// Speed of the gear above.
pub(crate) fn its_speed_at(cadence: &str) -> String {
    format!("Its speed at {cadence}")
}
