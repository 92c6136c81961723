//! The entry points of the rack, for `www`.

use crate::page::desk::Desk;
use crate::page::entry::{answer, at_desk, pair, texts};
use crate::rack::file::{FiledBike, RackFile};
use crate::rack::from_scripts::RackFileFault;
use js_sys::Array;
use wasm_bindgen::prelude::*;

/// Takes what the browser keeps: each name with its bike, or null where that is none.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = readRack, unchecked_return_type = "Update")]
pub fn read_rack(
    #[wasm_bindgen(unchecked_param_type = "[string, FiledBike | null][]")] kept: &Array,
) -> Result<JsValue, JsError> {
    let named = |entry: JsValue| {
        let entry: Array = entry.dyn_into().ok()?;
        Some((entry.get(0).as_string()?, filed(&entry.get(1))))
    };
    let kept = kept.iter().filter_map(named).collect();
    answer(at_desk(|desk| desk.read_rack(kept)))
}

/// Does what a button of the rack says about a bike, with what was typed for it.
///
/// # Errors
/// When there is no such button.
#[wasm_bindgen(js_name = actOnRack, unchecked_return_type = "Update")]
pub fn act_on_rack(name: &str, bike: &str, typed: &str) -> Result<JsValue, JsError> {
    let update = at_desk(|desk| desk.act_on_rack(name, bike, typed));
    answer(update.ok_or_else(|| JsError::new("no such act"))?)
}

/// What the browser is to keep under which name, or with null to forget.
#[wasm_bindgen(js_name = rackChanges, unchecked_return_type = "[string, FiledBike | null][]")]
#[must_use]
pub fn rack_changes() -> Array {
    let changes = at_desk(|desk| desk.rack.changes());
    let entry =
        |(name, bike): (String, Option<FiledBike>)| pair(&name, bike.map_or(JsValue::NULL, |it| handed(&it)));
    changes.into_iter().map(entry).collect()
}

/// All bikes.
#[wasm_bindgen(js_name = filedRack, unchecked_return_type = "FiledBike[]")]
#[must_use]
pub fn filed_rack() -> Array {
    at_desk(|desk| desk.rack().filed()).iter().map(handed).collect()
}

/// Puts the bikes of a file on the rack; `strange` are names in it that say nothing.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = openRack, unchecked_return_type = "Update")]
pub fn open_rack(
    name: &str,
    #[wasm_bindgen(unchecked_param_type = "FiledBike[]")] bikes: &Array,
    strange: Vec<String>,
) -> Result<JsValue, JsError> {
    let bikes = bikes.iter().filter_map(|bike| filed(&bike)).collect();
    answer(at_desk(|desk| desk.open_rack(name, RackFile { bikes, strange })))
}

/// Says why a file is not taken as a rack.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = refuseRack, unchecked_return_type = "Update")]
pub fn refuse_rack(name: &str, why: RackFileFault) -> Result<JsValue, JsError> {
    answer(at_desk(|desk| desk.refuse_rack(name, why)))
}

/// Says that the rack was saved as a file of this name.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = rackSaved, unchecked_return_type = "Update")]
pub fn rack_saved(name: &str) -> Result<JsValue, JsError> {
    answer(at_desk(|desk| desk.rack_saved(name)))
}

/// Says that the browser did not keep what it was given.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(js_name = rackUnkept, unchecked_return_type = "Update")]
pub fn rack_unkept() -> Result<JsValue, JsError> {
    answer(at_desk(Desk::rack_unkept))
}

/// Opens the bench as it was when the page was left.
///
/// # Errors
/// When the answer cannot be handed to JavaScript.
#[wasm_bindgen(unchecked_return_type = "Update")]
pub fn reopen(link: &str) -> Result<JsValue, JsError> {
    answer(at_desk(|desk| desk.reopen(link)))
}

fn filed(bike: &JsValue) -> Option<FiledBike> {
    let bike: &Array = bike.dyn_ref()?;
    let list = |place| list_of(&bike.get(place).dyn_into().ok()?);
    let order = bike.get(1).as_f64()? as u32;
    Some(FiledBike { name: bike.get(0).as_string()?, order, parts: list(2)?, not_mine: list(3)? })
}

/// Names and texts of a list.
pub(crate) fn list_of(list: &Array) -> Option<Vec<(String, String)>> {
    list.iter().map(|it| texts(&it)).collect()
}

/// The same as a list.
pub(crate) fn listed(list: &[(String, String)]) -> JsValue {
    list.iter().map(|(name, text)| pair(name, text)).collect::<Array>().into()
}

fn handed(bike: &FiledBike) -> JsValue {
    let (parts, not_mine) = (listed(&bike.parts), listed(&bike.not_mine));
    Array::of4(&(&bike.name).into(), &bike.order.into(), &parts, &not_mine).into()
}
