//! The page of Remount: state, views, pictures and bindings. Every number comes from `gear_math`.
//!
//! One way through: form fields or link → [`bench::Bench`] → [`scenario::Scenario`] → [`report::Report`] → views and
//! pictures. Nothing flows back except a new bench.

#[cfg(all(feature = "api", target_arch = "wasm32"))]
pub mod api;
pub mod bench;
pub mod chart;
pub mod desk;
pub mod field;
mod history;
mod lap_desk;
#[cfg(all(feature = "page", target_arch = "wasm32"))]
pub mod lap_page;
pub mod link;
mod number;
pub mod owner;
#[cfg(all(feature = "page", target_arch = "wasm32"))]
pub mod page;
pub mod report;
pub mod scenario;
mod sketch_notation;
pub mod speed_unit;
pub mod view;
