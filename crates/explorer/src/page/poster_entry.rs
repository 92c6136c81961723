//! The entry points for pictures that go elsewhere.

use crate::page::entry::report;
use crate::page::pictures::Picture;
use crate::page::poster::Poster;
use js_sys::Array;
use plotters_canvas::CanvasBackend;
use std::cell::RefCell;
use wasm_bindgen::prelude::*;
use web_sys::HtmlCanvasElement;

thread_local! {
    static POSTER: RefCell<Option<Poster>> = const { RefCell::new(None) };
}

/// Makes up the picture of this name, or the board where there is none, as it goes elsewhere: the name of its file without the
/// ending, and its width and height in CSS pixels.
#[wasm_bindgen(js_name = preparePoster, unchecked_return_type = "[string, number, number]")]
#[must_use]
pub fn prepare_poster(name: &str, title: &str, address: &str) -> Array {
    let poster = Poster::of(Picture::by_name(name), &report(), title, address);
    let (width, height) = poster.size;
    let told = Array::of3(&poster.file.as_str().into(), &width.into(), &height.into());
    POSTER.set(Some(poster));
    told
}

fn made_up<T>(work: impl FnOnce(&Poster) -> Option<T>) -> Result<T, JsError> {
    let told = POSTER.with_borrow(|poster| poster.as_ref().and_then(work));
    told.ok_or_else(|| JsError::new("the picture cannot be drawn"))
}

/// Draws what was made up on a canvas whose attributes are already set to its size in device pixels.
///
/// # Errors
/// When nothing was made up or the canvas has no drawing context.
#[wasm_bindgen(js_name = paintPoster)]
pub fn paint_poster(canvas: HtmlCanvasElement, ratio: f64) -> Result<(), JsError> {
    made_up(|poster| poster.draw(&mut CanvasBackend::with_canvas_object(canvas)?, ratio).ok())
}

/// What was made up as an SVG document.
///
/// # Errors
/// When nothing was made up.
#[wasm_bindgen(js_name = posterSvg)]
pub fn poster_svg() -> Result<String, JsError> {
    made_up(|poster| poster.svg().ok())
}
