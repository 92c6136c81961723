//! One step of riding: speed and time from one place to the next under a drive.

use crate::solve::convex_root;

/// What resists changes of speed, the same all round the lap.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::course) struct Motion {
    /// Mass that resists a change of speed, kg.
    pub(in crate::course) mass: f64,
    /// Air drag over speed squared, N/(m/s)².
    pub(in crate::course) air: f64,
    /// Growth of the bearing force with speed, N/(m/s).
    pub(in crate::course) bearing: f64,
}

/// A last correction below this, relative to the speed, leaves an error of about its square.
const SAME: f64 = 1e-6;
/// A guess between these parts of the entry speed is a start for Newton's method. Estimate, because it only has to be near
/// enough: a worse start costs steps, not accuracy.
const NEAR: [f64; 2] = [0.7, 1.4];
/// Faster than any descent of a course, m/s. Estimate, because 80 kg with 0.4 m² of drag area fall no faster than 37 m/s down
/// a slope of 45 %.
const FASTEST: f64 = 40.0;

/// What holds a bicycle back and drives it over one step, the step's length included.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::course) struct Stretch {
    /// Length, m.
    pub(in crate::course) length: f64,
    /// Gravity, rolling and constant bearing force, N.
    pub(in crate::course) resistance: f64,
    /// Largest mean drive force before the wheel slips, N.
    pub(in crate::course) grip: f64,
}

impl Motion {
    /// Mean speed over `stretch` at constant power, from the entry speed; zero when it stops on the way.
    ///
    /// # Formula
    /// The implicit midpoint rule in time, with v̄ the mean of the speeds at both ends and dt = L/v̄:
    /// 2 m_e v̄ (v̄ − v₀) = L (P/v̄ − F − b v̄ − a v̄²). Work, losses and kinetic energy balance exactly over
    /// every step. Multiplied by v̄ it is a cubic with its largest root positive as long as P is.
    pub(in crate::course) fn mean_speed(&self, stretch: &Stretch, power: f64, entry: f64) -> f64 {
        let driven = self.at_power(stretch, power, entry);
        if power > stretch.grip * driven { self.at_force(stretch, stretch.grip, entry) } else { driven }
    }

    fn at_power(&self, stretch: &Stretch, power: f64, entry: f64) -> f64 {
        if power <= 0.0 {
            return self.at_force(stretch, 0.0, entry);
        }
        let Stretch { length, resistance, .. } = *stretch;
        let cubic = 2.0 * self.mass + self.air * length;
        let square = self.bearing * length - 2.0 * self.mass * entry;
        let linear = resistance * length;
        let work = power * length;
        convex_root(self.first_guess(stretch, power, entry), SAME, |v| {
            let value = ((cubic * v + square) * v + linear) * v - work;
            (value, (3.0 * cubic * v + 2.0 * square) * v + linear)
        })
    }

    /// Where Newton's method may start: beyond the inflection at a third of the entry speed, on the rising side.
    ///
    /// A small change is guessed from the forces at the entry. Otherwise the start is an upper bound of the root:
    /// with v_c the mean speed of coasting, or the lowest point of its parabola when coasting stops, the cubic is
    /// at least (v − v_c)³ times its leading term.
    fn first_guess(&self, stretch: &Stretch, power: f64, entry: f64) -> f64 {
        let force = power / entry - self.force_at(stretch, entry);
        let guess = entry + 0.5 * stretch.length * force / (self.mass * entry);
        if guess > NEAR[0] * entry && guess < NEAR[1] * entry {
            return guess;
        }
        let cubic = 2.0 * self.mass + self.air * stretch.length;
        let lowest = (self.mass * entry / cubic).max(0.0);
        self.at_force(stretch, 0.0, entry).max(lowest) + (power * stretch.length / cubic).cbrt()
    }

    /// The same at constant force: a quadratic.
    fn at_force(&self, stretch: &Stretch, force: f64, entry: f64) -> f64 {
        let Stretch { length, resistance, .. } = *stretch;
        let square = 2.0 * self.mass + self.air * length;
        let half = self.mass * entry - 0.5 * self.bearing * length;
        let root = half * half - square * (resistance - force) * length;
        if root < 0.0 { 0.0 } else { ((half + root.sqrt()) / square).max(0.0) }
    }

    /// Power at the wheel that a step with this mean speed took; negative when it took brakes.
    pub(in crate::course) fn power_of(&self, stretch: &Stretch, mean: f64, entry: f64) -> f64 {
        let gained = 2.0 * self.mass * mean * (mean - entry) / stretch.length;
        (gained + self.force_at(stretch, mean)) * mean
    }

    /// Force that holds a speed, N.
    pub(in crate::course) fn force_at(&self, stretch: &Stretch, speed: f64) -> f64 {
        stretch.resistance + (self.bearing + self.air * speed) * speed
    }

    /// Speed that a power holds without end, for a start.
    pub(in crate::course) fn steady_speed(&self, stretch: &Stretch, power: f64) -> f64 {
        const WITHOUT_END_M: f64 = 1e6;
        const SOME_SPEED: f64 = 5.0;
        self.mean_speed(&Stretch { length: WITHOUT_END_M, ..*stretch }, power, SOME_SPEED).min(FASTEST)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const RIDER: Motion = Motion { mass: 84.0, air: 0.24, bearing: 0.0087 };

    fn stretch(length: f64, resistance: f64) -> Stretch {
        Stretch { length, resistance, grip: f64::INFINITY }
    }

    #[test]
    fn a_planted_step_is_found_again() {
        for entry in [0.4, 1.5, 3.0, 9.0] {
            for gain in [-0.3, -0.05, 0.0, 0.1, 0.9] {
                for resistance in [-250.0, 0.0, 30.0, 300.0] {
                    let (mean, step) = (entry * (1.0 + 0.5 * gain), stretch(0.5, resistance));
                    let power = RIDER.power_of(&step, mean, entry);
                    if power > 0.0 {
                        let found = RIDER.mean_speed(&step, power, entry);
                        assert!(
                            (found - mean).abs() < 1e-9,
                            "{found} for {mean}, from {entry} at {resistance} N"
                        );
                    }
                }
            }
        }
    }

    #[test]
    fn slipping_grip_bounds_the_force() {
        let step = Stretch { length: 1.0, resistance: 50.0, grip: 60.0 };
        let mean = RIDER.mean_speed(&step, 1000.0, 2.0);
        assert!((RIDER.power_of(&step, mean, 2.0) / mean - 60.0).abs() < 1e-9);
    }

    #[test]
    fn coasting_up_a_wall_stops() {
        assert!(RIDER.mean_speed(&stretch(5.0, 400.0), 0.0, 2.0) < 1e-12);
    }

    #[test]
    fn every_step_has_a_speed() {
        for entry in [0.05, 0.8, 20.0] {
            for power in [1e-6, 5.0, 240.0, 1500.0] {
                for resistance in [-400.0, -1.0, 0.0, 400.0] {
                    for length in [0.05, 1.0, 5.0] {
                        let mean = RIDER.mean_speed(&stretch(length, resistance), power, entry);
                        assert!(
                            mean.is_finite() && mean > 0.0,
                            "{mean} at {entry} {power} {resistance} {length}"
                        );
                    }
                }
            }
        }
    }

    /// Power is force times speed where nothing is gained any more.
    #[test]
    fn a_steady_speed_takes_the_power_that_holds_it() {
        for (resistance, power) in [(30.0, 200.0), (120.0, 300.0), (-20.0, 50.0), (0.0, 400.0)] {
            let step = stretch(0.5, resistance);
            let speed = RIDER.steady_speed(&step, power);
            assert!(
                (RIDER.force_at(&step, speed) * speed - power).abs() < 0.01 * power,
                "{speed} m/s at {power} W"
            );
        }
        assert!((RIDER.steady_speed(&stretch(0.5, -600.0), 200.0) - FASTEST).abs() < 1e-12);
    }

    /// Grip that is never short changes nothing; where it is, more power brings no more.
    #[test]
    fn power_beyond_grip_is_lost() {
        let step = |grip| Stretch { length: 2.0, resistance: 80.0, grip };
        let speed = |grip, power| RIDER.mean_speed(&step(grip), power, 3.0);
        assert!((speed(1000.0, 300.0) - speed(f64::INFINITY, 300.0)).abs() < 1e-12);
        assert!((speed(70.0, 300.0) - speed(70.0, 900.0)).abs() < 1e-12);
        assert!(speed(70.0, 300.0) < speed(1000.0, 300.0));
    }
}
