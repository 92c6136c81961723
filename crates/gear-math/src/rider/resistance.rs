//! The forces of one gradient, ready for many speeds.

use crate::quantity::{Development, Speed};
use crate::rider::quantity::{EffectiveMass, EffortTime, Power, PowerDemand, Torque};
use crate::solve::{Near, cubic_speed, rising_root};
use core::f64::consts::TAU;

/// Faster than any descent of a course, in m/s; a speed that nothing bounds is reported as this. Estimate, because 80 kg with
/// 0.4 m² of drag area fall no faster than 37 m/s down a slope of 45 %.
pub(super) const FASTEST: f64 = 40.0;

/// The forces that hold a rider back on one gradient; made by [`RoadLoad::resistance`](crate::rider::road_load::RoadLoad::resistance).
///
/// In newtons and metres per second throughout.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Resistance {
    pub(crate) gravity: f64,
    pub(crate) rolling: f64,
    pub(crate) bearing: f64,
    pub(crate) bearing_growth: f64,
    pub(crate) air: f64,
    pub(crate) headwind: f64,
    pub(crate) efficiency: f64,
}

impl Resistance {
    /// The force at a speed, in newtons; negative where the hill or the wind pushes.
    #[must_use]
    pub fn force_n(&self, speed: Speed) -> f64 {
        self.force(speed.m_per_s())
    }

    /// Speed that a power holds, without end; 40 m/s when nothing bounds it.
    #[must_use]
    pub fn steady_speed(&self, power: Power) -> Speed {
        Speed::new(self.speed_at_wheel_power(self.efficiency * power.watts()))
    }

    /// Where the power goes at a steady speed.
    #[must_use]
    pub fn power(&self, speed: Speed) -> PowerTerms {
        let v = speed.m_per_s();
        PowerTerms {
            air_w: self.air_force(v) * v,
            rolling_w: self.rolling * v,
            bearings_w: self.bearing_force(v) * v,
            gravity_w: self.gravity * v,
            kinetic_w: 0.0,
            efficiency: self.efficiency,
        }
    }

    /// Mean torque at the crank that holds a speed in a gear.
    ///
    /// # Formula
    /// T = F D/(2π η), D the development.
    #[must_use]
    pub fn crank_torque(&self, speed: Speed, gear: Development) -> Torque {
        Torque::new(self.force_n(speed) * gear.m() / (TAU * self.efficiency))
    }

    /// The speed at which `power` arrives at the wheel and is used up by the resistance.
    pub(super) fn speed_at_wheel_power(&self, power: f64) -> f64 {
        if self.has_closed_form() {
            cubic_speed(self.air, self.gravity + self.rolling, power).min(FASTEST)
        } else {
            self.searched_speed(power)
        }
    }

    fn has_closed_form(&self) -> bool {
        self.headwind == 0.0 && self.bearing_growth == 0.0 && self.gravity + self.rolling > 0.0
    }

    /// The force only grows with speed, so force × speed meets a power once.
    fn searched_speed(&self, power: f64) -> f64 {
        if self.force(FASTEST) * FASTEST <= power {
            return FASTEST;
        }
        rising_root((0.0, FASTEST), FASTEST, Near::ROUNDING, |v| {
            let force = self.force(v);
            (force * v - power, force + v * self.force_growth(v))
        })
    }

    pub(super) fn force(&self, v: f64) -> f64 {
        self.gravity + self.rolling + self.growing_force(v)
    }

    /// The part of the force that changes with speed.
    pub(super) fn growing_force(&self, v: f64) -> f64 {
        self.air_force(v) + self.bearing_force(v)
    }

    fn air_force(&self, v: f64) -> f64 {
        let against = v + self.headwind;
        self.air * against * against.abs()
    }

    fn bearing_force(&self, v: f64) -> f64 {
        self.bearing + self.bearing_growth * v
    }

    fn force_growth(&self, v: f64) -> f64 {
        self.bearing_growth + 2.0 * self.air * (v + self.headwind).abs()
    }

    /// Slope of the chord of the force between two speeds, exact also where they nearly meet.
    pub(super) fn force_chord(&self, v: f64, w: f64) -> f64 {
        let (a, b) = (v + self.headwind, w + self.headwind);
        let sum = a.abs() + b.abs();
        let air = if a * b >= 0.0 { sum } else { (a * a + b * b) / sum };
        self.bearing_growth + self.air * air
    }
}

/// Where a rider's power goes, in watts. Gravity is negative downhill, air with a strong wind from behind.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PowerTerms {
    /// Against the air, spokes included where they count.
    pub air_w: f64,
    /// Into tyres and ground.
    pub rolling_w: f64,
    /// Into the wheel bearings.
    pub bearings_w: f64,
    /// Into height.
    pub gravity_w: f64,
    /// Into speed.
    pub kinetic_w: f64,
    /// What reaches the rear wheel of the power at the crank.
    pub efficiency: f64,
}

impl PowerTerms {
    /// The same while the speed changes evenly over a time.
    ///
    /// # Formula
    /// P = ½ m_e (v₂² − v₁²)/t.
    #[must_use]
    pub fn changing(self, mass: EffectiveMass, from: Speed, to: Speed, over: EffortTime) -> Self {
        let (v1, v2) = (from.m_per_s(), to.m_per_s());
        Self { kinetic_w: 0.5 * mass.kg() * (v2 * v2 - v1 * v1) / over.s(), ..self }
    }

    /// All of it at the rear wheel.
    #[must_use]
    pub fn at_wheel(&self) -> PowerDemand {
        PowerDemand::new(self.air_w + self.rolling_w + self.bearings_w + self.gravity_w + self.kinetic_w)
    }

    /// All of it at the crank.
    #[must_use]
    pub fn at_crank(&self) -> PowerDemand {
        PowerDemand::new(self.at_wheel().watts() / self.efficiency)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn descent(air: f64, headwind: f64) -> Resistance {
        Resistance {
            gravity: -60.0,
            rolling: 20.0,
            bearing: 0.0,
            bearing_growth: 0.0,
            air,
            headwind,
            efficiency: 1.0,
        }
    }

    #[test]
    fn a_descent_ends_where_the_air_holds_the_hill() {
        let rolls = |headwind| descent(0.25, headwind).speed_at_wheel_power(0.0);
        assert!((rolls(0.0) - 160.0_f64.sqrt()).abs() < 1e-12);
        assert!((rolls(4.0) - 160.0_f64.sqrt() + 4.0).abs() < 1e-12);
    }

    #[test]
    fn nothing_bounds_a_descent_without_air() {
        assert!((descent(0.0, 0.0).speed_at_wheel_power(0.0) - FASTEST).abs() < f64::EPSILON);
    }

    #[test]
    fn a_chord_joins_two_forces_across_the_wind() {
        let load = descent(0.25, -5.0);
        let chord = (load.force(8.0) - load.force(2.0)) / 6.0;
        assert!((load.force_chord(8.0, 2.0) - chord).abs() < 1e-12);
    }
}
