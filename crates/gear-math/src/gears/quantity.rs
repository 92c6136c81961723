//! Quantities that belong to the drivetrain alone.

use crate::quantity::{Cadence, Limits, OutOfLimits, derived, measured};

measured! {
    /// How far apart two gears may be and still count as the same, in percent of the lower. Limits: estimate, up
    /// to twice the smallest step of usual cassettes.
    ///
    /// # Example
    /// ```
    /// use gear_math::DuplicateTolerance;
    /// assert_eq!(DuplicateTolerance::default().percent(), 2.0);
    /// assert!(DuplicateTolerance::new(12.0).is_err());
    /// ```
    DuplicateTolerance(percent): "duplicate tolerance", "%", 0.0 ..= 10.0;
}

derived! {
    /// Crank turns per minute that a speed asks for. Unlike a typed [`Cadence`](crate::quantity::Cadence) it may be
    /// slower or faster than anyone pedals.
    PedalRate(rpm);
    /// Sideways angle of the chain's upper run, in degrees; 0 when ring and sprocket stand in one plane.
    ///
    /// Published evidence disagrees on what it costs, so no loss is made of it.
    ChainAngle(degrees);
    /// How much the higher of two gears exceeds the lower, in percent of the lower. Never negative.
    GearStep(percent);
    /// Highest gear ÷ lowest gear, in percent: 300 % is a highest gear three times the lowest.
    GearRange(percent);
}

impl From<Cadence> for PedalRate {
    fn from(cadence: Cadence) -> Self {
        Self(cadence.rpm())
    }
}

/// 2 %: well below the 5 % of the smallest step between usual sprockets, 20 to 21 (common practice).
impl Default for DuplicateTolerance {
    fn default() -> Self {
        Self(2.0)
    }
}
