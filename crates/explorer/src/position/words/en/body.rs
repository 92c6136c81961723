//! The section's name and question.

/// Its name among the sections.
pub(crate) const NAME: &str = "Position";
/// The question.
pub(crate) const TITLE: &str = "Does it sit like the road bike?";
/// Over the formulas.
pub(crate) const WORKING: &str = "How this was worked out";
