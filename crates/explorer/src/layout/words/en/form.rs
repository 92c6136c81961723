//! What unfolds the rest of a form.

/// Finer settings.
pub(crate) const FINER: &str = "Finer settings";
