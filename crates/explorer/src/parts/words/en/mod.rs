//! English.

pub(crate) mod answer;
pub(crate) mod body;
pub(crate) mod named;
pub(crate) mod not_understood;
pub(crate) mod offer;
pub(crate) mod picture;
pub(crate) mod table;
