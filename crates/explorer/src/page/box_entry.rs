//! The entry points of the box of parts and of its workers, for `www`.

use crate::page::desk::Desk;
use crate::page::entry::{answer, at_desk, pair, report};
use crate::page::scenario::Scenario;
use crate::parts::errand::BoxErrand;
use crate::parts::found::ROW;
use crate::parts::notes;
use crate::parts::offer::Offer;
use gear_math::course::TimeBand;
use js_sys::{Array, Float64Array};
use std::cell::RefCell;
use wasm_bindgen::prelude::*;

thread_local! {
    /// What a worker does for a box, and by which link and rows.
    static ERRAND: RefCell<Option<(String, String, BoxErrand)>> = const { RefCell::new(None) };
}

/// In a worker: opens a link and prepares its box for the course of these rows, unless that was done; false where there is nothing
/// to ride.
#[wasm_bindgen(js_name = boxErrand)]
#[must_use]
pub fn box_errand(link: &str, rows: &str) -> bool {
    ERRAND.with_borrow_mut(|known| {
        if !known.as_ref().is_some_and(|it| it.0 == link && it.1 == rows) {
            let errand = Scenario::of_link(link).box_errand(rows);
            *known = errand.map(|it| (link.to_owned(), rows.to_owned(), it));
        }
        if let Some((_, _, errand)) = known {
            errand.begin_anew();
        }
        known.is_some()
    })
}

fn at_errand<T: Default>(of: impl FnOnce(&mut BoxErrand) -> T) -> T {
    ERRAND.with_borrow_mut(|errand| errand.as_mut().map(|it| of(&mut it.2))).unwrap_or_default()
}

/// In a worker: the lap of a number by a first look or in full.
#[wasm_bindgen(js_name = boxLap)]
#[must_use]
pub fn box_lap(number: usize, in_full: bool) -> Vec<f64> {
    at_errand(|errand| errand.ride(number, in_full))
}

/// In a worker: what the laps of these numbers, with their times, gain over the first, as low, best and high seconds.
#[wasm_bindgen(js_name = boxGains)]
#[must_use]
pub fn box_gains(numbers: &[usize], times_s: &[f64]) -> Vec<f64> {
    let bands = at_errand(|errand| errand.gains(numbers, times_s));
    bands.iter().flat_map(|it| [it.low_s, it.time_s, it.high_s]).collect()
}

/// In a worker: the lap of a number in full on every tyre of the box, in seconds.
#[wasm_bindgen(js_name = boxOnTyres)]
#[must_use]
pub fn box_on_tyres(number: usize) -> Vec<f64> {
    at_errand(|errand| errand.on_tyres(number))
}

/// In a worker: rides the laps of these numbers on another day; whether there is more to do.
#[wasm_bindgen(js_name = boxDoubt)]
#[must_use]
pub fn box_doubt(numbers: &[usize]) -> bool {
    at_errand(|errand| errand.doubt(numbers))
}

/// In a worker: what each of them is behind the quickest under every condition, in seconds.
#[wasm_bindgen(js_name = boxRegrets)]
#[must_use]
pub fn box_regrets() -> Vec<f64> {
    at_errand(BoxErrand::regrets)
}

/// In a worker: looks on for what is worth buying beside the lap of a number, with its time; whether there is more to do.
#[wasm_bindgen(js_name = boxShop)]
#[must_use]
pub fn box_shop(number: usize, time_s: f64, count: usize) -> bool {
    at_errand(|errand| errand.shop(Some((number, time_s)), count))
}

/// In a worker: what is worth buying, in words and numbers.
#[wasm_bindgen(js_name = boxOffers, unchecked_return_type = "[string, Float64Array][]")]
#[must_use]
pub fn box_offers() -> Array {
    let handed = |it: &Offer| pair(&it.said, Float64Array::from(&it.numbers()[..]));
    at_errand(BoxErrand::offers).iter().map(handed).collect()
}

/// In a worker: another course that counts for what is regretted, by its rows and its weight.
#[wasm_bindgen(js_name = boxCourse)]
pub fn box_course(rows: &str, weight: f64) {
    at_errand(|errand| errand.add_course(rows, weight));
}

/// Begins with the box as it is, and with kept courses that count by their weights.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = beginBox, unchecked_return_type = "Update")]
pub fn begin_box(names: Vec<String>, weights: &[f64]) -> Result<JsValue, JsError> {
    let courses = names.into_iter().zip(weights.iter().copied()).collect();
    answer(at_desk(|desk| desk.begin_box(courses)))
}

/// Tries the next few combinations; whether there are more.
#[wasm_bindgen(js_name = sortBox)]
#[must_use]
pub fn sort_box(count: usize) -> bool {
    at_desk(|desk| desk.sort_box(count))
}

/// Numbers of the laps to be ridden, and whether in full.
#[wasm_bindgen(js_name = boxToRide, unchecked_return_type = "[number[], boolean]")]
#[must_use]
pub fn box_to_ride() -> Array {
    let (numbers, in_full) = at_desk(|desk| desk.box_to_ride());
    let numbers: Array = numbers.iter().map(|&it| JsValue::from_f64(it as f64)).collect();
    Array::of2(&numbers, &in_full.into())
}

/// How far it is, in words; pieces of work that are done, and how many there are.
#[wasm_bindgen(js_name = boxLeft, unchecked_return_type = "[string, number, number]")]
#[must_use]
pub fn box_left(passed_s: f64) -> Array {
    let [done, total] = at_desk(|desk| desk.box_progress());
    let said = notes::left([done, total], passed_s);
    Array::of3(&said.into(), &(done as f64).into(), &(total as f64).into())
}

/// Numbers in each row of [`box_lap`].
#[wasm_bindgen(js_name = boxRow)]
#[must_use]
pub fn box_row() -> usize {
    ROW
}

/// Takes what was found of laps.
#[wasm_bindgen(js_name = takeBox)]
pub fn take_box(rows: &[f64]) {
    at_desk(|desk| desk.take_box(rows));
}

/// What was taken since, shown.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = showBox, unchecked_return_type = "Update")]
pub fn show_box() -> Result<JsValue, JsError> {
    answer(at_desk(Desk::show_box))
}

/// Numbers and times of the laps that are ridden once more, and numbers of those whose regret is asked for.
#[wasm_bindgen(js_name = boxLeading, unchecked_return_type = "[number[], number[], number[]]")]
#[must_use]
pub fn box_leading() -> Array {
    let (leading, planned) = at_desk(|desk| (desk.box_leading(), desk.box_planned()));
    let array = |all: &mut dyn Iterator<Item = f64>| -> Array { all.map(JsValue::from_f64).collect() };
    Array::of3(
        &array(&mut leading.iter().map(|it| it.0 as f64)),
        &array(&mut leading.iter().map(|it| it.1)),
        &array(&mut planned.iter().map(|&it| it as f64)),
    )
}

/// Takes what the leading ones gain over the first, as [`box_gains`] has it.
#[wasm_bindgen(js_name = takeBoxGains)]
pub fn take_box_gains(gains: &[f64]) {
    let bands = gains.chunks_exact(3).map(|it| TimeBand { low_s: it[0], time_s: it[1], high_s: it[2] });
    at_desk(|desk| desk.take_box_bands(bands.collect()));
}

/// Takes the time of the quickest on every tyre of the box, as [`box_on_tyres`] has it.
#[wasm_bindgen(js_name = takeBoxTyres)]
pub fn take_box_tyres(times_s: Vec<f64>) {
    at_desk(|desk| desk.take_box_tyres(times_s));
}

/// Takes what the planned ones are behind under every condition.
#[wasm_bindgen(js_name = takeBoxRegrets)]
pub fn take_box_regrets(behind_s: &[f64]) {
    at_desk(|desk| desk.take_box_regrets(behind_s));
}

/// Takes what is worth buying, in words and numbers.
#[wasm_bindgen(js_name = takeBoxOffers)]
pub fn take_box_offers(said: Vec<String>, numbers: &[f64]) {
    let offers = said.into_iter().zip(numbers.chunks_exact(Offer::NUMBERS));
    let offers = offers.filter_map(|(said, numbers)| Offer::from_parts(said, numbers)).collect();
    at_desk(|desk| desk.take_box_offers(offers));
}

/// Ends it, whatever was found.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = endBox, unchecked_return_type = "Update")]
pub fn end_box() -> Result<JsValue, JsError> {
    answer(at_desk(Desk::end_box))
}

/// The table as comma-separated values; nothing before there is one.
#[wasm_bindgen(js_name = boxCsv)]
#[must_use]
pub fn box_csv() -> Option<String> {
    let report = report();
    let _in_force = report.units.enter();
    report.box_found.as_ref().and_then(|found| found.csv())
}
