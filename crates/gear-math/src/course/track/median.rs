//! The median of numbers, be they few or as many as a file has points.

/// The middle one of `values`, or the mean of the middle two; zero where there are none.
pub(in crate::course) fn median(values: &[f64]) -> f64 {
    match values.len() {
        0 => 0.0,
        count => f64::midpoint(in_order(values, (count - 1) / 2), in_order(values, count / 2)),
    }
}

/// The value that stands at `place` when they are in order.
fn in_order(values: &[f64], mut place: usize) -> f64 {
    let mut left = values.to_vec();
    loop {
        let pivot = left[left.len() / 2];
        let smaller = left.iter().filter(|it| **it < pivot).count();
        let larger = left.iter().filter(|it| **it > pivot).count();
        let up_to = left.len() - larger;
        if place < smaller {
            left.retain(|it| *it < pivot);
        } else if place < up_to {
            return pivot;
        } else {
            place -= up_to;
            left.retain(|it| *it > pivot);
        }
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

    #[test]
    fn a_hundred_thousand_are_as_good_as_three() {
        let shuffled = |at: u64| (at * 48_271 % 100_003) as f64;
        let values: Vec<f64> = (0..100_003).map(shuffled).collect();
        assert!((median(&values) - 50_001.0).abs() < 1e-12);
        assert!((median(&vec![4.0; 100_000]) - 4.0).abs() < 1e-12);
    }
}
