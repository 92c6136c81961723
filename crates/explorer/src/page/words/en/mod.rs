//! In English.

pub(crate) mod board;
pub(crate) mod code;
pub(crate) mod differences;
pub(crate) mod file;
pub(crate) mod form;
pub(crate) mod message;
pub(crate) mod notices;
pub(crate) mod overall;
pub(crate) mod poster;
pub(crate) mod remarks;
pub(crate) mod settle;
pub(crate) mod sheet;
#[cfg(not(target_arch = "wasm32"))]
pub(crate) mod skeleton;
pub(crate) mod units;
pub(crate) mod yours;
