//! What the rider typed: fields, their owners, the link, and how texts become values.

#[expect(clippy::module_inception, reason = "the file is named after the type it holds")]
pub mod bench;
mod bikes;
pub mod cadence_window;
pub mod complaint;
pub mod field;
pub(crate) mod field_text;
pub(crate) mod field_words;
pub mod filed;
pub(crate) mod first;
pub mod link;
pub mod of_b;
pub(crate) mod offered;
pub mod owner;
pub mod owners;
pub mod reader;
pub mod rests;
pub mod sketch;
pub mod tooth_step;
pub(crate) mod units_chosen;
pub mod whole_bike;
pub(crate) mod words;
