//! The laps of A and B as their own section has them.

use crate::lap::report::LapReport;
use crate::lap::settled::Settled;

/// The laps of A and B as their own section has them.
#[derive(Debug, Clone, PartialEq)]
pub struct BenchLaps {
    /// Their times, in seconds.
    pub times_s: [f64; 2],
    /// How they compare, once that is worked out.
    pub settled: Option<Settled>,
}

impl BenchLaps {
    /// Those of the lap.
    #[must_use]
    pub fn of(laps: &LapReport) -> Self {
        Self { times_s: laps.laps.each_ref().map(|lap| lap.time_s), settled: laps.settled.clone() }
    }
}
