//! Heads of the form.

/// Part of the position.
pub(crate) const ROAD_BIKE: &str = "Road bike, as measured";
/// Part of the position.
pub(crate) const CROSS_BIKE: &str = "Cross bike, and what shall differ";
/// Part of the position.
pub(crate) const CROSS_FRAME: &str = "Cross frame";
