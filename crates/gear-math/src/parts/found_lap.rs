//! What was found of a lap.

use crate::course::Candidate;

/// What was found of a lap.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FoundLap {
    /// Its time, in seconds.
    pub time_s: f64,
    /// Shifts at the rear and at the front.
    pub shifts: [u32; 2],
    /// Whether it was worked out in full, or by a first look.
    pub planned: bool,
}

impl FoundLap {
    pub(super) const fn of(found: &Candidate, planned: bool) -> Self {
        Self { time_s: found.time_s, shifts: [found.shifts_rear, found.shifts_front], planned }
    }
}
