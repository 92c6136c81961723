//! The ground a tyre stands on.

use crate::wheel::quantity::{Pressure, WheelLoad};

/// Area of a tyre on firm ground, in square centimetres: `A = F ÷ p`, that is `F[N] ÷ (10 p[bar])`.
///
/// The casing carries part of the load itself, so the true patch is about a tenth smaller (estimate).
///
/// # Example
/// ```
/// use gear_math::Pressure;
/// use gear_math::wheel::{WheelLoad, contact_area_cm2};
/// let area = contact_area_cm2(WheelLoad::new(360.0)?, Pressure::new(1.8)?);
/// assert_eq!(area, 20.0);
/// # Ok::<(), gear_math::OutOfLimits>(())
/// ```
#[must_use]
pub const fn contact_area_cm2(load: WheelLoad, pressure: Pressure) -> f64 {
    load.newtons() / (10.0 * pressure.bar())
}
