//! English.

pub(crate) mod answer;
pub(crate) mod body;
pub(crate) mod decision;
pub(crate) mod form;
pub(crate) mod measures;
pub(crate) mod names;
pub(crate) mod picture;
pub(crate) mod sheet;
pub(crate) mod stems;
pub(crate) mod tables;
pub(crate) mod working;
