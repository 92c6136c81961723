//! What the section is called.

/// Its name among the sections.
pub(crate) const NAME: &str = "Lap";

/// The question.
pub(crate) const TITLE: &str = "Round the lap";
