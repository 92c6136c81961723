//! How far a roll-out may be off, and everything computed from it.

use crate::{Circumference, Development};
use core::fmt;

/// Where a wheel's roll-out comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum RollOutSource {
    /// Computed from the size of a road tyre.
    RoadTyre,
    /// Computed from the size of a cyclo-cross tyre at race pressure.
    CrossTyre,
    /// Rolled out on the ground, rider aboard, at race pressure.
    Measured,
}

impl RollOutSource {
    /// How far the roll-out may be off either way, as a part of 1.
    ///
    /// Road tyre 0.006: the setting tables of cycle computers on 622, 18 to 45 mm. Cyclo-cross tyre 0.015: the drop
    /// under the rider shortens the roll-out by 17 to 60 mm, knobs add 10 to 20 (estimate). Measured 0.002: a tape
    /// read to 4 mm in one turn (estimate).
    #[must_use]
    pub const fn uncertainty(self) -> f64 {
        match self {
            Self::RoadTyre => 0.006,
            Self::CrossTyre => 0.015,
            Self::Measured => 0.002,
        }
    }

    /// How far a roll-out from this source may be off either way, in millimetres.
    #[must_use]
    pub const fn spread_mm(self, roll_out: Circumference) -> f64 {
        roll_out.mm() * self.uncertainty()
    }

    /// Lowest and highest development to reckon with, in metres.
    ///
    /// # Example
    /// ```
    /// use gear_math::{BeadSeat, Chainring, Gear, NominalWidth, RollOutSource, Sprocket, TyreSize};
    /// let wheel = TyreSize { width: NominalWidth::new(32.0)?, bead_seat: BeadSeat::ROAD }.circumference();
    /// assert_eq!(RollOutSource::CrossTyre.spread_mm(wheel).round(), 32.0);
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    #[must_use]
    pub const fn development_range_m(self, development: Development) -> (f64, f64) {
        let spread = development.m() * self.uncertainty();
        (development.m() - spread, development.m() + spread)
    }
}

impl fmt::Display for RollOutSource {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::RoadTyre => "computed from the tyre's size, good to 0.6 % either way",
            Self::CrossTyre => {
                "computed from the tyre's size, good to 1.5 % either way at race pressure; where a race limits the \
                 roll-out only a measured one counts"
            }
            Self::Measured => "rolled out on the ground, good to about 0.2 % either way",
        })
    }
}
