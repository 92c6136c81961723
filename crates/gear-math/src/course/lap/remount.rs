//! Getting on again: how fast the bike still is when the first pedal stroke comes.

use crate::physics::GRAVITY;
use crate::quantity::Speed;
use crate::rider::{Gradient, RollingCoefficient};

/// Faster than this nobody gets on, m/s. Estimate.
const FASTEST_ON: f64 = 2.9;
/// Time from the last step to the first pedal stroke, s. Estimate.
const WITHOUT_DRIVE_S: f64 = 0.5;
/// Slower than this the first stroke comes too late to stay upright, m/s. Estimate.
const SLOWEST_ON: f64 = 0.8;

/// Getting on at a place. It is physics that sends a rider on to where a steep, soft bank flattens.
///
/// # Example
/// ```
/// use gear_math::{Gradient, Speed, Surface};
/// use gear_math::course::Remount;
/// let on = |percent: f64, surface: Surface| -> Result<_, gear_math::OutOfLimits> {
///     let walk = Speed::from_km_per_h(6.5)?;
///     Ok(Remount::at(walk, Gradient::new(percent)?, surface.ground().rolling))
/// };
/// assert!(on(4.0, Surface::FirmGrass)?.is_possible() && !on(16.0, Surface::Mud)?.is_possible());
/// # Ok::<(), gear_math::OutOfLimits>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Remount {
    /// Speed at the first pedal stroke; zero where the bike has stopped before it.
    pub speed: Speed,
}

impl Remount {
    /// Gets on from a speed on foot.
    ///
    /// # Formula
    /// v₀ = min(v_foot, 2.9 m/s) − g (sin θ + C_rr cos θ) 0.5 s: half a second without drive.
    #[must_use]
    pub fn at(foot: Speed, gradient: Gradient, rolling: RollingCoefficient) -> Self {
        let sine = gradient.sine();
        let cosine = (1.0 - sine * sine).sqrt();
        let slowed = GRAVITY * (sine + rolling.value() * cosine) * WITHOUT_DRIVE_S;
        Self { speed: Speed::new((foot.m_per_s().min(FASTEST_ON) - slowed).max(0.0)) }
    }

    /// Whether that is fast enough to ride on from: 0.8 m/s.
    #[must_use]
    pub fn is_possible(self) -> bool {
        self.speed.m_per_s() >= SLOWEST_ON
    }
}
