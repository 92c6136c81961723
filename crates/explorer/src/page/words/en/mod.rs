//! In English.

pub(crate) mod form;
pub(crate) mod notices;
pub(crate) mod remarks;
pub(crate) mod sheet;
pub(crate) mod yours;
