//! A point as a recorder wrote it, and how far it is from another.

use geographiclib_rs::{Geodesic, InverseGeodesic};

/// Nearer than this in latitude and longitude, in degrees, the globe is as good as a plane.
const PLANE_DEGREES: f64 = 0.01;
/// Half the longer axis of the ellipsoid, m, and the square of its eccentricity (WGS 84, NIMA TR8350.2).
const AXIS_M: f64 = 6_378_137.0;
const ECCENTRICITY_SQUARED: f64 = 0.006_694_379_990_141_3;

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

/// Length of the geodesic between two points on the WGS 84 ellipsoid, in metres. Points as near as those of a recording lie
/// on a plane, which is off by less than a ten-millionth.
///
/// # Formula
/// s² = (M Δφ)² + (N cos φ Δλ)², with the radii of curvature along and across the meridian at the middle latitude φ,
/// M = a (1 − e²) ÷ w³, N = a ÷ w and w² = 1 − e² sin² φ.
pub(in crate::course) fn distance_m(a: &RecordedPoint, b: &RecordedPoint) -> f64 {
    let (north, east) = (b.latitude - a.latitude, b.longitude - a.longitude);
    if north.abs() > PLANE_DEGREES || east.abs() > PLANE_DEGREES {
        return Geodesic::wgs84().inverse(a.latitude, a.longitude, b.latitude, b.longitude);
    }
    let cosine = f64::midpoint(a.latitude, b.latitude).to_radians().cos();
    let square = 1.0 - ECCENTRICITY_SQUARED * (1.0 - cosine * cosine);
    let across = AXIS_M / square.sqrt();
    let along = across * (1.0 - ECCENTRICITY_SQUARED) / square;
    let [north, east] = [along * north.to_radians(), across * cosine * east.to_radians()];
    (north * north + east * east).sqrt()
}

/// Seconds from one point to another; none where a time is missing or runs backwards.
pub(in crate::course) fn elapsed_s(from: &RecordedPoint, to: &RecordedPoint) -> f64 {
    from.seconds.zip(to.seconds).map_or(0.0, |(from, to)| (to - from).max(0.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn point(latitude: f64, longitude: f64) -> RecordedPoint {
        RecordedPoint { latitude, longitude, elevation: None, seconds: None }
    }

    proptest! {
        #[test]
        fn near_points_are_as_far_apart_as_the_geodesic_says(
            latitude in -89.99..89.99, longitude in -179.9..179.9, north in -0.01..0.01, east in -0.01..0.01,
        ) {
            let (a, b) = (point(latitude, longitude), point(latitude + north, longitude + east));
            let geodesic: f64 = Geodesic::wgs84().inverse(a.latitude, a.longitude, b.latitude, b.longitude);
            let off = (distance_m(&a, &b) - geodesic).abs();
            prop_assert!(off <= 1e-7 * geodesic + 1e-8, "{off} m of {geodesic}");
        }
    }

    #[test]
    fn across_the_date_line_it_is_no_way_round_the_globe() {
        let metres = distance_m(&point(10.0, 179.999), &point(10.0, -179.999));
        assert!((metres - 219.27).abs() < 0.1, "{metres}");
    }
}
