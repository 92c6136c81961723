//! What may be left out.

use crate::api::objects::thrown;
use gear_math::OutOfLimits;
use wasm_bindgen::prelude::*;

/// A typed value, or the default where there is none.
pub(crate) fn given<T>(
    value: Option<f64>,
    new: fn(f64) -> Result<T, OutOfLimits>,
    default: T,
) -> Result<T, JsError> {
    value.map_or(Ok(default), |value| new(value).map_err(thrown))
}
