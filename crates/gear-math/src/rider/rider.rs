//! The rider and the bike under them.

use crate::gears::{Drivetrain, Gear, GearSet};
use crate::quantity::{Cadence, Circumference, Development};
use crate::rider::foot_bike::FootBike;
use crate::rider::on_foot::Gaits;
use crate::rider::quantity::{
    BikeMass, BodyMass, CrankLength, DrivetrainEfficiency, FootCostFactor, GrossEfficiency, KitMass,
    LoadFactor, Power, StandingMetabolism, TotalMass,
};
use crate::wheel::MountedWidth;

/// A rider in one effort.
///
/// # Example
/// ```
/// use gear_math::{Cadence, Power, Rider};
/// use gear_math::rider::{BodyMass, KitMass};
/// let usual = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
/// let supple = Rider { highest_cadence: Cadence::new(130.0)?, ..usual };
/// assert!(supple.highest_cadence > usual.highest_cadence);
/// # Ok::<(), gear_math::OutOfLimits>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rider {
    /// Body mass.
    pub body: BodyMass,
    /// What the rider wears and carries.
    pub kit: KitMass,
    /// Power at the crank for this effort.
    pub power: Power,
    /// Mechanical over metabolic power on the bike.
    pub efficiency: GrossEfficiency,
    /// What standing takes.
    pub standing: StandingMetabolism,
    /// This person's cost on foot over the published mean.
    pub foot_cost: FootCostFactor,
    /// Whether walking is allowed.
    pub gaits: Gaits,
    /// How the bike goes along on foot.
    pub foot_bike: FootBike,
    /// Slowest usable cadence.
    pub lowest_cadence: Cadence,
    /// Fastest usable cadence.
    pub highest_cadence: Cadence,
    /// Crank length.
    pub crank: CrankLength,
}

impl Rider {
    /// A rider with the model's reference values for all that most riders do not know of themselves.
    #[must_use]
    pub const fn new(body: BodyMass, kit: KitMass, power: Power) -> Self {
        Self {
            body,
            kit,
            power,
            efficiency: GrossEfficiency::TRAINED,
            standing: StandingMetabolism::PANDOLF,
            foot_cost: FootCostFactor::MEAN,
            gaits: Gaits::RunOrWalk,
            foot_bike: FootBike::Carried,
            lowest_cadence: Cadence::GRINDING,
            highest_cadence: Cadence::SPINNING,
            crank: CrankLength::USUAL,
        }
    }

    /// The same rider where the bike cannot roll.
    #[must_use]
    pub const fn carrying(self) -> Self {
        Self { foot_bike: FootBike::Carried, ..self }
    }

    /// Everything that moves when this rider is on `bike`.
    #[must_use]
    pub fn with(&self, bike: &Bike) -> TotalMass {
        TotalMass::of(self.body, self.kit, bike.mass)
    }
}

impl FootCostFactor {
    /// As the runners of Minetti et al. (2002).
    pub const MEAN: Self = Self::known(1.0);
}

/// A bike: its mass and gears, and what it is like to carry.
///
/// # Example
/// ```
/// use gear_math::{Bike, Circumference, Drivetrain};
/// use gear_math::rider::BikeMass;
/// let drivetrain = Drivetrain { chainset: "40".parse()?, cassette: "11-13-15-17-20-23-27-32".parse()? };
/// let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
/// assert_eq!(bike.lowest_development().m(), 2.625);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bike {
    /// Mass as it stands.
    pub mass: BikeMass,
    /// Rings and sprockets.
    pub drivetrain: Drivetrain,
    /// Gears of it that are not to be used.
    pub avoid: GearSet,
    /// Circumference of the rear wheel.
    pub wheel: Circumference,
    /// Width of the tyres as mounted.
    pub tyre: MountedWidth,
    /// What reaches the rear wheel.
    pub efficiency: DrivetrainEfficiency,
    /// Cost of carrying it over cost of body mass.
    pub load: LoadFactor,
}

impl Bike {
    /// What a lap or a climb on a reserve must gain by pedalling with a [crossed](Drivetrain::is_crossed) chain, as a share of the
    /// sustainable power drawn for as long: 0.5 %. Estimate. Published evidence on what the angle of a chain loses disagrees, from
    /// nothing to about a per cent, so that it is no loss and stands in no time, charge or work: it is about the least that puts two
    /// gears within 1 % of one another in order, for wear and noise, which have no price here.
    pub const RELUCTANCE: f64 = 0.005;

    /// A bike with an ordinary off-road drivetrain on tyres of 33 mm, carried on one shoulder, all of whose gears may be used.
    #[must_use]
    pub const fn new(mass: BikeMass, drivetrain: Drivetrain, wheel: Circumference) -> Self {
        Self {
            mass,
            drivetrain,
            avoid: GearSet::NONE,
            wheel,
            tyre: MountedWidth::CROSS,
            efficiency: DrivetrainEfficiency::OFF_ROAD,
            load: LoadFactor::SHOULDERED,
        }
    }

    /// The gears that may be used; every one where all would have to be avoided.
    pub fn gears(&self) -> impl Iterator<Item = Gear> + '_ {
        self.avoid.rest(&self.drivetrain)
    }

    /// What pedalling in a gear counts for beside its charge where a lap or a climb chooses gears, in W: so much of the sustainable
    /// power where the chain is [crossed](Drivetrain::is_crossed), nothing where it is not. It is in no time, charge or work.
    pub(crate) fn reluctance_w(&self, gear: Gear, sustainable: Power) -> f64 {
        self.reluctance(gear) * sustainable.watts()
    }

    /// The same as a share.
    pub(crate) fn reluctance(&self, gear: Gear) -> f64 {
        if self.drivetrain.is_crossed(gear) { Self::RELUCTANCE } else { 0.0 }
    }

    /// Metres per crank turn in the lowest gear that may be used.
    #[must_use]
    pub fn lowest_development(&self) -> Development {
        self.avoid.lowest(&self.drivetrain).development(self.wheel)
    }
}

impl DrivetrainEfficiency {
    /// 0.976: clean. Martin et al. (1998, *J Appl Biomech* 14:276–291).
    pub const CLEAN: Self = Self::known(0.976);
    /// 0.96: off-road. Estimate, below the clean value.
    pub const OFF_ROAD: Self = Self::known(0.96);
}

impl LoadFactor {
    /// 1.2: on one shoulder. Estimate, between a load at the trunk (1.0; Ludlow & Weyand 2017, *J Appl Physiol*
    /// 123:1288–1302) and one in the hands (1.4 to 1.9; Soule & Goldman 1969, *J Appl Physiol* 27:687–690).
    pub const SHOULDERED: Self = Self::known(1.2);
}
