//! Why a course is not taken.

use crate::lap::from_scripts::FileFault;
use gear_math::Course;
use gear_math::course::{CourseError, GpxError, SketchError};

/// Why a file, a sketch or a kept course is none to ride.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CourseFault {
    /// The browser cannot make anything of the file.
    File(FileFault),
    /// The file holds no usable track.
    Gpx(GpxError),
    /// The rows cannot be read.
    Sketch(SketchError),
    /// What was read is no lap.
    Course(CourseError),
}

/// The lap that rows of a sketch describe.
pub(crate) fn lap_of(rows: &str) -> Result<Course, CourseFault> {
    rows.parse::<Course>().map_err(CourseFault::Sketch)?.as_lap().map_err(CourseFault::Course)
}
