//! Pieces that the text of every section is made of, and what a section gives to the workshop sheet.

pub(crate) mod concern;
pub(crate) mod csv;
pub(crate) mod decision;
pub mod figure;
#[cfg(not(target_arch = "wasm32"))]
pub(crate) mod fold;
pub(crate) mod folded;
pub mod form;
pub mod head;
pub mod line;
pub mod picks;
pub mod pieces;
pub mod question;
pub mod sheet_block;
pub mod sheet_checks;
pub mod sum;
pub mod words;
