//! The table of what was ridden.

use crate::lap::words::found::set_up;
use gear_math::Drivetrain;

/// Over the table, and beneath.
pub(crate) const TABLE: [&str; 2] = [
    "The quickest of the box",
    "●: no other is both quicker and lower geared. Each lap with the parts that need least.",
];

/// Over its columns.
pub(crate) const HEADS: [&str; 7] =
    ["Parts", "Put on the bench", "Lap", "Behind the best", "Lowest gear", "Chain", "Gears to avoid"];

/// On the button that keeps one on the rack.
pub(crate) const KEEP: &str = "keep";

/// What that does.
pub(crate) fn keeps(drivetrain: &Drivetrain) -> String {
    format!("Keep A with {} on the rack", set_up(drivetrain))
}

/// Where there is none.
pub(crate) const NONE: &str = "–";

/// What was not listed.
pub(crate) fn more(listed: usize, all: usize) -> String {
    format!("The first {listed} of {all} different laps.")
}
