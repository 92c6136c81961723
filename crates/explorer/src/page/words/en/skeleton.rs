//! What stands in the page before anything is worked out.

/// The head of its section.
pub(crate) const HEAD: &str = "The workshop sheet";
/// On the button that prints it.
pub(crate) const PRINT: &str = "Print the sheet";
/// On the button that copies it.
pub(crate) const COPY: &str = "Copy it as text";
/// What it is, until it has been copied.
pub(crate) const ABOUT: &str =
    "Everything decided above on one page; the browser’s own printing prints the same.";
/// What the text to send is called.
pub(crate) const AS_TEXT: &str = "The workshop sheet as text";
