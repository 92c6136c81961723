//! A point as a recorder wrote it, and how far it is from another.

use geographiclib_rs::{Geodesic, InverseGeodesic};

/// A point as it stands in the file.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::course) struct RecordedPoint {
    /// Latitude, degrees north.
    pub(in crate::course) latitude: f64,
    /// Longitude, degrees east.
    pub(in crate::course) longitude: f64,
    /// Elevation in metres, when given and a number.
    pub(in crate::course) elevation: Option<f64>,
    /// Seconds since some fixed moment, when given and readable.
    pub(in crate::course) seconds: Option<f64>,
}

/// Length of the geodesic between two points on the WGS 84 ellipsoid, in metres.
pub(in crate::course) fn distance_m(a: &RecordedPoint, b: &RecordedPoint) -> f64 {
    Geodesic::wgs84().inverse(a.latitude, a.longitude, b.latitude, b.longitude)
}

/// Seconds from one point to another; none where a time is missing or runs backwards.
pub(in crate::course) fn elapsed_s(from: &RecordedPoint, to: &RecordedPoint) -> f64 {
    from.seconds.zip(to.seconds).map_or(0.0, |(from, to)| (to - from).max(0.0))
}
