//! What holds for every moving thing.

/// Gravity in m/s²: that of middle latitudes, rounded (9.780 at the equator, 9.832 at the poles by the formula of the
/// Geodetic Reference System 1980). Every number of the riding models was worked out with it. The standard 9.80665 would
/// move a wheel's load by 0.03 %, which no figure shown can tell.
pub(crate) const GRAVITY: f64 = 9.81;
