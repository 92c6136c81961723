//! Slowing down before a corner or to get off.

use crate::course::quantity::Braking;
use crate::physics::GRAVITY;
use crate::quantity::Speed;
use crate::rider::{Distance, Time};

/// Braking evenly from one speed to another.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Braked {
    /// The way it takes.
    pub way: Distance,
    /// The time it takes.
    pub time: Time,
    /// How much longer that is than going on at the first speed.
    pub lost: Time,
}

impl Braking {
    /// The friction between tyres and level ground that braking so hard takes.
    ///
    /// # Formula
    /// μ = a/g.
    #[must_use]
    pub fn friction_needed(self) -> f64 {
        self.m_per_s2() / GRAVITY
    }

    /// Slows from one speed to another; nothing where that is no slower.
    ///
    /// # Formula
    /// d = (v₁² − v₂²)/2a, t = (v₁ − v₂)/a, lost t − d/v₁ = (v₁ − v₂)²/(2 a v₁).
    ///
    /// # Example
    /// ```
    /// use gear_math::Speed;
    /// use gear_math::course::Mounting;
    /// let [ride, run] = [27.0, 10.8].map(Speed::from_km_per_h);
    /// let braked = Mounting::USUAL.braking.slowing(ride?, run?);
    /// assert!((braked.way.m() - 7.875).abs() < 1e-9 && (braked.lost.s() - 0.45).abs() < 1e-9);
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    #[must_use]
    pub fn slowing(self, from: Speed, to: Speed) -> Braked {
        let (first, taken) = (from.m_per_s(), (from.m_per_s() - to.m_per_s()).max(0.0));
        let time = taken / self.m_per_s2();
        let lost = if taken > 0.0 { 0.5 * time * taken / first } else { 0.0 };
        Braked { way: Distance::new(first * (time - lost)), time: Time::new(time), lost: Time::new(lost) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A tyre holds no more than friction times weight, and weight slows itself by g.
    #[test]
    fn braking_at_g_takes_a_friction_of_one() {
        for m_per_s2 in [1.0, 3.0, 5.5] {
            let friction = Braking::new(m_per_s2).unwrap().friction_needed();
            assert!((friction * 9.81 - m_per_s2).abs() < 0.01, "{friction}");
        }
    }

    #[test]
    fn nobody_brakes_to_go_faster() {
        let (slow, fast) = (Speed::new(3.0), Speed::new(4.0));
        let braked = Braking::new(3.0).unwrap().slowing(slow, fast);
        assert!(braked.way.m().max(braked.time.s()).max(braked.lost.s()) < 1e-12);
    }
}
