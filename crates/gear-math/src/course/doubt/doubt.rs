//! What is doubtful about a lap, by name.

use crate::course::doubt::draw::{DOUBTS, Draw};
use crate::course::reserve::setup::ReserveSetup;

/// One of the things that a [`Draw`] moves.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Doubt {
    /// Gross efficiency.
    Efficiency,
    /// Rolling resistance of every ground.
    Rolling,
    /// What every ground adds on foot.
    FootGround,
    /// How much the carried bike counts.
    Load,
    /// This person's cost on foot.
    FootCost,
    /// Drivetrain efficiency.
    Drivetrain,
    /// Peak power.
    Peak,
    /// Cost of cadence.
    CadenceCost,
    /// Share of what is left unused that comes back.
    Repaid,
    /// Share of strength that lasts.
    Lasting,
    /// Dismount and remount.
    Mounting,
    /// Grip of the rear tyre.
    Grip,
    /// Sustainable power.
    Sustained,
    /// Friction in the chain's pins.
    Pins,
}

impl Doubt {
    /// All of them, in the order of the fields of [`Draw`].
    pub const ALL: [Self; DOUBTS] = [
        Self::Efficiency,
        Self::Rolling,
        Self::FootGround,
        Self::Load,
        Self::FootCost,
        Self::Drivetrain,
        Self::Peak,
        Self::CadenceCost,
        Self::Repaid,
        Self::Lasting,
        Self::Mounting,
        Self::Grip,
        Self::Sustained,
        Self::Pins,
    ];

    /// Its value for a rider, bike and ground at a draw: efficiencies and shares as shares, powers in W, dismount and remount
    /// together in s, the pins in mm, the others as factors.
    ///
    /// # Example
    /// ```
    /// use gear_math::{Bike, Circumference, Drivetrain, LapSetup, Power, Rider};
    /// use gear_math::course::{Doubt, Draws, ReserveSetup};
    /// use gear_math::rider::{Air, BikeMass, BodyMass, CriticalPower, EffortAccount, KitMass, PeakPower, WorkReserve};
    /// let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
    /// let drivetrain = Drivetrain { chainset: "40".parse()?, cassette: "11-13-15-17-20-23-27-32".parse()? };
    /// let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
    /// let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, PeakPower::of_body(rider.body))?;
    /// let given = ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort));
    /// let unmoved = Draws::as_wide(0.0).draw(0);
    /// assert!((Doubt::Sustained.value(&unmoved, &given) - 230.0).abs() < 1e-9);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn value(self, draw: &Draw, given: &ReserveSetup) -> f64 {
        let ReserveSetup { lap, account, ground, .. } = draw.setup(given);
        match self {
            Self::Efficiency => lap.rider.efficiency.share(),
            Self::Rolling => ground.rolling,
            Self::FootGround => ground.foot,
            Self::Load => lap.bike.load.value(),
            Self::FootCost => lap.rider.foot_cost.value(),
            Self::Drivetrain => lap.bike.efficiency.share(),
            Self::Peak => account.effort.peak().watts(),
            Self::CadenceCost => account.cadence_cost.value(),
            Self::Repaid => account.repaid.value(),
            Self::Lasting => account.lasting.share(),
            Self::Mounting => lap.mounting.off.s() + lap.mounting.on.s(),
            Self::Grip => ground.grip,
            Self::Sustained => account.effort.sustainable().watts(),
            Self::Pins => draw.pins.mm(),
        }
    }
}
