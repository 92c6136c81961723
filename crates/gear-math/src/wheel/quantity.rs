//! Quantities that belong to the wheel alone.

use crate::Circumference;
use crate::quantity::{Limits, OutOfLimits, derived, measured};
use core::f64::consts::PI;

measured! {
    /// Width of a tyre as its designation has it, in millimetres. Limits: common practice, from the narrowest
    /// road tyre to a wide trail tyre.
    NominalWidth(mm): "tyre width", "mm", 18.0 ..= 65.0;
}

derived! {
    /// Diameter of the wheel over the tyre, in millimetres.
    WheelDiameter(mm);
    /// How far an estimated roll-out may be off either way, in percent of it.
    EstimateError(percent);
    /// By how much a measured roll-out exceeds the estimate, in percent of the estimate; negative when shorter.
    RollOutDeviation(percent);
}

impl Circumference {
    /// Diameter of the circle with this circumference.
    #[must_use]
    pub fn diameter(self) -> WheelDiameter {
        WheelDiameter::new(self.mm() / PI)
    }
}
