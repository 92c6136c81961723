//! The section’s text.

pub mod answer;
pub mod climb;
pub mod notes;
pub mod tables;
pub mod width;
pub mod words;
