//! Chainsets in common use.

use crate::Chainset;

/// Doubles from cyclo-cross, road and all-road bicycles, then singles. Source: common practice.
const RINGS: &[&[u16]] = &[
    &[46, 36],
    &[46, 38],
    &[46, 39],
    &[46, 34],
    &[44, 34],
    &[48, 38],
    &[48, 36],
    &[50, 34],
    &[50, 36],
    &[52, 36],
    &[53, 39],
    &[50, 37],
    &[48, 35],
    &[46, 33],
    &[48, 31],
    &[48, 32],
    &[46, 30],
    &[38],
    &[39],
    &[40],
    &[42],
    &[44],
];

impl Chainset {
    /// Doubles and singles in common use on cyclo-cross, road and all-road bicycles.
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
}
