//! One step of the way: what holds the bike back, and what may be done there.

use crate::rider::{Gradient, RollingCoefficient};

/// One step of the way, for one rider on one bike.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Cell {
    /// m.
    pub(super) length: f64,
    /// N, negative downhill.
    pub(super) gravity: f64,
    /// N.
    pub(super) rolling: f64,
    /// N.
    pub(super) bearing: f64,
    /// N/(m/s).
    pub(super) bearing_growth: f64,
    /// N/(m/s)².
    pub(super) air: f64,
    /// Against the rider, m/s.
    pub(super) wind: f64,
    /// Largest mean drive force before the wheel slips, N.
    pub(super) grip: f64,
    /// Highest speed, m/s.
    pub(super) corner: f64,
    /// Whether it must be taken on foot.
    pub(super) blocked: bool,
    /// Time on foot beside what the length takes, s.
    pub(super) extra: f64,
    pub(super) gradient: Gradient,
    pub(super) coefficient: RollingCoefficient,
    /// Which stretch of the course it belongs to.
    pub(super) segment: usize,
}

impl Cell {
    #[inline]
    pub(super) fn air_force(&self, speed: f64) -> f64 {
        let against = speed + self.wind;
        self.air * against * against.abs()
    }

    #[inline]
    pub(super) fn bearing_force(&self, speed: f64) -> f64 {
        self.bearing + self.bearing_growth * speed
    }

    /// All that holds back at a speed, N.
    #[inline]
    pub(super) fn force(&self, speed: f64) -> f64 {
        self.gravity + self.rolling + self.bearing_force(speed) + self.air_force(speed)
    }

    #[inline]
    pub(super) fn force_growth(&self, speed: f64) -> f64 {
        self.bearing_growth + 2.0 * self.air * (speed + self.wind).abs()
    }
}
