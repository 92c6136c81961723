//! What stands in the pictures, and what they say of themselves.

pub(crate) mod climb;
pub(crate) mod slopes;
pub(crate) mod tornado;
pub(crate) mod verdicts;

use crate::number::percent;
use crate::ride::section::RideSection;

/// The axis of gradients.
pub(crate) const SLOPE: &str = "slope, %";

/// The climb at its place on that axis.
pub(crate) fn this_climb(report: &RideSection) -> String {
    format!("this climb, {}", percent(report.ride.inputs.climb.percent(), 1))
}
