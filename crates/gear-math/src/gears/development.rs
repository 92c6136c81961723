//! Distance per crank turn, and what it means at a cadence or a speed.

use crate::gears::quantity::PedalRate;
use crate::quantity::{Cadence, Circumference, Development, GearInches, Ratio, Speed};
use core::f64::consts::PI;

impl Development {
    /// Metres in the international inch, exact by its definition of 1959.
    pub const METRES_PER_INCH: f64 = 0.0254;
    /// Metres of development in a gear inch: one turn of a wheel of one inch.
    pub const METRES_PER_GEAR_INCH: f64 = PI * Self::METRES_PER_INCH;

    /// The ratio that comes to this on a wheel.
    ///
    /// # Example
    /// ```
    /// use gear_math::{Circumference, Gear};
    /// let (gear, wheel) = (Gear::new(40, 20)?, Circumference::new(2150.0)?);
    /// assert_eq!(gear.development(wheel).ratio(wheel).value(), 2.0);
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    #[must_use]
    pub fn ratio(self, wheel: Circumference) -> Ratio {
        Ratio::new(1000.0 * self.m() / wheel.mm())
    }

    /// The development in inches. Not to be mixed up with [gear inches](Self::gear_inches), π times smaller.
    #[must_use]
    pub fn inches(self) -> f64 {
        self.m() / Self::METRES_PER_INCH
    }

    /// Diameter of the directly driven wheel that would roll as far: development ÷ π, in inches.
    #[must_use]
    pub fn gear_inches(self) -> GearInches {
        GearInches::new(self.inches() / PI)
    }

    /// Speed over the ground at a cadence.
    ///
    /// # Formula
    /// v = development × cadence ÷ 60, in metres, turns per minute and metres per second.
    ///
    /// # Example
    /// ```
    /// use gear_math::{Cadence, Circumference, Gear};
    /// let development = Gear::new(40, 20)?.development(Circumference::new(2150.0)?);
    /// let speed = development.speed_at(Cadence::new(60.0)?);
    /// assert!((speed.m_per_s() - 4.3).abs() < 1e-12);
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    #[must_use]
    pub fn speed_at(self, cadence: Cadence) -> Speed {
        Speed::new(self.m() * cadence.rpm() / 60.0)
    }

    /// The development that rolls at a speed at a cadence: the third of the three.
    ///
    /// # Example
    /// ```
    /// use gear_math::{Cadence, Development, Speed};
    /// let development = Development::of(Speed::from_km_per_h(9.0)?, Cadence::new(60.0)?);
    /// assert!((development.m() - 2.5).abs() < 1e-12);
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    #[must_use]
    pub fn of(speed: Speed, cadence: Cadence) -> Self {
        Self::new(speed.m_per_s() * 60.0 / cadence.rpm())
    }

    /// Crank turns per minute that a speed asks for: the other direction of [`speed_at`](Self::speed_at).
    #[must_use]
    pub fn cadence_at(self, speed: Speed) -> PedalRate {
        PedalRate::new(speed.m_per_s() * 60.0 / self.m())
    }
}

impl GearInches {
    /// Distance covered in one turn of the crank: π × gear inches.
    #[must_use]
    pub fn development(self) -> Development {
        Development::new(self.inches() * Development::METRES_PER_GEAR_INCH)
    }
}
