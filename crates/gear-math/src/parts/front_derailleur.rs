//! A front derailleur out of a box.

use crate::cage::FrontLimits;
use crate::gears::{Chainring, Chainset, RingDifference};

/// A front derailleur out of a box, by what its maker states; what is not known is not checked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct FrontDerailleur {
    /// The largest ring it is made for.
    pub largest_ring: Option<Chainring>,
    /// Most teeth between the largest and the smallest ring.
    pub difference: Option<RingDifference>,
}

impl FrontDerailleur {
    /// Whether it shifts these rings: they differ by no more than it spans, and the largest is none larger than it is made for
    /// and smaller by no more than [`FrontLimits::CURVE_TOLERANCE`].
    ///
    /// # Example
    /// ```
    /// use gear_math::Chainring;
    /// use gear_math::gears::RingDifference;
    /// use gear_math::parts::FrontDerailleur;
    /// let front =
    ///     FrontDerailleur { largest_ring: Some(Chainring::new(44)?), difference: Some(RingDifference::new(12)?) };
    /// assert!(front.shifts(&"42/32".parse()?) && !front.shifts(&"44/31".parse()?) && !front.shifts(&"48/36".parse()?));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn shifts(&self, chainset: &Chainset) -> bool {
        let largest = chainset.largest().teeth();
        let suits = |made_for: Chainring| {
            let most = made_for.teeth();
            (most.saturating_sub(FrontLimits::CURVE_TOLERANCE)..=most).contains(&largest)
        };
        self.largest_ring.is_none_or(suits)
            && self.difference.is_none_or(|most| chainset.difference() <= most.teeth())
    }
}
