//! A search, as far as the browser has to tell of it.
#![allow(
    clippy::float_cmp,
    reason = "the bindings compare the number that JavaScript hands over for a variant"
)]

#[cfg(all(feature = "page", target_arch = "wasm32"))]
use wasm_bindgen::prelude::wasm_bindgen;

/// How it stands with a search.
#[cfg_attr(all(feature = "page", target_arch = "wasm32"), wasm_bindgen)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SearchNote {
    /// Fields that could not be understood come first.
    FieldsWrong,
    /// There is no course to ride.
    NoCourse,
    /// The best are ridden once more.
    RidingBest,
    /// The browser has no workers to give.
    NoWorkers,
    /// The lap cannot be worked out.
    NoLap,
}
