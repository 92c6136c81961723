//! What to type instead of a course, what is painted over it, or a search that cannot be understood.

use crate::bench::words::complaints::sentence;
use crate::lap::course_fault::CourseFault;
use crate::lap::words::not_taken::not_taken;
use crate::units;
use gear_math::Chainring;
use gear_math::course::{CourseError, PatchError};

/// What goes on beside a line in error.
pub(crate) const OTHER_LINES: &str = "the other lines";
/// What goes on in the place of the part of a track.
pub(crate) const PART_BEFORE: &str = "the part before";
/// What goes on in the place of lines.
pub(crate) const LINES_BEFORE: &str = "what stood here before";
/// The part of a track ends before it begins.
pub(crate) const ENDS_FIRST: &str = "Type more than where it begins.";

/// A text that its field cannot hold.
pub(crate) fn too_long(characters: usize) -> String {
    format!(
        "This is longer than the field holds, {characters} characters; join stretches, or keep the course as a file."
    )
}

/// A sketch that is no lap.
pub(crate) fn sketch(fault: &CourseFault) -> String {
    sentence(&not_taken(fault))
}

/// The course that goes on in the place of a sketch.
pub(crate) fn course_of(length_m: f64) -> String {
    format!("a course of {}", units::distances().print(length_m, 0))
}

/// What is wrong with a line.
pub(crate) fn line(line: usize, fault: &str) -> String {
    sentence(&format!("line {line}: {fault}"))
}

/// A line that paints nothing, within the sentence that names it.
pub(crate) fn patch(error: PatchError) -> String {
    error.to_string()
}

/// A line that nothing of the course lies under, within the sentence that names it.
pub(crate) fn idle(error: &CourseError) -> String {
    error.to_string()
}

/// The largest ring of a search is smaller than the smallest.
pub(crate) fn rings_crossed(small: Chainring) -> String {
    format!("The largest ring is smaller than the smallest: type {} or more.", small.teeth())
}

/// The rings that go on in their place.
pub(crate) fn rings([small, large]: [Chainring; 2]) -> String {
    format!("{} to {}\u{a0}teeth", small.teeth(), large.teeth())
}
