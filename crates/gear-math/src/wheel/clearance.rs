//! The room a wheel needs, which is more than it rolls on.

use crate::wheel::quantity::{WheelDiameter, WheelRadius};
use crate::wheel::tyre_size::TyreSize;

/// Narrower tyres than this stand higher than they are wide, in millimetres (older ISO 5775-1, as reprinted).
const TALL_BELOW_MM: f64 = 28.0;
/// By this much, in millimetres (older ISO 5775-1, as reprinted).
const TALL_BY_MM: f64 = 2.5;
/// Growth allowed for on the diameter, in millimetres. ISO 5775-1 has such an allowance; this figure fits a published
/// table of 26 sizes within 0.5 mm of circumference.
const ALLOWANCE_MM: f64 = 6.0;

/// What to look at where a wheel turns in frame and fork.
pub const CLEARANCE_CHECK: &str = "Turn both wheels: tyre, knobs and the mud they pick up need room above and at either side, in \
    frame and fork. The widest tyre that the frame’s and the fork’s makers name comes first.";

impl TyreSize {
    /// UCI 1.3.018: least and greatest diameter of a wheel over its tyre, in millimetres.
    pub const RACE_DIAMETER_MM: [f64; 2] = [550.0, 700.0];

    /// Nominal section height, in millimetres: the width, and 2.5 mm more below 28 mm.
    #[must_use]
    pub fn section_height_mm(self) -> f64 {
        let width = self.width.mm();
        if width < TALL_BELOW_MM { width + TALL_BY_MM } else { width }
    }

    /// Nominal diameter over the tyre: `BSD + 2 H`.
    #[must_use]
    pub fn nominal_diameter(self) -> WheelDiameter {
        WheelDiameter::new(f64::from(self.bead_seat.mm()) + 2.0 * self.section_height_mm())
    }

    /// Diameter to leave room for: `BSD + 2 H + 6`. For clearances only, never for roll-out.
    ///
    /// # Example
    /// ```
    /// use gear_math::TyreSize;
    /// use gear_math::wheel::{BeadSeat, NominalWidth};
    /// let tyre = TyreSize { width: NominalWidth::new(35.0)?, bead_seat: BeadSeat::ROAD };
    /// assert_eq!(tyre.clearance_diameter().mm(), 698.0);
    /// # Ok::<(), gear_math::OutOfLimits>(())
    /// ```
    #[must_use]
    pub fn clearance_diameter(self) -> WheelDiameter {
        WheelDiameter::new(self.nominal_diameter().mm() + ALLOWANCE_MM)
    }

    /// Axle to the outside of the unloaded tyre, the width taken as its height as in the roll-out.
    #[must_use]
    pub fn outer_radius(self) -> WheelRadius {
        WheelRadius::computed(self.diameter_mm() / 2.0)
    }

    /// Whether the nominal diameter lies within the 550 to 700 mm of UCI 1.3.018.
    #[must_use]
    pub fn is_race_diameter(self) -> bool {
        let [least, greatest] = Self::RACE_DIAMETER_MM;
        (least..=greatest).contains(&self.nominal_diameter().mm())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn races_end_between_38_and_40_on_622() {
        let passes = |size: &str| size.parse::<TyreSize>().unwrap().is_race_diameter();
        assert!(passes("33-622") && passes("38-622"));
        assert!(!passes("40-622") && !passes("33-451"));
    }
}
