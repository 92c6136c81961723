//! “Which rings?”: the gears of A and B side by side.

#[cfg(all(feature = "api", target_arch = "wasm32"))]
pub mod api;
pub mod cassettes;
pub mod pictures;
pub mod report;
pub mod setup;
pub mod view;
