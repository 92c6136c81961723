//! The entry points of the lap's section and of its workers, for `www`.

use crate::lap::errand::Errand;
use crate::lap::even_errand::EvenErrand;
use crate::lap::found::{ROW, row};
use crate::lap::from_scripts::{CourseNote, FileFault, SearchNote};
use crate::lap::notes;
use crate::lap::pictures::profile;
use crate::lap::search::Hunt;
use crate::lap::sent_track;
use crate::page::desk::Desk;
use crate::page::entry::{answer, at_desk, report, seen};
use crate::page::scenario::Scenario;
use crate::side::Side;
use gear_math::course::{Draws, TimeBand};
use std::cell::RefCell;
use wasm_bindgen::prelude::*;

thread_local! {
    /// A worker's part of the search.
    static HUNT: RefCell<Option<Hunt>> = const { RefCell::new(None) };
    /// What a worker is to do for the lap.
    static ERRAND: RefCell<Option<Errand>> = const { RefCell::new(None) };
    /// The same at an even power.
    static EVEN: RefCell<Option<EvenErrand>> = const { RefCell::new(None) };
}

/// Works the lap out, coarse at first, then until it has settled; null when there is nothing new.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(unchecked_return_type = "Update | null")]
pub fn lap(settled: bool) -> Result<JsValue, JsError> {
    at_desk(|desk| desk.lap(settled)).map_or(Ok(JsValue::NULL), answer)
}

/// Rides once more of what an even lap takes to settle; whether there may be more to ride before [`lap`] tells it settled.
#[wasm_bindgen(js_name = settleOn)]
#[must_use]
pub fn settle_on() -> bool {
    at_desk(Desk::settle_on)
}

/// Rows of the course whose lap workers are to ride on a reserve; nothing where it is ridden at an even power or nothing is left to do.
#[wasm_bindgen(js_name = lapOrder)]
#[must_use]
pub fn lap_order() -> Option<String> {
    at_desk(Desk::lap_order)
}

/// Rows of the course whose laps workers are to ride at an even power; nothing where there is a reserve or nothing is left to do.
#[wasm_bindgen(js_name = evenOrder)]
#[must_use]
pub fn even_order() -> Option<String> {
    at_desk(Desk::even_order)
}

/// In a worker: opens a link and prepares its laps at an even power round the course of these rows; false where there are none to ride.
#[wasm_bindgen(js_name = evenErrand)]
#[must_use]
pub fn even_errand(link: &str, rows: &str) -> bool {
    EVEN.set(Scenario::of_link(link).even_errand(rows));
    EVEN.with_borrow(Option::is_some)
}

/// In a worker: rides once more; whether there may be more to ride.
#[wasm_bindgen(js_name = evenOn)]
#[must_use]
pub fn even_on() -> bool {
    EVEN.with_borrow_mut(|errand| errand.as_mut().is_some_and(EvenErrand::go_on))
}

/// In a worker: both laps, for [`take_even`]; empty where there are none.
#[wasm_bindgen(js_name = evenLaps)]
#[must_use]
pub fn even_laps() -> Vec<f64> {
    EVEN.take().map(EvenErrand::numbers).unwrap_or_default()
}

/// Takes what [`even_laps`] found; null where it is of something else.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = takeEven, unchecked_return_type = "Update | null")]
pub fn take_even(numbers: &[f64]) -> Result<JsValue, JsError> {
    at_desk(|desk| desk.take_even(numbers)).map_or(Ok(JsValue::NULL), answer)
}

/// In a worker: opens a link and prepares the lap round the course of these rows; false where there is none to ride.
#[wasm_bindgen(js_name = lapErrand)]
#[must_use]
pub fn lap_errand(link: &str, rows: &str) -> bool {
    let errand = Scenario::of_link(link).errand(rows);
    ERRAND.set(errand);
    ERRAND.with_borrow(Option::is_some)
}

/// In a worker: something of the lap that is prepared; nothing where there is none.
pub(crate) fn at_errand<T>(of: impl FnOnce(&Errand) -> T) -> Option<T> {
    ERRAND.with_borrow(|errand| errand.as_ref().map(of))
}

/// In a worker: the plan of A or B.
#[wasm_bindgen(js_name = lapPlan)]
#[must_use]
pub fn lap_plan(of_b: bool) -> Vec<f64> {
    let side = if of_b { Side::B } else { Side::A };
    at_errand(|errand| errand.plan(side)).unwrap_or_default()
}

/// In a worker: the lap with everything doubtful moved, in the way of this number.
#[wasm_bindgen(js_name = lapDraw)]
#[must_use]
pub fn lap_draw(number: usize) -> Vec<f64> {
    at_errand(|errand| errand.draw(number)).unwrap_or_default()
}

/// How many such ways there are.
#[wasm_bindgen(js_name = lapDraws)]
#[must_use]
pub fn lap_draws() -> usize {
    Draws::COUNT
}

/// Takes the plans that workers found; null where they are of something else.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = takePlans, unchecked_return_type = "Update | null")]
pub fn take_plans(a: &[f64], b: &[f64]) -> Result<JsValue, JsError> {
    at_desk(|desk| desk.take_plans([a, b])).map_or(Ok(JsValue::NULL), answer)
}

/// Takes draws that workers rode, one behind another; null where they are of something else.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = takeDraws, unchecked_return_type = "Update | null")]
pub fn take_draws(numbers: &[f64]) -> Result<JsValue, JsError> {
    at_desk(|desk| desk.take_draws(numbers)).map_or(Ok(JsValue::NULL), answer)
}

/// In a worker: reads the text of a GPX file, for [`take_track`].
#[wasm_bindgen(js_name = readTrack)]
#[must_use]
pub fn read_track(text: &str) -> Vec<f64> {
    sent_track::read(text)
}

/// Takes what [`read_track`] has read of a GPX file.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = takeTrack, unchecked_return_type = "Update")]
pub fn take_track(name: &str, numbers: Vec<f64>) -> Result<JsValue, JsError> {
    answer(at_desk(|desk| desk.take_track(name, numbers)))
}

/// Takes a course that was kept or saved, as rows of a sketch.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[expect(
    clippy::needless_pass_by_value,
    reason = "a text that may be missing comes from JavaScript as its own"
)]
#[wasm_bindgen(js_name = takeRows, unchecked_return_type = "Update")]
pub fn take_rows(
    name: &str,
    rows: &str,
    smoothing_m: Option<f64>,
    file: Option<String>,
) -> Result<JsValue, JsError> {
    answer(at_desk(|desk| desk.take_rows(name, rows, smoothing_m, file.as_deref())))
}

/// The band over a stretch of the lap on its picture, as “310; 355”; null where that cannot be read.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(unchecked_return_type = "Spot | null")]
pub fn stretch(width: f64, height: f64, ends: &str) -> Result<JsValue, JsError> {
    let report = report();
    let _in_force = report.units.enter();
    let band = profile::stretch(&report.lap_section(), (width, height), ends);
    band.map_or(Ok(JsValue::NULL), |band| seen(&band, 0, band.text.clone()))
}

/// Paints a stretch of the course that is ridden, as “310; 355; mud”, or says why not.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = paintStretch, unchecked_return_type = "Update")]
pub fn paint_stretch(stroke: &str) -> Result<JsValue, JsError> {
    answer(at_desk(|desk| desk.paint(stroke)))
}

/// Says why a file or a kept course is not taken.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(unchecked_return_type = "Update")]
pub fn refuse(name: &str, why: FileFault) -> Result<JsValue, JsError> {
    answer(at_desk(|desk| desk.refuse(name, why)))
}

/// What became of a course of this name that was to be kept or saved.
#[wasm_bindgen(js_name = courseNote)]
#[must_use]
pub fn course_note(note: CourseNote, name: &str) -> String {
    note.said(name)
}

/// How it stands with a search.
#[wasm_bindgen(js_name = searchNote)]
#[must_use]
pub fn search_note(note: SearchNote) -> String {
    note.said().to_owned()
}

/// How far a search is, and for how many seconds it will go on.
#[wasm_bindgen(js_name = searchLeft)]
#[must_use]
pub fn search_left(tried: usize, total: usize, seconds: f64) -> String {
    notes::search_left(tried, total, seconds)
}

/// Name of the course that is ridden; nothing while its file is still to be chosen.
#[wasm_bindgen(js_name = courseName)]
#[must_use]
pub fn course_name() -> Option<String> {
    at_desk(|desk| desk.course_name().map(str::to_owned))
}

/// Name and rows of the course that is ridden; nothing while its file is still to be chosen.
#[wasm_bindgen]
#[must_use]
pub fn course() -> Vec<String> {
    at_desk(|desk| desk.course()).map_or_else(Vec::new, |(name, rows)| vec![name, rows])
}

/// What the course that is ridden was smoothed over, in metres, if it is from a file.
#[wasm_bindgen(js_name = smoothingM)]
#[must_use]
pub fn smoothing_m() -> Option<f64> {
    at_desk(|desk| desk.smoothing_m())
}

/// In a worker: prepares its part of the search round the course of these rows; false where there is nothing to ride.
#[wasm_bindgen]
#[must_use]
pub fn hunt(rows: &str, worker: usize, workers: usize) -> bool {
    let hunt = at_desk(|desk| desk.hunt(rows, worker, workers));
    HUNT.set(hunt);
    HUNT.with_borrow(Option::is_some)
}

/// In a worker: rows of the next few set-ups; empty when all are done.
#[wasm_bindgen(js_name = huntOn)]
#[must_use]
pub fn hunt_on(count: usize) -> Vec<f64> {
    let found = HUNT.with_borrow_mut(|hunt| hunt.as_mut().map(|hunt| hunt.advance(count)));
    found.unwrap_or_default().iter().flat_map(row).collect()
}

/// Numbers in each row of [`hunt_on`].
#[wasm_bindgen(js_name = rowLength)]
#[must_use]
pub fn row_length() -> usize {
    ROW
}

/// In a worker: rows of the set-ups of these numbers, planned in full.
#[wasm_bindgen(js_name = huntPlans)]
#[must_use]
pub fn hunt_plans(numbers: &[usize]) -> Vec<f64> {
    let planned = HUNT.with_borrow(|hunt| hunt.as_ref().map(|hunt| hunt.plans(numbers)));
    planned.unwrap_or_default().iter().flat_map(row).collect()
}

/// In a worker: for each of the set-ups of these numbers, with their times, what it gains over the first, as low, best and high
/// seconds.
#[wasm_bindgen]
#[must_use]
pub fn finals(numbers: &[usize], times_s: &[f64]) -> Vec<f64> {
    let bands = HUNT.with_borrow(|hunt| hunt.as_ref().map(|hunt| hunt.finals(numbers, times_s)));
    bands.unwrap_or_default().iter().flat_map(|band| [band.low_s, band.time_s, band.high_s]).collect()
}

/// Begins a search on the page: the answer, and how many set-ups will be tried.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = beginSearch, unchecked_return_type = "[Update, number]")]
pub fn begin_search() -> Result<Vec<JsValue>, JsError> {
    let (total, update) = at_desk(Desk::search);
    Ok(vec![answer(update)?, (total as f64).into()])
}

/// Takes rows that workers found.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = takeFound, unchecked_return_type = "Update")]
pub fn take_found(rows: &[f64]) -> Result<JsValue, JsError> {
    answer(at_desk(|desk| desk.take_found(rows)))
}

/// Numbers of the set-ups to be planned in full; none where all have been.
#[wasm_bindgen(js_name = toPlan)]
#[must_use]
pub fn to_plan() -> Vec<usize> {
    at_desk(|desk| desk.to_plan())
}

/// Times of the set-ups of these numbers, in seconds.
#[wasm_bindgen(js_name = foundTimes)]
#[must_use]
pub fn found_times(numbers: &[usize]) -> Vec<f64> {
    at_desk(|desk| desk.found_times_s(numbers))
}

/// Numbers of the set-ups to be ridden once more.
#[wasm_bindgen]
#[must_use]
pub fn leading() -> Vec<usize> {
    at_desk(|desk| desk.leading())
}

/// Ends the search with the answer of [`finals`]; an empty one when it was cancelled.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = endSearch, unchecked_return_type = "Update")]
pub fn end_search(finals: &[f64]) -> Result<JsValue, JsError> {
    let bands = finals.chunks_exact(3).map(|it| TimeBand { low_s: it[0], time_s: it[1], high_s: it[2] });
    let bands = bands.collect();
    answer(at_desk(|desk| desk.end_search(bands)))
}
