//! Which way a recorded track leads.

use crate::course::track::way::{Way, WayPoint};
use crate::rider::Compass;

/// A way leads from so far before a place to so far behind it, m: positions wander by a few metres. Estimate.
const AROUND_M: f64 = 10.0;

/// Which way each of the equal pieces of a way leads, to a degree; none where it comes back to where it was.
pub(in crate::course) fn headings(way: &Way, spacing_m: f64) -> Vec<Option<Compass>> {
    let length = way.length_m();
    let pieces = (length / spacing_m).round() as usize;
    let middle = |piece: usize| (piece as f64 + 0.5) * spacing_m;
    let chord = |at: f64| [(at - AROUND_M).max(0.0), (at + AROUND_M).min(length)].map(|at| place(way, at));
    (0..pieces).map(|piece| heading(chord(middle(piece)))).collect()
}

/// Latitude and longitude at a distance, in degrees.
fn place(way: &Way, at_m: f64) -> [f64; 2] {
    let after = way.points.partition_point(|it| it.at_m < at_m).clamp(1, way.points.len() - 1);
    let [from, to] = [&way.points[after - 1], &way.points[after]];
    let share = ((at_m - from.at_m) / (to.at_m - from.at_m)).clamp(0.0, 1.0);
    let mixed = |of: fn(&WayPoint) -> f64| of(from) + share * short(of(to) - of(from));
    [mixed(|it| it.raw.latitude), mixed(|it| it.raw.longitude)]
}

/// A difference of degrees the short way round.
fn short(degrees: f64) -> f64 {
    (degrees + 180.0).rem_euclid(360.0) - 180.0
}

/// On a sphere, which is off by less than a fifth of a degree.
fn heading([from, to]: [[f64; 2]; 2]) -> Option<Compass> {
    let shrunk = (0.5 * (from[0] + to[0])).to_radians().cos();
    Compass::towards(shrunk * short(to[1] - from[1]), to[0] - from[0])
}
