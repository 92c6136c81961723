//! Numbers as they are typed, with a unit behind them or none.

use crate::typed::decimal::decimal;
use crate::typed::told::Unit::{Foot, Inch, Mile, MilesPerH, Pound, Psi};

/// A unit, what may be typed instead, and how many of it that is. Exact: SI Brochure, 9th edition (2019), and [`Unit`] for
/// those of inch, foot, mile and pound. “c” stands behind the width of a rim or tyre on its label.
///
/// [`Unit`]: crate::typed::Unit
const OTHERS: &[(&str, &str, f64)] = &[
    ("mm", "cm", 10.0),
    ("mm", "m", 1000.0),
    ("mm", "in", Inch.worth()),
    ("mm", "inch", Inch.worth()),
    ("mm", "inches", Inch.worth()),
    ("mm", "\"", Inch.worth()),
    ("mm", "″", Inch.worth()),
    ("mm", "c", 1.0),
    ("m", "km", 1000.0),
    ("m", "cm", 0.01),
    ("m", "mm", 0.001),
    ("m", "ft", Foot.worth() / 1000.0),
    ("m", "feet", Foot.worth() / 1000.0),
    ("m", "yd", 3.0 * Foot.worth() / 1000.0),
    ("m", "mi", Mile.worth() / 1000.0),
    ("kg", "lb", Pound.worth()),
    ("kg", "lbs", Pound.worth()),
    ("kg", "g", 0.001),
    ("km/h", "kmh", 1.0),
    ("km/h", "kph", 1.0),
    ("km/h", "mph", MilesPerH.worth()),
    ("km/h", "m/s", 3.6),
    ("m/s", "km/h", 1.0 / 3.6),
    ("m/s", "kmh", 1.0 / 3.6),
    ("m/s", "kph", 1.0 / 3.6),
    ("m/s", "mph", MilesPerH.worth() / 3.6),
    ("m/s²", "m/s2", 1.0),
    ("m²", "m2", 1.0),
    ("kg/m³", "kg/m3", 1.0),
    ("°", "deg", 1.0),
    ("°", "degrees", 1.0),
    ("%", "percent", 1.0),
    ("", "%", 0.01),
    ("", "percent", 0.01),
    ("×", "x", 1.0),
    ("×", "%", 0.01),
    ("s", "sec", 1.0),
    ("s", "seconds", 1.0),
    ("s", "min", 60.0),
    ("W", "watts", 1.0),
    ("W", "kW", 1000.0),
    ("kJ", "J", 0.001),
    ("bar", "kPa", 0.01),
    ("bar", "psi", Psi.worth()),
];

/// The number in `text`, in `unit`: what is typed without a unit is in it, what is typed in another of the same kind is
/// turned into it; `None` for anything else.
///
/// # Example
/// ```
/// use gear_math::typed::decimal_in;
/// assert_eq!(decimal_in("728", "mm"), Some(728.0));
/// assert_eq!(decimal_in("72.8 cm", "mm"), Some(728.0));
/// assert_eq!(decimal_in("100 lb", "kg"), Some(45.359_237));
/// assert_eq!(decimal_in("100 lb", "mm"), None);
/// ```
#[must_use]
pub fn decimal_in(text: &str, unit: &str) -> Option<f64> {
    let text = text.trim();
    let end = text.find(|letter: char| !letter.is_ascii_digit() && !matches!(letter, '.' | '-' | '+'));
    let (number, said) = text.split_at(end.unwrap_or(text.len()));
    let said = said.trim_start();
    // A nought that is added takes the sign from “-0”.
    let number = decimal(number)? + 0.0;
    if said.is_empty() || said.eq_ignore_ascii_case(unit) {
        return Some(number);
    }
    Some(number * worth(unit, said)?)
}

/// How many of a unit one of another is.
fn worth(unit: &str, other: &str) -> Option<f64> {
    let found = OTHERS.iter().find(|(own, said, _)| *own == unit && other.eq_ignore_ascii_case(said));
    found.map(|it| it.2)
}

/// A slope in per cent, typed in per cent, as so much up in so much forward, or in degrees.
///
/// # Example
/// ```
/// use gear_math::typed::slope_percent;
/// assert_eq!(slope_percent("12 %"), Some(12.0));
/// assert_eq!(slope_percent("1:8"), Some(12.5));
/// assert_eq!(slope_percent("1 in 8"), Some(12.5));
/// assert!(slope_percent("7 deg").is_some_and(|percent| (percent - 12.278).abs() < 0.001));
/// ```
#[must_use]
pub fn slope_percent(text: &str) -> Option<f64> {
    match text.split_once(':').or_else(|| text.split_once(" in ")) {
        Some((up, forward)) => Some(100.0 * decimal(up.trim())? / decimal(forward.trim())?),
        None => decimal_in(text, "%")
            .or_else(|| decimal_in(text, "°").map(|degrees| 100.0 * degrees.to_radians().tan())),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_nought_has_no_sign() {
        for (text, unit) in [("-0", "mm"), ("-0.0 cm", "mm"), ("0", "kg")] {
            assert_eq!(decimal_in(text, unit).map(f64::to_bits), Some(0), "{text}");
        }
    }

    #[test]
    fn a_unit_of_another_kind_is_no_number() {
        for (text, unit) in [
            ("72 kg", "mm"),
            ("1e9", "mm"),
            ("12 %", "mm"),
            ("", "mm"),
            ("mm", "mm"),
            ("5 x", "mm"),
            ("1:8", "%"),
        ] {
            assert_eq!(decimal_in(text, unit), None, "{text}");
        }
        assert_eq!(decimal_in("1.2 ×", "×"), Some(1.2));
        assert_eq!(decimal_in("1.2x", "×"), Some(1.2));
        assert_eq!(decimal_in("23 %", ""), Some(0.23));
        assert_eq!(decimal_in("220w", "W"), Some(220.0));
        assert_eq!(decimal_in("21C", "mm"), Some(21.0));
        assert_eq!(decimal_in("-7 Deg", "°"), Some(-7.0));
    }

    #[test]
    fn a_slope_over_nothing_is_beyond_every_limit() {
        assert_eq!(slope_percent("1:0"), Some(f64::INFINITY));
        assert_eq!(slope_percent("1:"), None);
        assert_eq!(slope_percent("12 mm"), None);
    }
}
