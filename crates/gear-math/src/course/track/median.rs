//! The median of a few numbers.

use crate::order::ascending;

/// The middle one of `values`, or the mean of the middle two; zero where there are none.
pub(in crate::course) fn median(values: &[f64]) -> f64 {
    let mut sorted = values.to_vec();
    ascending(&mut sorted, |value| *value);
    let middle = sorted.len() / 2;
    if sorted.is_empty() {
        0.0
    } else if sorted.len().is_multiple_of(2) {
        f64::midpoint(sorted[middle - 1], sorted[middle])
    } else {
        sorted[middle]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_median_is_the_middle() {
        for (values, middle) in [(&[][..], 0.0), (&[7.0], 7.0), (&[9.0, 1.0], 5.0), (&[9.0, 1.0, 2.0], 2.0)] {
            assert!((median(values) - middle).abs() < 1e-12, "{values:?}");
        }
    }
}
