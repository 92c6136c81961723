//! The entry points of a file with everything in it, for `www`.

use crate::bench::filed::FiledBench;
use crate::page::entry::{answer, at_desk};
use crate::page::file_desk::OpenedFile;
use crate::page::rack_entry::{list_of, listed};
use crate::rack::from_scripts::RackFileFault;
use js_sys::Array;
use wasm_bindgen::prelude::*;

/// The bench: fields that are the rider's with their texts, and those that are not.
#[wasm_bindgen(js_name = filedBench, unchecked_return_type = "[[string, string][], [string, string][]]")]
#[must_use]
pub fn filed_bench() -> Array {
    let filed = at_desk(|desk| desk.filed());
    Array::of2(&listed(&filed.mine), &listed(&filed.not_mine))
}

/// Name and rows of the rider's own course without what is painted over it; empty while another is ridden.
#[wasm_bindgen(js_name = ownCourse)]
#[must_use]
pub fn own_course() -> Vec<String> {
    at_desk(|desk| desk.own_course()).map_or_else(Vec::new, |(name, rows)| vec![name, rows])
}

/// Puts the bench of a file on the desk, with name and rows of its own course, the courses that the browser kept and did not,
/// and names in it that say nothing.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = openFile, unchecked_return_type = "Update")]
pub fn open_file(
    name: String,
    #[wasm_bindgen(unchecked_param_type = "[string, string][]")] mine: &Array,
    #[wasm_bindgen(unchecked_param_type = "[string, string][]")] not_mine: &Array,
    ridden: Vec<String>,
    smoothing_m: Option<f64>,
    courses: &[usize],
    strange: Vec<String>,
) -> Result<JsValue, JsError> {
    let bench = FiledBench {
        mine: list_of(mine).unwrap_or_default(),
        not_mine: list_of(not_mine).unwrap_or_default(),
    };
    let ridden = <[String; 2]>::try_from(ridden).ok().map(|[name, rows]| (name, rows, smoothing_m));
    let courses = courses.try_into().unwrap_or_default();
    answer(at_desk(|desk| desk.open_file(OpenedFile { name, bench, ridden, courses, strange })))
}

/// Says why a file is not opened.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = refuseFile, unchecked_return_type = "Update")]
pub fn refuse_file(name: &str, why: RackFileFault) -> Result<JsValue, JsError> {
    answer(at_desk(|desk| desk.refuse_file(name, why)))
}

/// Says that all was saved as a file of this name.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = fileSaved, unchecked_return_type = "Update")]
pub fn file_saved(name: &str) -> Result<JsValue, JsError> {
    answer(at_desk(|desk| desk.file_saved(name)))
}
