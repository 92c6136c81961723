//! A tyre by its ISO 5775 numbers.

use crate::quantity::{Circumference, OutOfLimits};
use crate::wheel::bead_seat::BeadSeat;
use crate::wheel::quantity::NominalWidth;
use core::fmt;
use core::str::FromStr;

/// Nominal width and bead seat of a tyre. Printed as `33-622`, width first, as ISO 5775 has it.
///
/// Read in that order, in the other (`622-33`), or from a trade name that stands for one bead seat only: 700C, or
/// 700 alone as the usual short form of it, is 622; 650B is 584; 650C is 571. Inch sizes are refused, because 26 and
/// 28 inch each stand for several bead seats and no inch width gives the millimetres of the ISO number.
///
/// # Example
/// ```
/// use gear_math::TyreSize;
/// let tyre: TyreSize = "700×33C".parse()?;
/// assert_eq!(tyre.to_string(), "33-622");
/// assert!("28 x 1.40".parse::<TyreSize>().is_err());
/// # Ok::<(), gear_math::wheel::TyreSizeError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TyreSize {
    /// Width the tyre is sold by.
    pub width: NominalWidth,
    /// Bead seat of rim and tyre.
    pub bead_seat: BeadSeat,
}

impl TyreSize {
    /// Circumference of the wheel as the size alone gives it.
    ///
    /// # Formula
    /// C = π (BSD + 2 w), with the bead seat diameter BSD and the nominal width w, taken as the height of the
    /// tyre. Source: nominal overall diameter of ISO 5775; within 0.6 % of the setting tables of cycle computers
    /// for 18 to 45 mm on 622 mm.
    #[must_use]
    pub fn circumference(self) -> Circumference {
        Circumference::around(self.diameter_mm())
    }

    pub(super) fn diameter_mm(self) -> f64 {
        f64::from(self.bead_seat.mm()) + 2.0 * self.width.mm()
    }
}

impl FromStr for TyreSize {
    type Err = TyreSizeError;

    fn from_str(text: &str) -> Result<Self, TyreSizeError> {
        let (text, end) = split_letter(text.trim());
        let mut numbers = text.split(is_separator).map(str::trim).filter(|number| !number.is_empty());
        let first = numbers.next().ok_or(TyreSizeError::Empty)?;
        let (Some(second), None) = (numbers.next(), numbers.next()) else {
            return Err(TyreSizeError::Unreadable);
        };
        let (first, middle) = split_letter(first);
        match (middle, end) {
            (None, None) => in_numbers(first, second),
            (Some(letter), None) | (None, Some(letter)) => in_trade_name(first, letter, second),
            (Some(_), Some(_)) => Err(TyreSizeError::Unreadable),
        }
    }
}

fn in_numbers(first: &str, second: &str) -> Result<TyreSize, TyreSizeError> {
    match (bead_seat(first), bead_seat(second)) {
        (_, Some(bead_seat)) => with_width(first, bead_seat),
        (Some(bead_seat), None) => with_width(second, bead_seat),
        (None, None) if first == "700" => with_width(second, BeadSeat::ROAD),
        (None, None) if first == "650" => Err(TyreSizeError::SeveralSizes),
        (None, None) => Err(no_bead_seat(decimal(first)?, decimal(second)?)),
    }
}

fn in_trade_name(size: &str, letter: char, width: &str) -> Result<TyreSize, TyreSizeError> {
    let mm = match (size, letter) {
        ("700", 'c') => 622,
        ("650", 'b') => 584,
        ("650", 'c') => 571,
        ("700" | "650", _) => return Err(TyreSizeError::SeveralSizes),
        _ => return Err(TyreSizeError::Unreadable),
    };
    BeadSeat::from_mm(mm)
        .ok_or(TyreSizeError::UnknownBeadSeat)
        .and_then(|bead_seat| with_width(width, bead_seat))
}

fn with_width(width: &str, bead_seat: BeadSeat) -> Result<TyreSize, TyreSizeError> {
    let width = NominalWidth::new(decimal(width)?).map_err(TyreSizeError::Width)?;
    Ok(TyreSize { width, bead_seat })
}

/// Widest tyre and largest wheel sold by the inch, in inches (common practice): what is smaller than both is not
/// meant in millimetres.
const INCH_SIZES: (f64, f64) = (5.0, 36.0);

fn no_bead_seat(first: f64, second: f64) -> TyreSizeError {
    let (width, wheel) = INCH_SIZES;
    if first <= wheel && second <= width { TyreSizeError::Inches } else { TyreSizeError::UnknownBeadSeat }
}

fn bead_seat(text: &str) -> Option<BeadSeat> {
    text.parse().ok().and_then(BeadSeat::from_mm)
}

/// A plain decimal number; without a sign or a power of ten.
fn decimal(text: &str) -> Result<f64, TyreSizeError> {
    let is_plain = text.bytes().all(|b| b.is_ascii_digit() || b == b'.');
    crate::typed::decimal(text).filter(|_| is_plain).ok_or(TyreSizeError::Unreadable)
}

/// Cuts off the letter that trade names end their rim size with.
fn split_letter(text: &str) -> (&str, Option<char>) {
    match text.char_indices().next_back() {
        Some((at, letter @ ('a'..='d' | 'A'..='D'))) => {
            (text[..at].trim_end(), Some(letter.to_ascii_lowercase()))
        }
        _ => (text, None),
    }
}

fn is_separator(c: char) -> bool {
    c.is_whitespace() || matches!(c, '-' | '‐' | '‑' | '–' | '—' | 'x' | 'X' | '×' | '*' | '/')
}

impl fmt::Display for TyreSize {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}-{}", self.width.mm(), self.bead_seat.mm())
    }
}

/// Why a text does not name one tyre size.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum TyreSizeError {
    /// Nothing was given.
    Empty,
    /// The text is not two numbers.
    Unreadable,
    /// The size is in inches.
    Inches,
    /// The trade name stands for several bead seats, or for one out of use.
    SeveralSizes,
    /// No bead seat in common use was given.
    UnknownBeadSeat,
    /// The tyre is too narrow or too wide.
    Width(OutOfLimits),
}

impl fmt::Display for TyreSizeError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => f.write_str("type the tyre's ISO number, such as 33-622"),
            Self::Unreadable => {
                f.write_str("not a tyre size: type the ISO number from the sidewall, width first, such as 33-622")
            }
            Self::Inches => f.write_str(
                "inch sizes can mean several rims and widths: type the ISO number from the sidewall, such as 33-622",
            ),
            Self::SeveralSizes => f.write_str(
                "this name can mean several rims: type the ISO number from the sidewall, such as 33-622 or 40-584",
            ),
            Self::UnknownBeadSeat => {
                f.write_str("no rim size in use: type the ISO number from the sidewall, such as 33-622")
            }
            Self::Width(error) => error.with_value(f),
        }
    }
}

impl core::error::Error for TyreSizeError {}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Result<String, TyreSizeError> {
        text.parse::<TyreSize>().map(|tyre| tyre.to_string())
    }

    #[test]
    fn one_size_has_many_names() {
        for text in [
            "33-622",
            "622-33",
            " 33 – 622 ",
            "33x622",
            "700×33C",
            "700x33c",
            "700C x 33",
            "700 x 33 C",
            "700-33",
        ] {
            assert_eq!(read(text).as_deref(), Ok("33-622"), "{text}");
        }
        assert_eq!(read("650b x 40").as_deref(), Ok("40-584"));
        assert_eq!(read("32.5-622").as_deref(), Ok("32.5-622"));
    }

    #[test]
    fn what_could_mean_several_sizes_is_refused() {
        for text in ["650x38", "700Bx35", "700D-33"] {
            assert_eq!(read(text), Err(TyreSizeError::SeveralSizes), "{text}");
        }
        for text in ["28 x 1.40", "26x2.1", "29 x 2.2"] {
            assert_eq!(read(text), Err(TyreSizeError::Inches), "{text}");
        }
    }

    #[test]
    fn each_rule_has_its_error() {
        assert_eq!(read(" - "), Err(TyreSizeError::Empty));
        for text in ["33", "<b>", "1e9-622", "inf-622", "-33--622-1", "33.3.3-622", "700Cx33C", "cc", "é"] {
            assert_eq!(read(text), Err(TyreSizeError::Unreadable), "{text}");
        }
        assert_eq!(read("33-621"), Err(TyreSizeError::UnknownBeadSeat));
        assert!(matches!(read("80-622"), Err(TyreSizeError::Width(_))));
        assert!(matches!(read("622-622"), Err(TyreSizeError::Width(_))));
    }
}
