//! Captions and labels of the pictures, and what is said of their spots.

pub(crate) mod found;
pub(crate) mod gain;
pub(crate) mod gear_times;
pub(crate) mod profile;

/// Where a track cannot be used for a lap.
pub(crate) const NO_LAP: &str = "No lap: this track cannot be used for one.";

/// A picture of a lap that there is not, so that each has a name of its own.
pub(crate) fn none_yet(title: &str, why: &str) -> String {
    format!("{title}. {why}")
}

/// Until the lap is worked out.
pub(crate) const WAITING: &str = "The lap is being worked out.";
