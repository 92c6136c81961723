//! The page's entry points: plain data in and out, for `www`.

use crate::bench::tooth_step;
use crate::drawing::palette::Palette;
use crate::drawing::spot::Spot;
use crate::page::code::{Shown, code};
use crate::page::desk::{Desk, Update};
use crate::page::drawn::Drawn;
use crate::page::message::message;
use crate::page::pictures::Picture;
use crate::page::report::Report;
use js_sys::{Array, Object, Reflect};
use plotters_canvas::CanvasBackend;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use web_sys::HtmlCanvasElement;

/// What the answers look like from JavaScript.
#[wasm_bindgen(typescript_custom_section)]
const TYPES: &str = r#"
/** What changed on the page. */
export interface Update {
  /** Element ids with their new content. */
  html: [string, string][];
  /** Field keys with the value to put in. */
  values: [string, string][];
  /** Keys of all fields in error. */
  wrong: string[];
  /** Fields that mean something while they are empty, with what. */
  empty: [string, string][];
  undo: boolean;
  /** The new link, or null while the address still holds the bench. */
  link: string | null;
  /** Sliders with their highest value, put in place before the values. */
  most: [string, number][];
}
/** A bike: its name, its place, and by their names the parts that are the rider's and those that are not. */
export type FiledBike = [string, number, [string, string][], [string, string][]];
/** A spot of a picture, in CSS pixels. */
export interface Spot {
  index: number;
  left: number;
  top: number;
  width: number;
  height: number;
  text: string;
  /** The field that looking at it fills, and with what. */
  puts: [string, string] | null;
}
"#;

thread_local! {
    static DESK: RefCell<Desk> = RefCell::default();
    static DRAWN: RefCell<Drawn> = RefCell::default();
}

/// Runs `work` on the desk. The borrow never outlives one call, so a call can never find the desk taken.
pub(crate) fn at_desk<T>(work: impl FnOnce(&mut Desk) -> T) -> T {
    DESK.with_borrow_mut(work)
}

pub(crate) fn report() -> Rc<Report> {
    DESK.with_borrow(Desk::report)
}

/// An object of JavaScript. There are two kinds only, for which serde would bring 14 kB of code.
fn object(properties: &[(&str, JsValue)]) -> Result<JsValue, JsError> {
    let object = Object::new();
    for (name, value) in properties {
        Reflect::set(&object, &JsValue::from_str(name), value)
            .map_err(|_| JsError::new("an answer cannot be made"))?;
    }
    Ok(object.into())
}

pub(crate) fn pair(key: &str, value: impl Into<JsValue>) -> JsValue {
    Array::of2(&key.into(), &value.into()).into()
}

/// Both texts of a pair.
pub(crate) fn texts(pair: &JsValue) -> Option<(String, String)> {
    let pair: &Array = pair.dyn_ref()?;
    Some((pair.get(0).as_string()?, pair.get(1).as_string()?))
}

fn picture(name: &str) -> Result<Picture, JsError> {
    Picture::by_name(name).ok_or_else(|| JsError::new("no such picture"))
}

/// Opens the bench that a link holds.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(unchecked_return_type = "Update")]
pub fn open(link: &str) -> Result<JsValue, JsError> {
    answer(at_desk(|desk| desk.open(link)))
}

/// Takes what was typed: pairs of field key and text.
///
/// # Errors
/// When the pairs are not pairs of texts.
#[wasm_bindgen(unchecked_return_type = "Update")]
pub fn edit(
    #[wasm_bindgen(unchecked_param_type = "[string, string][]")] edits: &Array,
) -> Result<JsValue, JsError> {
    let edits: Option<Vec<_>> = edits.iter().map(|pair| texts(&pair)).collect();
    let edits = edits.ok_or_else(|| JsError::new("an edit is a pair of texts"))?;
    answer(at_desk(|desk| desk.edit(&edits)))
}

/// Puts a text of the bench into a field, whatever units are shown.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(unchecked_return_type = "Update")]
pub fn put(key: &str, text: &str) -> Result<JsValue, JsError> {
    answer(at_desk(|desk| desk.put(key, text)))
}

/// Notes that a panel is open or closed: it is written while it is open only.
#[wasm_bindgen]
pub fn unfold(panel: &str, open: bool) {
    at_desk(|desk| desk.unfold(panel, open));
}

/// Notes that a section is in sight or not: a change is written at once only where it is in sight.
#[wasm_bindgen]
pub fn see(section: &str, sight: bool) {
    at_desk(|desk| desk.see(section, sight));
}

/// Writes what was not written while its panel was closed or its section out of sight, in one section or in all.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = writeUnfolded, unchecked_return_type = "Update")]
#[expect(clippy::needless_pass_by_value, reason = "wasm-bindgen hands texts over")]
pub fn write_unfolded(section: Option<String>) -> Result<JsValue, JsError> {
    answer(at_desk(|desk| desk.write_unfolded(section.as_deref())))
}

/// Writes what is folded away too, in one section or in all.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(unchecked_return_type = "Update")]
#[expect(clippy::needless_pass_by_value, reason = "wasm-bindgen hands texts over")]
pub fn rest(section: Option<String>) -> Result<JsValue, JsError> {
    answer(at_desk(|desk| desk.rest(section.as_deref())))
}

/// A number of a text a tooth up or down: the text, and where the number begins and ends in it.
#[wasm_bindgen(js_name = stepTooth, unchecked_return_type = "[string, number, number] | undefined")]
#[must_use]
pub fn step_tooth(text: &str, at: usize, by: i32) -> JsValue {
    tooth_step::step(text, at, by).map_or(JsValue::UNDEFINED, |stepped| {
        let (from, to) = stepped.place;
        Array::of3(&stepped.text.into(), &(from as f64).into(), &(to as f64).into()).into()
    })
}

/// Where the number before or after the one at a place of a text stands.
#[wasm_bindgen(js_name = nextNumber, unchecked_return_type = "[number, number] | undefined")]
#[must_use]
pub fn next_number(text: &str, at: usize, along: i32) -> JsValue {
    tooth_step::next(text, at, along).map_or(JsValue::UNDEFINED, |(from, to)| {
        Array::of2(&(from as f64).into(), &(to as f64).into()).into()
    })
}

/// One sentence that says what a picture shows.
///
/// # Errors
/// When there is no such picture.
#[wasm_bindgen(js_name = pictureLabel)]
pub fn picture_label(name: &str) -> Result<String, JsError> {
    Ok(picture(name)?.label(&report()))
}

/// Ends a run of typing, so that undo takes it back as one step.
#[wasm_bindgen]
pub fn pause() {
    at_desk(Desk::pause);
}

/// The bench as a link, without the `#`.
#[wasm_bindgen]
#[must_use]
pub fn link() -> String {
    DESK.with_borrow(Desk::link)
}

/// The bench as it is understood, as a link for workers: of a field in error the last good text.
#[wasm_bindgen]
#[must_use]
pub fn understood() -> String {
    DESK.with_borrow(Desk::understood)
}

/// A link as a QR code, or why it is none, as markup.
#[wasm_bindgen(js_name = codeOf)]
#[must_use]
pub fn code_of(link: &str, paper: bool) -> String {
    let shown = if paper { Shown::OnPaper } else { Shown::OnScreen };
    code(link, shown).into_string()
}

/// The sheet as a short message, with the address that holds the bench, if others can open it.
#[wasm_bindgen(js_name = shortSheet)]
#[must_use]
pub fn short_sheet(address: &str) -> String {
    message(&report(), address)
}

/// Does what a button says.
///
/// # Errors
/// When there is no such act.
#[wasm_bindgen(unchecked_return_type = "Update")]
pub fn act(name: &str) -> Result<JsValue, JsError> {
    answer(at_desk(|desk| desk.act(name)).ok_or_else(|| JsError::new("no such act"))?)
}

pub(crate) fn answer(update: Update) -> Result<JsValue, JsError> {
    let pairs = |pairs: &[(&'static str, String)]| -> JsValue {
        pairs.iter().map(|(key, text)| pair(key, text)).collect::<Array>().into()
    };
    object(&[
        ("html", update.html.iter().map(|(id, html)| pair(id, html)).collect::<Array>().into()),
        ("values", pairs(&update.values)),
        ("wrong", update.wrong.iter().map(|key| JsValue::from_str(key)).collect::<Array>().into()),
        ("empty", pairs(&update.empty)),
        ("undo", update.undo.into()),
        ("link", update.link.map_or(JsValue::NULL, JsValue::from)),
        ("most", update.most.iter().map(|&(key, most)| pair(key, most as f64)).collect::<Array>().into()),
    ])
}

/// Height of a picture at a width, CSS pixels.
///
/// # Errors
/// When there is no such picture.
#[wasm_bindgen(js_name = pictureHeight)]
pub fn picture_height(name: &str, width: f64) -> Result<f64, JsError> {
    let picture = picture(name)?;
    Ok(picture.height(&report(), width))
}

/// Makes up what a picture is drawn with, in CSS pixels; whether that differs from what it was last.
///
/// # Errors
/// When there is no such picture.
#[wasm_bindgen(js_name = preparePicture)]
pub fn prepare_picture(
    name: &str,
    width: f64,
    height: f64,
    dark: bool,
    plain: bool,
) -> Result<bool, JsError> {
    let (picture, look) = (picture(name)?, Palette::of(dark, plain));
    Ok(DRAWN.with_borrow_mut(|drawn| drawn.prepare(picture, &report(), look, (width, height))))
}

/// Draws what was made up on a canvas whose attributes are already set to its size in device pixels.
///
/// # Errors
/// When there is no such picture or the canvas has no drawing context.
#[wasm_bindgen]
pub fn paint(name: &str, canvas: HtmlCanvasElement, ratio: f64) -> Result<(), JsError> {
    let picture = picture(name)?;
    let mut backend = CanvasBackend::with_canvas_object(canvas)
        .ok_or_else(|| JsError::new("the canvas has no drawing context"))?;
    DRAWN
        .with_borrow(|drawn| drawn.draw(picture, &mut backend, ratio))
        .map_err(|error| JsError::new(&error.to_string()))
}

fn spot(
    name: &str,
    size: (f64, f64),
    choose: impl FnOnce(&[Spot]) -> Option<usize>,
) -> Result<JsValue, JsError> {
    let picture = picture(name)?;
    let spots = picture.spots(&report(), size);
    choose(&spots)
        .and_then(|index| {
            spots.get(index).map(|spot| seen(spot, index, picture.words(&report(), spot, index)))
        })
        .unwrap_or(Ok(JsValue::NULL))
}

/// A spot with its place in the order.
pub(crate) fn seen(spot: &Spot, index: usize, words: String) -> Result<JsValue, JsError> {
    let (left, top) = spot.from;
    object(&[
        ("index", (index as f64).into()),
        ("left", left.into()),
        ("top", top.into()),
        ("width", (spot.to.0 - left).into()),
        ("height", (spot.to.1 - top).into()),
        ("text", words.into()),
        ("puts", spot.puts.as_ref().map_or(JsValue::NULL, |(field, value)| pair(field.spec().key, value))),
    ])
}

/// The spot of a picture nearest to a point.
///
/// # Errors
/// When there is no such picture.
#[wasm_bindgen(js_name = spotAt, unchecked_return_type = "Spot | null")]
pub fn spot_at(name: &str, width: f64, height: f64, x: f64, y: f64) -> Result<JsValue, JsError> {
    spot(name, (width, height), |spots| crate::drawing::spot::nearest(spots, (x, y)))
}

/// The spot that a key leads to from the spot being looked at, −1 for none.
///
/// # Errors
/// When there is no such picture.
#[wasm_bindgen(js_name = spotByKey, unchecked_return_type = "Spot | null")]
pub fn spot_by_key(name: &str, width: f64, height: f64, from: i32, key: &str) -> Result<JsValue, JsError> {
    spot(name, (width, height), |spots| crate::drawing::spot::by_key(spots, usize::try_from(from).ok(), key))
}

/// The same spot once more, after the picture has changed.
///
/// # Errors
/// When there is no such picture.
#[wasm_bindgen(js_name = spotAgain, unchecked_return_type = "Spot | null")]
pub fn spot_again(name: &str, width: f64, height: f64, index: usize) -> Result<JsValue, JsError> {
    spot(name, (width, height), |spots| (index < spots.len()).then_some(index))
}
