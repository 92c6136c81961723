//! English.

pub(crate) mod answer;
pub(crate) mod body;
pub(crate) mod complaints;
pub(crate) mod course;
pub(crate) mod decision;
pub(crate) mod forcing;
pub(crate) mod form;
pub(crate) mod found;
pub(crate) mod not_taken;
pub(crate) mod notes;
pub(crate) mod on_reserve;
pub(crate) mod pictures;
pub(crate) mod places;
pub(crate) mod question;
pub(crate) mod reserve;
pub(crate) mod sheet;
pub(crate) mod stroke;
pub(crate) mod tables;
pub(crate) mod turning;
pub(crate) mod working;
