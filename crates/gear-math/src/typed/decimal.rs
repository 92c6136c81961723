//! Reading a decimal number. The library's way brings a table of 10 kB, more than all of this crate's own tables together,
//! to be exact for numbers that nobody types.

/// Most places behind the point that [`quotient`] divides exactly by.
const MOST_PLACES: u32 = 21;
/// From here on a further digit might not fit.
const FULL: u64 = 10_u64.pow(18);

/// A decimal number such as `12`, `-3.5`, `.5` or `1e3`; no spaces, no comma, none of the words that stand for numbers.
///
/// Gives the float nearest to a number of up to 19 digits, of which up to 21 places stand behind the point, and is within
/// one part in 10¹⁵ for any other.
///
/// # Example
/// ```
/// use gear_math::typed::decimal;
/// assert_eq!(decimal("-3.5"), Some(-3.5));
/// assert_eq!(decimal("1e3"), Some(1000.0));
/// assert_eq!(decimal("3,5"), None);
/// ```
#[must_use]
pub fn decimal(text: &str) -> Option<f64> {
    let (sign, text) = match text.strip_prefix('-') {
        Some(text) => (-1.0, text),
        None => (1.0, text.strip_prefix('+').unwrap_or(text)),
    };
    let (digits, exponent) = match text.split_once(['e', 'E']) {
        Some((digits, exponent)) => (digits, exponent.parse::<i64>().ok()?),
        None => (text, 0),
    };
    let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
    if whole.len() + part.len() == 0 {
        return None;
    }
    let mut read = 0;
    let mut left_out = 0;
    for byte in whole.bytes().chain(part.bytes()) {
        match byte {
            b'0'..=b'9' if read < FULL => read = 10 * read + u64::from(byte - b'0'),
            b'0'..=b'9' => left_out += 1,
            _ => return None,
        }
    }
    let power = exponent.clamp(-9999, 9999) + left_out - part.len() as i64;
    Some(sign * scaled(read, power as i32))
}

/// `digits` · 10^`power`.
fn scaled(digits: u64, power: i32) -> f64 {
    match u32::try_from(-power) {
        _ if digits == 0 => 0.0,
        Ok(places @ 0..=MOST_PLACES) => quotient(digits, 10_u128.pow(places)),
        _ => digits as f64 * 10_f64.powi(power),
    }
}

/// The float nearest to `digits` / `divisor`, neither of them zero: enough binary places for one rounding, the last of them
/// set when there would be more.
fn quotient(digits: u64, divisor: u128) -> f64 {
    let places = u128::from(digits).leading_zeros();
    let dividend = u128::from(digits) << places;
    let more = dividend % divisor != 0;
    ((dividend / divisor) | u128::from(more)) as f64 / 2_f64.powi(places as i32)
}
