//! Saying how far something is that takes its time.

use wasm_bindgen::prelude::*;

#[wasm_bindgen]
extern "C" {
    /// A progress callback.
    pub(super) type Progress;

    #[wasm_bindgen(method, catch)]
    fn call(this: &Progress, object: &JsValue, done: usize, total: usize) -> Result<JsValue, JsValue>;
}

impl Progress {
    /// Whatever was given, if it can be called.
    pub(super) fn of(given: JsValue) -> Option<Self> {
        given.is_function().then(|| given.unchecked_into())
    }
}

/// Says how far it is; false where it is to stop.
pub(super) fn said(progress: Option<&Progress>, done: usize, total: usize) -> Result<bool, JsError> {
    match progress.map(|it| it.call(&JsValue::UNDEFINED, done, total)) {
        Some(Err(_)) => Err(JsError::new("the progress callback threw an error")),
        Some(Ok(answer)) => Ok(answer != JsValue::FALSE),
        None => Ok(true),
    }
}
