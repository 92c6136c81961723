//! What never changes.

use crate::side::Side;

/// Head of the fold.
pub(crate) const RACK: &str = "Rack";
/// What it is for.
pub(crate) const ABOUT: &str = "Keeps whole bikes under names: rings, cassette, derailleur, wheel, chain and mass. They stay in this browser; as a file they can go elsewhere.";
/// On the buttons that keep a bike.
pub(crate) const KEEP: &str = "Keep";
/// On the button that saves all bikes.
pub(crate) const SAVE: &str = "Save the rack as a file";
/// Beside the chooser of files.
pub(crate) const OPEN: &str = "Open a rack";

/// Beside the name that the bike of a side is to have.
pub(crate) fn keep_as(side: Side) -> String {
    format!("Keep {side} as")
}

/// The button that keeps it, read aloud.
pub(crate) fn keep(side: Side) -> String {
    format!("Keep {side} on the rack")
}
