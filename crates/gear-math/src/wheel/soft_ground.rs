//! How much easier a wide tyre rolls where it sinks in.

use crate::quantity::{Limits, OutOfLimits, derived, measured};
use crate::wheel::quantity::{MountedWidth, WheelLoad, WheelRadius};

measured! {
    /// Pressure that a standard cone needs to be pushed into the ground, in kPa. Limits: estimate, from ground that bears
    /// nobody to a firm field.
    ConeIndex(kpa): "cone index", "kPa", 50.0 ..= 5000.0;
}

derived! {
    /// By what a tyre's width multiplies the rolling resistance of a 33 mm tyre: 1 where it does not count.
    WidthFactor(value);
}

/// A wheel on ground that it sinks into.
///
/// # Formula
/// Rolling resistance over load = 1.2 ÷ Cn + 0.04, Cn = CI b d ÷ W: cone index, width, diameter, load. Wismer & Luth,
/// *Off-road traction prediction for wheeled vehicles*, *J Terramechanics* 10 (1973) and *Trans ASAE* 17 (1974), quoted
/// from memory. Meant for tractor tyres, so only the ratio between two widths is used for a bicycle's.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SinkingWheel {
    /// How firm the ground is.
    pub cone_index: ConeIndex,
    /// Width of the tyre.
    pub width: MountedWidth,
    /// Axle to the outside of the tyre.
    pub outer_radius: WheelRadius,
    /// Load on the wheel.
    pub load: WheelLoad,
}

impl SinkingWheel {
    /// The number Cn, without unit: high on firm ground and under a large, lightly loaded wheel.
    ///
    /// # Example
    /// ```
    /// use gear_math::wheel::{ConeIndex, MountedWidth, SinkingWheel, WheelLoad, WheelRadius};
    /// let wheel = SinkingWheel {
    ///     cone_index: ConeIndex::new(300.0)?,
    ///     width: MountedWidth::new(33.0)?,
    ///     outer_radius: WheelRadius::new(345.0)?,
    ///     load: WheelLoad::new(400.0)?,
    /// };
    /// assert!((wheel.number() - 17.08).abs() < 0.01);
    /// assert!((wheel.rolling() - 0.110).abs() < 0.001);
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    #[must_use]
    pub fn number(&self) -> f64 {
        let area_m2 = self.width.mm() * 2.0 * self.outer_radius.mm() / 1e6;
        1000.0 * self.cone_index.kpa() * area_m2 / self.load.newtons()
    }

    /// Rolling resistance over load.
    #[must_use]
    pub fn rolling(&self) -> f64 {
        1.2 / self.number() + 0.04
    }

    /// A wheel of 690 mm under half of 80 kg on the firmer end of rideable mud, 300 to 600 kPa, where width matters least
    /// (estimates). Load and diameter change the ratio of two widths by far less than it is in doubt.
    const fn usual(width: MountedWidth) -> Self {
        Self {
            cone_index: ConeIndex(600.0),
            width,
            outer_radius: WheelRadius::computed(345.0),
            load: WheelLoad::computed(400.0),
        }
    }
}

impl WidthFactor {
    /// Where the width does not count, or is in the figure already.
    pub const NONE: Self = Self::new(1.0);

    /// On mud and loose sand, against a tyre of 33 mm: 0.92 for 40 mm (estimate).
    #[must_use]
    pub fn on_soft_ground(width: MountedWidth) -> Self {
        let rolling = |width| SinkingWheel::usual(width).rolling();
        Self::new(rolling(width) / rolling(MountedWidth::CROSS))
    }

    /// What the figure with this factor in it is multiplied by when width has no effect, and when it has twice as much: the
    /// stretch in which the truth is thought to lie (estimate). The lower comes first.
    #[must_use]
    pub fn doubt(self) -> [f64; 2] {
        let factor = self.value();
        let (none, twice) = (1.0 / factor, (2.0 * factor - 1.0) / factor);
        [none.min(twice), none.max(twice)]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn width_counts_from_33_mm_and_is_in_doubt_from_nothing_to_twice() {
        let of = |mm| WidthFactor::on_soft_ground(MountedWidth::new(mm).unwrap());
        assert_eq!(of(33.0), WidthFactor::NONE);
        assert!(of(33.0).doubt().iter().all(|doubt| (doubt - 1.0).abs() < 1e-12));
        let wide = of(40.0);
        assert!((wide.value() - 0.918).abs() < 0.001);
        let [twice, none] = wide.doubt().map(|doubt| doubt * wide.value());
        assert!((none - 1.0).abs() < 1e-12 && (1.0 - twice - 2.0 * (1.0 - wide.value())).abs() < 1e-12);
    }
}
