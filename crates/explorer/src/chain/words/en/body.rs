//! The section's name and what never changes.

/// Its name among the sections.
pub(crate) const NAME: &str = "Cage";
/// The question.
pub(crate) const TITLE: &str = "Will the cage take it?";
/// The button under the gears' table.
pub(crate) const PRINT: &str = "Print this table";
/// What opens the makers' sum.
pub(crate) const SUM: &str = "The makers’ sum, gear by gear";
