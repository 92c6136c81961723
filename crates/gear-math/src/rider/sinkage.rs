//! How deep feet sink, as a way to type what soft ground costs them.

use crate::quantity::{Limits, OutOfLimits, measured};
use crate::rider::quantity::FootFactor;

measured! {
    /// Depth of a footprint, in centimetres.
    Sinkage(cm): "depth of a footprint", "cm", 0.0 ..= 40.0;
}

impl Sinkage {
    /// Energy cost of walking so deep over that of hard ground, on the level.
    ///
    /// # Formula
    /// S = 1.30 + 0.082 z. Pandolf, Haisman & Goldman (1976, from memory), measured walking in snow; of running, and of mud, no
    /// measurement is known.
    ///
    /// # Example
    /// ```
    /// use gear_math::Surface;
    /// use gear_math::rider::{FootFactor, Sinkage};
    /// let deep = Sinkage::new(6.0)?;
    /// assert!((deep.terrain_factor() - 1.792).abs() < 1e-9);
    /// let mud = Surface::Mud.ground().foot;
    /// assert_eq!(mud.sunk(deep), FootFactor::new(1.792)?);
    /// assert_eq!(mud.sunk(Sinkage::new(1.0)?), mud, "never below that of the ground");
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    #[must_use]
    pub fn terrain_factor(self) -> f64 {
        1.3 + 0.082 * self.cm()
    }
}

impl FootFactor {
    /// That of a ground on which feet sink so deep: by the depth, but not below this one, and not above the limit of what can be
    /// typed.
    #[must_use]
    pub fn sunk(self, depth: Sinkage) -> Self {
        Self::nearest(depth.terrain_factor().max(self.value()))
    }
}
