//! What the draws say about two laps and their difference.

use crate::course::doubt::groups::{DrawnGroup, groups};
use crate::course::doubt::lap_draw::LapDraw;
use crate::course::doubt::percentile::{EDGES, band, share, sorted};
use crate::course::lap::time_band::TimeBand;

/// Set-ups no farther apart than this in 9 of 10 draws are alike, s. Estimate: less is not felt, and not seen in a race.
const ALIKE_S: f64 = 1.0;

/// How two set-ups compare over all draws.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum DrawnVerdict {
    /// The first is quicker in 19 of 20 draws, by more than the steps leave open.
    First,
    /// The second is.
    Second,
    /// They are no more than a second apart in 9 of 10.
    Alike,
    /// None of these.
    TooClose,
}

/// What the draws that are done say about two laps and their difference. Likely is between the 5th and the 95th percentile, the
/// best estimate is the median.
///
/// # Example
/// ```
/// use gear_math::course::{DrawnBand, DrawnVerdict, LapDraw};
/// let done = |a: f64, b: f64| LapDraw { time_s: [a, b], on_foot_m: [vec![], vec![]] };
/// let draws: Vec<LapDraw> = (0..20).map(|at| done(120.0 + f64::from(at), 118.0 + f64::from(at))).collect();
/// let band = DrawnBand::of(&draws, 0.0).expect("enough draws");
/// assert_eq!((band.verdict, band.quicker_share), (DrawnVerdict::Second, [0.0, 1.0]));
/// assert!(band.laps[0].high_s - band.laps[0].low_s > 15.0 && band.gained.time_s == 2.0);
/// assert!(DrawnBand::of(&draws[..5], 0.0).is_none());
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DrawnBand {
    /// How many draws it rests on.
    pub count: usize,
    /// Time of the lap of each.
    pub laps: [TimeBand; 2],
    /// What the second gains on the first, draw by draw.
    pub gained: TimeBand,
    /// Share of the draws in which each is quicker.
    pub quicker_share: [f64; 2],
    /// How they compare.
    pub verdict: DrawnVerdict,
    /// Where the draws fall into two groups, both, the one in which the second gains less first: the median of all then says
    /// little.
    pub groups: Option<[DrawnGroup; 2]>,
}

impl DrawnBand {
    /// With fewer draws nothing is said: the outermost of eight are the 6th and the 94th percentile.
    pub const LEAST: usize = 8;

    /// Sums up draws; none where there are too few. `step_error_s` is how far off the laps themselves may be because of the steps.
    #[must_use]
    pub fn of(draws: &[LapDraw], step_error_s: f64) -> Option<Self> {
        if draws.len() < Self::LEAST {
            return None;
        }
        let gains = sorted(draws.iter().map(LapDraw::gained_s));
        let gained = band(&gains);
        let quicker_share = [share(&gains, |gain| gain < 0.0), share(&gains, |gain| gain > 0.0)];
        Some(Self {
            count: draws.len(),
            laps: [0, 1].map(|side| band(&sorted(draws.iter().map(|draw| draw.time_s[side])))),
            gained,
            quicker_share,
            verdict: DrawnVerdict::of(&gains, step_error_s),
            groups: groups(&gains),
        })
    }
}

impl DrawnVerdict {
    /// By what the second gains in each draw, sorted.
    pub(super) fn of(gains: &[f64], step_error_s: f64) -> Self {
        let (gained, least) = (band(gains), step_error_s.max(LapDraw::STEP_ERROR_S));
        let likely = EDGES[2] - EDGES[0];
        match () {
            () if gained.low_s > least => Self::Second,
            () if gained.high_s < -least => Self::First,
            () if share(gains, |gain| gain.abs() <= ALIKE_S) >= likely => Self::Alike,
            () => Self::TooClose,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn verdict_of(gains: &[f64]) -> DrawnVerdict {
        let done =
            |gain: &f64| LapDraw { time_s: [100.0 + gain, 100.0], on_foot_m: [Vec::new(), Vec::new()] };
        let draws: Vec<LapDraw> = gains.iter().map(done).collect();
        DrawnBand::of(&draws, 0.0).unwrap().verdict
    }

    #[test]
    fn who_is_quicker_in_nearly_all_draws_is_quicker() {
        assert_eq!(verdict_of(&[2.0; 20]), DrawnVerdict::Second);
        assert_eq!(verdict_of(&[-2.0; 20]), DrawnVerdict::First);
        assert_eq!(verdict_of(&[0.3; 20]), DrawnVerdict::Second, "little, but surely");
        assert_eq!(verdict_of(&[0.05; 20]), DrawnVerdict::Alike, "less than the steps leave open");
        assert_eq!(verdict_of(&[[-0.5; 10], [0.9; 10]].concat()), DrawnVerdict::Alike);
        assert_eq!(verdict_of(&[[-0.5; 10], [1.9; 10]].concat()), DrawnVerdict::TooClose);
        assert_eq!(verdict_of(&[[0.0; 18].as_slice(), &[6.0; 2]].concat()), DrawnVerdict::Alike);
        assert_eq!(verdict_of(&[[0.0; 17].as_slice(), &[6.0; 3]].concat()), DrawnVerdict::TooClose);
    }
}
