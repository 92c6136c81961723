//! “Does the cage take it?”: makers’ figures, chain and cage in every gear.

#[cfg(all(feature = "api", target_arch = "wasm32"))]
pub mod api;
pub mod body;
pub mod cages;
mod fitting;
pub mod inputs;
pub mod pictures;
pub mod question;
pub mod report;
pub mod section;
pub(crate) mod standing;
pub mod view;
pub(crate) mod words;
