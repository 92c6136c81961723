//! What a bare number may have meant that its limits refuse: another unit, or a decimal mark that was lost or misread.

use crate::quantity::Limits;
use crate::typed::decimal::decimal;
use crate::typed::unit::decimal_in;

/// Units that people who think in them leave out, the likeliest first (estimate).
const LEFT_OUT: [&str; 3] = ["cm", "in", "lb"];
/// Answers from this on are given to a tenth, smaller ones to a thousandth: no tape or scale shows more.
const TO_A_TENTH: f64 = 20.0;

/// What the bare number in `text` may have meant, in the unit of `limits` and within them; `None` where nothing suggests
/// itself.
///
/// It is taken as centimetres, inches or pounds, with its decimal mark left out, or with one put in, whichever is first
/// within the limits. It is a guess to be offered, never to be taken.
///
/// # Example
/// ```
/// use gear_math::typed::meant;
/// use gear_math::position::SaddleHeight;
/// assert_eq!(meant("72.8", &SaddleHeight::LIMITS), Some(728.0));
/// assert_eq!(meant("28,7", &SaddleHeight::LIMITS), Some(729.0));
/// assert_eq!(meant("2", &SaddleHeight::LIMITS), None);
/// ```
#[must_use]
pub fn meant(text: &str, limits: &'static Limits) -> Option<f64> {
    let text = text.trim();
    let bare = text.strip_suffix(limits.unit).unwrap_or(text).trim_end();
    let dotted = bare.replacen(',', ".", 1);
    let number = decimal(&dotted)?;
    let within = |value: f64| limits.check(rounded(value)).ok();
    let thought_in = LEFT_OUT.iter().filter_map(|said| decimal_in(&format!("{dotted} {said}"), limits.unit));
    let unmarked = decimal(&dotted.replace('.', ""));
    thought_in.chain(unmarked).chain([number / 10.0, number / 100.0]).find_map(within)
}

fn rounded(value: f64) -> f64 {
    let parts = if value.abs() < TO_A_TENTH { 1000.0 } else { 10.0 };
    (value * parts).round() / parts
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::position::{SaddleHeight, SeatAngle};
    use crate::quantity::Measured;
    use crate::rider::BodyMass;
    use crate::wheel::FrontShare;
    use proptest::prelude::*;

    #[test]
    fn units_and_marks_are_guessed() {
        for (text, height) in
            [("72,8", 728.0), ("72.8 mm", 728.0), ("28.7", 729.0), ("7280", 728.0), ("7,28", 728.0)]
        {
            assert_eq!(meant(text, &SaddleHeight::LIMITS), Some(height), "{text}");
        }
        assert_eq!(meant("735", &SeatAngle::LIMITS), Some(73.5));
        assert_eq!(meant("45", &FrontShare::LIMITS), Some(0.45));
        assert_eq!(meant("200", &BodyMass::LIMITS), Some(90.7));
    }

    #[test]
    fn nothing_is_made_of_words_and_units() {
        for text in ["", "mm", "about 72", "72.8 kg", "7.28 cm", "-", "72..8", "NaN", "７２８"] {
            assert_eq!(meant(text, &SaddleHeight::LIMITS), None, "{text}");
        }
    }

    proptest! {
        #[test]
        fn what_is_offered_lies_within_the_limits(text in "\\PC{0,12}|-?[0-9]{1,4}[.,]?[0-9]{0,2} ?(mm)?") {
            for limits in [SaddleHeight::BOUNDS, SeatAngle::BOUNDS, FrontShare::BOUNDS] {
                prop_assert!(meant(&text, limits).is_none_or(|value| limits.check(value).is_ok()));
            }
        }

        #[test]
        fn a_height_in_centimetres_or_inches_comes_back(tenths in 4500_u32..=9500) {
            let mm = f64::from(tenths) / 10.0;
            prop_assert_eq!(meant(&format!("{}", mm / 10.0), &SaddleHeight::LIMITS), Some(mm));
            let inches = meant(&format!("{}", mm / 25.4), &SaddleHeight::LIMITS);
            prop_assert!(inches.is_some_and(|found| (found - mm).abs() < 0.051));
        }
    }
}
