//! What is not done about the course.

use crate::lap::course_fault::CourseFault;

/// What is not done about the course, which stays as it was.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Refusal {
    /// A file or a kept course of this name is not taken, and why.
    File(String, CourseFault),
    /// That part of the track is not used, and why.
    Part(CourseFault),
    /// The course has more stretches than the sketch holds.
    Sketch,
    /// A course of this name that undo comes back to is no longer kept.
    Gone(String),
}
