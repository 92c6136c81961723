//! The link as a QR code.

/// What the code is called.
pub(crate) const CODE: &str = "QR code of the link";

/// The link has more letters than a code holds.
pub(crate) fn too_long(letters: usize, most: usize) -> String {
    format!("The link has {letters} letters, too many for a QR code here ({most}): send it as text.")
}
