//! The JavaScript module’s questions about riding and running.

pub mod bike;
pub mod climb;
pub(crate) mod given;
pub mod names;
pub mod ride_or_run;
pub mod rider;
pub mod surroundings;
