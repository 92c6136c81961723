//! What of the section never changes.

use crate::bench::link;
use crate::lap::sketched::Sketched;

/// The name of its form.
pub(crate) const FORM: &str = "Course";

/// What a file may be.
pub(crate) const FILE_STAYS: &str = "A recorded lap (GPX) or a course saved here, opened or dropped on this page; it never leaves this machine.";

/// The buttons that choose a course.
pub(crate) const CHOOSER: &str = "Choose a course";

/// On the button that rides the sketch.
pub(crate) const SKETCH: &str = "Sketch";

/// On the button that rides the course from a file, or the one that was kept.
pub(crate) const OWN: &str = "My own";

/// On the button that opens a file.
pub(crate) const OPEN_FILE: &str = "Open a file…";

/// Beside the courses that were kept.
pub(crate) const KEPT: &str = "Kept courses";

/// On the button that forgets one.
pub(crate) const FORGET: &str = "Forget it";

/// Beside the name to keep a course under.
pub(crate) const KEEP_AS: &str = "Keep this course as";

/// On the button that keeps it.
pub(crate) const KEEP: &str = "Keep";

/// On the button that saves it.
pub(crate) const SAVE: &str = "Save as a file";

/// On the button that turns it into a sketch.
pub(crate) const SKETCH_IT: &str = "Put into the sketch";

/// How a course travels.
pub(crate) fn travels() -> String {
    let (longest, most) = (link::LONGEST, Sketched::MOST);
    let with_all_changed = link::STRETCHES_WITH_ALL_CHANGED;
    format!(
        "A sketch of up to {most} stretches travels in a link below {longest} characters, or {with_all_changed} when nearly every other field is changed."
    )
}

/// Over the search.
pub(crate) const SEARCH: &str = "What would be quickest here?";

/// What a search tries.
pub(crate) const TRIES: &str = "Tries the rings in this range that are made with every usual cassette of so many sprockets, further ones, and A and B, as far as frame and chain allow and without a gear to avoid. If you counted your links, that chain must suit. At a steady power every one rides the lap in full; as you ride, all are looked at by the plans of a few, and the best then planned in full.";

/// On the button that begins a search.
pub(crate) const START: &str = "Search";

/// On the button that ends it before its time.
pub(crate) const STOP: &str = "Cancel";
