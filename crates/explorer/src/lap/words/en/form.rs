//! Heads of the form, and how a sketch is written.

use crate::words::listed;
use gear_math::Surface;

/// What unfolds the sketch of a course.
pub(crate) const SKETCH: &str = "Sketch a course; change ground or add obstacles on a stretch";
/// What unfolds how the lap is ridden.
pub(crate) const HABITS: &str = "Shifting, braking, wind and what a lap may take";

/// How a sketch is written.
pub(crate) fn sketching() -> String {
    let grounds = listed(&Surface::ALL.map(Surface::name));
    format!("Separate with ; or |. Grounds: {grounds}.")
}
