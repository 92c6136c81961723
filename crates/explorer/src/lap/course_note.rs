//! Courses that were to be kept or saved.
#![allow(
    clippy::float_cmp,
    reason = "the bindings compare the number that JavaScript hands over for a variant"
)]

#[cfg(all(feature = "page", target_arch = "wasm32"))]
use wasm_bindgen::prelude::wasm_bindgen;

/// What became of a course that was to be kept or saved.
#[cfg_attr(all(feature = "page", target_arch = "wasm32"), wasm_bindgen)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CourseNote {
    /// There is none to ride.
    None,
    /// It was saved under this name.
    Saved,
    /// It is kept under this name.
    Kept,
    /// What is painted over it is part of what was kept or saved.
    Painted,
    /// Another one is kept under this name.
    OfAnother,
    /// The one of this name is no longer kept.
    Lost,
    /// The one of this name is forgotten.
    Forgotten,
    /// The browser keeps nothing.
    Forbidden,
}
