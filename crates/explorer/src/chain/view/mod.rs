//! The section’s text.

pub mod answer;
pub(crate) mod decision;
pub mod path;
pub mod remedies;
pub mod sheet;
pub mod tables;
pub mod working;
