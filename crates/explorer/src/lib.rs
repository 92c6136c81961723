//! The page of Remount: state, views, pictures and bindings. Every number comes from `gear_math`.
//!
//! One way through: form fields or link → [`bench::bench::Bench`] → [`page::scenario::Scenario`] →
//! [`page::report::Report`] → views and pictures. Nothing flows back except a new bench.

#[cfg(all(feature = "api", target_arch = "wasm32"))]
pub mod api;
pub mod bench;
pub mod chain;
pub mod drawing;
pub mod lap;
pub mod layout;
pub mod number;
pub mod page;
pub mod parts;
pub mod position;
pub mod rack;
pub mod ride;
pub mod rings;
pub mod side;
pub mod tyre;
pub mod units;
pub(crate) mod words;
