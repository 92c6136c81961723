//! What of the section never changes.

/// Its name among the sections.
pub(crate) const NAME: &str = "Box";
/// The question.
pub(crate) const TITLE: &str = "What is best of the box?";
/// On the button that begins.
pub(crate) const START: &str = "Ride every combination";
/// On the button that ends it before its time.
pub(crate) const STOP: &str = "Stop";
/// What no teeth and millimetres tell.
pub(crate) const MECHANIC: &str = "Whether a cassette goes on the freewheel body, a shifter pulls as far as a derailleur asks for, and a chain is narrow enough is the mechanic’s question: teeth and millimetres do not tell.";
/// On the button that saves the table.
pub(crate) const SAVE: &str = "Save the table as CSV";
/// On the buttons that put a part into the box.
pub(crate) const PUT_IN: &str = "Put in the box";
/// Lists of usual parts, each with the word by which a line of the box says its kind.
pub(crate) const RINGS: [&str; 2] = ["Rings", "rings"];
pub(crate) const CASSETTES: [&str; 2] = ["Cassette", "cassettes"];
pub(crate) const DERAILLEURS: [&str; 2] = ["Rear derailleur: capacity/largest sprocket", "rear"];
