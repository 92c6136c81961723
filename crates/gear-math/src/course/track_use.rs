//! Whether a recorded track can be a course at all.

use crate::rider::Gradient;
use core::fmt;

/// With more of its way than this steeper than 45 % a track is a mountain path, or its heights are noise: on a course that is
/// ridden only single banks are so steep. Estimate.
const STEEP_SHARE: f64 = 0.25;
/// Points farther apart than this on average show no climb of a lap, which are 20 to 100 m long. Estimate.
const SPARSE_M: f64 = 100.0;
/// Fewer points than this make no lap: a triangle and the way back to its start. Estimate.
const LEAST_POINTS: usize = 5;

/// Whether a lap of a track may be timed.
///
/// # Example
/// ```
/// use gear_math::course::{TrackFault, TrackUse};
/// assert_eq!(TrackUse::of(0.02, 2800.0, 400), TrackUse::Usable);
/// assert!(matches!(TrackUse::of(0.76, 2700.0, 184), TrackUse::NotUsable(TrackFault::TooSteep { .. })));
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum TrackUse {
    /// It may.
    Usable,
    /// Its lengths and heights tell nothing of a lap.
    NotUsable(TrackFault),
}

/// Why a track is no course.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum TrackFault {
    /// Too much of it is steeper than ±45 %.
    TooSteep {
        /// Share of its way.
        share: f64,
    },
    /// It has too few points for its length, or too few at all.
    TooFewPoints {
        /// Points kept.
        points: usize,
        /// Mean way from one to the next, in metres.
        apart_m: f64,
    },
}

impl TrackUse {
    /// Judges a track by the share of its way that is steeper than ±45 %, its length and its points. More than a quarter so
    /// steep, fewer than five points, or points that are more than 100 m apart on average are no course (estimates).
    #[must_use]
    pub fn of(steep_share: f64, length_m: f64, points: usize) -> Self {
        let apart_m = length_m / points.saturating_sub(1).max(1) as f64;
        if points < LEAST_POINTS || apart_m > SPARSE_M {
            Self::NotUsable(TrackFault::TooFewPoints { points, apart_m })
        } else if steep_share > STEEP_SHARE {
            Self::NotUsable(TrackFault::TooSteep { share: steep_share })
        } else {
            Self::Usable
        }
    }

    /// Why it may not be timed; none where it may.
    #[must_use]
    pub const fn fault(self) -> Option<TrackFault> {
        match self {
            Self::Usable => None,
            Self::NotUsable(fault) => Some(fault),
        }
    }
}

impl fmt::Display for TrackFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::TooSteep { share } => write!(
                f,
                "{:.0}\u{a0}% of its way is steeper than {}\u{a0}%: it is a mountain path, or its heights are noise",
                100.0 * share,
                Gradient::LIMITS.max
            ),
            Self::TooFewPoints { points, apart_m } => write!(
                f,
                "it has only {points} points, {apart_m:.0}\u{a0}m apart on average: climbs and descents between them are unknown"
            ),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_track_is_used_up_to_the_edge_of_what_is_no_course() {
        let fault = |steep, length_m, points| TrackUse::of(steep, length_m, points).fault();
        assert_eq!(fault(0.25, 400.0, 5), None);
        assert_eq!(fault(0.26, 400.0, 5), Some(TrackFault::TooSteep { share: 0.26 }));
        assert_eq!(fault(0.0, 200.0, 4), Some(TrackFault::TooFewPoints { points: 4, apart_m: 200.0 / 3.0 }));
        assert_eq!(fault(0.0, 401.0, 5), Some(TrackFault::TooFewPoints { points: 5, apart_m: 100.25 }));
    }
}
