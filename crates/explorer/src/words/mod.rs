//! What the words of every room share: counting, listing, and the words round a number. Another language is one more module
//! with the same names.

mod en;

pub(crate) use en::*;
