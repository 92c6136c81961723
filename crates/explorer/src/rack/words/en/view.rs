//! A bike on the rack, and its buttons.

/// On the button that puts it on A.
pub(crate) const AS_A: &str = "as A";
/// On the button that puts it on B.
pub(crate) const AS_B: &str = "as B";
/// On the button that gives it another name.
pub(crate) const RENAME: &str = "Rename";
/// On the button that leaves its name.
pub(crate) const LEAVE: &str = "Leave its name";
/// On the button that keeps it once more.
pub(crate) const COPY: &str = "Copy";
/// On the button that takes it off the rack.
pub(crate) const FORGET: &str = "Forget";
/// On the button that puts it back.
pub(crate) const UNDO: &str = "Undo";

/// Rings and cassette of a bike.
pub(crate) fn gears(rings: &str, cassette: &str) -> String {
    let said = |text: &str, unknown: &str| if text.is_empty() { unknown.to_owned() } else { text.to_owned() };
    format!("{}, {}", said(rings, "rings not known"), said(cassette, "cassette not known"))
}

/// Beside the field for another name.
pub(crate) fn new_name(name: &str) -> String {
    format!("New name for “{name}”")
}

/// A button that puts a bike on A, read aloud.
pub(crate) fn on_a(name: &str) -> String {
    format!("{name} as A")
}

/// A button that puts a bike on B, read aloud.
pub(crate) fn on_b(name: &str) -> String {
    format!("{name} as B")
}

/// A button of a bike, read aloud.
pub(crate) fn about(act: &str, name: &str) -> String {
    format!("{act} {name}")
}
