//! What the page's scripts hand over by number, because only they know it of a file.
#![allow(
    clippy::float_cmp,
    reason = "the bindings compare the number that JavaScript hands over for a variant"
)]

#[cfg(all(feature = "page", target_arch = "wasm32"))]
use wasm_bindgen::prelude::wasm_bindgen;

/// Why a file is not taken as a rack.
#[cfg_attr(all(feature = "page", target_arch = "wasm32"), wasm_bindgen)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RackFileFault {
    /// It is larger than any rack.
    TooLarge,
    /// The browser cannot read it.
    Unreadable,
    /// It is no rack at all.
    Foreign,
    /// It is a rack of another version.
    OtherVersion,
}
