//! What stands below every picture.

/// On the button that saves a picture.
pub(crate) const SAVE_PICTURE: &str = "Save or copy";

/// What that button is called where it stands alone.
pub(crate) fn save_picture(title: &str) -> String {
    format!("{SAVE_PICTURE}: {title}")
}
