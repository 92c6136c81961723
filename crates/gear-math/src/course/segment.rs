//! One stretch of course of the same kind from end to end.

use crate::course::quantity::{CornerSpeed, ObstacleTime, StretchLength};
use crate::rider::{Compass, Gradient, Surface};

/// Something that must be taken on foot over the whole stretch it stands on: a barrier, steps, a log.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Obstacle {
    /// Time it costs on top of covering its length at foot speed.
    pub time: ObstacleTime,
}

/// A stretch with one gradient and one ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Segment {
    /// How long it is along the ground.
    pub length: StretchLength,
    /// How steep it is in the direction of riding.
    pub gradient: Gradient,
    /// What it consists of.
    pub surface: Surface,
    /// What stands on it, when it must be taken on foot.
    pub obstacle: Option<Obstacle>,
    /// The fastest it can be ridden, when it is a corner.
    pub corner: Option<CornerSpeed>,
    /// Which way it leads, where that is known: what the wind does to it.
    pub heading: Option<Compass>,
}

impl Segment {
    /// A stretch without obstacle or corner that leads nobody knows where.
    #[must_use]
    pub const fn open(length: StretchLength, gradient: Gradient, surface: Surface) -> Self {
        Self { length, gradient, surface, obstacle: None, corner: None, heading: None }
    }

    /// The same leading this way.
    #[must_use]
    pub const fn towards(self, heading: Compass) -> Self {
        Self { heading: Some(heading), ..self }
    }

    /// An open stretch over a horizontal distance, as positions on a map give it; none where it is too short or too long
    /// to be one.
    ///
    /// # Formula
    /// L = d √(1 + i²), with i rise over run.
    ///
    /// # Example
    /// ```
    /// use gear_math::{Gradient, Surface};
    /// use gear_math::course::Segment;
    /// let bank = Segment::over(40.0, Gradient::new(30.0)?, Surface::Mud).expect("a stretch");
    /// assert!((bank.length.m() - 41.761).abs() < 1e-3 && (bank.rise_m() - 12.0).abs() < 1e-9);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn over(horizontal_m: f64, gradient: Gradient, surface: Surface) -> Option<Self> {
        let length = StretchLength::new(horizontal_m * gradient.rise_over_run().hypot(1.0)).ok()?;
        Some(Self::open(length, gradient, surface))
    }

    /// Height gained from its start to its end, in metres; negative downhill.
    ///
    /// # Formula
    /// rise = L sin(atan i), with L along the ground and i rise over run.
    #[must_use]
    pub fn rise_m(&self) -> f64 {
        self.length.m() * self.gradient.sine()
    }
}
