//! Some of a drivetrain's gears, such as those to avoid.

use crate::gears::cassette::Cassette;
use crate::gears::chainset::Chainset;
use crate::gears::drivetrain::Drivetrain;
use crate::gears::gear::Gear;
use core::fmt;

/// Some of the gears of one drivetrain, kept by their places in [`Drivetrain::gears`]: of another drivetrain it means
/// other gears.
///
/// # Example
/// ```
/// use gear_math::{Drivetrain, Gear};
/// use gear_math::gears::GearSet;
/// let bike = Drivetrain { chainset: "44/31".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
/// let avoid = GearSet::parse("31×11, 31x13", &bike)?;
/// assert!(avoid.holds(&bike, Gear::new(31, 13)?));
/// assert_eq!(avoid.rest(&bike).count(), 14);
/// assert_eq!(
///     GearSet::parse("31×12", &bike).unwrap_err().to_string(),
///     "there is no 31×12: the rings are 44/31, the sprockets 11-13-15-18-21-24-28-32"
/// );
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct GearSet(u64);

impl GearSet {
    /// No gear.
    pub const NONE: Self = Self(0);

    /// The gears of which `holds` is true.
    pub fn of(drivetrain: &Drivetrain, mut holds: impl FnMut(Gear) -> bool) -> Self {
        Self::by_place(drivetrain.gears().map(&mut holds))
    }

    /// The gears for which `held`, in the order of [`Drivetrain::gears`], is true.
    pub(crate) fn by_place(held: impl Iterator<Item = bool>) -> Self {
        Self(held.enumerate().fold(0, |all, (place, held)| all | u64::from(held) << place))
    }

    /// Reads gears such as `34×11, 34×12`: ring, then sprocket. `x`, `*`, `/`, `:` and hyphens are understood for `×`;
    /// commas, semicolons, spaces and “and” part the gears.
    ///
    /// # Errors
    /// - [`GearSetError::NotAGear`] when an entry is not two whole numbers.
    /// - [`GearSetError::Missing`] when the drivetrain has no such gear.
    pub fn parse(text: &str, drivetrain: &Drivetrain) -> Result<Self, GearSetError> {
        entries(text).try_fold(Self::NONE, |all, (place, entry)| {
            all.with(drivetrain, teeth(&entry).ok_or(GearSetError::NotAGear { place })?)
        })
    }

    /// The same with the gear of so many teeth on ring and sprocket.
    ///
    /// # Errors
    /// [`GearSetError::Missing`] when the drivetrain has no such gear.
    pub fn with(self, drivetrain: &Drivetrain, [ring, sprocket]: [u16; 2]) -> Result<Self, GearSetError> {
        let one = Self::of(drivetrain, |gear| gear.ring.teeth() == ring && gear.sprocket.teeth() == sprocket);
        let missing = || GearSetError::Missing { ring, sprocket, drivetrain: *drivetrain };
        if one.is_empty() { Err(missing()) } else { Ok(self.and(one)) }
    }

    /// The gears of either.
    #[must_use]
    pub const fn and(self, other: Self) -> Self {
        Self(self.0 | other.0)
    }

    /// The gears of both.
    #[must_use]
    pub const fn common(self, other: Self) -> Self {
        Self(self.0 & other.0)
    }

    /// The gears that `other` does not hold.
    #[must_use]
    pub const fn without(self, other: Self) -> Self {
        Self(self.0 & !other.0)
    }

    /// Whether it holds no gear.
    #[must_use]
    pub const fn is_empty(self) -> bool {
        self.0 == 0
    }

    /// How many gears it holds.
    #[must_use]
    pub const fn count(self) -> usize {
        self.0.count_ones() as usize
    }

    /// The places it holds as bits, to tell sets of one drivetrain apart.
    pub(crate) const fn bits(self) -> u64 {
        self.0
    }

    /// Whether it holds every gear of its drivetrain.
    #[must_use]
    pub fn holds_all(self, drivetrain: &Drivetrain) -> bool {
        self.count() == drivetrain.gear_count()
    }

    /// Whether it holds `gear`.
    #[must_use]
    pub fn holds(self, drivetrain: &Drivetrain, gear: Gear) -> bool {
        self.gears(drivetrain).any(|held| held == gear)
    }

    /// Its gears, in the order of [`Drivetrain::gears`].
    pub fn gears(self, drivetrain: &Drivetrain) -> impl Iterator<Item = Gear> + '_ {
        let held = move |(place, gear): (usize, Gear)| (self.0 >> place & 1 == 1).then_some(gear);
        drivetrain.gears().enumerate().filter_map(held)
    }

    /// The gears that are left to ride when these are avoided. When none would be, it is every gear: whoever says so
    /// has to say that all would have to be avoided, see [`holds_all`](Self::holds_all).
    pub fn rest(self, drivetrain: &Drivetrain) -> impl Iterator<Item = Gear> + '_ {
        Self(!self.unless_all(drivetrain).0).gears(drivetrain)
    }

    /// The same, but no gear where it holds every one.
    #[must_use]
    pub fn unless_all(self, drivetrain: &Drivetrain) -> Self {
        if self.holds_all(drivetrain) { Self::NONE } else { self }
    }

    /// The lowest gear that is left to ride.
    #[must_use]
    pub fn lowest(self, drivetrain: &Drivetrain) -> Gear {
        let left = self.rest(drivetrain);
        left.reduce(|low, gear| if gear.cmp_ratio(low).is_lt() { gear } else { low })
            .unwrap_or_else(|| drivetrain.lowest())
    }

    /// The highest gear that is left to ride.
    #[must_use]
    pub fn highest(self, drivetrain: &Drivetrain) -> Gear {
        let left = self.rest(drivetrain);
        left.reduce(|high, gear| if gear.cmp_ratio(high).is_gt() { gear } else { high })
            .unwrap_or_else(|| drivetrain.highest())
    }
}

/// The entries of a typed list, each with its place, without spaces round the sign between ring and sprocket.
fn entries(text: &str) -> impl Iterator<Item = (usize, String)> {
    let mut plain = String::new();
    for letter in text.chars() {
        let sign = is_sign(letter);
        if sign {
            plain.truncate(plain.trim_end().len());
        }
        let after_sign = letter.is_whitespace() && plain.ends_with('×');
        if !after_sign {
            plain.push(if sign { '×' } else { letter });
        }
    }
    let parts = plain.split(|letter: char| letter.is_whitespace() || matches!(letter, ',' | ';'));
    let parts: Vec<String> = parts.filter(|it| !it.is_empty() && *it != "and").map(str::to_owned).collect();
    parts.into_iter().enumerate().map(|(index, entry)| (index + 1, entry))
}

const fn is_sign(letter: char) -> bool {
    matches!(letter, '×' | 'x' | 'X' | '*' | '✕' | '✖' | '⨯' | '/' | ':' | '-' | '‐' | '‑' | '–' | '—')
}

fn teeth(entry: &str) -> Option<[u16; 2]> {
    let (ring, sprocket) = entry.split_once('×')?;
    let count = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit()).then(|| text.parse().ok())?;
    Some([count(ring)?, count(sprocket)?])
}

/// Why a text is no [`GearSet`].
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum GearSetError {
    /// An entry is not a ring and a sprocket.
    NotAGear {
        /// Which entry, counted from 1.
        place: usize,
    },
    /// The drivetrain has no such gear.
    Missing {
        /// Teeth of the ring that was given.
        ring: u16,
        /// Teeth of the sprocket that was given.
        sprocket: u16,
        /// What there is.
        drivetrain: Drivetrain,
    },
}

impl fmt::Display for GearSetError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotAGear { place } => {
                write!(f, "entry {place} is no gear: type ring × sprocket, such as 34×11, 34×12")
            }
            Self::Missing { ring, sprocket, drivetrain: Drivetrain { chainset, cassette } } => {
                missing(f, [ring, sprocket], chainset, cassette)
            }
        }
    }
}

fn missing(
    f: &mut fmt::Formatter<'_>,
    [ring, sprocket]: [&u16; 2],
    chainset: &Chainset,
    cassette: &Cassette,
) -> fmt::Result {
    let rings = if chainset.rings().len() == 1 { "ring is" } else { "rings are" };
    write!(f, "there is no {ring}×{sprocket}: the {rings} {chainset}, the sprockets {cassette}")
}

impl core::error::Error for GearSetError {}

#[cfg(test)]
mod tests {
    use super::*;

    fn bike() -> Drivetrain {
        Drivetrain { chainset: "50/34".parse().unwrap(), cassette: "11-12-13-15".parse().unwrap() }
    }

    fn read(text: &str) -> Result<Vec<String>, GearSetError> {
        let set = GearSet::parse(text, &bike())?;
        Ok(set.gears(&bike()).map(|gear| gear.to_string()).collect())
    }

    #[test]
    fn many_spellings_are_one_gear() {
        for text in ["34×11", "34x11", "34 X 11", "34 * 11", "34/11;", " 34:11 ", "34-11", "34✕ 11", "34–11,"]
        {
            assert_eq!(read(text).unwrap(), ["34×11"], "{text}");
        }
        for text in
            ["34×12, 34×11", "34x11 34x12", "34 × 11 and 34 × 12", "34/11;34/12", "34×11\n34×12,34x11"]
        {
            assert_eq!(read(text).unwrap(), ["34×11", "34×12"], "{text}");
        }
        assert_eq!(read(" , ").unwrap(), [""; 0]);
    }

    #[test]
    fn what_is_no_gear_of_the_bike_is_named() {
        for (text, place) in
            [("34", 1), ("34×11, 12", 2), ("34×11×12", 1), ("<b>", 1), ("34×+11", 1), ("×", 1)]
        {
            assert_eq!(read(text), Err(GearSetError::NotAGear { place }), "{text}");
        }
        assert!(read("34×99999999").is_err());
        let error = read("34×14").unwrap_err().to_string();
        assert_eq!(error, "there is no 34×14: the rings are 50/34, the sprockets 11-12-13-15");
    }

    #[test]
    fn when_all_are_avoided_all_are_left() {
        let bike = bike();
        let all = GearSet::of(&bike, |_| true);
        assert!(all.holds_all(&bike) && all.rest(&bike).count() == 8);
        let some = GearSet::of(&bike, |gear| gear.ring.teeth() == 34);
        assert!(some.rest(&bike).all(|gear| gear.ring.teeth() == 50 && !some.holds(&bike, gear)));
        assert_eq!(all.without(some).common(all).count() + some.count(), 8);
    }
}
