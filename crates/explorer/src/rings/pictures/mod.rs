//! The section’s pictures.

pub mod ladder;
pub mod overlap;
pub mod speeds;
pub mod steps;
