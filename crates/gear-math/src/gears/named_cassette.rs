//! The usual cassette that a name stands for.

use crate::gears::cassette::Cassette;
use crate::gears::cassette_name::CassetteName;
use crate::quantity::OutOfLimits;
use core::fmt;

impl CassetteName {
    /// The usual cassettes between these ends, whatever number of sprockets was said, those with fewest first.
    pub fn cassettes(self) -> impl Iterator<Item = Cassette> {
        let ends = self.ends();
        Cassette::common().filter(move |cassette| [cassette.smallest(), cassette.largest()] == ends)
    }

    /// The usual cassette of this name: with the number of sprockets said, else with as many as `count` or the nearest to it
    /// that there is, else nearest to [`Self::USUAL_COUNT`].
    #[must_use]
    pub fn beside(self, count: Option<usize>) -> Option<Cassette> {
        let off = |cassette: &Cassette, wanted| cassette.sprockets().len().abs_diff(wanted);
        match self.count() {
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
                .filter(move |count| name.count().is_none_or(|said| said == *count))
        };
        let both = counts(self).filter(|count| counts(other).any(|it| it == *count));
        both.min_by_key(|count| count.abs_diff(Self::USUAL_COUNT))
    }
}

impl Cassette {
    /// The usual cassette of a name and a number of sprockets. Its ends are as said; what lies between is common practice and
    /// differs from maker to maker, so the teeth stamped on the sprockets decide.
    ///
    /// # Errors
    /// - [`CassetteNameError::Sprocket`] when an end is outside [`Sprocket::LIMITS`](crate::gears::toothed::Sprocket::LIMITS).
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
        let name = CassetteName::new(smallest, largest)?.of(count);
        name.beside(None).ok_or(CassetteNameError::NoneSuch(name))
    }
}

impl Cassette {
    /// The name that a shop calls it by, with its number of sprockets; none of a cassette that such a name does not stand for.
    ///
    /// # Example
    /// ```
    /// use gear_math::Cassette;
    /// let name = |sprockets: &str| sprockets.parse::<Cassette>().ok()?.everyday_name();
    /// assert_eq!(name("11-12-13-14-16-18-20-22-25-28-32").as_deref(), Some("11-32 11s"));
    /// assert_eq!(name("11-13-14-32"), None);
    /// ```
    #[must_use]
    pub fn everyday_name(&self) -> Option<String> {
        let count = self.sprockets().len();
        let name = CassetteName::new(self.smallest().teeth(), self.largest().teeth()).ok()?.of(count);
        (name.beside(None)? == *self).then(|| format!("{name} {count}s"))
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
            Self::Sprocket(error) => return error.with_value(f),
            Self::NoneSuch(name) => name,
        };
        let mut counts = name.cassettes().map(|cassette| cassette.sprockets().len());
        match (counts.next(), name.count()) {
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
