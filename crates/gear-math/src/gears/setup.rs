//! A drivetrain with its wheel.

use crate::gears::drivetrain::Drivetrain;
use crate::gears::gear::Gear;
use crate::gears::gear_set::GearSet;
use crate::quantity::{Cadence, Circumference, Development, GearInches, Ratio, Speed};

/// One set-up of a bicycle: rings, sprockets and how far its wheel rolls.
///
/// # Example
/// ```
/// use gear_math::{Circumference, Drivetrain, Setup};
/// let drivetrain = Drivetrain { chainset: "44/31".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
/// let set_up = Setup::new(drivetrain, Circumference::new(2150.0)?);
/// let highest = set_up.rows().next().unwrap();
/// assert_eq!(highest.development.m(), 8.6);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Setup {
    /// Rings and sprockets.
    pub drivetrain: Drivetrain,
    /// The driven wheel.
    pub wheel: Circumference,
    /// Gears that are not to be used: they count neither as useful nor as the lowest or highest.
    pub avoid: GearSet,
}

/// One line of a gear table.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GearRow {
    /// The gear.
    pub gear: Gear,
    /// Ring ÷ sprocket.
    pub ratio: Ratio,
    /// Metres per turn of the crank.
    pub development: Development,
    /// Gear inches on the real wheel.
    pub gear_inches: GearInches,
}

impl GearRow {
    /// Speed over the ground at a cadence.
    #[must_use]
    pub fn speed_at(&self, cadence: Cadence) -> Speed {
        self.development.speed_at(cadence)
    }
}

impl Setup {
    /// A set-up all of whose gears may be used.
    #[must_use]
    pub const fn new(drivetrain: Drivetrain, wheel: Circumference) -> Self {
        Self { drivetrain, wheel, avoid: GearSet::NONE }
    }

    /// The figures of one gear on this wheel.
    #[must_use]
    pub fn row(&self, gear: Gear) -> GearRow {
        let ratio = gear.ratio();
        let development = ratio.development(self.wheel);
        GearRow { gear, ratio, development, gear_inches: development.gear_inches() }
    }

    /// The gear table, in the order of [`Drivetrain::gears`].
    pub fn rows(&self) -> impl Iterator<Item = GearRow> + '_ {
        self.drivetrain.gears().map(|gear| self.row(gear))
    }
}
