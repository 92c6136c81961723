//! The section’s pictures.

pub mod found;
pub mod gain;
pub mod gear_times;
pub mod profile;
