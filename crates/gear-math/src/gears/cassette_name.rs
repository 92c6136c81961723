//! A cassette by the name it goes by in a shop.

use crate::gears::cassette::Cassette;
use crate::gears::tooth_list::is_separator;
use crate::gears::toothed::Sprocket;
use crate::quantity::OutOfLimits;
use core::fmt;

/// The ends of a cassette and, where it is said, how many sprockets it has: “11-32”, “11-32 11s”, “11–32t 11 speed”.
///
/// Every box and every shop calls a cassette by its ends, so two numbers [`Self::LEAST_SPREAD`] teeth or more apart are such
/// a name. Two sprockets that really stand alone are told from it by a comma: “11, 32”.
///
/// # Example
/// ```
/// use gear_math::gears::CassetteName;
/// let name = CassetteName::read("11-32 11 speed").ok_or("no name")?;
/// assert_eq!(name.to_string(), "11-32");
/// assert_eq!(name.beside(None).ok_or("none such")?.to_string(), "11-12-13-14-16-18-20-22-25-28-32");
/// assert!(CassetteName::read("11, 32").is_none());
/// # Ok::<(), &str>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CassetteName {
    smallest: Sprocket,
    largest: Sprocket,
    count: Option<usize>,
}

impl CassetteName {
    /// Ends nearer than this are two sprockets. Estimate: hubs with two sprockets alone have them 1 to 4 teeth apart, and
    /// the closest cassettes in common use span 11.
    pub const LEAST_SPREAD: u16 = 5;

    /// Sprockets of a cassette of which nothing else is known. Common practice: most cyclo-cross bikes of the last ten years
    /// have so many.
    pub const USUAL_COUNT: usize = 11;

    /// Reads a name; `None` for anything else, such as a list of sprockets.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let (mut teeth, mut count) = (Vec::new(), None);
        for word in text.split(is_separator).filter(|word| !word.is_empty()) {
            let digits = word.trim_end_matches(|letter: char| letter.is_ascii_alphabetic());
            let number = || digits.bytes().all(|byte| byte.is_ascii_digit()).then(|| digits.parse().ok())?;
            match &word[digits.len()..] {
                "" | "t" | "T" => teeth.push(number()?),
                "teeth" if digits.is_empty() => {}
                unit if is_speeds(unit) && count.is_none() => {
                    count = Some(if digits.is_empty() { teeth.pop()? } else { number()? });
                }
                _ => return None,
            }
        }
        let is_list = count.is_none() && text.contains([',', ';']);
        let &[smallest, largest] = teeth.as_slice() else { return None };
        let name = Self::new(smallest, largest).ok()?;
        (!is_list && smallest + Self::LEAST_SPREAD <= largest)
            .then_some(Self { count: count.map(usize::from), ..name })
    }

    fn new(smallest: u16, largest: u16) -> Result<Self, OutOfLimits> {
        Ok(Self { smallest: Sprocket::new(smallest)?, largest: Sprocket::new(largest)?, count: None })
    }

    /// The smallest and the largest sprocket.
    #[must_use]
    pub const fn ends(&self) -> [Sprocket; 2] {
        [self.smallest, self.largest]
    }

    /// How many sprockets were said.
    #[must_use]
    pub const fn count(&self) -> Option<usize> {
        self.count
    }

    /// The usual cassettes between these ends, whatever number of sprockets was said, those with fewest first.
    pub fn cassettes(self) -> impl Iterator<Item = Cassette> {
        let ends = (self.smallest, self.largest);
        Cassette::common().filter(move |cassette| (cassette.smallest(), cassette.largest()) == ends)
    }

    /// The usual cassette of this name: with the number of sprockets said, else with as many as `count` or the nearest to it
    /// that there is, else nearest to [`Self::USUAL_COUNT`].
    #[must_use]
    pub fn beside(self, count: Option<usize>) -> Option<Cassette> {
        let off = |cassette: &Cassette, wanted| cassette.sprockets().len().abs_diff(wanted);
        match self.count {
            Some(said) => self.cassettes().find(|cassette| off(cassette, said) == 0),
            None => self.cassettes().min_by_key(|cassette| off(cassette, count.unwrap_or(Self::USUAL_COUNT))),
        }
    }

    /// The number of sprockets that both names can have, the one nearest to [`Self::USUAL_COUNT`].
    #[must_use]
    pub fn count_with(self, other: Self) -> Option<usize> {
        let counts = |name: Self| {
            name.cassettes()
                .map(|cassette| cassette.sprockets().len())
                .filter(move |count| name.count.is_none_or(|said| said == *count))
        };
        let both = counts(self).filter(|count| counts(other).any(|it| it == *count));
        both.min_by_key(|count| count.abs_diff(Self::USUAL_COUNT))
    }
}

/// The ends alone, as the cassette is called.
impl fmt::Display for CassetteName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}-{}", self.smallest, self.largest)
    }
}

fn is_speeds(unit: &str) -> bool {
    ["s", "sp", "spd", "speed", "speeds", "sprocket", "sprockets"]
        .iter()
        .any(|it| unit.eq_ignore_ascii_case(it))
}

impl Cassette {
    /// The usual cassette of a name and a number of sprockets. Its ends are as said; what lies between is common practice and
    /// differs from maker to maker, so the teeth stamped on the sprockets decide.
    ///
    /// # Errors
    /// - [`CassetteNameError::Sprocket`] when an end is outside [`Sprocket::LIMITS`].
    /// - [`CassetteNameError::NoneSuch`] when no usual cassette has these ends and so many sprockets.
    ///
    /// # Example
    /// ```
    /// use gear_math::Cassette;
    /// assert_eq!(Cassette::named(12, 25, 8)?.to_string(), "12-13-15-17-19-21-23-25");
    /// let error = Cassette::named(11, 42, 9).unwrap_err();
    /// assert!(error.to_string().starts_with("no usual 11-42 has 9 sprockets, only one of 11"));
    /// # Ok::<(), gear_math::gears::CassetteNameError>(())
    /// ```
    pub fn named(smallest: u16, largest: u16, count: usize) -> Result<Self, CassetteNameError> {
        let name = CassetteName { count: Some(count), ..CassetteName::new(smallest, largest)? };
        name.beside(None).ok_or(CassetteNameError::NoneSuch(name))
    }
}

/// Why a name is that of no usual cassette.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum CassetteNameError {
    /// An end has too few or too many teeth.
    Sprocket(OutOfLimits),
    /// No usual cassette has these ends, or none with so many sprockets.
    NoneSuch(CassetteName),
}

impl From<OutOfLimits> for CassetteNameError {
    fn from(error: OutOfLimits) -> Self {
        Self::Sprocket(error)
    }
}

impl fmt::Display for CassetteNameError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let name = match self {
            Self::Sprocket(error) => return write!(f, "{error}, not {}", error.value),
            Self::NoneSuch(name) => name,
        };
        let mut counts = name.cassettes().map(|cassette| cassette.sprockets().len());
        match (counts.next(), name.count) {
            (Some(first), Some(count)) => {
                write!(f, "no usual {name} has {count} sprockets, only one of {first}")?;
                counts.try_for_each(|count| write!(f, " or {count}"))?;
            }
            _ => write!(f, "no usual cassette is called {name}")?,
        }
        f.write_str(": type every sprocket from the smallest to the largest")
    }
}

impl core::error::Error for CassetteNameError {}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Option<(String, Option<usize>)> {
        CassetteName::read(text).map(|name| (name.to_string(), name.count))
    }

    #[test]
    fn a_name_is_read_however_it_is_written() {
        for text in ["11-32", "11–32", "11/32", " 11 - 32 ", "11-32t", "11T-32T", "11 32", "11-32 teeth"] {
            assert_eq!(read(text), Some(("11-32".to_owned(), None)), "{text}");
        }
        for text in ["11-32 10s", "11-32 10 speed", "10-speed 11-32", "11-32, 10 sprockets", "11-32T 10SP"] {
            assert_eq!(read(text), Some(("11-32".to_owned(), Some(10))), "{text}");
        }
    }

    #[test]
    fn what_is_no_name_stays_a_list() {
        for text in [
            "",
            "11",
            "11, 32",
            "11;32",
            "16-18",
            "16-20",
            "32-11",
            "8-32",
            "11-13-15",
            "11-32 x",
            "s",
            "11-32 9s 8s",
        ] {
            assert_eq!(read(text), None, "{text}");
        }
        assert_eq!(read("16-21"), Some(("16-21".to_owned(), None)));
    }

    #[test]
    fn the_count_is_that_said_then_that_beside_it_then_the_usual() {
        let taken =
            |text: &str, beside| CassetteName::read(text)?.beside(beside).map(|it| it.sprockets().len());
        assert_eq!(taken("11-32", Some(9)), Some(9));
        assert_eq!(taken("11-32 8s", Some(9)), Some(8));
        assert_eq!(taken("11-32", None), Some(11));
        assert_eq!(taken("11-42", Some(9)), Some(11));
        assert_eq!(taken("11-42 9s", None), None);
        assert_eq!(taken("11-33", None), None);
    }

    #[test]
    fn two_names_share_a_count_where_they_can() {
        let shared = |a: &str, b: &str| CassetteName::read(a)?.count_with(CassetteName::read(b)?);
        assert_eq!(shared("11-32", "11-30"), Some(11));
        assert_eq!(shared("11-32", "11-29"), Some(12));
        assert_eq!(shared("11-32 9s", "11-30"), Some(9));
        assert_eq!(shared("14-25", "11-42"), None);
    }
}
