//! The section’s text.

pub mod answer;
pub(crate) mod decision;
pub mod measures;
pub mod sheet;
pub mod stems;
pub mod tables;
pub mod working;
