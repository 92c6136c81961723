//! The page's text: every fragment of HTML that changes, as a function of the report.

mod all;
mod cage;
mod cage_verdict;
mod chain;
mod chain_remedies;
mod chain_working;
pub mod form;
mod gears;
mod lap;
mod lap_course;
mod lap_forcing;
pub(crate) mod lap_found;
mod lap_places;
mod lap_sheet;
mod lap_tables;
mod limit;
mod notices;
mod overlap;
pub(crate) mod position;
mod probes;
pub(crate) mod ride;
mod ride_climb;
mod ride_notes;
mod ride_tables;
pub(crate) mod ride_words;
mod rings;
mod sheet;
mod sheet_block;
mod sheet_checks;
mod steps;
pub(crate) mod tyre;
mod tyre_sheet;
mod tyre_tables;
mod words;
mod yours;

pub use all::fragments;
#[cfg(all(feature = "api", target_arch = "wasm32"))]
pub(crate) use cage_verdict::reason as finding;
