//! What a field is called, and what helps to fill it in.

/// A field in the words of one language.
#[derive(Debug, Clone, Copy)]
pub(crate) struct FieldWords {
    /// Beside it.
    pub(crate) label: &'static str,
    /// One line; empty when the label says all.
    pub(crate) help: &'static str,
}

/// A label and a line of help.
pub(crate) const fn said(label: &'static str, help: &'static str) -> FieldWords {
    FieldWords { label, help }
}
