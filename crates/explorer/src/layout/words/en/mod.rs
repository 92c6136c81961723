//! English, a subject a file.

pub(crate) mod figure;
#[cfg(not(target_arch = "wasm32"))]
pub(crate) mod fold;
pub(crate) mod form;
pub(crate) mod picks;
pub(crate) mod sheet;
pub(crate) mod table;
