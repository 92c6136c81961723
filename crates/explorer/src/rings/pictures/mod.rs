//! The section’s pictures.

pub mod gear_looks;
pub mod ladder;
pub mod overlap;
pub mod speeds;
pub mod steps;
