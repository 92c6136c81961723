//! The JavaScript module’s questions about the lap.

pub mod against;
pub mod course;
pub mod effort;
pub mod gpx;
pub mod lap;
pub mod search;
