//! Rule-book limits on the development of a gear.

use crate::gears::drivetrain::Drivetrain;
use crate::gears::gear::Gear;
use crate::gears::toothed::{Chainring, Sprocket};
use crate::quantity::{Circumference, Development};
use crate::quantity::{Limits, OutOfLimits, derived, measured};

measured! {
    /// The longest development a rule book allows, in metres. Limits: estimate, beyond any gear in use.
    RollOutLimit(m): "roll-out limit", "m", 1.0 ..= 20.0;
}

derived! {
    /// Circumference of the wheel on which a gear just meets a limit, in millimetres. It may lie outside what wheels
    /// measure.
    LongestWheel(mm);
}

/// Which sprockets pass a limit on one ring.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct RingPasses<'a> {
    /// The ring.
    pub ring: Chainring,
    /// Sprockets on which the gear is too long, smallest first: to be blocked.
    pub too_long: &'a [Sprocket],
    /// Sprockets on which the gear passes, smallest first.
    pub passes: &'a [Sprocket],
}

impl RollOutLimit {
    /// What to say beside every answer: it is not the arithmetic that counts.
    pub const MEASURED_DECIDES: &'static str = "Only the roll-out measured at the race decides: tyres at race pressure, \
        the bicycle rolled back in a straight line through one whole turn of the crank.";

    /// For the presets, whose numbers the tests check against [`Self::LIMITS`].
    pub(super) const fn listed(m: f64) -> Self {
        Self(m)
    }

    /// Whether a development is allowed. Nothing is rounded; a development equal to the limit passes.
    #[must_use]
    pub fn allows(self, development: Development) -> bool {
        development.m() <= self.m()
    }

    /// Tests every gear of a drivetrain, ring by ring from the largest.
    ///
    /// # Example
    /// ```
    /// use gear_math::{Circumference, Drivetrain};
    /// use gear_math::gears::RollOutLimit;
    /// let bike = Drivetrain { chainset: "44/31".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
    /// let wheel = Circumference::new(2150.0)?;
    /// let limit = RollOutLimit::new(6.26)?;
    /// let smallest: Vec<u16> = limit.test(&bike, wheel).map(|ring| ring.passes[0].teeth()).collect();
    /// assert_eq!(smallest, [18, 11]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn test(self, drivetrain: &Drivetrain, wheel: Circumference) -> impl Iterator<Item = RingPasses<'_>> {
        drivetrain.chainset.rings().iter().map(move |&ring| {
            let too_long = |&sprocket: &Sprocket| !self.allows(Gear { ring, sprocket }.development(wheel));
            let sprockets = drivetrain.cassette.sprockets();
            let (too_long, passes) = sprockets.split_at(sprockets.partition_point(too_long));
            RingPasses { ring, too_long, passes }
        })
    }

    /// The wheel on which `gear` just passes: limit ÷ ratio. A longer one fails.
    #[must_use]
    pub fn longest_wheel(self, gear: Gear) -> LongestWheel {
        LongestWheel::new(self.m() * 1000.0 / gear.ratio().value())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn equal_passes_and_a_hair_more_does_not() {
        let development = Gear::new(40, 20).unwrap().development(Circumference::new(2100.0).unwrap());
        assert!(RollOutLimit::new(4.2).unwrap().allows(development));
        assert!(!RollOutLimit::new(4.2_f64.next_down()).unwrap().allows(development));
    }

    #[test]
    fn every_gear_may_fail() {
        let bike = Drivetrain { chainset: "44".parse().unwrap(), cassette: "11-13".parse().unwrap() };
        let wheel = Circumference::new(2100.0).unwrap();
        let ring = RollOutLimit::new(2.0).unwrap().test(&bike, wheel).next().unwrap();
        assert_eq!((ring.too_long.len(), ring.passes.len()), (2, 0));
    }
}
