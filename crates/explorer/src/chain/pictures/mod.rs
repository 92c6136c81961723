//! The section’s pictures.

pub mod capacity;
pub mod drivetrain;
pub mod gear_map;
pub mod side_view;
pub mod wrap;
