//! In English.

pub(crate) mod advice;
pub(crate) mod answer;
pub(crate) mod body;
pub(crate) mod climb;
pub(crate) mod complaints;
pub(crate) mod decision;
pub(crate) mod figures;
pub(crate) mod form;
pub(crate) mod pictures;
pub(crate) mod remarks;
pub(crate) mod sheet;
pub(crate) mod tables;
pub(crate) mod terms;
pub(crate) mod width;
pub(crate) mod working;

use crate::layout::line::name;
use crate::side::Side;

/// The names of the set-ups.
const A: &str = name(Side::A);
const B: &str = name(Side::B);
