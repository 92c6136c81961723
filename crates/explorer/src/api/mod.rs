//! The JavaScript module: plain objects in, plain objects out, the unit in every name.

pub(crate) mod misfit;
pub mod objects;
pub mod strict;
