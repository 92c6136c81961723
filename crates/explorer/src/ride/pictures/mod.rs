//! The section’s pictures.

pub mod climb;
pub mod slopes;
pub mod tornado;
pub mod verdicts;
