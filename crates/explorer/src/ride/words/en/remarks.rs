//! What fields say when they are in order and have more to say than their line of help.

use crate::number::{percent, plain, with_unit};
use crate::ride::inputs::RideInputs;
use crate::ride::words::terms::{basis, surface_name};
use crate::units;
use gear_math::Surface;
use gear_math::rider::{Basis, Level, PeakPower};

/// The power as estimated.
pub(crate) fn power(inputs: &RideInputs) -> String {
    let (level, body) =
        (units::per_mass(inputs.level.watts_per_kg(), 1), units::mass(inputs.rider.body.kg()));
    let (power, off) = (with_unit(inputs.rider.power.watts(), 0, "W"), percent(100.0 * Level::OFF, 0));
    format!("Estimate: {level} × {body} = {power}; one rider may be {off} away")
}

/// The peak power as estimated.
pub(crate) fn peak_power(inputs: &RideInputs) -> String {
    let (peak, per_kg) = (with_unit(inputs.peak.watts(), 0, "W"), units::per_mass(PeakPower::PER_KG, 0));
    let times = plain(PeakPower::OVER_POWER, 0);
    format!(
        "Estimate: {peak}, {per_kg} of body or {times} times the power, whichever is more; of one pedal turn in a sprint"
    )
}

/// The reserve as estimated.
pub(crate) fn reserve(inputs: &RideInputs) -> String {
    let (reserve, body) = (with_unit(inputs.reserve.kj(), 0, "kJ"), units::mass(inputs.rider.body.kg()));
    let power = with_unit(inputs.rider.power.watts(), 0, "W");
    format!(
        "Estimate: {reserve} for {body} at {power}, more for the heavier and the stronger; one rider may be a third away"
    )
}

/// The wind as a speed; `None` for none.
pub(crate) fn headwind(speed: Option<&str>) -> String {
    format!("{}; minus when it pushes", speed.unwrap_or("Still air"))
}

/// What an empty field of the ground stands for.
pub(crate) fn ground(surface: Surface, [low, typical, high]: [&str; 3], rests_on: Basis) -> String {
    let (name, basis) = (surface_name(surface), basis(rests_on));
    format!("Empty: {typical} for {name}, likely {low} to {high} ({basis})")
}
