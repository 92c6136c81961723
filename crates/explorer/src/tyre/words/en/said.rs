//! Sentences of gear-math on tyre, rim and pressure, which it has in English.

use gear_math::wheel::{
    self, FloorAboveCeiling, PressureAdvice, PressureCaution, PressureCeiling, PressureFloor, RimCaution,
    TyreFitError, WidthAccuracy,
};

/// Room to leave round the tyre.
pub(crate) const CLEARANCE_CHECK: &str = wheel::CLEARANCE_CHECK;
/// How a tyre is measured.
pub(crate) const HOW_TO_MEASURE: &str = wheel::HOW_TO_MEASURE;

/// Why a tyre does not go on a rim.
pub(crate) fn no_fit(error: &TyreFitError) -> String {
    error.to_string()
}

/// What speaks against a tyre on a rim.
pub(crate) fn rim_caution(caution: RimCaution) -> String {
    caution.to_string()
}

/// What to make of the pressures.
pub(crate) fn caution(caution: PressureCaution) -> String {
    caution.to_string()
}

/// Why no pressure suits.
pub(crate) fn no_pressure(conflict: &FloorAboveCeiling) -> String {
    conflict.to_string()
}

/// What moved the pressures away from the formula.
pub(crate) fn limits(advice: &PressureAdvice) -> Vec<String> {
    advice.limits_told()
}

/// The lowest pressure, and why it is that.
pub(crate) fn floor(floor: &PressureFloor) -> String {
    floor.to_string()
}

/// The highest pressure, and why it is that.
pub(crate) fn ceiling(ceiling: &PressureCeiling) -> String {
    ceiling.to_string()
}

/// How far a computed width may be off.
pub(crate) fn accuracy(accuracy: WidthAccuracy) -> String {
    accuracy.to_string()
}
