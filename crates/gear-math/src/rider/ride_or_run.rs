//! The question itself: is it faster to ride or to go on foot?

use crate::quantity::Speed;
use crate::rider::air::Air;
use crate::rider::energy::{Energy, Speeds};
use crate::rider::gearing::Gearing;
use crate::rider::ground::Ground;
use crate::rider::limits::{LimitsHeld, RidingLimits};
use crate::rider::on_foot::Incline;
use crate::rider::quantity::{Climb, Slope};
use crate::rider::resistance::Resistance;
use crate::rider::rider::{Bike, Rider};
use crate::rider::traction::Stance;
use crate::rider::verdict::{Answer, Verdict};
use core::fmt;

/// Net metabolic power, in W per kg of body, below which nobody gets up a slope in any useful time. Estimate.
const LEAST_ENERGY_W_PER_KG: f64 = 0.3;

/// A rider, a bike and the air, ready to be asked on any ground and slope.
///
/// # Example
/// ```
/// use gear_math::{Bike, Circumference, Drivetrain, Power, RideOrRun, Rider, Surface};
/// use gear_math::rider::{Air, BikeMass, BodyMass, Climb, KitMass, RidingLimits, Verdict};
/// let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
/// let drivetrain = Drivetrain { chainset: "40".parse()?, cassette: "11-13-15-17-20-23-27-32".parse()? };
/// let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
/// let question = RideOrRun::new(rider, bike, Air::STILL, RidingLimits::all(&rider))?;
///
/// let ground = Surface::FirmGrass.ground();
/// assert_eq!(question.answer(&ground, Climb::new(5.0)?).verdict, Verdict::Ride);
/// assert_eq!(question.answer(&ground, Climb::new(20.0)?).verdict, Verdict::FootForced);
/// let flip = question.crossover(&ground).flip.expect("steep ground stops everyone");
/// assert!(flip.gradient.percent() > 9.0 && flip.gradient.percent() < 13.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct RideOrRun {
    pub(super) rider: Rider,
    pub(super) bike: Bike,
    pub(super) air: Air,
    pub(super) limits: RidingLimits,
    pub(super) energy: Energy,
    pub(super) gearing: Gearing,
    /// How far the power may be off, as a share of it.
    pub(super) power_off: f64,
}

/// How far a power that a rider knows may be off on the day, as a share of it. Estimate.
pub(super) const POWER_OFF: f64 = 0.1;

impl RideOrRun {
    /// Takes the rider, the bike, the air and the limits that count.
    ///
    /// # Errors
    /// [`PowerBelowStanding`] when the power leaves nothing to move on foot with, even for a rider whose gross
    /// efficiency is off by as much as the band allows.
    pub fn new(rider: Rider, bike: Bike, air: Air, limits: RidingLimits) -> Result<Self, PowerBelowStanding> {
        let question = Self::assembled(rider, bike, air, limits);
        let least = LEAST_ENERGY_W_PER_KG * rider.body.kg();
        if question.energy.least_energy() >= least { Ok(question) } else { Err(PowerBelowStanding) }
    }

    pub(super) fn assembled(rider: Rider, bike: Bike, air: Air, limits: RidingLimits) -> Self {
        let energy = Energy::new(&rider, &bike, &air);
        let gearing = Gearing::new(&rider, &bike, limits.force.as_ref());
        Self { rider, bike, air, limits, energy, gearing, power_off: POWER_OFF }
    }

    /// The same with a power that may be off by this share: [`Level::OFF`](crate::rider::effort::Level::OFF) where it is estimated. It
    /// widens the [tornado](Self::tornado), nothing else.
    #[must_use]
    pub fn with_power_off(self, share: f64) -> Self {
        Self { power_off: share, ..self }
    }

    /// The answer on one slope.
    #[must_use]
    pub fn answer(&self, ground: &Ground, gradient: Climb) -> Answer {
        let incline = Incline::new(gradient);
        let speeds = self.energy.speeds(ground, &incline);
        let ratio = self.energy.band(&speeds, ground, &incline);
        let riding = self.gearing.riding(speeds.ride);
        let limits = self.limits_held(&speeds, ground, &incline);
        let beyond =
            |limit: Option<Slope>| limit.is_some_and(|l| gradient.rise_over_run() > l.rise_over_run());
        let jerky = self.limits.grip.map(Stance::jerky);
        Answer {
            gradient,
            ride: Speed::new(speeds.ride),
            riding,
            foot: Speed::new(speeds.foot),
            gait: speeds.gait,
            run: Speed::new(self.energy.run(ground, &incline)),
            ratio,
            limits,
            slips_in_jerks: beyond(jerky.and_then(|stance| stance.slip(ground.friction, ground.rolling))),
            front_lifts: beyond(jerky.map(|stance| stance.lift(ground.rolling))),
            verdict: Verdict::of(ratio, limits, &riding, speeds.ride),
        }
    }

    /// The answers on many slopes, for a table or a curve.
    #[must_use]
    pub fn answers(&self, ground: &Ground, gradients: &[Climb]) -> Vec<Answer> {
        gradients.iter().map(|&gradient| self.answer(ground, gradient)).collect()
    }

    /// The faster way on foot, without the rest of the answer.
    #[must_use]
    pub fn foot_speed(&self, ground: &Ground, gradient: Climb) -> Speed {
        Speed::new(self.energy.speeds(ground, &Incline::new(gradient)).foot)
    }

    /// The forces on a slope of this ground.
    #[must_use]
    pub fn resistance(&self, ground: &Ground, gradient: Climb) -> Resistance {
        self.energy.resistance(ground.rolling.value(), &Incline::new(gradient))
    }

    pub(super) fn limits_held(&self, speeds: &Speeds, ground: &Ground, incline: &Incline) -> LimitsHeld {
        let slip = self.limits.grip.and_then(|stance| stance.slip(ground.friction, ground.rolling));
        LimitsHeld {
            gear: speeds.ride < self.gearing.speed_without_cadence(),
            force: speeds.ride < self.gearing.speed_without_strength(),
            balance: self.limits.balance.is_some_and(|slowest| speeds.ride < slowest.m_per_s()),
            grip: slip.is_some_and(|slip| incline.gradient.rise_over_run() > slip.rise_over_run()),
        }
    }
}

/// The power leaves nothing to move on foot with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PowerBelowStanding;

impl fmt::Display for PowerBelowStanding {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("this power is hardly more than standing takes: type a higher power for this body mass")
    }
}

impl core::error::Error for PowerBelowStanding {}
