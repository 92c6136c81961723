//! The page of Remount: state, views, charts and bindings. Every number comes from `gear_math`.

use wasm_bindgen::prelude::wasm_bindgen;

/// Says whether a cadence can be computed with.
#[cfg(feature = "page")]
#[wasm_bindgen]
#[must_use]
pub fn answer(cadence: &str) -> String {
    match cadence.parse().map(gear_math::Cadence::new) {
        Ok(Ok(cadence)) => format!("{} rpm", cadence.rpm()),
        Ok(Err(error)) => error.to_string(),
        Err(_) => "type a number".to_owned(),
    }
}

/// The allowed cadences.
#[cfg(feature = "api")]
#[wasm_bindgen(js_name = cadenceRange)]
#[must_use]
pub fn cadence_range() -> String {
    gear_math::Cadence::LIMITS.range()
}
