//! The section’s text.

pub mod answer;
pub mod sheet;
pub mod tables;
