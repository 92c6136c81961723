//! Whether two lists of numbers rise together.

use crate::order::places;

/// Spearman's rank correlation of two lists, number by number: the correlation of their ranks, those that are equal sharing the
/// mean of theirs. Zero where one of the lists does not change.
pub(super) fn rank_correlation(one: &[f64], other: &[f64]) -> f64 {
    let (one, other) = (ranks(one), ranks(other));
    let product = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
    let size = (product(&one, &one) * product(&other, &other)).sqrt();
    if size > 0.0 { product(&one, &other) / size } else { 0.0 }
}

/// Ranks about their mean.
fn ranks(values: &[f64]) -> Vec<f64> {
    let order = places(values);
    let mean = (values.len() as f64 - 1.0) / 2.0;
    let mut ranks = vec![0.0; values.len()];
    let mut from = 0;
    for equal in order.chunk_by(|a, b| values[*a] >= values[*b]) {
        let rank = from as f64 + (equal.len() as f64 - 1.0) / 2.0 - mean;
        equal.iter().for_each(|at| ranks[*at] = rank);
        from += equal.len();
    }
    ranks
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Σd² = 36 of ten pairs is 1 − 6 · 36 ∕ 990, by the formula for ranks that are all different.
    #[test]
    fn ranks_alone_count() {
        let rising: Vec<f64> = (0..10).map(f64::from).collect();
        let moved = [3.0, 1.0, 2.0, 0.0, 4.0, 5.0, 9.0, 7.0, 8.0, 6.0];
        assert!((rank_correlation(&rising, &moved) - (1.0 - 6.0 * 36.0 / 990.0)).abs() < 1e-12);
        let bent = moved.map(|value: f64| -value.exp());
        assert!((rank_correlation(&rising, &bent) + rank_correlation(&rising, &moved)).abs() < 1e-12);
    }

    #[test]
    fn equal_ones_share_a_rank() {
        assert_eq!(ranks(&[5.0, 1.0, 5.0, 9.0]), [0.0, -1.5, 0.0, 1.5]);
        assert!(rank_correlation(&[1.0; 5], &[1.0, 2.0, 3.0, 4.0, 5.0]).abs() < 1e-12);
        assert!(rank_correlation(&[], &[]).abs() < 1e-12);
    }
}
