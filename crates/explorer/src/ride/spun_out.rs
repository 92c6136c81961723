//! Legs that cannot spin fast enough.

use gear_math::rider::{Answer, Climb, RunningWins, Slope, Verdict};
use gear_math::{Gear, Speed};

/// A gear too low for what the legs could give.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpunOut {
    /// The tallest gear there is.
    pub gear: Gear,
    /// As fast as it can be turned.
    pub speed: Speed,
    /// The steepest slope on which riding a taller gear would surely be quicker than running, and this is not.
    pub up_to: Climb,
}

impl SpunOut {
    /// Of one set-up, from its answers; none where the legs are never too slow.
    pub(crate) fn of(answers: &[Answer], running: &RunningWins) -> Option<Self> {
        let until = running.earliest.map_or(f64::INFINITY, Slope::percent);
        let is_lost = |it: &&Answer| {
            let counts = it.spins_out() && !it.limits.any() && it.gradient.percent() < until;
            counts && it.verdict != Verdict::Ride
        };
        let last = answers.iter().rev().find(is_lost)?;
        Some(Self { gear: last.riding.gear, speed: last.riding.held?, up_to: last.gradient })
    }
}
