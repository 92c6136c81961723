//! What the page says round its sections, apart from where it stands.

mod en;

pub(crate) use en::*;
