//! English, a subject a file.

pub(crate) mod figure;
pub(crate) mod form;
pub(crate) mod picks;
pub(crate) mod sheet;
