//! Riding against going on foot on the same energy, with the uncertainty of both.

use crate::physics::GRAVITY;
use crate::rider::air::Air;
use crate::rider::burden::{Underfoot, Way, Ways};
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

/// What decides the speed on foot, besides the slope.
#[derive(Debug, Clone, Copy)]
struct OnFoot {
    /// Metabolic power above standing, in W.
    energy: f64,
    /// What goes along.
    burden: Ways<Way>,
    underfoot: Underfoot,
}

/// Rider, bike and air reduced to what riding and going on foot depend on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Energy {
    motion: FootMotion,
    /// Metabolic power above standing, in W: as given, with lower and with higher efficiency.
    energy: f64,
    energy_if_less_efficient: f64,
    energy_if_more_efficient: f64,
    /// What goes along on foot: as given, with lower and with higher efficiency, with the bike a lighter and a heavier load.
    burden: Ways<Way>,
    burden_if_less_efficient: Ways<Way>,
    burden_if_more_efficient: Ways<Way>,
    burden_if_light: Ways<Way>,
    burden_if_heavy: Ways<Way>,
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
        let (efficiency, load) = (rider.efficiency.share(), bike.load.value());
        let burden_at = |load: f64, efficiency: f64| Ways::new(rider, bike, load, efficiency);
        Self {
            motion: FootMotion {
                drag: air.foot_drag.j_s2_per_kg_m3() * rider.body.kg(),
                headwind: air.headwind.m_per_s(),
                gaits: rider.gaits,
            },
            energy: energy_at(efficiency),
            energy_if_less_efficient: energy_at(efficiency - EFFICIENCY),
            energy_if_more_efficient: energy_at(efficiency + EFFICIENCY),
            burden: burden_at(load, efficiency),
            burden_if_less_efficient: burden_at(load, efficiency - EFFICIENCY),
            burden_if_more_efficient: burden_at(load, efficiency + EFFICIENCY),
            burden_if_light: burden_at(load + LOAD[0], efficiency),
            burden_if_heavy: burden_at(load + LOAD[1], efficiency),
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

    fn foot(&self, on_foot: OnFoot, incline: &Incline) -> (f64, Gait) {
        let speed = |way: &Way| {
            let (run, walk) = way.costs(incline, &on_foot.underfoot);
            self.motion.speed(on_foot.energy, run, walk, incline)
        };
        on_foot.burden.map(speed).best(|a, b| a.0 > b.0)
    }

    fn on_foot(&self, ground: &Ground) -> OnFoot {
        OnFoot { energy: self.energy, burden: self.burden, underfoot: ground.into() }
    }

    /// Speed of running, also where walking would be faster.
    pub(super) fn run(&self, ground: &Ground, incline: &Incline) -> f64 {
        let run = |way: &Way| self.motion.at_cost(self.energy, way.costs(incline, &ground.into()).0);
        self.burden.map(run).best(|a, b| a > b)
    }

    pub(super) fn speeds(&self, ground: &Ground, incline: &Incline) -> Speeds {
        let (foot, gait) = self.foot(self.on_foot(ground), incline);
        Speeds { ride: self.ride(ground.rolling.value(), incline), foot, gait }
    }

    /// Moves each uncertain input alone and spreads the ratio by what comes of it.
    pub(super) fn band(&self, speeds: &Speeds, ground: &Ground, incline: &Incline) -> Band {
        let given = self.on_foot(ground);
        let extra = |factor: f64| {
            let underfoot = Underfoot { extra: given.underfoot.extra * factor, ..given.underfoot };
            OnFoot { underfoot, ..given }
        };
        let [less, more] = [
            (self.energy_if_less_efficient, self.burden_if_less_efficient),
            (self.energy_if_more_efficient, self.burden_if_more_efficient),
        ]
        .map(|(energy, burden)| OnFoot { energy, burden, ..given });
        let on_foot = [
            less,
            more,
            OnFoot { burden: self.burden_if_light, ..given },
            OnFoot { burden: self.burden_if_heavy, ..given },
            OnFoot { burden: self.burden.times(PERSON[0]), ..given },
            OnFoot { burden: self.burden.times(PERSON[1]), ..given },
            extra(GROUND[0]),
            extra(GROUND[1]),
        ];
        let foot = on_foot.map(|moved| (self.foot(moved, incline).0 / speeds.foot).ln());
        let rolling = [-1.0, 1.0].map(|edge| {
            let rolling = ground.rolling_moved(edge);
            let moved = OnFoot { underfoot: Underfoot { rolling, ..given.underfoot }, ..given };
            let foot = if self.burden.is_pushed() { self.foot(moved, incline).0 / speeds.foot } else { 1.0 };
            (foot * speeds.ride / self.ride(rolling, incline)).ln()
        });
        Band::spread(speeds.ratio(), foot.into_iter().chain(rolling))
    }
}
