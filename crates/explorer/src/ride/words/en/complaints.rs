//! What to type instead of a power that cannot be, and what goes on in its place.

use crate::bench::words::complaints::sentence;
use crate::number::with_unit;
use crate::units;
use gear_math::Power;
use gear_math::rider::{BodyMass, PeakTooLow, PowerBelowStanding, PowerDemand};

/// A power that does not carry the rider.
pub(crate) fn power(error: PowerBelowStanding) -> String {
    sentence(&error.to_string())
}

/// The power that goes on in its place, with the body it carries.
pub(crate) fn power_and_mass(power: Power, body: BodyMass) -> String {
    format!("{}\u{a0}W at {}", power.watts(), units::mass(body.kg()))
}

/// A peak power from which the lasting power is had at no cadence.
pub(crate) fn peak_power(lasting: PowerDemand, power: Power) -> String {
    let (lasting, power) = (with_unit(lasting.watts(), 0, "W"), with_unit(power.watts(), 0, "W"));
    format!(
        "Legs of this peak power give {lasting} for that long, less than your {power}: type a higher one, leave it empty, or choose a shorter effort above."
    )
}

/// A peak power no higher than the power.
pub(crate) fn peak_too_low(error: PeakTooLow) -> String {
    sentence(&error.to_string())
}

/// What goes on in the place of a field that may be empty.
pub(crate) fn estimated(value: f64, unit: &str) -> String {
    format!("an estimate of {}", with_unit(value, 0, unit))
}
