//! Painting a stretch of the lap on its picture.

use crate::bench::field::Field;
use crate::bench::words::complaints::sentence;
use crate::lap::stroke::StrokeFault;
use crate::lap::words::complaints;

/// The controls under the picture.
pub(crate) const FORM: &str = "Change a stretch";
/// Before where it begins.
pub(crate) const FROM: &str = "From";
/// Before where it ends.
pub(crate) const TO: &str = "to";
/// Before what it becomes.
pub(crate) const BECOMES: &str = "is";
/// What takes away all that was painted.
pub(crate) const AS_BEFORE: &str = "as it was before";
/// On the button that paints.
pub(crate) const PAINT: &str = "Paint";
/// On the button that takes the last change of anything back.
pub(crate) const UNDO: &str = "Undo";
/// On the button that puts the controls away.
pub(crate) const DONE: &str = "Done";

/// What a stretch may have besides its ground: its word in a sketch, its name, and of its number the name, the unit and the
/// usual value.
pub(crate) const OTHERS: [[&str; 5]; 3] = [
    ["foot", "an obstacle, on foot", "It costs", "s", "2"],
    ["none", "without an obstacle", "", "", ""],
    ["corner", "a bend", "At most", "km/h", "15"],
];

/// That it was painted.
pub(crate) const PAINTED: &str = "Painted; as text it stands under “Course”.";

/// Why nothing is.
pub(crate) fn fault(fault: StrokeFault) -> String {
    match fault {
        StrokeFault::Metres => "Say in metres where it begins and, farther on, where it ends.".to_owned(),
        StrokeFault::Coat(fault) => sentence(&fault.to_string()),
        StrokeFault::Nowhere(error) => sentence(&error.to_string()),
        StrokeFault::Line(line, error) => complaints::line(line, &complaints::patch(error)),
        StrokeFault::TooLong => complaints::too_long(Field::Paint.longest()),
    }
}
