//! Whether what came of the draws has two humps.

use crate::course::doubt::percentile::percentile;
use crate::course::lap::time_band::NOTHING_S;

/// A gap between two groups is wider than this, s, and so many times as wide as gaps within them usually are; each holds this share
/// of the draws at least. Estimates, because no test of two humps is sure with a few dozen draws: a dismount more or less costs
/// seconds, and a group is to be more than a few stray draws.
const GAP_S: f64 = 2.0;
const TIMES: f64 = 4.0;
const LEAST_SHARE: f64 = 0.1;

/// One of two groups into which the draws fall, because something on the course is done or not.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DrawnGroup {
    /// Median of what the second gains on the first, in seconds.
    pub median_s: f64,
    /// Share of the draws.
    pub share: f64,
}

impl DrawnGroup {
    /// Whether it is told as no difference.
    #[must_use]
    pub fn is_nothing(&self) -> bool {
        self.median_s.abs() < NOTHING_S
    }
}

/// The two groups of sorted values, where there are two.
pub(super) fn groups(sorted: &[f64]) -> Option<[DrawnGroup; 2]> {
    let count = sorted.len();
    let least = (LEAST_SHARE * count as f64).ceil().max(1.0) as usize;
    let gap = |at: &usize| sorted[*at] - sorted[*at - 1];
    let widest = (least..=count.checked_sub(least)?).max_by(|a, b| gap(a).total_cmp(&gap(b)))?;
    let parts = sorted.split_at(widest);
    let usual = usual_gap(parts.0).max(usual_gap(parts.1));
    let group = |part: &[f64]| DrawnGroup {
        median_s: percentile(part, 0.5),
        share: part.len() as f64 / count as f64,
    };
    (gap(&widest) > GAP_S.max(TIMES * usual)).then(|| [group(parts.0), group(parts.1)])
}

fn usual_gap(sorted: &[f64]) -> f64 {
    let mut gaps: Vec<f64> = sorted.windows(2).map(|pair| pair[1] - pair[0]).collect();
    crate::order::ascending(&mut gaps, |gap| *gap);
    percentile(&gaps, 0.5)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn spread(low: f64, high: f64, count: u32) -> impl Iterator<Item = f64> {
        (0..count).map(move |at| low + (high - low) * f64::from(at) / f64::from(count - 1))
    }

    #[test]
    fn a_dismount_saved_or_not_makes_two_groups() {
        let values: Vec<f64> = spread(-0.2, 0.4, 45).chain(spread(5.0, 7.0, 19)).collect();
        let [alike, apart] = groups(&values).unwrap();
        assert!((alike.median_s - 0.1).abs() < 1e-9 && (apart.median_s - 6.0).abs() < 1e-9);
        assert!((alike.share + apart.share - 1.0).abs() < 1e-12 && (apart.share - 19.0 / 64.0).abs() < 1e-12);
    }

    #[test]
    fn stray_draws_and_wide_spreads_make_one() {
        let one = |values: Vec<f64>| groups(&values).is_none();
        assert!(one(spread(0.0, 3.0, 64).collect()));
        assert!(one(spread(0.0, 1.0, 60).chain(spread(6.0, 7.0, 4)).collect()), "fewer than a tenth");
        assert!(one(spread(0.0, 1.0, 40).chain(spread(2.5, 3.0, 24)).collect()), "too near");
        assert!(one(spread(0.0, 63.0, 64).chain(spread(66.0, 90.0, 25)).collect()), "all are as far apart");
        assert!(one(vec![]) && one(vec![1.0]));
    }
}
