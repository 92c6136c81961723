//! What the sheet says in every section.

use crate::layout::concern::Concern;

/// In place of a value that is not the rider's.
pub(crate) const OPEN: &str = "not known ________";

/// The heading over what is to be checked.
pub(crate) const fn concern(concern: Concern) -> &'static str {
    match concern {
        Concern::Drivetrain => "Chain, cage, spokes",
        Concern::Wheels => "Tyre and rim",
        Concern::Cockpit => "Stem, post, bolts, brakes",
        Concern::Course => "On the course",
        Concern::Measuring => "How to measure",
    }
}

/// A value that nobody has stated.
pub(crate) fn usual(value: &str) -> String {
    format!("{value} (usual)")
}
