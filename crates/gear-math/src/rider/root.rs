//! The one-dimensional equations of the model: each has a single root, kept in a bracket.

/// Newton's method needs four to eight steps here; the cap only bounds the bisection steps that replace it.
const MOST_STEPS: usize = 80;
/// Below this the cubic term of a speed equation is less than rounding at every speed a rider reaches.
const NEGLIGIBLE_CUBIC: f64 = 1e-14;
/// Two bounds of a root count as the same when they differ by less than this, relative to their size.
const SAME: f64 = 4.0 * f64::EPSILON;
/// Newton's method squares its relative error at each step, so one this small is the last that is needed.
const LAST_STEP: f64 = 1e-9;

/// The positive root of `cubic v³ + linear v = power`, for `cubic ≥ 0`, `linear > 0` and `power ≥ 0`.
///
/// # Formula
/// With p = linear/cubic, q = power/cubic and s = √(p/3): v = 2 s sinh(asinh(1.5 q/(p s))/3), the hyperbolic
/// solution of a cubic with one real root; nothing cancels, however steep the slope.
pub(super) fn cubic_speed(cubic: f64, linear: f64, power: f64) -> f64 {
    if cubic < NEGLIGIBLE_CUBIC {
        return power / linear;
    }
    let p = linear / cubic;
    let s = (p / 3.0).sqrt();
    2.0 * s * ((1.5 * (power / cubic) / (p * s)).asinh() / 3.0).sinh()
}

/// The root of `f` in `low..=high`, where `f` gives value and derivative, is not above zero at `low` and not
/// below zero at `high`, and changes sign once. Newton's step is taken where it stays inside the bracket and
/// at least halves the one before, bisection otherwise.
pub(super) fn bracketed(mut low: f64, mut high: f64, start: f64, f: impl Fn(f64) -> (f64, f64)) -> f64 {
    let mut x = start;
    let mut last_step = high - low;
    for _ in 0..MOST_STEPS {
        let (value, derivative) = f(x);
        if value > 0.0 {
            high = x;
        } else {
            low = x;
        }
        let newton = x - value / derivative;
        let step = (newton - x).abs();
        let trusted = newton >= low && newton <= high && step <= 0.5 * last_step;
        if trusted && step <= LAST_STEP * newton {
            return newton;
        }
        last_step = if trusted { step } else { 0.5 * (high - low) };
        x = if trusted { newton } else { low + last_step };
        if high - low <= SAME * high {
            break;
        }
    }
    x
}

/// The smallest `x` of `0..=steps × step` where `f` is not below zero, found by walking in steps and halving the
/// one in which the sign changes; `None` when `f` stays below zero.
pub(super) fn first_at_or_above_zero(step: f64, steps: u16, f: impl Fn(f64) -> f64) -> Option<f64> {
    let high = (0..=steps).map(|k| step * f64::from(k)).find(|&x| f(x) >= 0.0)?;
    Some(if high > 0.0 { halved(high - step, high, f) } else { high })
}

/// Halves `low..=high` down to rounding; `f` is below zero at `low` and not at `high`.
fn halved(mut low: f64, mut high: f64, f: impl Fn(f64) -> f64) -> f64 {
    for _ in 0..MOST_STEPS {
        let middle = low + 0.5 * (high - low);
        if high - low <= SAME * high {
            break;
        }
        if f(middle) >= 0.0 {
            high = middle;
        } else {
            low = middle;
        }
    }
    high
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_planted_speed_is_found_again() {
        for v in [1e-3, 0.5, 2.0, 14.0] {
            for (cubic, linear) in [(0.24, 20.0), (0.24, 1e3), (1e-13, 30.0), (0.0, 30.0)] {
                let found = cubic_speed(cubic, linear, cubic * v * v * v + linear * v);
                assert!((found - v).abs() < 1e-13 * v, "{found} for {v}");
            }
        }
    }

    #[test]
    fn a_bracket_survives_a_flat_start() {
        let root = bracketed(0.0, 10.0, 0.0, |x| (x * x * x - 8.0, 3.0 * x * x));
        assert!((root - 2.0).abs() < 1e-14);
    }

    #[test]
    fn a_curve_that_never_rises_has_no_crossing() {
        assert_eq!(first_at_or_above_zero(0.005, 90, |_| -1.0), None);
        assert_eq!(first_at_or_above_zero(0.005, 90, |_| 0.0), Some(0.0));
    }
}
