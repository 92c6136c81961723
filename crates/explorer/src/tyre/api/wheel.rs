//! The wheel from its tyre's size.

use crate::api::objects::{output, thrown};
use gear_math::{TyreSize, Wheel};
use serde::{Deserialize, Serialize};
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// What `wheel` takes.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct WheelInput {
    /// ISO 5775 size, width first, such as 33-622.
    designation: String,
}

/// What `wheel` gives.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct WheelFigures {
    /// The size as ISO 5775 writes it.
    designation: String,
    circumference_mm: f64,
    diameter_mm: f64,
    /// How far a tyre may roll from this: less below 28 mm, a road tyre, than at the pressures of cross.
    uncertainty_percent: f64,
}

/// Circumference and diameter that a tyre's size gives, with how far they may be off.
///
/// # Errors
/// When the size is none, or names several wheels.
#[wasm_bindgen(unchecked_return_type = "WheelFigures")]
pub fn wheel(#[wasm_bindgen(unchecked_param_type = "WheelInput")] tyre: JsValue) -> Result<JsValue, JsError> {
    let WheelInput { designation } = crate::api::objects::input(tyre)?;
    let tyre: TyreSize = designation.parse().map_err(thrown)?;
    let estimate = Wheel::by_size(tyre, None).estimate();
    output(&WheelFigures {
        designation: tyre.to_string(),
        circumference_mm: estimate.circumference.mm(),
        diameter_mm: estimate.circumference.diameter().mm(),
        uncertainty_percent: estimate.error.percent(),
    })
}
