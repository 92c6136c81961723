//! Who rides the lap on what, and with which habits.

use crate::course::lap::costs::{Mounting, Shifting};
use crate::course::quantity::StartSpeed;
use crate::rider::{Air, Bike, Rider, RidingLimits, WheelInertia};

/// How a lap is begun.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Begin {
    /// As it was ended: one lap of many.
    Flying,
    /// Riding at this speed.
    Rolling(StartSpeed),
}

/// Everything a lap depends on besides the course. Wind is left out: a lap goes round.
///
/// # Example
/// ```
/// use gear_math::{Bike, Circumference, Drivetrain, LapSetup, Power, Rider};
/// use gear_math::course::{Begin, StartSpeed};
/// use gear_math::rider::{Air, BikeMass, BodyMass, KitMass};
/// let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
/// let drivetrain = Drivetrain { chainset: "40".parse()?, cassette: "11-13-15-17-20-23-27-32".parse()? };
/// let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
/// let flying = LapSetup::new(rider, bike, Air::STILL);
/// let first = LapSetup { begin: Begin::Rolling(StartSpeed::new(2.0)?), ..flying };
/// assert_eq!((flying.begin, first.rider), (Begin::Flying, rider));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LapSetup {
    /// The rider, with the power held to.
    pub rider: Rider,
    /// The bike and its gears.
    pub bike: Bike,
    /// The air; its headwind is not used.
    pub air: Air,
    /// What forces the rider off the bike.
    pub limits: RidingLimits,
    /// Inertia of the wheels.
    pub inertia: WheelInertia,
    /// Whether wheel bearings and spoke drag count.
    pub wheels: bool,
    /// Habits and costs of shifting.
    pub shifting: Shifting,
    /// Costs of getting off and on.
    pub mounting: Mounting,
    /// How the lap is begun.
    pub begin: Begin,
}

impl LapSetup {
    /// A flying lap with usual wheels and habits and every limit.
    #[must_use]
    pub const fn new(rider: Rider, bike: Bike, air: Air) -> Self {
        Self {
            rider,
            bike,
            air,
            limits: RidingLimits::all(&rider),
            inertia: WheelInertia::USUAL,
            wheels: true,
            shifting: Shifting::USUAL,
            mounting: Mounting::USUAL,
            begin: Begin::Flying,
        }
    }
}
