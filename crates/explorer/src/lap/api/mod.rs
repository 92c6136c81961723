//! The JavaScript module’s questions about the lap.

pub mod against;
pub mod box_input;
pub mod combine;
pub mod combine_result;
pub mod course;
pub mod effort;
pub mod fitting_row;
pub mod gpx;
pub mod lap;
pub mod not_fitting_row;
pub mod progress;
pub mod purchase_row;
pub mod robust_result;
pub mod search;
