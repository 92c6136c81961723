//! What a number may have meant that its limits refuse: another unit, or a decimal mark that was lost or misread.

use crate::{Limits, decimal};

/// A unit that is not the quantity's own, and how many of the quantity's own it is.
struct OtherUnit {
    own: &'static str,
    said: &'static str,
    worth: f64,
}

const fn unit(own: &'static str, said: &'static str, worth: f64) -> OtherUnit {
    OtherUnit { own, said, worth }
}

/// SI Brochure, 9th edition (2019), and for inch, foot, pound and mile the agreement of 1959, all exact. “c” stands behind a
/// rim's width on its label.
const OTHER_UNITS: [OtherUnit; 13] = [
    unit("mm", "cm", 10.0),
    unit("mm", "in", 25.4),
    unit("kg", "lb", 0.453_592_37),
    unit("kg", "lbs", 0.453_592_37),
    unit("mm", "c", 1.0),
    unit("mm", "C", 1.0),
    unit("m", "km", 1000.0),
    unit("m", "ft", 0.3048),
    unit("km/h", "mph", 1.609_344),
    unit("m/s", "km/h", 1.0 / 3.6),
    unit("degrees", "deg", 1.0),
    unit("mm", "\"", 25.4),
    unit("bar", "kPa", 0.01),
];
/// So many of them are left out by people who think in them, the likeliest first (estimate).
const LEFT_OUT: usize = 3;
/// Answers from this on are given to a tenth, smaller ones to a thousandth: no tape or scale shows more.
const TO_A_TENTH: f64 = 20.0;

/// What `text` may have meant, in the unit of `limits` and within them; `None` where nothing suggests itself.
///
/// A unit that is not the quantity's own is turned into it. A bare number outside the limits is taken as centimetres, inches
/// or pounds, with its decimal mark left out, or with one put in, whichever is first within the limits. It is a guess to
/// be offered, never to be taken.
///
/// # Example
/// ```
/// use gear_math::{BodyMass, SaddleHeight, meant};
/// assert_eq!(meant("72.8", &SaddleHeight::LIMITS), Some(728.0));
/// assert_eq!(meant("28,7 in", &SaddleHeight::LIMITS), Some(729.0));
/// assert_eq!(meant("137 lb", &BodyMass::LIMITS), Some(62.1));
/// assert_eq!(meant("2", &SaddleHeight::LIMITS), None);
/// ```
#[must_use]
pub fn meant(text: &str, limits: &'static Limits) -> Option<f64> {
    let text = text.trim();
    let end = text.find(|letter: char| !letter.is_ascii_digit() && !"+-.,".contains(letter));
    let (digits, said) = text.split_at(end.unwrap_or(text.len()));
    let said = said.trim();
    let number = decimal(&digits.replacen(',', ".", 1))?;
    let within = |value: f64| limits.check(rounded(value)).ok();
    let worth = |unit: &OtherUnit| (unit.own == limits.unit).then_some(number * unit.worth);
    if !said.is_empty() && said != limits.unit {
        return OTHER_UNITS.iter().filter(|unit| unit.said == said).filter_map(worth).find_map(within);
    }
    let thought_in = OTHER_UNITS[..LEFT_OUT].iter().filter_map(worth);
    let unmarked = decimal(&digits.replace(['.', ','], ""));
    thought_in.chain(unmarked).chain([number / 10.0, number / 100.0]).find_map(within)
}

fn rounded(value: f64) -> f64 {
    let parts = if value.abs() < TO_A_TENTH { 1000.0 } else { 10.0 };
    (value * parts).round() / parts
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{ClimbLength, FrontShare, Measured, RimInnerWidth, SaddleHeight, SeatAngle};
    use proptest::prelude::*;

    #[test]
    fn units_and_marks_are_guessed() {
        for (text, height) in
            [("72,8", 728.0), ("72.8 cm", 728.0), ("28.7", 729.0), ("7280", 728.0), ("7,28", 728.0)]
        {
            assert_eq!(meant(text, &SaddleHeight::LIMITS), Some(height), "{text}");
        }
        assert_eq!(meant("735", &SeatAngle::LIMITS), Some(73.5));
        assert_eq!(meant("73 deg", &SeatAngle::LIMITS), Some(73.0));
        assert_eq!(meant("45", &FrontShare::LIMITS), Some(0.45));
        assert_eq!(meant("21c", &RimInnerWidth::LIMITS), Some(21.0));
        assert_eq!(meant("0.06 km", &ClimbLength::LIMITS), Some(60.0));
    }

    #[test]
    fn nothing_is_made_of_words_and_foreign_units() {
        for text in ["", "mm", "about 72", "72.8 kg", "1e9", "-", "72..8", "NaN", "７２８"] {
            assert_eq!(meant(text, &SaddleHeight::LIMITS), None, "{text}");
        }
    }

    proptest! {
        #[test]
        fn what_is_offered_lies_within_the_limits(text in "\\PC{0,12}|-?[0-9]{1,4}[.,]?[0-9]{0,2} ?(cm|in|lb|mm)?") {
            for limits in [SaddleHeight::BOUNDS, SeatAngle::BOUNDS, FrontShare::BOUNDS] {
                prop_assert!(meant(&text, limits).is_none_or(|value| limits.check(value).is_ok()));
            }
        }

        #[test]
        fn a_height_in_centimetres_or_inches_comes_back(tenths in 4500_u32..=9500) {
            let mm = f64::from(tenths) / 10.0;
            prop_assert_eq!(meant(&format!("{} cm", mm / 10.0), &SaddleHeight::LIMITS), Some(mm));
            let inches = meant(&format!("{} in", mm / 25.4), &SaddleHeight::LIMITS);
            prop_assert!(inches.is_some_and(|found| (found - mm).abs() < 0.051));
        }
    }
}
