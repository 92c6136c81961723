//! “Which rings?”: the gears of A and B side by side.

#[cfg(all(feature = "api", target_arch = "wasm32"))]
pub mod api;
pub mod body;
pub mod cassettes;
pub mod inputs;
pub(crate) mod no_cassette;
pub mod pictures;
pub mod question;
pub mod report;
pub mod section;
pub mod setup;
pub mod step_verdict;
pub mod view;
pub mod words;
