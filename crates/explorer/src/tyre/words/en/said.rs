//! Sentences of gear-math on tyre, rim and pressure, which it has in English.

use crate::units::{masses, retold};
use gear_math::wheel::{
    self, FloorAboveCeiling, PressureAdvice, PressureCaution, PressureCeiling, PressureFloor, RimCaution,
    TyreFitError, WidthAccuracy,
};
use std::fmt::Display;

/// Room to leave round the tyre.
pub(crate) const CLEARANCE_CHECK: &str = wheel::CLEARANCE_CHECK;
/// How a tyre is measured.
pub(crate) const HOW_TO_MEASURE: &str = wheel::HOW_TO_MEASURE;

/// Why a tyre does not go on a rim.
pub(crate) fn no_fit(error: &TyreFitError) -> String {
    told(error)
}

/// What speaks against a tyre on a rim.
pub(crate) fn rim_caution(caution: RimCaution) -> String {
    told(&caution)
}

/// What to make of the pressures.
pub(crate) fn caution(caution: PressureCaution) -> String {
    told(&caution)
}

/// Why no pressure suits.
pub(crate) fn no_pressure(conflict: &FloorAboveCeiling) -> String {
    told(conflict)
}

/// What moved the pressures away from the formula.
pub(crate) fn limits(advice: &PressureAdvice) -> Vec<String> {
    advice.limits_told().into_iter().map(|limit| retold(limit, &[masses()])).collect()
}

/// The lowest pressure, and why it is that.
pub(crate) fn floor(floor: &PressureFloor) -> String {
    told(floor)
}

/// The highest pressure, and why it is that.
pub(crate) fn ceiling(ceiling: &PressureCeiling) -> String {
    told(ceiling)
}

/// How far a computed width may be off.
pub(crate) fn accuracy(accuracy: WidthAccuracy) -> String {
    told(&accuracy)
}

/// Widths of tyres and rims are in millimetres everywhere.
fn told(words: &dyn Display) -> String {
    retold(words.to_string(), &[masses()])
}
