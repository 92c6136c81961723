//! What the section is called.

pub(crate) const NAME: &str = "Rings";
pub(crate) const TITLE: &str = "Which rings?";
