//! The section's pictures.

pub(crate) mod capacity;
pub(crate) mod drivetrain;
pub(crate) mod wrap;
