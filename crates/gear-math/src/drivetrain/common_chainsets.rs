//! Chainsets in common use.

use crate::Chainset;

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

impl Chainset {
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
    fn they_are_in_order() {
        let order = |it: &Chainset| (it.difference() == 0, it.largest(), it.difference());
        assert!(Chainset::common().is_sorted_by_key(|it| order(&it)));
    }
}
