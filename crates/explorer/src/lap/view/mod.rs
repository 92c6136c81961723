//! The section’s text.

pub mod answer;
pub mod course;
pub(crate) mod decision;
pub mod forcing;
pub mod found;
pub mod places;
pub mod reserve;
pub mod sheet;
pub mod tables;
