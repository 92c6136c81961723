//! Courses that are not taken.

use crate::lap::course_fault::CourseFault;
use crate::lap::words::notes;

/// Why a course is not taken, within a sentence.
pub(crate) fn not_taken(fault: &CourseFault) -> String {
    match fault {
        CourseFault::File(fault) => notes::fault(*fault),
        CourseFault::Gpx(error) => error.to_string(),
        CourseFault::Sketch(error) => error.to_string(),
        CourseFault::Course(error) => error.to_string(),
    }
}
