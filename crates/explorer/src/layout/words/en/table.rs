//! What can be done with a table.

/// Unfolds it.
pub(crate) const TAKE: &str = "Save or print";
/// Saves it as a file.
pub(crate) const SAVE: &str = "Save as CSV";
/// Copies it.
pub(crate) const COPY: &str = "Copy for a spreadsheet";
/// It was copied.
pub(crate) const COPIED: &str = "On your clipboard";
/// The browser copies nothing.
pub(crate) const REFUSED: &str = "The browser refuses: save it";
/// Prints it and nothing else.
pub(crate) const PRINT: &str = "Print it alone";
