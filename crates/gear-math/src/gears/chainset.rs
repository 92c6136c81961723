//! The rings on the crank.

use crate::gears::few::Few;
use crate::gears::tooth_list::{NotACount, tooth_counts};
use crate::gears::toothed::Chainring;
use crate::order::ascending;
use crate::quantity::OutOfLimits;
use core::fmt;
use core::str::FromStr;

/// One, two or three different chainrings, largest first.
///
/// Read from text with slashes, hyphens, commas or spaces between the rings, in any order; printed with slashes.
///
/// # Example
/// ```
/// use gear_math::Chainset;
/// let double: Chainset = "31, 44".parse()?;
/// assert_eq!(double.to_string(), "44/31");
/// assert_eq!(double.largest().teeth(), 44);
/// assert!("44/44".parse::<Chainset>().is_err());
/// # Ok::<(), gear_math::gears::ChainsetError>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Chainset {
    rings: Few<Chainring, { Chainset::MOST_RINGS }>,
}

impl Chainset {
    /// Most rings a crank carries (common practice).
    pub const MOST_RINGS: usize = 3;

    /// Takes rings by their teeth, in any order.
    ///
    /// # Errors
    /// - [`ChainsetError::Empty`] when there is no ring.
    /// - [`ChainsetError::TooMany`] when there are more than [`Self::MOST_RINGS`].
    /// - [`ChainsetError::Ring`] when a ring is outside [`Chainring::LIMITS`].
    /// - [`ChainsetError::Repeated`] when two rings are the same.
    pub fn new(teeth: impl IntoIterator<Item = u16>) -> Result<Self, ChainsetError> {
        Self::gather(teeth.into_iter().map(Ok))
    }

    fn gather(mut counts: impl Iterator<Item = Result<u16, NotACount>>) -> Result<Self, ChainsetError> {
        let first = counts.next().ok_or(ChainsetError::Empty)?;
        let mut rings = Few::of(Chainring::new(first?)?);
        for teeth in counts {
            let ring = Chainring::new(teeth?)?;
            if rings.contains(&ring) {
                return Err(ChainsetError::Repeated { ring });
            }
            if !rings.push(ring) {
                return Err(ChainsetError::TooMany);
            }
        }
        ascending(&mut rings, |ring| -f64::from(ring.teeth()));
        Ok(Self { rings })
    }

    /// The rings, largest first.
    #[must_use]
    pub fn rings(&self) -> &[Chainring] {
        &self.rings
    }

    /// The ring with most teeth.
    #[must_use]
    pub fn largest(&self) -> Chainring {
        self.rings[0]
    }

    /// The ring with fewest teeth; the only one of a single.
    #[must_use]
    pub fn smallest(&self) -> Chainring {
        self.rings[self.rings.len() - 1]
    }

    /// Teeth between the largest and the smallest ring; 0 for a single.
    #[must_use]
    pub fn difference(&self) -> u16 {
        self.largest().teeth() - self.smallest().teeth()
    }
}

impl FromStr for Chainset {
    type Err = ChainsetError;

    fn from_str(text: &str) -> Result<Self, ChainsetError> {
        Self::gather(tooth_counts(text))
    }
}

impl fmt::Display for Chainset {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.rings[0])?;
        self.rings[1..].iter().try_for_each(|ring| write!(f, "/{ring}"))
    }
}

/// Why rings do not make a [`Chainset`].
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum ChainsetError {
    /// No ring was given.
    Empty,
    /// An entry is not a whole number.
    NotACount {
        /// Which entry, counted from 1.
        place: usize,
    },
    /// A ring has too few or too many teeth.
    Ring(OutOfLimits),
    /// The same ring was given twice.
    Repeated {
        /// The ring in question.
        ring: Chainring,
    },
    /// There are more than [`Chainset::MOST_RINGS`] rings.
    TooMany,
}

impl From<NotACount> for ChainsetError {
    fn from(NotACount { place }: NotACount) -> Self {
        Self::NotACount { place }
    }
}

impl From<OutOfLimits> for ChainsetError {
    fn from(error: OutOfLimits) -> Self {
        Self::Ring(error)
    }
}

impl fmt::Display for ChainsetError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => f.write_str("type the teeth of each chainring, such as 44/31 or 40"),
            Self::NotACount { place } => {
                write!(
                    f,
                    "entry {place} is not a whole number: type the teeth of each chainring, such as 44/31"
                )
            }
            Self::Ring(error) => error.with_value(f),
            Self::Repeated { ring } => write!(f, "{ring} is there twice: type each chainring once"),
            Self::TooMany => write!(f, "type at most {} chainrings", Chainset::MOST_RINGS),
        }
    }
}

impl core::error::Error for ChainsetError {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn order_does_not_matter() {
        assert_eq!("24 44-32".parse::<Chainset>(), Chainset::new([44, 32, 24]));
    }

    #[test]
    fn each_rule_has_its_error() {
        let error = |text: &str| text.parse::<Chainset>().unwrap_err();
        assert_eq!(error(" / "), ChainsetError::Empty);
        assert_eq!(error("44/x"), ChainsetError::NotACount { place: 2 });
        assert_eq!(error("44.5"), ChainsetError::NotACount { place: 1 });
        assert_eq!(error("61").to_string(), "chainring must be 20 to 60 teeth, not 61");
        assert_eq!(error("99999999").to_string(), "chainring must be 20 to 60 teeth");
        assert!(matches!(error("99999999999"), ChainsetError::Ring(_)));
        assert!(matches!(error("44/44"), ChainsetError::Repeated { .. }));
        assert_eq!(error("50/44/38/32"), ChainsetError::TooMany);
    }
}
