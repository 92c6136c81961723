//! A cassette by the name it goes by in a shop.

use crate::gears::tooth_list::entries;
use crate::gears::toothed::Sprocket;
use crate::quantity::OutOfLimits;
use core::fmt;

/// The ends of a cassette and, where it is said, how many sprockets it has: “11-32”, “11-32 11s”, “11–32t 11 speed”.
///
/// Every box and every shop calls a cassette by its ends, so two numbers [`Self::LEAST_SPREAD`] teeth or more apart are such
/// a name. Two sprockets that really stand alone are told from it by a comma and a space: “11, 32”.
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
        for word in entries(text) {
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
        let is_list = count.is_none() && is_list(text);
        let &[smallest, largest] = teeth.as_slice() else { return None };
        let name = Self::new(smallest, largest).ok()?;
        (!is_list && smallest + Self::LEAST_SPREAD <= largest)
            .then_some(Self { count: count.map(usize::from), ..name })
    }

    pub(super) fn new(smallest: u16, largest: u16) -> Result<Self, OutOfLimits> {
        Ok(Self { smallest: Sprocket::new(smallest)?, largest: Sprocket::new(largest)?, count: None })
    }

    /// The same ends with a number of sprockets.
    pub(super) const fn of(self, count: usize) -> Self {
        Self { count: Some(count), ..self }
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
}

/// The ends alone, as the cassette is called.
impl fmt::Display for CassetteName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}-{}", self.smallest, self.largest)
    }
}

/// Whether commas part the sprockets of a list. A single one between two figures is what a phone's number keyboard has for a
/// dash.
fn is_list(text: &str) -> bool {
    text.contains(';') || text.contains(", ") || text.matches(',').count() > 1
}

fn is_speeds(unit: &str) -> bool {
    ["s", "sp", "spd", "speed", "speeds", "sprocket", "sprockets"]
        .iter()
        .any(|it| unit.eq_ignore_ascii_case(it))
}

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
}
