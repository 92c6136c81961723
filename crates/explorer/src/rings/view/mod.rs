//! The section’s text.

pub mod answer;
pub(crate) mod decision;
pub mod gears;
pub mod limit;
pub mod overlap;
pub mod probes;
pub mod steps;
