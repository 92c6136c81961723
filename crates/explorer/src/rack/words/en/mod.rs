//! English.

#[cfg(not(target_arch = "wasm32"))]
pub(crate) mod body;
pub(crate) mod compared;
pub(crate) mod said;
pub(crate) mod view;
