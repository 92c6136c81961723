//! Root finding for the cage: Newton's step where it stays inside a bracket, bisection where it does not.
//!
//! Written here because the general solvers that are kept up either evaluate without the slope that the chain's
//! path gives for free, or bring a linear-algebra stack along; the loop is short and always ends.

/// More halvings than the bits of a double's mantissa: the bracket cannot shrink further.
const MOST_STEPS: usize = 60;

/// Where a function that falls from `low` to `high` crosses zero. `value_and_slope` gives both at a point.
///
/// The root stays between the two ends, whatever the slope says. Once the value is within `close_enough`, one
/// last step ends the search.
pub(super) fn falling_root(
    value_and_slope: impl Fn(f64) -> (f64, f64),
    low: f64,
    high: f64,
    start: f64,
    close_enough: f64,
) -> f64 {
    let (mut low, mut high) = (low, high);
    let mut x = start.clamp(low, high);
    for _ in 0..MOST_STEPS {
        let (value, slope) = value_and_slope(x);
        let newton = x - value / slope;
        if value.abs() <= close_enough {
            return if newton.is_finite() { newton.clamp(low, high) } else { x };
        }
        if value > 0.0 {
            low = x;
        } else {
            high = x;
        }
        x = if newton > low && newton < high { newton } else { low.midpoint(high) };
    }
    x
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_useless_slope_still_ends_at_the_root() {
        let root = falling_root(|x| (1.0 - x.powi(3), 0.0), 0.0, 4.0, 0.0, 1e-12);
        assert!((root - 1.0).abs() < 1e-9);
    }

    #[test]
    fn a_root_outside_ends_at_the_nearest_end() {
        let root = falling_root(|x| (5.0 - x, -1.0), 0.0, 4.0, 2.0, 1e-12);
        assert!((root - 4.0).abs() < 1e-9);
    }
}
