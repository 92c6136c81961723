//! English, a subject a file.

pub(crate) mod answer;
pub(crate) mod cross_section;
pub(crate) mod decision;
pub(crate) mod gears;
pub(crate) mod pressure;
pub(crate) mod question;
pub(crate) mod remarks;
pub(crate) mod rules;
pub(crate) mod said;
pub(crate) mod sheet;
pub(crate) mod tables;
pub(crate) mod width;
pub(crate) mod working;
