//! What the section says, in the language of the page.

mod en;
pub(crate) use en::*;
