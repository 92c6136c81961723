//! The section’s text.

pub mod answer;
pub mod climb;
pub(crate) mod decision;
pub mod notes;
pub mod sheet;
pub mod tables;
