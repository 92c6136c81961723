//! The roll-out limit of a race.

use gear_math::gears::RollOutLimit;

pub(crate) const SET_UP_AND_RING: &str = "Set-up and ring";
pub(crate) const PASS: &str = "Pass";
pub(crate) const TOO_CLOSE_MEASURE: &str = "Too close to call: measure";
pub(crate) const TOO_LONG: &str = "Too long, to be blocked";
pub(crate) const LIMIT: &str = "Roll-out limit";
pub(crate) const TO_BE_BLOCKED: &str = "To be blocked";
pub(crate) const TOO_CLOSE: &str = "Too close to call";
/// Where no sprocket is one of those.
pub(crate) const NONE: &str = "none";
pub(crate) const MEASURED_DECIDES: &str = RollOutLimit::MEASURED_DECIDES;

/// Title of the table.
pub(crate) fn title(limit: &str) -> String {
    format!("Roll-out limit of {limit}")
}

/// Sprockets on a ring.
pub(crate) fn on_ring(ring: &str, sprockets: &str) -> String {
    format!("on {ring}: {sprockets}")
}
