//! The section's name and question.

/// Its name among the sections.
pub(crate) const NAME: &str = "Position";
/// The question.
pub(crate) const TITLE: &str = "Does it sit like the road bike?";
