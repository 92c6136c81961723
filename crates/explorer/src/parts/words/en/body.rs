//! What of the section never changes.

/// Its name among the sections.
pub(crate) const NAME: &str = "Box";
/// The question.
pub(crate) const TITLE: &str = "What is best of the box?";
/// On the button that begins.
pub(crate) const START: &str = "Ride every combination";
/// On the button that ends it before its time.
pub(crate) const STOP: &str = "Stop";
/// On the button that saves the table.
pub(crate) const SAVE: &str = "Save the table as CSV";
/// On the buttons that put a part into the box.
pub(crate) const PUT_IN: &str = "Put in the box";
/// Lists of usual parts, each with the word by which a line of the box says its kind.
pub(crate) const RINGS: [&str; 2] = ["Rings", "rings"];
pub(crate) const CASSETTES: [&str; 2] = ["Cassette", "cassettes"];
pub(crate) const DERAILLEURS: [&str; 2] = ["Rear derailleur: capacity/largest sprocket", "rear"];
/// Over the courses kept in this browser.
pub(crate) const COURSES: &str = "Kept courses that count for what is least regretted:";
/// Beside how much one counts.
pub(crate) const WEIGHT: &str = "weight";
