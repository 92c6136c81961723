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
}

impl Circumference {
    /// Diameter of the circle with this circumference.
    #[must_use]
    pub fn diameter(self) -> WheelDiameter {
        WheelDiameter::new(self.mm() / PI)
    }
}
