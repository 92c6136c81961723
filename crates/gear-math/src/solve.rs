//! Roots of functions of one variable, each kept between two ends.
//!
//! Written here because the general solvers that are kept up either evaluate without the slope that the models give for
//! free, or bring a linear-algebra stack along; these loops are short, always end, and take nothing from the heap. None of
//! them looks whether its assumption holds: a function that breaks it gets some point between the ends.

/// More halvings than the bits of a double's mantissa: no bracket can shrink further.
const TO_ROUNDING: u32 = 60;
/// Newton's method needs two to eight steps here; the cap only bounds the halvings that replace it.
const MOST_STEPS: u32 = 80;
/// Two ends count as the same when they differ by less than this, relative to their size.
const SAME: f64 = 4.0 * f64::EPSILON;
/// Below this the cubic term of a speed equation is less than rounding at every speed a rider reaches.
const NEGLIGIBLE_CUBIC: f64 = 1e-14;

/// `low..=high` halved so many times, or until rounding ends it, about the point from which `is_below` no longer holds.
///
/// Assumed: `is_below` holds up to some point and not beyond. Where it holds throughout, both ends close in on `high`; where
/// it never does, on `low`. The ends themselves are not asked.
pub(crate) fn halved(
    mut low: f64,
    mut high: f64,
    halvings: u32,
    is_below: impl Fn(f64) -> bool,
) -> (f64, f64) {
    for _ in 0..halvings {
        if high - low <= SAME * high {
            break;
        }
        let middle = low + 0.5 * (high - low);
        if is_below(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    (low, high)
}

/// Shorter part of a golden section.
const SHORTER: f64 = 0.381_966_011_250_105_1;

/// The point in `low..=high`, both above zero, at which `f` is least.
///
/// `f` is looked at in so many equal ratios, and the two about the least of them are cut so often by golden sections. Assumed: it
/// has one dip there. It may be infinite elsewhere.
pub(crate) fn lowest((low, high): (f64, f64), ratios: i32, cuts: u32, f: impl Fn(f64) -> f64) -> f64 {
    let ratio = (high / low).powf(1.0 / f64::from(ratios));
    let points = (0..=ratios).map(|step| low * ratio.powi(step));
    let valued = points.map(|x| (x, f(x)));
    let (least, _) = valued.reduce(|a, b| if b.1 < a.1 { b } else { a }).unwrap_or((low, 0.0));
    let (mut from, mut to) = ((least / ratio).max(low), (least * ratio).min(high));
    let (mut left, mut right) = (from + SHORTER * (to - from), to - SHORTER * (to - from));
    let (mut at_left, mut at_right) = (f(left), f(right));
    for _ in 0..cuts {
        if at_left < at_right {
            (to, right, at_right) = (right, left, at_left);
            left = from + SHORTER * (to - from);
            at_left = f(left);
        } else {
            (from, left, at_left) = (left, right, at_right);
            right = to - SHORTER * (to - from);
            at_right = f(right);
        }
    }
    if at_left < at_right { left } else { right }
}

/// The point in `low..=high` where a function that only rises reaches `target`; the nearer end where it does not.
pub(crate) fn point_reaching(target: f64, low: f64, high: f64, rising: impl Fn(f64) -> f64) -> f64 {
    let (low, high) = halved(low, high, TO_ROUNDING, |x| rising(x) < target);
    low.midpoint(high)
}

/// The smallest `x` of `0..=steps × step` where `f` is not below zero, found by walking in steps and halving the
/// one in which the sign changes; `None` where `f` stays below zero at every step.
///
/// Nothing is assumed of `f`, but a rise above zero and back within one step is overlooked.
pub(crate) fn first_at_or_above_zero(step: f64, steps: u16, f: impl Fn(f64) -> f64) -> Option<f64> {
    let high = (0..=steps).map(|k| step * f64::from(k)).find(|&x| f(x) >= 0.0)?;
    Some(if high > 0.0 { halved(high - step, high, MOST_STEPS, |x| f(x) < 0.0).1 } else { high })
}

/// When a search by Newton's method has come near enough. Its step squares the error, so that the last one need not be small.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Near {
    /// The function's value before the last step is no further from zero than this.
    Value(f64),
    /// The last step is no longer than this share of where it leads.
    Step(f64),
}

impl Near {
    /// A relative step whose square is below rounding.
    pub(crate) const ROUNDING: Self = Self::Step(1e-9);

    fn holds(self, value: f64, step: f64, to: f64) -> bool {
        match self {
            Self::Value(most) => value.abs() <= most,
            Self::Step(share) => step <= share * to,
        }
    }
}

/// The root in `low..=high` of a function that rises through zero once; `f` gives its value and its slope.
///
/// Newton's step is taken where it stays between the ends and at most halves the one before, halving otherwise, so
/// that a useless slope only costs time. Where the function does not reach zero, the nearer end comes back.
pub(crate) fn rising_root(
    (mut low, mut high): (f64, f64),
    start: f64,
    near: Near,
    f: impl Fn(f64) -> (f64, f64),
) -> f64 {
    let mut x = start;
    let mut last_step = high - low;
    for _ in 0..MOST_STEPS {
        let (value, slope) = f(x);
        if value > 0.0 {
            high = x;
        } else {
            low = x;
        }
        let newton = x - value / slope;
        let step = (newton - x).abs();
        let is_trusted = newton >= low && newton <= high && step <= 0.5 * last_step;
        if is_trusted && near.holds(value, step, newton) {
            return newton;
        }
        last_step = if is_trusted { step } else { 0.5 * (high - low) };
        x = if is_trusted { newton } else { low + last_step };
        if high - low <= SAME * high {
            break;
        }
    }
    x
}

/// The root that Newton's method leads to from `start`, to a last step of `same` relative to the root; `f` gives value and
/// slope.
///
/// Assumed: from the lesser of root and `start` on, the function rises and bends upwards. A step from below then leads above
/// the root, and all others down to it. No end bounds it, which is why it is the quickest.
pub(crate) fn convex_root(start: f64, same: f64, f: impl Fn(f64) -> (f64, f64)) -> f64 {
    let mut x = start;
    for _ in 0..MOST_STEPS {
        let (value, slope) = f(x);
        let step = value / slope;
        x -= step;
        if step.abs() <= same * x {
            break;
        }
    }
    x
}

/// The positive root of `cubic v³ + linear v = power`, for `cubic ≥ 0`, `linear > 0` and `power ≥ 0`.
///
/// # Formula
/// With p = linear/cubic, q = power/cubic and s = √(p/3): v = 2 s sinh(asinh(1.5 q/(p s))/3), the hyperbolic
/// solution of a cubic with one real root; nothing cancels, however steep the slope.
pub(crate) fn cubic_speed(cubic: f64, linear: f64, power: f64) -> f64 {
    if cubic < NEGLIGIBLE_CUBIC {
        return power / linear;
    }
    let p = linear / cubic;
    let s = (p / 3.0).sqrt();
    2.0 * s * ((1.5 * (power / cubic) / (p * s)).asinh() / 3.0).sinh()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Rises through zero at 2, flat at 0.
    fn cube(x: f64) -> (f64, f64) {
        (x * x * x - 8.0, 3.0 * x * x)
    }

    #[test]
    fn halving_closes_in_on_the_last_point_below() {
        assert_eq!(halved(0.0, 1.0, 2, |x| x < 0.3), (0.25, 0.5));
        let (low, high) = halved(0.0, 1.0, TO_ROUNDING, |x| x < 0.3);
        assert!(low < 0.3 && 0.3 <= high && high - low < 1e-15);
    }

    #[test]
    fn a_value_is_reached_between_the_ends_or_at_the_nearer_one() {
        for (target, reached) in [(0.25, 0.5), (-1.0, 0.0), (7.0, 1.0)] {
            assert!((point_reaching(target, 0.0, 1.0, |x| x * x) - reached).abs() < 1e-15, "{target}");
        }
    }

    #[test]
    fn the_deeper_of_two_dips_is_found_beside_what_is_infinite() {
        let dip = |x: f64| if x < 1.0 { f64::INFINITY } else { (x - 3.0).abs().min(1.0 + (x - 7.0).abs()) };
        assert!((lowest((0.5, 10.0), 32, 40, dip) - 3.0).abs() < 1e-8);
        assert!((lowest((0.5, 2.0), 8, 40, dip) - 2.0).abs() < 1e-8, "at the end where it falls all along");
    }

    #[test]
    fn the_first_step_that_is_not_below_zero_is_halved() {
        let found = first_at_or_above_zero(0.5, 9, |x| (x - 1.2) * (2.0 - x)).unwrap();
        assert!((found - 1.2).abs() < 1e-14);
        assert_eq!(first_at_or_above_zero(0.005, 90, |_| -1.0), None);
        assert_eq!(first_at_or_above_zero(0.005, 90, |_| 0.0), Some(0.0));
    }

    #[test]
    fn a_root_is_found_from_either_end_and_from_a_flat_start() {
        for near in [Near::ROUNDING, Near::Value(1e-4)] {
            for start in [0.0, 1.9, 10.0] {
                let root = rising_root((0.0, 10.0), start, near, cube);
                assert!((root - 2.0).abs() < 1e-9, "{root} from {start} by {near:?}");
            }
        }
    }

    #[test]
    fn a_useless_slope_still_ends_at_the_root() {
        for slope in [0.0, f64::NAN, -1.0, 1e-9] {
            let root = rising_root((0.0, 4.0), 0.0, Near::Value(1e-12), |x| (cube(x).0, slope));
            assert!((root - 2.0).abs() < 1e-9, "{root} by {slope}");
        }
    }

    #[test]
    fn a_root_outside_ends_at_the_nearer_end() {
        for (shift, end) in [(5.0, 4.0), (-1.0, 0.0)] {
            let root = rising_root((0.0, 4.0), 2.0, Near::Value(1e-12), |x| (x - shift, 1.0));
            assert!((root - end).abs() < 1e-9, "{root} for {shift}");
        }
    }

    #[test]
    fn a_bend_is_run_down_to_its_root() {
        for start in [1.0, 2.0, 2.1, 50.0] {
            assert!((convex_root(start, 1e-6, cube) - 2.0).abs() < 1e-11, "from {start}");
        }
    }

    #[test]
    fn a_planted_speed_is_found_again() {
        for v in [1e-3, 0.5, 2.0, 14.0] {
            for (cubic, linear) in [(0.24, 20.0), (0.24, 1e3), (1e-13, 30.0), (0.0, 30.0)] {
                let found = cubic_speed(cubic, linear, cubic * v * v * v + linear * v);
                assert!((found - v).abs() < 1e-13 * v, "{found} for {v}");
            }
        }
    }
}
