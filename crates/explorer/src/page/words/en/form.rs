//! Heads of the first screen's forms.

use crate::bench::field::Field;
use crate::side::Side;
use crate::words::small;

/// Set-up A.
pub(crate) const SETUP_A: &str = "More of A";
/// Set-up B.
pub(crate) const SETUP_B: &str = "More of B";
/// The rider.
pub(crate) const RIDER: &str = "Rider";
/// The slope that is asked about.
pub(crate) const BANK: &str = "Bank";
/// The course.
pub(crate) const LAP: &str = "Lap";

/// What a part is called where its row is not seen.
pub(crate) fn part_of(side: Side, of_a: Field) -> String {
    format!("{side}’s {}", small(of_a.spec().label))
}
