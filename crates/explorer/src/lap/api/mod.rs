//! The JavaScript module’s questions about the lap.

pub mod against;
pub mod box_input;
pub mod combine;
pub mod course;
pub mod effort;
pub mod gpx;
pub mod lap;
pub mod progress;
pub mod search;
