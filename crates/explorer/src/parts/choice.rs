//! One of the different laps of a box.

use gear_math::parts::Combined;

/// One of the different laps, by the combination that rides it with least to change.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Choice {
    /// The parts, how they go together, and the lap.
    pub parts: Combined,
    /// Development of the lowest gear that is used, m.
    pub lowest_m: f64,
}
