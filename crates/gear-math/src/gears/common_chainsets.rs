//! Chainsets in common use.

use crate::gears::chainset::Chainset;
use crate::gears::toothed::Chainring;

/// Doubles from cyclo-cross, road and all-road bicycles by their largest ring, closest rings first, then singles. Source:
/// common practice.
const RINGS: &[&[u16]] = &[
    &[44, 34],
    &[46, 39],
    &[46, 38],
    &[46, 36],
    &[46, 34],
    &[46, 33],
    &[46, 30],
    &[48, 38],
    &[48, 36],
    &[48, 35],
    &[48, 34],
    &[48, 32],
    &[48, 31],
    &[50, 37],
    &[50, 36],
    &[50, 34],
    &[52, 36],
    &[53, 39],
    &[38],
    &[39],
    &[40],
    &[42],
    &[44],
];

/// Rings that are sold one by one, for one ring alone or for pairs of one's own. Source: common practice; even numbers, and 39.
/// Other odd numbers are made as a part of usual pairs only.
const ONE_BY_ONE: &[u16] = &[28, 30, 32, 34, 36, 38, 39, 40, 42, 44, 46, 48, 50, 52];

impl Chainset {
    /// Chainsets that can be bought: rings sold one by one, alone and in pairs that differ by a stretch of teeth, and those of
    /// [`Self::common`] that do. Source: common practice.
    ///
    /// # Example
    /// ```
    /// use gear_math::Chainset;
    /// let names: Vec<String> = Chainset::made(8..=16).map(|it| it.to_string()).collect();
    /// assert!(names.contains(&"42".into()) && names.contains(&"42/30".into()) && names.contains(&"48/35".into()));
    /// assert!(!names.contains(&"43".into()) && !names.contains(&"42/31".into()));
    /// ```
    pub fn made(differences: core::ops::RangeInclusive<u16>) -> impl Iterator<Item = Self> {
        let one_by_one: Vec<Chainring> =
            ONE_BY_ONE.iter().filter_map(|&it| Chainring::new(it).ok()).collect();
        let mut made = Self::of_rings(&one_by_one, differences.clone());
        let of_pairs =
            Self::common().filter(|it| differences.contains(&it.difference()) && !made.contains(it));
        let of_pairs: Vec<Self> = of_pairs.collect();
        made.extend(of_pairs);
        made.into_iter()
    }

    /// Every single ring, and every pair that differs by a stretch of teeth, from `rings`.
    ///
    /// # Example
    /// ```
    /// use gear_math::{Chainring, Chainset};
    /// let rings = [32, 42, 44].map(Chainring::new).into_iter().collect::<Result<Vec<_>, _>>()?;
    /// let names: Vec<String> = Chainset::of_rings(&rings, 8..=11).iter().map(Chainset::to_string).collect();
    /// assert_eq!(names, ["32", "42", "44", "42/32"]);
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    #[must_use]
    pub fn of_rings(rings: &[Chainring], differences: core::ops::RangeInclusive<u16>) -> Vec<Self> {
        let singles = rings.iter().filter_map(|ring| Self::new([ring.teeth()]).ok());
        let pairs =
            rings.iter().flat_map(|large| rings.iter().map(move |small| (large.teeth(), small.teeth())));
        let near = pairs.filter(|(large, small)| large > small && differences.contains(&(large - small)));
        singles.chain(near.filter_map(|(large, small)| Self::new([large, small]).ok())).collect()
    }

    /// Doubles and singles in common use on cyclo-cross, road and all-road bicycles: doubles by their largest ring, the
    /// closest first, then singles.
    ///
    /// # Example
    /// ```
    /// use gear_math::Chainset;
    /// assert!(Chainset::common().any(|chainset| chainset.to_string() == "48/32"));
    /// ```
    pub fn common() -> impl Iterator<Item = Self> {
        RINGS.iter().filter_map(|teeth| Self::new(teeth.iter().copied()).ok())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_entry_is_a_chainset() {
        assert_eq!(Chainset::common().count(), RINGS.len());
    }

    #[test]
    fn what_is_made_is_no_ring_of_every_tooth() {
        let made: Vec<Chainset> = Chainset::made(8..=16).collect();
        let singles: Vec<&Chainset> = made.iter().filter(|it| it.rings().len() == 1).collect();
        assert_eq!(singles.len(), ONE_BY_ONE.len());
        for common in Chainset::common().filter(|it| (8..=16).contains(&it.difference())) {
            assert_eq!(made.iter().filter(|it| **it == common).count(), 1, "{common}");
        }
        for other in [37, 41, 43, 45, 47, 49] {
            assert!(singles.iter().all(|it| it.largest().teeth() != other), "{other}");
        }
        assert!(made.iter().all(|it| it.rings().len() == 1 || (8..=16).contains(&it.difference())));
    }

    #[test]
    fn they_are_in_order() {
        let order = |it: &Chainset| (it.difference() == 0, it.largest(), it.difference());
        assert!(Chainset::common().is_sorted_by_key(|it| order(&it)));
    }
}
