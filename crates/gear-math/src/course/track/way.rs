//! The way that recorded points lead along: what is kept of them, what is left out, and the part that is to be used.

use crate::course::course::Course;
use crate::course::quantity::TrackPlace;
use crate::course::track::elevation::{climb_m, interpolated};
use crate::course::track::gpx::GpxError;
use crate::course::track::laps::{Laps, Place, TrackLaps};
use crate::course::track::median::median;
use crate::course::track::pauses::Pauses;
use crate::course::track::recorded_point::{RecordedPoint, distance_m, elapsed_s};

/// Points nearer than this to the last one kept are left out: at a standstill a recorder wanders by a few metres,
/// and the wandering would count as distance. Estimate, from the few metres a position is uncertain.
const LEAST_MOVE_M: f64 = 2.0;
/// Two points nearer than this are the same place: positions are commonly written to 0.1 m.
const SAME_PLACE_M: f64 = 0.1;
/// A point this much farther away than its neighbours are apart is a stray. Estimate.
const STRAY_RATIO: f64 = 4.0;
/// Shortest leg that may be called stray. Estimate.
const STRAY_LEAST_M: f64 = 50.0;
/// A stray's legs are this many times as long as usual in the file, unless its clock gives it away: where points lie far
/// apart, one at which the way turns back looks like a stray. Estimate.
const STRAY_OVER_USUAL: f64 = 3.0;
/// Nobody rides a course faster than this, m/s. Estimate.
const ABSURD_M_PER_S: f64 = 30.0;
/// Elevations on land, with room for a barometer set wrong: lowest shore to highest mountain.
const ON_LAND_M: core::ops::RangeInclusive<f64> = -600.0..=9000.0;
/// An elevation this far from the median of its neighbours is absurd. Estimate.
const ABSURD_STEP_M: f64 = 15.0;
/// Neighbours on either side that the median is taken from.
const NEIGHBOURS: usize = 3;
/// Start and finish nearer than this are the same line. Estimate.
const SAME_LINE_M: f64 = 40.0;
/// Way out and way back nearer than this are the same way. Estimate.
const SAME_WAY_M: f64 = 15.0;
/// Places compared between the way out and the way back.
const COMPARED_PLACES: usize = 20;

/// A point of the way, with its distance from the start.
#[derive(Debug, Clone, Copy)]
pub(in crate::course) struct WayPoint {
    pub(in crate::course) at_m: f64,
    pub(in crate::course) raw: RecordedPoint,
    pub(in crate::course) elevation: Option<f64>,
}

/// The points kept, and what was left out.
#[derive(Debug, Clone, Default)]
pub(in crate::course) struct Way {
    pub(in crate::course) points: Vec<WayPoint>,
    pub(in crate::course) duplicates: usize,
    pub(in crate::course) strays: usize,
    pub(in crate::course) close: usize,
    pub(in crate::course) joins_m: f64,
    /// Points kept without an elevation.
    pub(in crate::course) missing_elevations: usize,
    /// Points kept whose elevation was taken away.
    pub(in crate::course) absurd_elevations: usize,
    /// Elevations of every point of the file, also of those left out, which stand at the last one kept.
    written: Vec<(f64, f64)>,
}

impl Way {
    pub(in crate::course) fn along(
        segments: &[Vec<RecordedPoint>],
        pauses: &[Pauses],
        usual_m: f64,
    ) -> Result<Self, GpxError> {
        let mut way = Self::default();
        for (segment, pauses) in segments.iter().zip(pauses) {
            for (index, point) in segment.iter().enumerate() {
                if pauses.inside[index] {
                    way.close += 1;
                } else {
                    way.take(point, segment.get(index + 1), index == 0, usual_m);
                }
                way.written.extend(point.elevation.map(|height| (way.length_m(), height)));
            }
        }
        match way.points.len() {
            0 | 1 => Err(GpxError::TooFewPoints),
            _ => {
                way.drop_absurd_elevations();
                Ok(way)
            }
        }
    }

    fn take(
        &mut self,
        point: &RecordedPoint,
        next: Option<&RecordedPoint>,
        starts_segment: bool,
        usual_m: f64,
    ) {
        let Some(last) = self.points.last() else {
            self.points.push(WayPoint { at_m: 0.0, raw: *point, elevation: point.elevation });
            return;
        };
        let leg = distance_m(&last.raw, point);
        if leg < SAME_PLACE_M {
            self.duplicates += 1;
        } else if leg < LEAST_MOVE_M {
            self.close += 1;
        } else if next.is_some_and(|next| is_stray(&last.raw, point, next, leg, usual_m)) {
            self.strays += 1;
        } else {
            let at_m = last.at_m + leg;
            self.joins_m += if starts_segment { leg } else { 0.0 };
            self.points.push(WayPoint { at_m, raw: *point, elevation: point.elevation });
        }
    }

    /// Height climbed by every point of the file, m.
    pub(in crate::course) fn climb_written_m(&self) -> f64 {
        climb_m(self.written.iter().map(|it| it.1))
    }

    /// Height climbed by the points kept, m.
    pub(in crate::course) fn climb_kept_m(&self) -> f64 {
        climb_m(self.points.iter().filter_map(|point| point.elevation))
    }

    /// Takes away elevations off the land or far from the median of their neighbours.
    fn drop_absurd_elevations(&mut self) {
        let known: Vec<usize> =
            (0..self.points.len()).filter(|&i| self.points[i].elevation.is_some()).collect();
        let heights: Vec<f64> = known.iter().filter_map(|&i| self.points[i].elevation).collect();
        self.missing_elevations = self.points.len() - known.len();
        for (place, (&i, &height)) in known.iter().zip(&heights).enumerate() {
            let nearby =
                &heights[place.saturating_sub(NEIGHBOURS)..(place + NEIGHBOURS + 1).min(heights.len())];
            let is_near = |other: &f64| (height - other).abs() <= ABSURD_STEP_M;
            if !ON_LAND_M.contains(&height) || !nearby.iter().all(is_near) && !is_near(&median(nearby)) {
                self.points[i].elevation = None;
                self.absurd_elevations += 1;
            }
        }
    }

    pub(in crate::course) fn length_m(&self) -> f64 {
        self.points.last().map_or(0.0, |point| point.at_m)
    }

    pub(in crate::course) fn longest_gap_m(&self) -> f64 {
        self.points.windows(2).map(|pair| pair[1].at_m - pair[0].at_m).fold(0.0, f64::max)
    }

    pub(in crate::course) fn is_loop(&self) -> bool {
        let ends = (self.points.first(), self.points.last());
        matches!(ends, (Some(first), Some(last)) if distance_m(&first.raw, &last.raw) < SAME_LINE_M)
    }

    pub(in crate::course) fn is_out_and_back(&self) -> bool {
        let length = self.length_m();
        let places =
            (0..COMPARED_PLACES).map(|place| length / 2.0 * (place as f64 + 0.5) / COMPARED_PLACES as f64);
        self.is_loop() && places.into_iter().all(|out| self.gap_between(out, length - out) < SAME_WAY_M)
    }

    fn gap_between(&self, one_m: f64, other_m: f64) -> f64 {
        distance_m(&self.place_at(one_m), &self.place_at(other_m))
    }

    /// The way on a plane that touches the globe at the start: as laps are short, the plane is good to a few millimetres.
    fn on_a_plane(&self) -> Vec<Place> {
        /// Metres in a degree of the equator, 2π · 6 378 137 m ÷ 360 (WGS 84, NIMA TR8350.2). A degree of latitude is up to
        /// 0.7 % shorter, which moves no place of a lap by more than the way itself is off.
        const DEGREE_M: f64 = 111_320.0;
        let Some(start) = self.points.first() else { return Vec::new() };
        let eastward = DEGREE_M * start.raw.latitude.to_radians().cos();
        let place = |point: &WayPoint| {
            let east = eastward * (point.raw.longitude - start.raw.longitude);
            (point.at_m, [east, DEGREE_M * (point.raw.latitude - start.raw.latitude)])
        };
        self.points.iter().map(place).collect()
    }

    /// Leaves out what lies before one place and behind the other.
    pub(in crate::course) fn keep_between(
        &mut self,
        from: Option<TrackPlace>,
        to: Option<TrackPlace>,
    ) -> Result<(), GpxError> {
        if from.is_none() && to.is_none() {
            return Ok(());
        }
        self.cut(from.map_or(0.0, TrackPlace::m), to.map_or(f64::INFINITY, TrackPlace::m))
    }

    /// Its laps. All but the first are left out where there are several and that is asked for, or else it would be too long.
    pub(in crate::course) fn laps_kept(&mut self, only_first: bool) -> Result<TrackLaps, GpxError> {
        let laps = Laps::of(&self.on_a_plane());
        let only_first = only_first || self.length_m() > Course::LONGEST_M;
        let first = laps.passes.first().filter(|_| only_first && laps.passes.len() > 1);
        if let Some(length_m) = first {
            self.cut(laps.from_m, laps.from_m + length_m)?;
        }
        Ok(TrackLaps::of(&laps, first.is_some()))
    }

    /// Leaves out what lies before `from_m` and after `to_m`.
    fn cut(&mut self, from_m: f64, to_m: f64) -> Result<(), GpxError> {
        let to_m = to_m.min(self.length_m());
        if to_m - from_m < LEAST_MOVE_M {
            return Err(GpxError::NoPart);
        }
        let known: Vec<(f64, f64)> =
            self.points.iter().filter_map(|point| Some((point.at_m, point.elevation?))).collect();
        let edge = |at_m: f64| WayPoint {
            at_m,
            raw: self.place_at(at_m),
            elevation: (known.len() > 1).then(|| interpolated(&known, at_m)),
        };
        let (start, end) = (edge(from_m), edge(to_m));
        self.written.retain(|(at_m, _)| from_m < *at_m && *at_m < to_m);
        self.written.splice(0..0, start.elevation.map(|height| (from_m, height)));
        self.written.extend(end.elevation.map(|height| (to_m, height)));
        self.written.iter_mut().for_each(|it| it.0 -= from_m);
        self.points.retain(|point| from_m < point.at_m && point.at_m < to_m);
        self.points.insert(0, start);
        self.points.push(end);
        self.points.iter_mut().for_each(|point| point.at_m -= from_m);
        Ok(())
    }

    /// The place `at_m` along the way, straight between its two neighbours.
    fn place_at(&self, at_m: f64) -> RecordedPoint {
        let end = self.points.partition_point(|point| point.at_m < at_m).clamp(1, self.points.len() - 1);
        let (a, b) = (&self.points[end - 1], &self.points[end]);
        let share = ((at_m - a.at_m) / (b.at_m - a.at_m)).clamp(0.0, 1.0);
        let between = |from: f64, to: f64| from + share * (to - from);
        RecordedPoint {
            latitude: between(a.raw.latitude, b.raw.latitude),
            longitude: between(a.raw.longitude, b.raw.longitude),
            ..a.raw
        }
    }
}

/// Whether `point` jumps off the way between `last` and `next`.
fn is_stray(
    last: &RecordedPoint,
    point: &RecordedPoint,
    next: &RecordedPoint,
    leg: f64,
    usual_m: f64,
) -> bool {
    let shorter_leg = leg.min(distance_m(point, next));
    let time = elapsed_s(last, point);
    let unusual = shorter_leg > STRAY_OVER_USUAL * usual_m || (time > 0.0 && leg > ABSURD_M_PER_S * time);
    unusual && shorter_leg > STRAY_LEAST_M && shorter_leg > STRAY_RATIO * distance_m(last, next)
}

/// Median way between two different points that follow one another.
pub(in crate::course) fn usual_spacing_m(segments: &[Vec<RecordedPoint>]) -> f64 {
    let pairs = segments.iter().flat_map(|segment| segment.windows(2));
    let legs: Vec<f64> =
        pairs.map(|pair| distance_m(&pair[0], &pair[1])).filter(|&leg| leg >= SAME_PLACE_M).collect();
    median(&legs)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Metres east and north of a place at 50.9° N, by the ellipsoid's radii of curvature there.
    fn place(east: f64, north: f64) -> RecordedPoint {
        let (latitude, longitude) = (50.9 + north / 111_250.0, 6.1 + east / 70_350.0);
        RecordedPoint { latitude, longitude, elevation: None, seconds: None }
    }

    fn way(places: &[(f64, f64)]) -> Way {
        let points: Vec<RecordedPoint> = places.iter().map(|&(east, north)| place(east, north)).collect();
        let pauses = [Pauses::of(&points)];
        Way::along(&[points], &pauses, 50.0).unwrap()
    }

    #[test]
    fn the_plane_lies_east_and_north_of_the_start() {
        let places = [(0.0, 0.0), (300.0, 0.0), (300.0, 400.0), (-200.0, 100.0)];
        for ((_, found), (east, north)) in way(&places).on_a_plane().into_iter().zip(places) {
            assert!((found[0] - east).abs() < 3.0 && (found[1] - north).abs() < 3.0, "{found:?}");
        }
    }

    #[test]
    fn a_place_lies_straight_between_its_neighbours() {
        let way = way(&[(0.0, 0.0), (300.0, 0.0), (300.0, 200.0)]);
        for (at_m, (east, north)) in [
            (-5.0, (0.0, 0.0)),
            (75.0, (75.0, 0.0)),
            (300.0, (300.0, 0.0)),
            (350.0, (300.0, 50.0)),
            (900.0, (300.0, 200.0)),
        ] {
            let off = distance_m(&way.place_at(at_m), &place(east, north));
            assert!(off < 0.5, "{at_m}: {off} m off");
        }
    }

    #[test]
    fn out_and_back_is_the_same_way_twice() {
        let out: Vec<(f64, f64)> =
            (0..=10).map(|at| (20.0 * f64::from(at), 3.0 * f64::from(at * at))).collect();
        let there_and_back: Vec<_> = out.iter().chain(out.iter().rev().skip(1)).copied().collect();
        assert!(way(&there_and_back).is_out_and_back());
        let square = [(0.0, 0.0), (150.0, 0.0), (150.0, 150.0), (0.0, 150.0), (0.0, 0.0)];
        assert!(way(&square).is_loop() && !way(&square).is_out_and_back());
        // Out and back on one way, with a round of 60 m at its end.
        let lollipop =
            [(0.0, 0.0), (0.0, 200.0), (60.0, 200.0), (60.0, 260.0), (0.0, 260.0), (0.0, 200.0), (0.0, 0.0)];
        assert!(!way(&lollipop).is_out_and_back());
        // A round of 60 m at its beginning.
        let noose =
            [(0.0, 0.0), (60.0, 0.0), (60.0, 60.0), (60.0, 300.0), (60.0, 60.0), (0.0, 60.0), (0.0, 0.0)];
        assert!(!way(&noose).is_out_and_back());
        assert!(!way(&out).is_loop() && !way(&out).is_out_and_back());
    }

    /// 300 m aside between points 10 m apart.
    #[test]
    fn a_stray_jumps_far_off_and_back() {
        let jumps = |aside: f64, ahead: f64, usual_m: f64, seconds: Option<f64>| {
            let last = RecordedPoint { seconds: seconds.map(|_| 0.0), ..place(0.0, 0.0) };
            let point = RecordedPoint { seconds, ..place(aside, 0.5 * ahead) };
            let next = place(0.0, ahead);
            is_stray(&last, &point, &next, distance_m(&last, &point), usual_m)
        };
        assert!(jumps(300.0, 10.0, 10.0, None));
        assert!(!jumps(300.0, 100.0, 10.0, None), "no farther than the way goes on");
        assert!(!jumps(45.0, 2.0, 5.0, None), "too near to be one");
        assert!(!jumps(300.0, 10.0, 200.0, None), "points lie that far apart");
        assert!(jumps(300.0, 10.0, 200.0, Some(5.0)), "nobody rides 60 m/s");
        assert!(!jumps(300.0, 10.0, 200.0, Some(12.0)), "25 m/s may be");
    }

    #[test]
    fn a_height_far_from_its_neighbours_is_absurd() {
        let dropped = |heights: &[f64]| -> Vec<usize> {
            let places: Vec<(f64, f64)> = (0..heights.len()).map(|at| (10.0 * at as f64, 0.0)).collect();
            let mut way = way(&places);
            way.points.iter_mut().zip(heights).for_each(|(point, &height)| point.elevation = Some(height));
            way.drop_absurd_elevations();
            let gone = way.points.iter().enumerate().filter(|(_, point)| point.elevation.is_none());
            let gone: Vec<usize> = gone.map(|(at, _)| at).collect();
            assert_eq!(gone.len(), way.absurd_elevations);
            gone
        };
        assert_eq!(dropped(&[10.0, 10.0, 10.0, 10.0, 40.0, 10.0, 10.0, 10.0]), [4]);
        assert_eq!(dropped(&[40.0, 10.0, 10.0, 10.0, 10.0, 10.0, 10.0, -40.0]), [0, 7]);
        // A step of 20 m that stays: the median follows it.
        assert_eq!(dropped(&[0.0, 0.0, 0.0, 0.0, 20.0, 20.0, 20.0, 20.0]), []);
        assert_eq!(dropped(&[-700.0; 4]), [0, 1, 2, 3]);
    }

    #[test]
    fn a_median_stands_in_the_middle() {
        let found = (median(&[3.0]), median(&[9.0, 1.0, 2.0]), median(&[4.0, 1.0, 9.0, 2.0]));
        assert_eq!(found, (3.0, 2.0, 3.0));
    }

    /// Up and down 2 m every 10 m.
    #[test]
    fn a_part_cut_out_climbs_what_lies_within_it() {
        let points: Vec<RecordedPoint> = (0..9_u8)
            .map(|at| RecordedPoint {
                elevation: Some(2.0 * f64::from(at % 2)),
                ..place(0.0, 10.0 * f64::from(at))
            })
            .collect();
        let mut way = Way::along(core::slice::from_ref(&points), &[Pauses::of(&points)], 10.0).unwrap();
        assert!((way.climb_written_m() - 8.0).abs() < 1e-9);
        for ((from_m, to_m), climb) in [((25.0, 65.0), 4.0), ((10.0, 30.0), 2.0)] {
            way.cut(from_m, to_m).unwrap();
            assert!((way.length_m() - (to_m - from_m)).abs() < 1e-9 && way.points[0].at_m == 0.0);
            for found in [way.climb_written_m(), way.climb_kept_m()] {
                assert!((found - climb).abs() < 0.05, "{found} for {climb}");
            }
        }
        assert_eq!(way.cut(3.0, 4.0), Err(GpxError::NoPart));
    }

    #[test]
    fn points_too_near_the_last_one_are_left_out() {
        let way =
            way(&[(0.0, 0.0), (0.0, 1.0), (0.0, 1.5), (0.0, 10.0), (0.0, 10.0), (0.0, 10.0), (0.0, 12.5)]);
        assert_eq!((way.points.len(), way.close, way.duplicates, way.strays), (3, 2, 2, 0));
    }
}
