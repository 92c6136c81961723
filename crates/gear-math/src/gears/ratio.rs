//! What a ratio makes of a wheel.

use crate::quantity::{Circumference, Development, GearInches, Ratio};
use core::num::NonZeroU16;

impl Ratio {
    /// Wheel diameter of the high bicycles that gear inches go back to, still used by track riders and federation
    /// tables, in inches (common practice).
    pub const NOMINAL_WHEEL_INCHES: f64 = 27.0;

    /// Turns of the driven wheel for one turn of the driving wheel, for any two toothed wheels.
    #[must_use]
    pub fn of(driving: NonZeroU16, driven: NonZeroU16) -> Self {
        Self::new(f64::from(driving.get()) / f64::from(driven.get()))
    }

    /// Distance covered in one turn of the crank: ratio × circumference.
    #[must_use]
    pub fn development(self, wheel: Circumference) -> Development {
        Development::new(self.value() * wheel.mm() / 1000.0)
    }

    /// Ratio × diameter of the real wheel.
    #[must_use]
    pub fn gear_inches(self, wheel: Circumference) -> GearInches {
        self.development(wheel).gear_inches()
    }

    /// Ratio × a nominal wheel of 27 inches, whatever the real one measures.
    #[must_use]
    pub fn nominal_gear_inches(self) -> GearInches {
        GearInches::new(self.value() * Self::NOMINAL_WHEEL_INCHES)
    }
}
