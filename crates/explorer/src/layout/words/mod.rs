//! What the pieces of every section say, in English. Another language is one more module with the same names.

mod en;

pub(crate) use en::*;
