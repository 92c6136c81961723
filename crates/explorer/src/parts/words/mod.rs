//! What the section says, apart from where it stands. Another language is one more module with the same functions.

mod en;

pub(crate) use en::*;
