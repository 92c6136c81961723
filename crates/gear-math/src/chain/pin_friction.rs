//! What bending round ring and sprocket costs, for differences between gears.

use crate::chain::pitch_circle::ChainPitch;
use crate::gears::Gear;
use crate::quantity::{Limits, OutOfLimits, measured, nearest};
use core::f64::consts::TAU;

measured! {
    /// Friction between a chain's pins and their bushings times the radius of the pins, in millimetres.
    PinFriction(mm): "pin friction times radius", "mm", 0.0 ..= 1.0;
}

nearest! { PinFriction }

impl PinFriction {
    /// 0.18 mm: a friction of 0.1 on a radius of 1.8 mm; 0.1 to 0.3 mm are likely. Estimate.
    pub const USUAL: Self = Self(0.18);

    /// Part of the power that the links of the tight run lose by bending as they come onto the sprocket and leave the ring.
    ///
    /// Good for differences between gears alone: what a drivetrain loses in all also depends on the chain's tension, and how
    /// much is not settled (Spicer et al. 2001, *J Mech Des* 123:598–605, measured 81 to 98.6 % efficiency).
    ///
    /// # Formula
    /// μ r (2π/p)(1/N₁ + 1/N₂): each link bends by 2π/N under the whole tension.
    ///
    /// # Example
    /// ```
    /// use gear_math::Gear;
    /// use gear_math::chain::PinFriction;
    /// let loss = |ring, sprocket| -> Result<_, gear_math::OutOfLimits> {
    ///     Ok(PinFriction::USUAL.loss(Gear::new(ring, sprocket)?))
    /// };
    /// assert!((loss(44, 11)? - loss(48, 12)? - 0.0008).abs() < 1e-4, "the same ratio on larger wheels");
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    #[must_use]
    pub fn loss(self, gear: Gear) -> f64 {
        let bends = 1.0 / f64::from(gear.ring.teeth()) + 1.0 / f64::from(gear.sprocket.teeth());
        self.mm() * TAU / ChainPitch::BICYCLE.mm() * bends
    }
}
