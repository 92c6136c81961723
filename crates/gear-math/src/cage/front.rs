//! What a front derailleur asks of the rings.

use crate::gears::{Chainring, Chainset};

/// What a front derailleur can do, as its maker states it or as is usual.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FrontLimits {
    /// Most teeth between largest and smallest ring.
    pub most_difference: u16,
    /// Fewest teeth between neighbouring rings; with less, the inner plate meets the larger ring.
    pub least_difference: u16,
    /// The largest ring that the curve of its plates is made for, when known.
    pub made_for: Option<Chainring>,
}

impl FrontLimits {
    /// Teeth by which the largest ring may differ from the one the plates are curved for. Estimate, because workshops
    /// say 3 to 4 and no standard rules it.
    pub const CURVE_TOLERANCE: u16 = 4;

    /// Usual limits for a crank of `rings` rings: most difference 16 for two rings (common practice, from memory; 14 on
    /// older ones, from published text) and 22 for three (published text); least difference 10 (common practice, from
    /// memory; some allow 8).
    #[must_use]
    pub const fn usual(rings: usize) -> Self {
        let most_difference = if rings < 3 { 16 } else { 22 };
        Self { most_difference, least_difference: 10, made_for: None }
    }

    /// What speaks against `chainset`; empty when nothing does, and for a single ring, which needs no front
    /// derailleur.
    ///
    /// # Example
    /// ```
    /// use gear_math::cage::{FrontConcern, FrontLimits};
    /// let concerns = FrontLimits::usual(2).concerns(&"48/30".parse()?);
    /// assert_eq!(concerns, [FrontConcern::DifferenceTooLarge { teeth: 18, most: 16 }]);
    /// # Ok::<(), gear_math::gears::ChainsetError>(())
    /// ```
    #[must_use]
    pub fn concerns(&self, chainset: &Chainset) -> Vec<FrontConcern> {
        if chainset.rings().len() == 1 {
            return Vec::new();
        }
        [self.too_far_apart(chainset), self.too_close(chainset), self.wrong_curve(chainset)]
            .into_iter()
            .flatten()
            .collect()
    }

    fn too_far_apart(&self, chainset: &Chainset) -> Option<FrontConcern> {
        let [teeth, most] = [chainset.difference(), self.most_difference];
        (teeth > most).then_some(FrontConcern::DifferenceTooLarge { teeth, most })
    }

    fn too_close(&self, chainset: &Chainset) -> Option<FrontConcern> {
        let least = self.least_difference;
        let teeth = chainset.rings().windows(2).map(|pair| pair[0].teeth() - pair[1].teeth()).min()?;
        (teeth < least).then_some(FrontConcern::DifferenceTooSmall { teeth, least })
    }

    fn wrong_curve(&self, chainset: &Chainset) -> Option<FrontConcern> {
        let [ring, made_for] = [chainset.largest(), self.made_for?];
        let off = ring.teeth().abs_diff(made_for.teeth());
        (off > Self::CURVE_TOLERANCE).then_some(FrontConcern::CurveDiffers { ring, made_for })
    }
}

/// Something that speaks against a chainset on a front derailleur. Whether the rings clear the chainstay only the
/// bike can tell.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FrontConcern {
    /// The rings differ by more than the cage spans.
    DifferenceTooLarge {
        /// Largest less smallest ring.
        teeth: u16,
        /// The most it should be.
        most: u16,
    },
    /// Two neighbouring rings differ by so little that the inner plate meets the larger one.
    DifferenceTooSmall {
        /// The least difference between neighbours.
        teeth: u16,
        /// The least it should be.
        least: u16,
    },
    /// The plates are curved for another ring.
    CurveDiffers {
        /// The largest ring.
        ring: Chainring,
        /// The ring they are made for.
        made_for: Chainring,
    },
}
