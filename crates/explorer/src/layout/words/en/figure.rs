//! What stands below every picture.

/// Below a picture while nothing of it is looked at.
pub(crate) const POINT_AT_IT: &str =
    "Point at the picture, touch it, or step through it with the arrow keys.";
/// On the button that saves a picture.
pub(crate) const SAVE_PICTURE: &str = "Save as SVG";

/// What that button is called where it stands alone.
pub(crate) fn save_picture(title: &str) -> String {
    format!("{SAVE_PICTURE}: {title}")
}
