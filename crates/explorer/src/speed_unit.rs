//! The unit speeds are shown in.

use crate::number::plain;
use gear_math::Speed;

/// Kilometres or miles per hour.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum SpeedUnit {
    /// km/h
    #[default]
    KmPerH,
    /// mph
    MilesPerH,
}

impl SpeedUnit {
    /// The number of a speed in this unit.
    #[must_use]
    pub fn value(self, speed: Speed) -> f64 {
        match self {
            Self::KmPerH => speed.km_per_h(),
            Self::MilesPerH => speed.miles_per_h(),
        }
    }

    /// The unit's symbol.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::KmPerH => "km/h",
            Self::MilesPerH => "mph",
        }
    }

    /// A speed with its unit, to one decimal.
    #[must_use]
    pub fn print(self, speed: Speed) -> String {
        format!("{}\u{a0}{}", plain(self.value(speed), 1), self.symbol())
    }
}
