//! What moves the crossover most.

use crate::order::ascending;
use crate::quantity::Cadence;
use crate::rider::air::Air;
use crate::rider::crossover::Flip;
use crate::rider::doubt::{EFFICIENCY, GROUND, LOAD, PERSON};
use crate::rider::ground::Ground;
use crate::rider::limits::{Reason, RidingLimits};
use crate::rider::quantity::{
    BalanceSpeed, BikeMass, Climb, DrivetrainEfficiency, FootCostFactor, FootFactor, Friction,
    GrossEfficiency, LoadFactor, PeakPower, Power, RollingCoefficient, Slope, SlopeShare, StandingMetabolism,
};
use crate::rider::ride_or_run::RideOrRun;
use crate::rider::rider::{Bike, Rider};

/// How far the lowest cadence a rider still turns over may be off, rpm. Estimate: few riders ever measured it.
pub(crate) const CADENCE_RPM: f64 = 5.0;

// How far the inputs may be off that the band leaves aside, in the units of their quantities; friction as factors.

/// To 1.2 W/kg at rest, and to the 1.67 W/kg that Abe et al. (2015, *PLoS ONE* 10:e0138154) took off.
const STANDING: [f64; 2] = [-0.3, 0.2];
/// From a chain in mud to the 0.976 of Martin et al. (1998, *J Appl Biomech* 14:276–291); the mud is an estimate, because
/// nobody measured it.
const DRIVETRAIN: [f64; 2] = [-0.04, 0.016];
/// Estimate, because it is about the mud that a bike picks up.
const BIKE: [f64; 2] = [-1.0, 1.0];
const CADENCE: [f64; 2] = [-CADENCE_RPM, CADENCE_RPM];
/// To the skilled rider on smooth ground and to rutted mud, see [`BalanceSpeed::USUAL`]. Estimate, because only rollers
/// were measured.
const BALANCE: [f64; 2] = [-0.2, 0.6];
/// Estimate, because published friction is that of car tyres: wet grass is given as 0.2, earth as 0.15 to 0.6.
const FRICTION: [f64; 2] = [0.7, 1.4];

/// An input that is not known exactly.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Uncertain {
    /// Gross efficiency on the bike, ±0.02.
    GrossEfficiency,
    /// Rolling coefficient, ±30 %, and more where the tyres' width counts.
    Rolling,
    /// What carrying the bike costs, from a load at the trunk to one in the hands.
    Load,
    /// What the ground adds on foot, ±50 %.
    FootGround,
    /// How that grows with the slope, from not at all to in full.
    SlopeShare,
    /// The person's cost on foot, ±8 %.
    FootCost,
    /// Standing metabolism, 1.2 to 1.7 W/kg for 1.5.
    Standing,
    /// Drivetrain efficiency, 0.92 to 0.976 for 0.96.
    Drivetrain,
    /// Power, ±10 % where it is known and ±25 % where it is estimated, the peak power with it.
    Power,
    /// Mass of the bike, ±1 kg.
    BikeMass,
    /// Lowest cadence, ±5 rpm.
    LowestCadence,
    /// Slowest speed in balance, 1.0 to 1.8 m/s for 1.2.
    Balance,
    /// Friction, −30 % and +40 %.
    Friction,
}

/// Which crossover is watched.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Watched {
    /// Where going on foot becomes as fast for the same energy.
    Energy,
    /// The first of everything that ends riding.
    Flip,
    /// The first limit that ends riding, energy left aside.
    Limits,
}

impl Watched {
    /// What stands behind an end of riding: energy, or the limits.
    #[must_use]
    pub fn behind(flip: Option<&Flip>) -> Self {
        if flip.is_some_and(|flip| flip.reason == Reason::Energy) { Self::Energy } else { Self::Limits }
    }
}

/// One bar of a tornado chart.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TornadoBar {
    /// The input that is moved, alone.
    pub input: Uncertain,
    /// Its low and high value, in the unit of its quantity.
    pub values: (f64, f64),
    /// The crossover at the low value; `None` for "not up to 45 %".
    pub at_low: Option<Slope>,
    /// The crossover at the high value.
    pub at_high: Option<Slope>,
    /// Points of gradient between the two, in per cent; one that is not met counts as 45 %.
    pub swing_points: f64,
}

/// Everything the answer depends on.
#[derive(Debug, Clone, Copy)]
struct Inputs {
    rider: Rider,
    bike: Bike,
    air: Air,
    limits: RidingLimits,
    ground: Ground,
    power_off: f64,
}

impl Uncertain {
    /// Every input, as they are listed here.
    pub const ALL: [Self; 13] = [
        Self::GrossEfficiency,
        Self::Rolling,
        Self::Load,
        Self::FootGround,
        Self::SlopeShare,
        Self::FootCost,
        Self::Standing,
        Self::Drivetrain,
        Self::Power,
        Self::BikeMass,
        Self::LowestCadence,
        Self::Balance,
        Self::Friction,
    ];
}

impl RideOrRun {
    /// Moves each uncertain input alone, down and up, and reports what the watched crossover does; the widest
    /// swing first. Ranges as in [`Uncertain`], kept inside the limits of each quantity; inputs that do not count here
    /// are left out.
    #[must_use]
    pub fn tornado(&self, ground: &Ground, watched: Watched) -> Vec<TornadoBar> {
        let mut bars: Vec<TornadoBar> =
            Uncertain::ALL.iter().filter_map(|&input| self.bar(input, ground, watched)).collect();
        ascending(&mut bars, |bar| -bar.swing_points);
        bars
    }

    fn bar(&self, input: Uncertain, ground: &Ground, watched: Watched) -> Option<TornadoBar> {
        let Self { rider, bike, air, limits, power_off, .. } = *self;
        let given = Inputs { rider, bike, air, limits, ground: *ground, power_off };
        let ((low, low_value), (high, high_value)) = (given.moved(input, 0)?, given.moved(input, 1)?);
        let (at_low, at_high) = (low.crossover(watched), high.crossover(watched));
        let points = |slope: Option<Slope>| slope.map_or(Climb::LIMITS.max, Slope::percent);
        let swing_points = (points(at_high) - points(at_low)).abs();
        Some(TornadoBar { input, values: (low_value, high_value), at_low, at_high, swing_points })
    }
}

impl Inputs {
    /// One input moved to its low (0) or high (1) side, with its new value; `None` when it does not count.
    fn moved(mut self, input: Uncertain, side: usize) -> Option<(Self, f64)> {
        let value = match input {
            Uncertain::GrossEfficiency => self.move_efficiency(side),
            Uncertain::Rolling => self.move_rolling(side),
            Uncertain::Load => self.move_load(side),
            Uncertain::FootGround => self.move_foot_ground(side),
            Uncertain::SlopeShare => self.move_slope_share(side),
            Uncertain::FootCost => self.move_foot_cost(side),
            Uncertain::Standing => self.move_standing(side),
            Uncertain::Drivetrain => self.move_drivetrain(side),
            Uncertain::Power => self.move_power(side),
            Uncertain::BikeMass => self.move_bike_mass(side),
            Uncertain::LowestCadence => self.move_cadence(side),
            Uncertain::Balance => self.move_balance(side)?,
            Uncertain::Friction => self.move_friction(side)?,
        };
        Some((self, value))
    }

    fn move_efficiency(&mut self, side: usize) -> f64 {
        change(&mut self.rider.efficiency, |given| {
            GrossEfficiency::nearest(given.share() + [-EFFICIENCY, EFFICIENCY][side])
        })
        .share()
    }

    fn move_rolling(&mut self, side: usize) -> f64 {
        let moved = self.ground.rolling_moved([-1.0, 1.0][side]);
        change(&mut self.ground.rolling, |_| RollingCoefficient::nearest(moved)).value()
    }

    fn move_load(&mut self, side: usize) -> f64 {
        change(&mut self.bike.load, |given| LoadFactor::nearest(given.value() + LOAD[side])).value()
    }

    fn move_foot_ground(&mut self, side: usize) -> f64 {
        change(&mut self.ground.foot, |given| FootFactor::nearest(1.0 + (given.value() - 1.0) * GROUND[side]))
            .value()
    }

    fn move_slope_share(&mut self, side: usize) -> f64 {
        change(&mut self.ground.slope_share, |_| [SlopeShare::FIXED, SlopeShare::IN_FULL][side]).value()
    }

    fn move_foot_cost(&mut self, side: usize) -> f64 {
        change(&mut self.rider.foot_cost, |given| FootCostFactor::nearest(given.value() * PERSON[side]))
            .value()
    }

    fn move_standing(&mut self, side: usize) -> f64 {
        change(&mut self.rider.standing, |given| {
            StandingMetabolism::nearest(given.w_per_kg() + STANDING[side])
        })
        .w_per_kg()
    }

    fn move_drivetrain(&mut self, side: usize) -> f64 {
        change(&mut self.bike.efficiency, |given| {
            DrivetrainEfficiency::nearest(given.share() + DRIVETRAIN[side])
        })
        .share()
    }

    /// A rider of other power has other legs; the same legs might give the higher power at no cadence.
    fn move_power(&mut self, side: usize) -> f64 {
        let by = 1.0 + [-self.power_off, self.power_off][side];
        if let Some(legs) = &mut self.limits.force {
            legs.peak = PeakPower::nearest(legs.peak.watts() * by);
        }
        change(&mut self.rider.power, |given| Power::nearest(given.watts() * by)).watts()
    }

    fn move_bike_mass(&mut self, side: usize) -> f64 {
        change(&mut self.bike.mass, |given| BikeMass::nearest(given.kg() + BIKE[side])).kg()
    }

    fn move_cadence(&mut self, side: usize) -> f64 {
        change(&mut self.rider.lowest_cadence, |given| {
            Cadence::new(given.rpm() + CADENCE[side]).unwrap_or(given)
        })
        .rpm()
    }

    fn move_balance(&mut self, side: usize) -> Option<f64> {
        let slowest = self.limits.balance.as_mut()?;
        Some(change(slowest, |given| BalanceSpeed::nearest(given.m_per_s() + BALANCE[side])).m_per_s())
    }

    fn move_friction(&mut self, side: usize) -> Option<f64> {
        self.limits.grip?;
        Some(change(&mut self.ground.friction, |given| Friction::nearest(given.mu() * FRICTION[side])).mu())
    }

    fn crossover(self, watched: Watched) -> Option<Slope> {
        let question = RideOrRun::assembled(self.rider, self.bike, self.air, self.limits);
        match watched {
            Watched::Energy => question.energy_gradient(&self.ground),
            Watched::Limits => question.first_limit(&self.ground),
            Watched::Flip => question.flip(&self.ground).map(|flip| flip.gradient),
        }
    }
}

/// Puts a new value into its slot, and gives it back.
fn change<T: Copy>(slot: &mut T, to: impl Fn(T) -> T) -> T {
    *slot = to(*slot);
    *slot
}
