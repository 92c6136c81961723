//! Where what is said of the box stands.

pub(crate) mod answer;
pub(crate) mod put;
pub(crate) mod table;
