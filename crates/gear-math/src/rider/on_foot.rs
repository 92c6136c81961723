//! Running and walking uphill with a bike, and the change from one to the other.

use crate::quantity::Speed;
use crate::rider::quantity::{Climb, FootCost, Gradient};
use crate::rider::road_load::sine_cosine;
use crate::solve::{Near, cubic_speed, rising_root};
use core::ops::Range;

/// Running, J/(kg m) against rise over run, from the fifth power down.
/// Minetti, Moia, Roi, Susta & Ferretti (2002), *J Appl Physiol* 93:1039–1046.
const RUNNING: [f64; 6] = [155.4, -30.4, -43.3, 46.3, 19.5, 3.6];
/// Walking at the most economical speed; same source.
const WALKING: [f64; 6] = [280.5, -58.7, -76.8, 51.9, 19.6, 2.5];

/// Nobody runs faster with a bike, m/s, however much power there is. Estimate: a good runner without one holds this over
/// 10 km.
pub(crate) const FASTEST_ON_FOOT: f64 = 5.0;

/// How someone on foot moves.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Gait {
    /// Running.
    Run,
    /// Walking.
    Walk,
}

/// Which gaits the rider uses.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Gaits {
    /// Whichever is the faster for the same energy.
    #[default]
    RunOrWalk,
    /// Running however slow it gets.
    RunOnly,
}

/// Energy cost of running on hard ground, per kilogram and metre along the slope, above standing.
///
/// # Formula
/// C_r = 155.4 i⁵ − 30.4 i⁴ − 43.3 i³ + 46.3 i² + 19.5 i + 3.6. Minetti et al. (2002).
///
/// # Example
/// ```
/// use gear_math::Gradient;
/// use gear_math::rider::running_cost;
/// assert!((running_cost(Gradient::new(10.0)?).j_per_kg_m() - 5.968).abs() < 1e-3);
/// # Ok::<(), gear_math::OutOfLimits>(())
/// ```
#[must_use]
pub fn running_cost(gradient: Gradient) -> FootCost {
    FootCost::new(polynomial(&RUNNING, gradient.rise_over_run()))
}

/// Energy cost of walking on hard ground at the most economical speed, per kilogram and metre along the slope,
/// above standing.
///
/// # Formula
/// C_w = 280.5 i⁵ − 58.7 i⁴ − 76.8 i³ + 51.9 i² + 19.6 i + 2.5. Minetti et al. (2002).
#[must_use]
pub fn walking_cost(gradient: Gradient) -> FootCost {
    FootCost::new(polynomial(&WALKING, gradient.rise_over_run()))
}

fn polynomial(coefficients: &[f64; 6], x: f64) -> f64 {
    coefficients.iter().fold(0.0, |sum, c| sum * x + c)
}

/// What an uphill gradient means, worked out once for many grounds and riders.
///
/// Transition and most economical speed are interpolated between the points of Abe et al. (2015, *PLoS ONE*
/// 10:e0138154), Brill & Kram (2021, *J Exp Biol* 224:jeb233056), Giovanelli et al. (2016, *J Appl Physiol*
/// 120:370–375), Ortiz et al. (2017, *Eur J Appl Physiol* 117:1869–1876) and Minetti (1995, *J Appl Physiol*
/// 79:1698–1703).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Incline {
    /// The gradient.
    pub gradient: Climb,
    /// Running.
    pub running: FootCost,
    /// Walking at the most economical speed.
    pub walking: FootCost,
    /// Speed at which running and walking cost the same.
    pub transition: Speed,
    /// Most economical walking speed.
    pub economical: Speed,
    pub(super) sine: f64,
    pub(super) cosine: f64,
}

impl Incline {
    /// Takes an uphill gradient.
    ///
    /// # Formula
    /// v_tr = max(0.80, 2.10 − 1.30/30 · θ), v_opt = max(0.45, 1.00 − 1.40 i), in m/s, θ in degrees.
    #[must_use]
    pub fn new(gradient: Climb) -> Self {
        let i = gradient.rise_over_run();
        let degrees = i.atan().to_degrees();
        let (sine, cosine) = sine_cosine(i);
        Self {
            gradient,
            running: running_cost(gradient.into()),
            walking: walking_cost(gradient.into()),
            transition: Speed::new((2.1 - 1.3 / 30.0 * degrees).max(0.8)),
            economical: Speed::new((1.0 - 1.4 * i).max(0.45)),
            sine,
            cosine,
        }
    }

    /// The same also for a descent, where the speeds of the gaits are those of the level.
    pub(super) fn up_or_down(gradient: Gradient) -> Self {
        let (running, walking) = (running_cost(gradient), walking_cost(gradient));
        let (sine, cosine) = sine_cosine(gradient.rise_over_run());
        Self { running, walking, sine, cosine, ..Self::new(Climb::nearest(gradient.percent())) }
    }

    /// Costs of running and walking on a ground whose foot factor S exceeds 1 by `extra` and whose slope share ψ is
    /// `share`.
    ///
    /// # Formula
    /// C_S = C + (S − 1) \[C(0) + ψ (C − C(0))\]; walking never above running. ψ = 0: the ground takes a fixed extra
    /// per metre, after Lejeune, Willems & Heglund (1998, *J Exp Biol* 201:2071–2080). ψ = 1: it multiplies the whole
    /// cost, as in Pandolf, Givoni & Goldman (1977). What holds in mud is not known.
    pub(super) fn costs(&self, extra: f64, share: f64) -> (f64, f64) {
        let on_ground = |cost: f64, level: f64| cost + extra * (level + share * (cost - level));
        let run = on_ground(self.running.j_per_kg_m(), RUNNING[5]);
        (run, on_ground(self.walking.j_per_kg_m(), WALKING[5]).min(run))
    }
}

/// How someone on foot moves and meets the air, whatever the slope and the energy they have.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct FootMotion {
    /// Air drag coefficient of the whole person, in J·s²/m³.
    pub(super) drag: f64,
    /// Wind against, in m/s.
    pub(super) headwind: f64,
    pub(super) gaits: Gaits,
}

impl FootMotion {
    /// Speed and gait on `energy` watts above standing when running and walking cost `run` and `walk` joules per
    /// metre, for the whole person with everything carried.
    ///
    /// Walking faster than the most economical speed costs more, up to the cost of running at the transition:
    /// C = C_w + (C_r − C_w) ((v − v_opt)/(v_tr − v_opt))². Power grows with speed all along, so the speed is unique.
    pub(super) fn speed(&self, energy: f64, run: f64, walk: f64, incline: &Incline) -> (f64, Gait) {
        let transition = incline.transition.m_per_s();
        if self.gaits == Gaits::RunOnly || self.spent(run, transition) <= energy {
            return (self.at_cost(energy, run), Gait::Run);
        }
        let economical = incline.economical.m_per_s();
        if self.spent(walk, economical) >= energy {
            return (self.at_cost(energy, walk), Gait::Walk);
        }
        (self.hurried_walk(energy, run, walk, economical..transition), Gait::Walk)
    }

    /// Speed at a cost that does not depend on speed, but for the air. The limits of the quantities keep the push
    /// of a wind from behind below the cost itself.
    pub(super) fn at_cost(&self, energy: f64, cost: f64) -> f64 {
        if self.headwind == 0.0 {
            return cubic_speed(self.drag, cost, energy);
        }
        let fastest = energy / (cost - self.drag * self.headwind * self.headwind);
        rising_root((0.0, fastest), fastest, Near::ROUNDING, |v| {
            (self.spent(cost, v) - energy, cost + self.air_cost(v) + v * self.air_cost_growth(v))
        })
    }

    /// Walking between the most economical speed and the transition.
    fn hurried_walk(&self, energy: f64, run: f64, walk: f64, speeds: Range<f64>) -> f64 {
        let stretch = speeds.end - speeds.start;
        let bend = (run - walk) / (stretch * stretch);
        rising_root((speeds.start, speeds.end), speeds.end, Near::ROUNDING, |v| {
            let hurry = v - speeds.start;
            let cost = walk + bend * hurry * hurry;
            let growth = 2.0 * bend * hurry + self.air_cost_growth(v);
            (self.spent(cost, v) - energy, cost + self.air_cost(v) + v * growth)
        })
    }

    fn spent(&self, cost: f64, v: f64) -> f64 {
        (cost + self.air_cost(v)) * v
    }

    fn air_cost(&self, v: f64) -> f64 {
        let against = v + self.headwind;
        self.drag * against * against.abs()
    }

    fn air_cost_growth(&self, v: f64) -> f64 {
        2.0 * self.drag * (v + self.headwind).abs()
    }
}
