//! “Your road position on the cross bike.”

#[cfg(all(feature = "api", target_arch = "wasm32"))]
pub mod api;
pub mod body;
pub mod form;
pub mod inputs;
pub mod picture;
pub mod question;
pub mod report;
pub mod section;
pub mod view;
pub(crate) mod words;
