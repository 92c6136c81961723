//! Percentiles of what came of the draws.

use crate::course::lap::time_band::TimeBand;
use crate::order::ascending;

/// The edges between which 9 of 10 draws lie, and the middle. Common practice.
pub(super) const EDGES: [f64; 3] = [0.05, 0.5, 0.95];

pub(in crate::course) fn sorted(values: impl Iterator<Item = f64>) -> Vec<f64> {
    let mut values: Vec<f64> = values.collect();
    ascending(&mut values, |value| *value);
    values
}

/// The value below which a share of sorted values lies, straight between neighbours; that of the only one where there is no other,
/// zero where there is none.
pub(super) fn percentile(sorted: &[f64], share: f64) -> f64 {
    let Some(last) = sorted.len().checked_sub(1) else { return 0.0 };
    let place = share * last as f64;
    let low = (place as usize).min(last);
    let (below, above) = (sorted[low], sorted[(low + 1).min(last)]);
    let part = place - low as f64;
    if part > 0.0 { below + part * (above - below) } else { below }
}

pub(in crate::course) fn band(sorted: &[f64]) -> TimeBand {
    let [low_s, time_s, high_s] = EDGES.map(|share| percentile(sorted, share));
    TimeBand { low_s, time_s, high_s }
}

/// The share of values of which `holds` is true.
pub(super) fn share(values: &[f64], holds: impl Fn(f64) -> bool) -> f64 {
    let count = values.iter().filter(|value| holds(**value)).count();
    count as f64 / values.len().max(1) as f64
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn percentiles_lie_straight_between_neighbours() {
        let is = |values: &[f64], at: f64, expected: f64| (percentile(values, at) - expected).abs() < 1e-12;
        let values = sorted([4.0, 1.0, 3.0, 2.0, 5.0].into_iter());
        assert!(is(&values, 0.05, 1.2) && is(&values, 0.5, 3.0) && is(&values, 0.95, 4.8));
        assert!(is(&[], 0.5, 0.0) && is(&[7.0], 0.95, 7.0));
        let open = [1.0, 2.0, f64::INFINITY];
        assert!(is(&open, 0.5, 2.0) && percentile(&open, 0.95).is_infinite());
    }
}
