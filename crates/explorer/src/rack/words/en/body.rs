//! What never changes.

use crate::side::Side;

/// Head of the fold.
pub(crate) const RACK: &str = "Rack and files";
/// What it is for.
pub(crate) const ABOUT: &str = "Keeps whole bikes under names: rings, cassette, derailleur, wheel, chain and mass. They stay in this browser; as a file they can go elsewhere. A file of all holds the bench with its box of parts, the rack and the kept courses.";
/// On the buttons that keep a bike.
pub(crate) const KEEP: &str = "Keep";
/// On the button that saves all bikes.
pub(crate) const SAVE: &str = "Save the rack as a file";
/// On the button that saves everything.
pub(crate) const SAVE_ALL: &str = "Save all as a file";
/// Beside the chooser of files.
pub(crate) const OPEN: &str = "Open a rack or all";

/// Beside the name that the bike of a side is to have.
pub(crate) fn keep_as(side: Side) -> String {
    format!("Keep {side} as")
}

/// The button that keeps it, read aloud.
pub(crate) fn keep(side: Side) -> String {
    format!("Keep {side} on the rack")
}
