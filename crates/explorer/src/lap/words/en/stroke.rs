//! Painting a stretch of the lap on its picture.

use crate::bench::words::choices::ground;
use crate::bench::words::complaints::sentence;
use crate::lap::stroke::{Stroke, StrokeFault};
use crate::lap::words::course::CHOOSE;
use crate::number::with_unit;
use gear_math::course::{Coat, ObstacleTime, SketchFault};
use gear_math::rider::Compass;

/// The controls under the picture.
pub(crate) const FORM: &str = "Change a stretch";
/// Before where it begins.
pub(crate) const FROM: &str = "From";
/// Before where it ends.
pub(crate) const TO: &str = "to";
/// Before what it becomes.
pub(crate) const BECOMES: &str = "is";
/// Over the grounds.
pub(crate) const GROUNDS: &str = "Ground";
/// Over what else a stretch may have.
pub(crate) const EXTRAS: &str = "Besides";
/// What takes away all that was painted.
pub(crate) const BARE: &str = "as it was before changes";
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
    ["corner", "a bend", "At most", "km/h", "15"],
    ["heading", "leading another way", "East of north", "°", "90"],
];

/// What was painted.
pub(crate) fn painted(stroke: &Stroke) -> String {
    let (from, to) = (with_unit(stroke.from_m, 0, "m"), with_unit(stroke.to_m, 0, "m"));
    let what = match stroke.coat {
        None => "as it was".to_owned(),
        Some(Coat::Ground(surface)) => ground(surface).to_owned(),
        Some(Coat::Obstacle(_)) => "an obstacle".to_owned(),
        Some(Coat::Corner(_)) => "a bend".to_owned(),
        Some(Coat::Heading(heading)) => format!("leading {:.0}°", heading.degrees()),
    };
    format!("Painted: {from} to {to} is {what}.")
}

/// Why nothing is.
pub(crate) fn fault(fault: StrokeFault) -> String {
    match fault {
        StrokeFault::NoMetres => "Say in metres from the line where it begins and where it ends.".to_owned(),
        StrokeFault::EndsFirst => "It must end behind where it begins.".to_owned(),
        StrokeFault::Coat(SketchFault::Obstacle) => {
            format!("Say what it costs: {}.", ObstacleTime::LIMITS.range())
        }
        StrokeFault::Coat(SketchFault::Heading) => {
            format!("Say which way it leads, 90° for east: {}.", Compass::LIMITS.range())
        }
        StrokeFault::Coat(fault) => sentence(&fault.to_string()),
        StrokeFault::NoCourse => CHOOSE.to_owned(),
        StrokeFault::Nowhere(error) => sentence(&error.to_string()),
        StrokeFault::Line(line, error) => {
            format!("First put right line {line} of the changes on a stretch, under “Course”: {error}.")
        }
        StrokeFault::Bare => "Nothing was changed there.".to_owned(),
        StrokeFault::TooLong => {
            "So many changes cannot be held: put the course into the sketch first.".to_owned()
        }
    }
}
