//! The entry points of the comparison of all bikes and of its workers, for `www`.

use crate::page::desk::Desk;
use crate::page::entry::{answer, at_desk, pair, report};
use crate::page::lap_entry::at_errand;
use crate::rack::compared::Compared;
use crate::side::Side;
use js_sys::Array;
use wasm_bindgen::prelude::*;

/// Lays out all bikes that are to be compared.
#[wasm_bindgen(js_name = beginBikes)]
pub fn begin_bikes() {
    at_desk(Desk::begin_bikes);
}

/// Works the next bike out; whether one is left then.
#[wasm_bindgen(js_name = workOutBike)]
#[must_use]
pub fn work_out_bike() -> bool {
    at_desk(Desk::work_out_bike)
}

/// Compares what stands on bench and rack; null when it is all as it was.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = compareBikes, unchecked_return_type = "Update | null")]
pub fn compare_bikes() -> Result<JsValue, JsError> {
    at_desk(Desk::compare_bikes).map_or(Ok(JsValue::NULL), answer)
}

/// The rows of the course, and the links of all bikes whose lap is to be ridden or drawn; null where none is.
#[wasm_bindgen(js_name = bikesOrder, unchecked_return_type = "[string, string[]] | null")]
#[must_use]
pub fn bikes_order() -> JsValue {
    let order = at_desk(|desk| desk.bikes_order());
    let handed = |(rows, links): (String, Vec<String>)| -> JsValue {
        let links: Array = links.iter().map(|link| JsValue::from_str(link)).collect();
        pair(&rows, links)
    };
    order.map_or(JsValue::NULL, handed)
}

/// Takes the time of a bike's lap, in seconds.
#[wasm_bindgen(js_name = takeBikeLap)]
pub fn take_bike_lap(link: &str, lap_s: f64) {
    at_desk(|desk| desk.take_bike_lap(link, lap_s));
}

/// Takes the times of a bike's lap in the draws, in seconds.
#[wasm_bindgen(js_name = takeBikeDraws)]
pub fn take_bike_draws(link: &str, drawn_s: &[f64]) {
    at_desk(|desk| desk.take_bike_draws(link, drawn_s));
}

/// What was taken since, shown.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = showBikes, unchecked_return_type = "Update")]
pub fn show_bikes() -> Result<JsValue, JsError> {
    answer(at_desk(Desk::refresh_bikes))
}

/// The table as comma-separated values; nothing before there is one.
#[wasm_bindgen(js_name = bikesCsv)]
#[must_use]
pub fn bikes_csv() -> Option<String> {
    let report = report();
    let _in_force = report.units.enter();
    report.bikes.as_ref().map(|bikes| bikes.csv())
}

/// In a worker: the time of the lap that is prepared, with A's bike, in seconds; nothing where there is none.
#[wasm_bindgen(js_name = bikeLap)]
#[must_use]
pub fn bike_lap() -> Option<f64> {
    at_errand(|errand| errand.lap_s(Side::A)).flatten()
}

/// In a worker: the same with everything doubtful moved, in the way of this number.
#[wasm_bindgen(js_name = bikeDraw)]
#[must_use]
pub fn bike_draw(number: usize) -> Option<f64> {
    at_errand(|errand| errand.drawn_s(number))
}

/// How many such ways a bike is drawn with.
#[wasm_bindgen(js_name = bikeDraws)]
#[must_use]
pub fn bike_draws() -> usize {
    Compared::DRAWS
}
