//! The sprockets on the rear wheel.

use crate::gears::cassette_name::CassetteName;
use crate::gears::few::Few;
use crate::gears::tooth_list::{NotACount, tooth_counts};
use crate::gears::toothed::Sprocket;
use crate::quantity::OutOfLimits;
use core::fmt;
use core::str::FromStr;

/// One to fourteen sprockets, smallest first.
///
/// Read from text with hyphens, commas or spaces between the sprockets; printed with hyphens, or with a comma where two
/// sprockets would read as a [`CassetteName`].
///
/// # Example
/// ```
/// use gear_math::Cassette;
/// let cassette: Cassette = "11 13 15 18 21 24 28 32".parse()?;
/// assert_eq!(cassette.to_string(), "11-13-15-18-21-24-28-32");
/// assert_eq!(cassette.spread(), 21);
/// assert!("11-10-9".parse::<Cassette>().is_err());
/// # Ok::<(), gear_math::gears::CassetteError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cassette {
    sprockets: Few<Sprocket, { Cassette::MOST_SPROCKETS }>,
}

impl Cassette {
    /// Most sprockets a cassette carries (common practice, with one to spare).
    pub const MOST_SPROCKETS: usize = 14;

    /// Takes sprockets by their teeth, from the smallest to the largest.
    ///
    /// # Errors
    /// - [`CassetteError::Empty`] when there is no sprocket.
    /// - [`CassetteError::TooMany`] when there are more than [`Self::MOST_SPROCKETS`].
    /// - [`CassetteError::Sprocket`] when a sprocket is outside [`Sprocket::LIMITS`].
    /// - [`CassetteError::NotAscending`] when a sprocket is not larger than the one before it.
    pub fn new(teeth: impl IntoIterator<Item = u16>) -> Result<Self, CassetteError> {
        Self::gather(teeth.into_iter().map(Ok))
    }

    fn gather(mut counts: impl Iterator<Item = Result<u16, NotACount>>) -> Result<Self, CassetteError> {
        let first = counts.next().ok_or(CassetteError::Empty)?;
        let mut before = Sprocket::new(first?)?;
        let mut sprockets = Few::of(before);
        for teeth in counts {
            let sprocket = Sprocket::new(teeth?)?;
            if sprocket <= before {
                return Err(CassetteError::NotAscending { before, sprocket });
            }
            if !sprockets.push(sprocket) {
                return Err(CassetteError::TooMany);
            }
            before = sprocket;
        }
        Ok(Self { sprockets })
    }

    /// The sprockets, smallest first.
    #[must_use]
    pub fn sprockets(&self) -> &[Sprocket] {
        &self.sprockets
    }

    /// The sprocket with fewest teeth.
    #[must_use]
    pub fn smallest(&self) -> Sprocket {
        self.sprockets[0]
    }

    /// The sprocket with most teeth.
    #[must_use]
    pub fn largest(&self) -> Sprocket {
        self.sprockets[self.sprockets.len() - 1]
    }

    /// Teeth between the largest and the smallest sprocket.
    #[must_use]
    pub fn spread(&self) -> u16 {
        self.largest().teeth() - self.smallest().teeth()
    }

    /// How many sprockets the chain moves across from one to the other.
    pub(super) fn sprockets_between(&self, a: Sprocket, b: Sprocket) -> usize {
        let at = |wanted| self.sprockets.partition_point(|&sprocket| sprocket < wanted);
        at(a).abs_diff(at(b))
    }
}

impl FromStr for Cassette {
    type Err = CassetteError;

    fn from_str(text: &str) -> Result<Self, CassetteError> {
        Self::gather(tooth_counts(text))
    }
}

impl fmt::Display for Cassette {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let is_like_a_name = self.sprockets.len() == 2 && self.spread() >= CassetteName::LEAST_SPREAD;
        let between = if is_like_a_name { ", " } else { "-" };
        write!(f, "{}", self.sprockets[0])?;
        self.sprockets[1..].iter().try_for_each(|sprocket| write!(f, "{between}{sprocket}"))
    }
}

/// Why sprockets do not make a [`Cassette`].
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum CassetteError {
    /// No sprocket was given.
    Empty,
    /// An entry is not a whole number.
    NotACount {
        /// Which entry, counted from 1.
        place: usize,
    },
    /// A sprocket has too few or too many teeth.
    Sprocket(OutOfLimits),
    /// A sprocket is not larger than the one before it.
    NotAscending {
        /// The sprocket before.
        before: Sprocket,
        /// The one that should have been larger.
        sprocket: Sprocket,
    },
    /// There are more than [`Cassette::MOST_SPROCKETS`] sprockets.
    TooMany,
}

impl From<NotACount> for CassetteError {
    fn from(NotACount { place }: NotACount) -> Self {
        Self::NotACount { place }
    }
}

impl From<OutOfLimits> for CassetteError {
    fn from(error: OutOfLimits) -> Self {
        Self::Sprocket(error)
    }
}

impl fmt::Display for CassetteError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => {
                f.write_str("type every sprocket from the smallest to the largest, such as 11-13-15-18")
            }
            Self::NotACount { place } => {
                write!(f, "entry {place} is not a whole number: type every sprocket, such as 11-13-15-18")
            }
            Self::Sprocket(error) => error.with_value(f),
            Self::NotAscending { before, sprocket } => write!(
                f,
                "{sprocket} comes after {before}: type the sprockets from the smallest to the largest, each once"
            ),
            Self::TooMany => write!(f, "type at most {} sprockets", Cassette::MOST_SPROCKETS),
        }
    }
}

impl core::error::Error for CassetteError {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_rule_has_its_error() {
        let error = |text: &str| text.parse::<Cassette>().unwrap_err();
        assert_eq!(error(""), CassetteError::Empty);
        assert_eq!(error("<b>11</b>"), CassetteError::NotACount { place: 1 });
        assert_eq!(error("11-+12"), CassetteError::NotACount { place: 2 });
        assert_eq!(error("8-9").to_string(), "sprocket must be 9 to 60 teeth, not 8");
        assert!(matches!(error("11-10-9"), CassetteError::NotAscending { .. }));
        assert!(matches!(error("11-11"), CassetteError::NotAscending { .. }));
        assert_eq!(Cassette::new(11..=25), Err(CassetteError::TooMany));
    }

    #[test]
    fn what_is_printed_is_never_a_name() {
        for (smallest, largest) in [(9, 10), (16, 20), (16, 21), (11, 32), (9, 60)] {
            let cassette = Cassette::new([smallest, largest]).unwrap();
            let printed = cassette.to_string();
            assert_eq!((printed.parse(), CassetteName::read(&printed)), (Ok(cassette), None));
        }
        assert_eq!(Cassette::new([16, 18]).unwrap().to_string(), "16-18");
    }

    #[test]
    fn fourteen_sprockets_are_enough_and_allowed() {
        assert_eq!(Cassette::new(11..=24).map(|cassette| cassette.sprockets().len()), Ok(14));
    }
}
