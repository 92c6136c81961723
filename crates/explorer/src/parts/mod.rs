//! “What is best of the box?”: the box of parts, what of it goes together, and what of that is quickest round the lap.

pub mod asked;
pub mod body;
pub mod choice;
pub mod column;
pub mod errand;
pub mod found;
pub mod inputs;
pub mod notes;
pub mod offer;
pub mod picture;
pub mod question;
pub mod regrets;
pub mod section;
pub mod view;
pub(crate) mod words;
