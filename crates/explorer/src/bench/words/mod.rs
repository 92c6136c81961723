//! What the bench says: fields, choices, and what is wrong with what was typed. Another language is one more module with the
//! same names.

mod en;

pub(crate) use en::*;
