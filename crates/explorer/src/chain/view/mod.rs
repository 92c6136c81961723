//! The section’s text.

pub mod cage;
pub mod cage_verdict;
pub mod path;
pub mod remedies;
pub mod working;
