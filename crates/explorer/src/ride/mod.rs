//! “Ride or run?”: where going on foot is quicker.

#[cfg(all(feature = "api", target_arch = "wasm32"))]
pub mod api;
pub mod body;
pub mod form;
pub mod inputs;
mod on_climb;
pub mod pictures;
mod probe;
pub mod question;
pub mod report;
pub mod section;
pub mod view;
pub(crate) mod words;
