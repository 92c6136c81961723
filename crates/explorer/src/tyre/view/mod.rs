//! The section’s text.

pub mod answer;
pub(crate) mod decision;
pub mod sheet;
pub mod tables;
