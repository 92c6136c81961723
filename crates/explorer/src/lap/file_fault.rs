//! Files and kept courses that are not taken.
#![allow(
    clippy::float_cmp,
    reason = "the bindings compare the number that JavaScript hands over for a variant"
)]

#[cfg(all(feature = "page", target_arch = "wasm32"))]
use wasm_bindgen::prelude::wasm_bindgen;

/// Why a file or a kept course is not taken.
#[cfg_attr(all(feature = "page", target_arch = "wasm32"), wasm_bindgen)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FileFault {
    /// It is larger than any lap.
    TooLarge,
    /// The browser cannot read it.
    Unreadable,
    /// It is no course at all.
    Foreign,
    /// It is JSON, but none of our courses, or of a later version.
    OtherVersion,
}
