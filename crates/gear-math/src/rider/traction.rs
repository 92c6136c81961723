//! Where the rear wheel slips and the front wheel lifts.

use crate::rider::quantity::{
    Friction, MassHeight, PeakFactor, RearShare, RollingCoefficient, Slope, Wheelbase,
};
use core::f64::consts::FRAC_PI_2;

/// How a rider sits on the bike and turns the pedals, as far as grip goes.
///
/// # Example
/// ```
/// use gear_math::Surface;
/// use gear_math::rider::Stance;
/// let ground = Surface::WetSoftGrass.ground();
/// let slip = Stance::SEATED.slip(ground.friction, ground.rolling).expect("slick enough to slip");
/// assert!((slip.percent() - 16.6).abs() < 0.1);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stance {
    /// Distance between the axles.
    pub wheelbase: Wheelbase,
    /// Height of the common centre of mass.
    pub height: MassHeight,
    /// Weight on the rear wheel, on the level.
    pub rear: RearShare,
    /// How uneven the pedal stroke is.
    pub peak: PeakFactor,
}

impl PeakFactor {
    /// 1: as smooth as can be.
    pub const SMOOTH: Self = Self::known(1.0);
    /// π/2: the peak over the mean of a torque that follows a rectified sine, as in a slow, heavy pedal stroke.
    pub const JERKY: Self = Self::known(FRAC_PI_2);
}

impl Stance {
    /// Seated, pedalling smoothly: wheelbase 1.02 m, centre of mass at 1.05 m, 55 % on the rear wheel. Estimates.
    pub const SEATED: Self = Self {
        wheelbase: Wheelbase::known(1020.0),
        height: MassHeight::known(1050.0),
        rear: RearShare::known(0.55),
        peak: PeakFactor::SMOOTH,
    };

    /// The same with a heavy pedal stroke.
    #[must_use]
    pub const fn jerky(self) -> Self {
        Self { peak: PeakFactor::JERKY, ..self }
    }

    /// The gradient from which the rear wheel slips at steady speed, momentary acceleration included in the drive
    /// force; negative when it slips on the level. `None` when it never slips: the front wheel lifts before.
    ///
    /// # Formula
    /// tan θ = μ (R − C_rr h/w)/(k (1 − μ h/w)) − C_rr, from k F = μ N_r with the static balance about the contact
    /// points. The lift condition is the textbook one (*The Physics Teacher* 42:27, 2004, treats both).
    #[must_use]
    pub fn slip(&self, friction: Friction, rolling: RollingCoefficient) -> Option<Slope> {
        let (mu, crr) = (friction.mu(), rolling.value());
        let lean = self.height.mm() / self.wheelbase.mm();
        let unloading = 1.0 - mu * lean;
        (unloading > 0.0).then(|| {
            Slope::new(mu * (self.rear.value() - crr * lean) / (self.peak.value() * unloading) - crr)
        })
    }

    /// The largest mean drive force before the rear wheel slips, in N, where rider and bike press on the slope with `normal_n`:
    /// what holds the bike where it just slips. Infinite where it never does.
    pub(crate) fn drive_n(&self, friction: Friction, rolling: RollingCoefficient, normal_n: f64) -> f64 {
        let drive = |slip: Slope| (normal_n * (slip.rise_over_run() + rolling.value())).max(0.0);
        self.slip(friction, rolling).map_or(f64::INFINITY, drive)
    }

    /// The gradient from which the front wheel lifts at steady speed.
    ///
    /// # Formula
    /// tan θ = (b/h + C_rr)/k − C_rr, with b = (1 − R) w the distance of the centre of mass ahead of the rear
    /// contact, on the level.
    #[must_use]
    pub fn lift(&self, rolling: RollingCoefficient) -> Slope {
        let crr = rolling.value();
        let ahead = (1.0 - self.rear.value()) * self.wheelbase.mm() / self.height.mm();
        Slope::new((ahead + crr) / self.peak.value() - crr)
    }
}
