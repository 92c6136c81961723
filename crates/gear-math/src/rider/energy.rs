//! Riding against going on foot on the same energy, with the uncertainty of both.

use crate::physics::GRAVITY;
use crate::rider::air::Air;
use crate::rider::doubt::{EFFICIENCY, GROUND, LOAD, PERSON, ROLLING};
use crate::rider::ground::Ground;
use crate::rider::on_foot::FootMotion;
use crate::rider::on_foot::{Gait, Incline};
use crate::rider::quantity::MetabolicPower;
use crate::rider::resistance::Resistance;
use crate::rider::rider::{Bike, Rider};

/// A ratio of speeds, foot over ride, with its likely edges.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    /// Edge in favour of riding.
    pub low: f64,
    /// Best estimate.
    pub reference: f64,
    /// Edge in favour of going on foot.
    pub high: f64,
}

impl Band {
    /// How far gross efficiency may be off, in points up and down.
    pub const EFFICIENCY: f64 = EFFICIENCY;
    /// How far rolling resistance may be off, as factors.
    pub const ROLLING: [f64; 2] = ROLLING;
    /// How far the factor of the carried load may be off, in points.
    pub const LOAD: [f64; 2] = LOAD;
    /// How far what the ground adds on foot may be off, as factors.
    pub const GROUND: [f64; 2] = GROUND;
    /// How far one person's cost on foot may be off, as factors.
    pub const PERSON: [f64; 2] = PERSON;

    /// Spreads a ratio by the logarithmic changes of its inputs: those in one direction are added in quadrature.
    fn spread(reference: f64, changes: impl IntoIterator<Item = f64>) -> Self {
        let (down, up) = changes.into_iter().fold((0.0, 0.0), |(down, up), change: f64| {
            let square = change * change;
            if change > 0.0 { (down, up + square) } else { (down + square, up) }
        });
        let widened = |square: f64| square.sqrt().exp();
        Self { low: reference / widened(down), reference, high: reference * widened(up) }
    }

    /// The same ratio to a speed that is `factor` times lower.
    pub(super) fn times(self, factor: f64) -> Self {
        Self { low: self.low * factor, reference: self.reference * factor, high: self.high * factor }
    }
}

/// What decides the speed on foot, besides slope and slope share.
#[derive(Debug, Clone, Copy)]
struct OnFoot {
    /// Metabolic power above standing, in W.
    energy: f64,
    /// Mass that costs, in kg, times the person's factor.
    burden: f64,
    /// Foot factor less one.
    extra: f64,
}

/// Rider, bike and air reduced to what riding and going on foot depend on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Energy {
    motion: FootMotion,
    /// Metabolic power above standing, in W: as given, with lower and with higher efficiency.
    energy: f64,
    energy_if_less_efficient: f64,
    energy_if_more_efficient: f64,
    /// Mass that costs on foot, in kg: as given, with the bike a lighter and a heavier burden.
    burden: f64,
    burden_if_light: f64,
    burden_if_heavy: f64,
    /// Power at the rear wheel, in W.
    wheel_power: f64,
    weight: f64,
    air: f64,
    efficiency: f64,
}

/// Speeds for the same energy, in m/s.
#[derive(Debug, Clone, Copy)]
pub(super) struct Speeds {
    pub(super) ride: f64,
    pub(super) foot: f64,
    pub(super) gait: Gait,
}

impl Speeds {
    pub(super) fn ratio(&self) -> f64 {
        self.foot / self.ride
    }
}

impl Energy {
    pub(super) fn new(rider: &Rider, bike: &Bike, air: &Air) -> Self {
        let energy_at = |efficiency: f64| {
            MetabolicPower::new(rider.power.watts() / efficiency)
                .above_standing(rider.body, rider.standing)
                .watts()
        };
        let burden_at = |load: f64| {
            rider.foot_cost.value() * (rider.body.kg() + rider.kit.kg() + load.max(0.0) * bike.mass.kg())
        };
        let (efficiency, load) = (rider.efficiency.share(), bike.load.value());
        Self {
            motion: FootMotion {
                drag: air.foot_drag.j_s2_per_kg_m3() * rider.body.kg(),
                headwind: air.headwind.m_per_s(),
                gaits: rider.gaits,
            },
            energy: energy_at(efficiency),
            energy_if_less_efficient: energy_at(efficiency - EFFICIENCY),
            energy_if_more_efficient: energy_at(efficiency + EFFICIENCY),
            burden: burden_at(load),
            burden_if_light: burden_at(load + LOAD[0]),
            burden_if_heavy: burden_at(load + LOAD[1]),
            wheel_power: bike.efficiency.share() * rider.power.watts(),
            weight: rider.with(bike).kg() * GRAVITY,
            air: 0.5 * air.density.kg_per_m3() * air.drag_area.m2(),
            efficiency: bike.efficiency.share(),
        }
    }

    /// Metabolic power above standing that would be left if the rider were as efficient as the band allows, in W.
    pub(super) fn least_energy(&self) -> f64 {
        self.energy_if_more_efficient
    }

    pub(super) fn resistance(&self, rolling: f64, incline: &Incline) -> Resistance {
        Resistance {
            gravity: self.weight * incline.sine,
            rolling: rolling * self.weight * incline.cosine,
            bearing: 0.0,
            bearing_growth: 0.0,
            air: self.air,
            headwind: self.motion.headwind,
            efficiency: self.efficiency,
        }
    }

    pub(super) fn ride(&self, rolling: f64, incline: &Incline) -> f64 {
        self.resistance(rolling, incline).speed_at_wheel_power(self.wheel_power)
    }

    fn foot(&self, on_foot: OnFoot, share: f64, incline: &Incline) -> (f64, Gait) {
        let (run, walk) = incline.costs(on_foot.extra, share);
        self.motion.speed(on_foot.energy, run * on_foot.burden, walk * on_foot.burden, incline)
    }

    fn on_foot(&self, ground: &Ground) -> OnFoot {
        OnFoot { energy: self.energy, burden: self.burden, extra: ground.foot.value() - 1.0 }
    }

    /// Speed of running, also where walking would be faster.
    pub(super) fn run(&self, ground: &Ground, incline: &Incline) -> f64 {
        let (run, _) = incline.costs(ground.foot.value() - 1.0, ground.slope_share.value());
        self.motion.at_cost(self.energy, run * self.burden)
    }

    pub(super) fn speeds(&self, ground: &Ground, incline: &Incline) -> Speeds {
        let (foot, gait) = self.foot(self.on_foot(ground), ground.slope_share.value(), incline);
        Speeds { ride: self.ride(ground.rolling.value(), incline), foot, gait }
    }

    /// Moves each uncertain input alone and spreads the ratio by what comes of it.
    pub(super) fn band(&self, speeds: &Speeds, ground: &Ground, incline: &Incline) -> Band {
        let given = self.on_foot(ground);
        let share = ground.slope_share.value();
        let on_foot = [
            OnFoot { energy: self.energy_if_less_efficient, ..given },
            OnFoot { energy: self.energy_if_more_efficient, ..given },
            OnFoot { burden: self.burden_if_light, ..given },
            OnFoot { burden: self.burden_if_heavy, ..given },
            OnFoot { burden: self.burden * PERSON[0], ..given },
            OnFoot { burden: self.burden * PERSON[1], ..given },
            OnFoot { extra: given.extra * GROUND[0], ..given },
            OnFoot { extra: given.extra * GROUND[1], ..given },
        ];
        let foot = on_foot.map(|moved| (self.foot(moved, share, incline).0 / speeds.foot).ln());
        let ride =
            [-1.0, 1.0].map(|edge| (speeds.ride / self.ride(ground.rolling_moved(edge), incline)).ln());
        Band::spread(speeds.ratio(), foot.into_iter().chain(ride))
    }
}
