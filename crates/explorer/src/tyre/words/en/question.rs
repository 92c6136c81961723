//! What the section is called.

pub(crate) const NAME: &str = "Tyre";
pub(crate) const TITLE: &str = "Which tyre, how hard?";
