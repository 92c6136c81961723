//! Everything doubtful about a lap, once.

use crate::chain::PinFriction;
use crate::course::lap::costs::Mounting;
use crate::course::lap::setup::LapSetup;
use crate::course::quantity::MountTime;
use crate::course::reserve::setup::{GroundFactors, ReserveSetup};
use crate::rider::{
    Bike, CadenceCost, CriticalPower, DrivetrainEfficiency, EffortAccount, FootCostFactor, GrossEfficiency,
    LoadFactor, PeakPower, Power, RepaidShare, Rider, RollingCoefficient, StrengthShare,
};
use crate::rider::{EFFICIENCY, GROUND, LOAD, PERSON};

/// How many things are doubtful.
pub(super) const DOUBTS: usize = 14;

/// From where to where each is moved, in the order of the fields of [`Draw`]: efficiencies by what was measured, the others
/// estimates.
const RANGES: [[f64; 2]; DOUBTS] = [
    [-EFFICIENCY, EFFICIENCY],
    [1.0 - RollingCoefficient::OFF_BY, 1.0 + RollingCoefficient::OFF_BY],
    GROUND,
    LOAD,
    PERSON,
    [-0.02, 0.016],
    [11.0 / PeakPower::PER_KG, 18.0 / PeakPower::PER_KG],
    [0.5, 2.5],
    [-0.2, 0.2],
    [-0.1, 0.1],
    [1.0 / 3.0, 2.0],
    [0.8, 1.2],
    [0.97, 1.03],
    [0.1, 0.3],
];

/// One set of all that is doubtful about a lap, moved together: the same for every bike, because it is the same rider on the same
/// ground.
///
/// Around the model's own values the ranges are gross efficiency 0.21 to 0.25, rolling 0.7 to 1.3 times, what the ground adds on
/// foot 0.5 to 1.5 times, carried load 1.0 to 1.5, cost on foot 0.92 to 1.08 times, drivetrain 0.94 to 0.976, peak power 11 to
/// 18 W/kg, cost of cadence 0.2 to 1.0, repaid share 0.3 to 0.7, lasting share of strength 0.4 to 0.6, getting off and on 1 to
/// 6 s, grip 0.8 to 1.2 times, sustainable power 0.97 to 1.03 times, and 0.1 to 0.3 mm of friction in the chain's pins. Where a
/// rider has a value of their own, the range lies about theirs, as wide in points or as a multiple: knowing one's peak power, say,
/// is not taken for surer than the estimate. That is a choice of this model.
///
/// # Example
/// ```
/// use gear_math::{Bike, Circumference, Drivetrain, LapSetup, Power, Rider};
/// use gear_math::course::{Draws, ReserveSetup};
/// use gear_math::rider::{Air, BikeMass, BodyMass, CriticalPower, EffortAccount, KitMass, PeakPower, WorkReserve};
/// let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
/// let drivetrain = Drivetrain { chainset: "40".parse()?, cassette: "11-13-15-17-20-23-27-32".parse()? };
/// let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
/// let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, PeakPower::of_body(rider.body))?;
/// let given = ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort));
/// for draw in Draws::usual().all() {
///     let moved = draw.setup(&given);
///     assert!((0.21..=0.25).contains(&moved.lap.rider.efficiency.share()));
///     assert_eq!(moved.lap.bike.drivetrain, drivetrain);
/// }
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Draw {
    /// Added to gross efficiency.
    pub efficiency: f64,
    /// Factor on the rolling resistance of every ground.
    pub rolling: f64,
    /// Factor on what every ground adds on foot.
    pub foot: f64,
    /// Added to the carried load factor.
    pub load: f64,
    /// Factor on this person's cost on foot.
    pub person: f64,
    /// Added to drivetrain efficiency.
    pub drivetrain: f64,
    /// Factor on peak power.
    pub peak: f64,
    /// Factor on the cost of cadence.
    pub cadence_cost: f64,
    /// Added to the repaid share.
    pub repaid: f64,
    /// Added to the share of strength that lasts.
    pub lasting: f64,
    /// Factor on the time of getting off and on.
    pub mounting: f64,
    /// Factor on grip.
    pub grip: f64,
    /// Factor on sustainable power.
    pub sustained: f64,
    /// Friction in the chain's pins, by which gears differ; in no setup, see [`LapDraw`](crate::course::LapDraw).
    pub pins: PinFriction,
}

impl Draw {
    /// Every range at a place in it, from 0 to 1, its width multiplied about its middle.
    pub(super) fn at(places: &[f64; DOUBTS], width: f64) -> Self {
        let within = |doubt: usize| {
            let [low, high] = RANGES[doubt];
            low.midpoint(high) + width * (places[doubt] - 0.5) * (high - low)
        };
        let [
            efficiency,
            rolling,
            foot,
            load,
            person,
            drivetrain,
            peak,
            cadence_cost,
            repaid,
            lasting,
            mounting,
            grip,
            sustained,
            pins,
        ] = core::array::from_fn(within);
        let pins = PinFriction::nearest(pins);
        Self {
            efficiency,
            rolling,
            foot,
            load,
            person,
            drivetrain,
            peak,
            cadence_cost,
            repaid,
            lasting,
            mounting,
            grip,
            sustained,
            pins,
        }
    }

    /// A rider, bike and ground moved by this much, no further than each may be.
    #[must_use]
    pub fn setup(&self, given: &ReserveSetup) -> ReserveSetup {
        ReserveSetup {
            lap: self.lap(&given.lap),
            account: self.account(&given.account),
            ground: self.ground(&given.ground),
            ..*given
        }
    }

    fn lap(&self, given: &LapSetup) -> LapSetup {
        let Mounting { off, on, braking } = given.mounting;
        let moved = |time: MountTime| MountTime::nearest(time.s() * self.mounting);
        LapSetup {
            rider: self.rider(&given.rider),
            bike: self.bike(&given.bike),
            mounting: Mounting { off: moved(off), on: moved(on), braking },
            ..*given
        }
    }

    fn rider(&self, given: &Rider) -> Rider {
        Rider {
            efficiency: GrossEfficiency::nearest(given.efficiency.share() + self.efficiency),
            foot_cost: FootCostFactor::nearest(given.foot_cost.value() * self.person),
            ..*given
        }
    }

    fn bike(&self, given: &Bike) -> Bike {
        Bike {
            efficiency: DrivetrainEfficiency::nearest(given.efficiency.share() + self.drivetrain),
            load: LoadFactor::nearest(given.load.value() + self.load),
            ..*given
        }
    }

    fn account(&self, given: &EffortAccount) -> EffortAccount {
        EffortAccount {
            effort: self.effort(&given.effort),
            lasting: StrengthShare::nearest(given.lasting.share() + self.lasting),
            repaid: RepaidShare::nearest(given.repaid.value() + self.repaid),
            cadence_cost: CadenceCost::nearest(given.cadence_cost.value() * self.cadence_cost),
            ..*given
        }
    }

    /// As given where the peak would not be above what is sustained.
    fn effort(&self, given: &CriticalPower) -> CriticalPower {
        let sustained = Power::nearest(given.sustainable().watts() * self.sustained);
        let peak = PeakPower::nearest(given.peak().watts() * self.peak);
        CriticalPower::new(sustained, given.reserve(), peak).unwrap_or(*given)
    }

    fn ground(&self, given: &GroundFactors) -> GroundFactors {
        GroundFactors {
            rolling: given.rolling * self.rolling,
            foot: given.foot * self.foot,
            grip: given.grip * self.grip,
        }
    }
}
