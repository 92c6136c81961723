//! Who rides a lap on a reserve, and through which wind.

use crate::course::lap::setup::LapSetup;
use crate::rider::{EffortAccount, EffortBudget, FootFactor, Friction, Ground, RollingCoefficient, Wind};

/// How the ground differs from what is typical of its kind, as factors.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GroundFactors {
    /// On rolling resistance.
    pub rolling: f64,
    /// On what the ground adds on foot to the cost on hard ground.
    pub foot: f64,
    /// On the grip of the rear tyre.
    pub grip: f64,
}

impl GroundFactors {
    /// As is typical.
    pub const TYPICAL: Self = Self { rolling: 1.0, foot: 1.0, grip: 1.0 };

    pub(in crate::course) fn of(&self, typical: &Ground) -> Ground {
        Ground {
            rolling: RollingCoefficient::nearest(typical.rolling.value() * self.rolling),
            foot: FootFactor::nearest(1.0 + (typical.foot.value() - 1.0) * self.foot),
            friction: Friction::nearest(typical.friction.mu() * self.grip),
            ..*typical
        }
    }
}

/// Everything a lap on a reserve depends on besides the course.
///
/// # Example
/// ```
/// use gear_math::{Bike, Circumference, Drivetrain, LapSetup, Power, Rider};
/// use gear_math::course::ReserveSetup;
/// use gear_math::rider::{Air, BikeMass, BodyMass, CriticalPower, EffortAccount, EffortBudget, KitMass, PeakPower, WorkReserve};
/// let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
/// let drivetrain = Drivetrain { chainset: "40".parse()?, cassette: "11-13-15-17-20-23-27-32".parse()? };
/// let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
/// let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, PeakPower::of_body(rider.body))?;
/// let for_ever = ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort));
/// let last_lap = ReserveSetup { budget: EffortBudget::new(4000.0)?, ..for_ever };
/// assert_eq!((for_ever.budget, last_lap.lap), (EffortBudget::NONE, for_ever.lap));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReserveSetup {
    /// Bike, body, air, grip, balance, shifting and mounting. Its power, its cadences, its leg strength and how it is begun are
    /// not used: the account has its own, and the lap is one of many.
    pub lap: LapSetup,
    /// What power and cadence take from the reserve.
    pub account: EffortAccount,
    /// What one lap may take from it in the end.
    pub budget: EffortBudget,
    /// Wind over the ground at the rider's height. It counts where a stretch says which way it leads; on foot it does not.
    pub wind: Option<Wind>,
    /// How the ground differs from what is typical.
    pub ground: GroundFactors,
}

impl ReserveSetup {
    /// A lap that can be repeated for ever, in still air on typical ground.
    #[must_use]
    pub const fn new(lap: LapSetup, account: EffortAccount) -> Self {
        Self { lap, account, budget: EffortBudget::NONE, wind: None, ground: GroundFactors::TYPICAL }
    }
}
