//! The circle on which a chain's pins lie when it wraps a toothed wheel.

use crate::quantity::measured;
use crate::quantity::{Limits, OutOfLimits};
use core::f64::consts::{PI, TAU};

measured! {
    /// Pin to pin distance of a roller chain, in millimetres.
    ChainPitch(mm): "chain pitch", "mm", 4.0 ..= 80.0;
}

impl ChainPitch {
    /// Half an inch: the pitch of every bicycle chain (ANSI B29.1 no. 40 family, ISO 606 series 08).
    pub const BICYCLE: Self = Self(12.7);
}

/// A toothed wheel as the chain sees it: a number of teeth at a pitch.
///
/// # Formula
/// Pitch diameter d = p ÷ sin(180° ÷ N), with pitch p and N teeth: the N pins are the corners of a regular
/// polygon with sides of one pitch.
///
/// # Example
/// ```
/// use gear_math::chain::{ChainPitch, PitchCircle};
/// let ring = PitchCircle::new(42, ChainPitch::BICYCLE).unwrap();
/// assert!((ring.diameter_mm() - 169.945).abs() < 0.001);
/// assert!(PitchCircle::new(2, ChainPitch::BICYCLE).is_err());
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PitchCircle {
    teeth: u16,
    pitch: ChainPitch,
}

impl PitchCircle {
    /// Teeth a wheel may have; wide enough for industrial drives, whose printed examples are checked.
    pub const TEETH: Limits = Limits { name: "teeth", unit: "", min: 5.0, max: 200.0 };

    /// A wheel of `teeth` teeth for chain of `pitch`.
    ///
    /// # Errors
    /// [`OutOfLimits`] when the count lies outside [`Self::TEETH`].
    pub fn new(teeth: u16, pitch: ChainPitch) -> Result<Self, OutOfLimits> {
        const LIMITS: &Limits = &PitchCircle::TEETH;
        LIMITS.check(f64::from(teeth)).map(|_| Self { teeth, pitch })
    }

    /// A bicycle wheel whose tooth count its own type has checked.
    pub(super) const fn of_bicycle(teeth: u16) -> Self {
        Self { teeth, pitch: ChainPitch::BICYCLE }
    }

    /// The number of teeth.
    #[must_use]
    pub const fn teeth(self) -> u16 {
        self.teeth
    }

    /// The chain pitch.
    #[must_use]
    pub const fn pitch(self) -> ChainPitch {
        self.pitch
    }

    /// Diameter of the circle of pins, in millimetres.
    #[must_use]
    pub fn diameter_mm(self) -> f64 {
        self.pitch.mm() / self.half_step().sin()
    }

    /// Radius of the circle of pins, in millimetres.
    #[must_use]
    pub fn radius_mm(self) -> f64 {
        self.diameter_mm() / 2.0
    }

    /// Approximate diameter over the tooth tips, in millimetres: p (0.6 + cot(180° ÷ N)), the form of the
    /// appendix of ANSI B29.1, written from memory. An estimate.
    #[must_use]
    pub fn tip_diameter_mm(self) -> f64 {
        self.pitch.mm() * (0.6 + self.half_step().tan().recip())
    }

    /// Chain taken up per radian of wrap, in millimetres. It counts teeth, not the pitch circle's arc: one
    /// full turn takes exactly N pitches.
    #[must_use]
    pub fn mm_per_radian(self) -> f64 {
        f64::from(self.teeth) * self.pitch.mm() / TAU
    }

    /// How much the chain's speed swings within one tooth, as a share of its speed: 1 − cos(180° ÷ N).
    #[must_use]
    pub fn speed_ripple(self) -> f64 {
        1.0 - self.half_step().cos()
    }

    fn half_step(self) -> f64 {
        PI / f64::from(self.teeth)
    }
}
