//! What the section is called.

pub(crate) const NAME: &str = "Tyre";
pub(crate) const TITLE: &str = "Which tyre, how hard?";
pub(crate) const WORKING: &str = "How this was worked out";
