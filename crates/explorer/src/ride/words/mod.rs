//! What the section says, apart from where it stands. A second language is a second module with the same functions.

mod en;

pub(crate) use en::*;
