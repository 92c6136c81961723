//! A course put into the sketch in fewer stretches.

use gear_math::Course;
use gear_math::course::JoinedCourse;

/// Share of its climbing that a course must keep to count as the same; estimate.
const SAME_CLIMB: f64 = 0.9;

/// A course put into the sketch in fewer stretches, and what that did to it.
#[derive(Debug, Clone, PartialEq)]
pub struct Sketched {
    /// What is in the sketch.
    pub joined: JoinedCourse,
    /// Stretches that it had before.
    pub stretches: usize,
    /// What it climbed before, m.
    pub climb_m: f64,
}

impl Sketched {
    /// Stretches in which a recorded course is put into the sketch: as many as a link below 2000 characters carries with
    /// the demo's bench. With half as many, short ramps are evened out, and with them where to get off.
    pub const MOST: usize = 110;

    /// The same of a course that says which way it leads, which takes more characters.
    const MOST_WITH_HEADINGS: usize = 80;

    /// In how many stretches a course is put into the sketch.
    #[must_use]
    pub fn most(course: &Course) -> usize {
        let has_headings = course.segments().iter().any(|segment| segment.heading.is_some());
        if has_headings { Self::MOST_WITH_HEADINGS } else { Self::MOST }
    }

    /// A course in this many stretches.
    #[must_use]
    pub fn of(course: &Course, stretches: usize) -> Self {
        Self {
            joined: course.joined(stretches),
            stretches: course.segments().len(),
            climb_m: course.climb_m(),
        }
    }

    /// Whether it still counts as the same course.
    #[must_use]
    pub fn is_same(&self) -> bool {
        self.joined.course.climb_m() >= SAME_CLIMB * self.climb_m
    }
}
