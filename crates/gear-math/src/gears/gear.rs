//! One chainring with one sprocket.

use crate::gears::toothed::{Chainring, Sprocket};
use crate::quantity::{Circumference, Development, GearInches, OutOfLimits, Ratio};
use core::fmt;

/// The chain on one ring and one sprocket. Printed as `44×11`.
///
/// # Example
/// ```
/// use gear_math::{Circumference, Gear};
/// let gear = Gear::new(44, 11)?;
/// assert_eq!(gear.ratio().value(), 4.0);
/// assert_eq!(gear.development(Circumference::new(2150.0)?).m(), 8.6);
/// assert_eq!(gear.nominal_gear_inches().inches(), 108.0);
/// assert_eq!(gear.to_string(), "44×11");
/// # Ok::<(), gear_math::OutOfLimits>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Gear {
    /// The ring in front.
    pub ring: Chainring,
    /// The sprocket behind.
    pub sprocket: Sprocket,
}

impl Gear {
    /// Takes the teeth of ring and sprocket.
    ///
    /// # Errors
    /// [`OutOfLimits`] when either lies outside [`Chainring::LIMITS`] or [`Sprocket::LIMITS`].
    pub fn new(ring: u16, sprocket: u16) -> Result<Self, OutOfLimits> {
        Ok(Self { ring: Chainring::new(ring)?, sprocket: Sprocket::new(sprocket)? })
    }

    /// Ring teeth ÷ sprocket teeth.
    #[must_use]
    pub fn ratio(self) -> Ratio {
        Ratio::new(f64::from(self.ring.teeth()) / f64::from(self.sprocket.teeth()))
    }

    /// Distance covered in one turn of the crank: ratio × circumference.
    #[must_use]
    pub fn development(self, wheel: Circumference) -> Development {
        self.ratio().development(wheel)
    }

    /// Ratio × diameter of the real wheel.
    #[must_use]
    pub fn gear_inches(self, wheel: Circumference) -> GearInches {
        self.ratio().gear_inches(wheel)
    }

    /// Ratio × a nominal wheel of 27 inches, as track riders and rule-book tables count.
    #[must_use]
    pub fn nominal_gear_inches(self) -> GearInches {
        self.ratio().nominal_gear_inches()
    }
}

impl fmt::Display for Gear {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}×{}", self.ring, self.sprocket)
    }
}
