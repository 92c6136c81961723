//! From recorded points to a course: distances, stray and missing points, smoothing, and a report of what was found.

use crate::course::course::Course;
use crate::course::quantity::{SmoothingLength, TrackPlace};
use crate::course::track::gpx::GpxError;
use crate::course::track::height_profile::{HeightProfile, TrackElevation};
use crate::course::track::laps::TrackLaps;
use crate::course::track::pauses::TrackPauses;
use crate::course::track::points::TrackPoints;
use crate::course::track::recording::{Recording, TrackCleaning};
use crate::course::track_use::TrackUse;
use crate::rider::Surface;

/// Usual spacing below which the wandering of positions lengthens the way. Estimate.
const DENSE_M: f64 = 3.0;

/// How to make a course of a recorded track.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TrackOptions {
    /// How strongly elevations are smoothed.
    pub smoothing: SmoothingLength,
    /// The ground everywhere, to be painted over afterwards.
    pub surface: Surface,
    /// Where the part begins that is used; at the start of the track when left out.
    pub from: Option<TrackPlace>,
    /// Where it ends; at the end of the track when left out.
    pub to: Option<TrackPlace>,
    /// Whether only the first complete lap of it is taken, where there are several. Of a track too long to be a course it is
    /// taken anyway.
    pub first_lap: bool,
}

/// What was found in a file and what was done about it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TrackReport {
    /// Its points, and which were left out.
    pub cleaning: TrackCleaning,
    /// Where the recorder stood still.
    pub pauses: TrackPauses,
    /// Laps of the part used.
    pub laps: TrackLaps,
    /// Its elevations.
    pub elevation: TrackElevation,
    /// Length of the course along the slope, in metres. Every other length here is horizontal, as positions give it.
    pub length_m: f64,
    /// Height climbed over the course, in metres: what is steeper than ±45 % is taken as 45 %.
    pub climb_m: f64,
    /// Whether it ends where it starts, within 40 m.
    pub is_loop: bool,
    /// Whether the second half is the first one ridden back.
    pub out_and_back: bool,
    /// Whether a lap of it may be timed.
    pub track_use: TrackUse,
}

impl TrackReport {
    /// Whether points lie so close that the wandering of their positions lengthens the way: usually less than 3 m apart.
    #[must_use]
    pub fn is_lengthened(&self) -> bool {
        self.cleaning.usual_spacing_m < DENSE_M
    }
}

/// A course with the report of how it came about.
#[derive(Debug, Clone, PartialEq)]
pub struct TrackCourse {
    /// The course.
    pub course: Course,
    /// What was found and done.
    pub report: TrackReport,
}

impl Course {
    /// Reads a course from the text of a GPX file.
    ///
    /// The track with most points is used, its segments joined; a route when there is no track. Distances are
    /// geodesics on the WGS 84 ellipsoid, lengthened by the slope. Duplicate, stray and wandering points are left out, missing and absurd
    /// elevations bridged, and the rest smoothed: see [`TrackReport`]. Where a loop ends more than 3 m and no more than 30 m
    /// higher or lower than it starts, the difference is taken away evenly along it.
    ///
    /// # Errors
    /// See [`GpxError`]: text too large, not GPX, damaged, too many points, fewer than two places, nothing between the places
    /// asked for, longer than a course may be, or without elevations. A track that is read but is no course to be timed is
    /// no error: see [`TrackUse`].
    ///
    /// # Example
    /// ```
    /// use gear_math::{Course, Surface};
    /// use gear_math::course::{GpxError, SmoothingLength, TrackOptions};
    /// let options = TrackOptions { smoothing: SmoothingLength::new(40.0)?, surface: Surface::FirmGrass, from: None, to: None, first_lap: false };
    /// let text = r#"<gpx version="1.1"><trk><trkseg>
    ///     <trkpt lat="51.50" lon="5.50"><ele>20</ele></trkpt>
    ///     <trkpt lat="51.51" lon="5.50"><ele>25</ele></trkpt>
    /// </trkseg></trk></gpx>"#;
    /// let track = Course::from_gpx(text, &options)?;
    /// assert_eq!(track.report.length_m.round(), 1113.0);
    /// assert_eq!(Course::from_gpx("a photograph", &options), Err(GpxError::NotGpx));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn from_gpx(text: &str, options: &TrackOptions) -> Result<TrackCourse, GpxError> {
        Self::from_recording(&Recording::of(&TrackPoints::from_gpx(text)?)?, options)
    }

    /// The same of a file that was read before.
    ///
    /// # Errors
    /// See [`GpxError`]: what [`Self::from_gpx`] may find wrong once it has followed the points.
    pub fn from_recording(recording: &Recording, options: &TrackOptions) -> Result<TrackCourse, GpxError> {
        let mut way = recording.way.clone();
        way.keep_between(options.from, options.to)?;
        let laps = way.laps_kept(options.first_lap)?;
        if way.length_m() > Course::LONGEST_M {
            return Err(GpxError::TooLong);
        }
        let profile = HeightProfile::of(&way, options.smoothing)?;
        let course = profile.course(&way, options.surface)?;
        let elevation = TrackElevation::of(&way, &profile, &course);
        let report = TrackReport {
            cleaning: recording.cleaning(&way),
            pauses: recording.pauses,
            laps,
            elevation,
            length_m: course.length_m(),
            climb_m: course.climb_m(),
            is_loop: way.is_loop(),
            out_and_back: way.is_out_and_back(),
            track_use: TrackUse::of(elevation.clipped_share, way.length_m(), way.points.len()),
        };
        Ok(TrackCourse { course, report })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::course::track_use::TrackFault;
    use core::fmt::Write as _;

    /// A point of an invented track: metres north of a place, elevation and seconds.
    type Planted = (f64, Option<f64>, f64);

    /// Metres in a degree of latitude near the place.
    const DEGREE_M: f64 = 111_250.0;

    fn text(segments: &[Vec<Planted>]) -> String {
        let mut text = String::from("<gpx version='1.1'><trk>");
        for segment in segments {
            text.push_str("<trkseg>");
            for (north, elevation, seconds) in segment {
                let (minute, second) = ((seconds / 60.0).floor(), seconds % 60.0);
                let _ = write!(text, "<trkpt lat='{:.9}' lon='6.1'>", 50.9 + north / DEGREE_M);
                if let Some(height) = elevation {
                    let _ = write!(text, "<ele>{height}</ele>");
                }
                let _ = write!(text, "<time>2025-11-02T10:{minute:02}:{second:02}Z</time></trkpt>");
            }
            text.push_str("</trkseg>");
        }
        text + "</trk></gpx>"
    }

    fn report(segments: &[Vec<Planted>]) -> TrackReport {
        read_back(segments).report
    }

    fn read_back(segments: &[Vec<Planted>]) -> TrackCourse {
        Course::from_gpx(&text(segments), &options()).unwrap()
    }

    fn options() -> TrackOptions {
        TrackOptions {
            smoothing: SmoothingLength::new(30.0).unwrap(),
            surface: Surface::FirmGrass,
            from: None,
            to: None,
            first_lap: false,
        }
    }

    /// Length along a slope of 10 % over the horizontal distance.
    const ALONG: f64 = 1.004_987_562;

    /// Straight north, five metres and one second at a time, one metre up in ten.
    fn straight(count: u32) -> Vec<Planted> {
        (0..count).map(|i| (5.0 * f64::from(i), Some(100.0 + 0.5 * f64::from(i)), f64::from(i))).collect()
    }

    #[test]
    fn a_clean_slope_comes_out_as_it_went_in() {
        let track = read_back(&[straight(101)]);
        assert!((track.report.length_m - ALONG * 500.0).abs() < 1.0, "{}", track.report.length_m);
        assert!((track.report.climb_m - 50.0).abs() < 0.5);
        let steepness = track.course.segments().iter().map(|segment| segment.gradient.percent());
        assert!(steepness.into_iter().all(|percent| (percent - 10.0).abs() < 0.1));
        let report = track.report;
        let nothing = (
            report.cleaning.duplicate_points,
            report.cleaning.stray_points,
            report.cleaning.close_points,
            report.pauses.count,
        );
        assert_eq!(nothing, (0, 0, 0, 0));
        assert_eq!(
            (report.elevation.missing, report.elevation.absurd, report.elevation.clipped_gradients),
            (0, 0, 0)
        );
        assert!(!report.is_loop && !report.out_and_back);
        assert!((report.elevation.spacing_m - 5.0).abs() < 0.01);
        let smoothing = SmoothingLength::new(10.0).unwrap();
        let close =
            Course::from_gpx(&text(&[straight(101)]), &TrackOptions { smoothing, ..options() }).unwrap();
        assert!((close.report.elevation.spacing_m - 2.5).abs() < 0.01, "four to the smoothing length");
    }

    /// Ramps of 30 and 80 % one after another: a wall that no course has.
    #[test]
    fn what_smoothing_clipping_and_points_left_out_did_to_the_climb_is_told_apart() {
        let steep = |at: f64| if at < 300.0 { 0.3 * at } else { 90.0 + 0.8 * (at - 300.0) };
        let mut points: Vec<Planted> =
            (0..=80).map(|i| (5.0 * f64::from(i), Some(steep(5.0 * f64::from(i))), f64::from(i))).collect();
        let found = report(&[points.clone()]);
        assert!(
            (found.elevation.climb_written_m - 170.0).abs() < 1e-9
                && (found.elevation.climb_recorded_m - 170.0).abs() < 1e-9
        );
        assert!(
            (found.elevation.climb_smoothed_m - 170.0).abs() < 0.5,
            "{}",
            found.elevation.climb_smoothed_m
        );
        let clipped = 90.0 + 0.45 * 100.0;
        assert!((found.climb_m - clipped).abs() < 3.0, "{}", found.climb_m);
        assert!(
            (found.elevation.clipped_share - 0.25).abs() < 0.03 && found.elevation.clipped_gradients > 15
        );
        points[20].1 = Some(230.0);
        let found = report(&[points.clone()]);
        assert!(
            (found.elevation.climb_written_m - found.elevation.climb_recorded_m - 198.5).abs() < 0.1,
            "{found:?}"
        );
        let cut = TrackOptions { from: TrackPlace::new(150.0).ok(), ..options() };
        let later = Course::from_gpx(&text(&[points]), &cut).unwrap().report;
        assert!(
            (later.elevation.climb_written_m - later.elevation.climb_recorded_m).abs() < 0.1,
            "the rest of the file is no matter"
        );
    }

    #[test]
    fn a_mountain_path_and_a_handful_of_points_are_no_course() {
        let path =
            |rise: f64| (0..200).map(move |i| (5.0 * f64::from(i), Some(rise * f64::from(i)), f64::from(i)));
        assert_eq!(report(&[path(1.0).collect()]).track_use, TrackUse::Usable);
        let steep = report(&[path(3.0).collect()]);
        assert_eq!(steep.track_use, TrackUse::NotUsable(TrackFault::TooSteep { share: 1.0 }));
        let few: Vec<Planted> =
            (0..8).map(|i| (120.0 * f64::from(i), Some(9.0), 30.0 * f64::from(i))).collect();
        assert!(matches!(
            report(&[few]).track_use,
            TrackUse::NotUsable(TrackFault::TooFewPoints { points: 8, .. })
        ));
    }

    #[test]
    fn planted_faults_are_found_and_leave_no_trace() {
        let clean = report(&[straight(101)]);
        let mut points = straight(101);
        points[20].1 = None;
        points[21].1 = None;
        points[40].1 = Some(0.0);
        points[41].1 = Some(20_000.0);
        points[60].0 += 3000.0;
        points.insert(80, points[80]);
        let found = report(&[points]);
        assert_eq!((found.elevation.missing, found.elevation.absurd), (2, 2));
        assert_eq!((found.cleaning.stray_points, found.cleaning.duplicate_points), (1, 1));
        assert!((found.length_m - clean.length_m).abs() < 1e-6);
        assert!((found.climb_m - clean.climb_m).abs() < 0.01);
    }

    #[test]
    fn a_pause_adds_neither_way_nor_height() {
        let mut points = straight(60);
        let (north, height, time) = points[59];
        let wandering = (1..=30).map(|i| (north + 0.2 * f64::from(i % 2), height, time + f64::from(i)));
        points.extend(wandering);
        points.extend((1..60).map(|i| (north + 5.0 * f64::from(i), height, time + 30.0 + f64::from(i))));
        let found = report(&[points]);
        assert_eq!((found.pauses.count, found.pauses.total_s), (1, 30.0));
        assert!((found.length_m - 295.0 - ALONG * 295.0).abs() < 1.5, "{}", found.length_m);
    }

    #[test]
    fn segments_are_joined() {
        let (first, second) = (straight(50), straight(101).split_off(60));
        let found = report(&[first, Vec::new(), second]);
        assert_eq!(found.cleaning.segments, 2);
        assert!((found.cleaning.joins_m - 55.0).abs() < 0.2, "{}", found.cleaning.joins_m);
        assert!(
            (found.cleaning.longest_gap_m - 55.0).abs() < 0.2 && (found.length_m - ALONG * 500.0).abs() < 1.0
        );
    }

    #[test]
    fn an_out_and_back_lap_is_seen() {
        let out = straight(80);
        let back = out.iter().rev().map(|&(north, height, time)| (north, height, 160.0 - time));
        let found = report(&[out.iter().copied().chain(back).collect()]);
        assert!(found.is_loop && found.out_and_back);
        assert!((found.length_m - ALONG * 790.0).abs() < 1.5);
    }

    /// Rounds of a circle of 1 km, five metres at a time, each ending so much higher than it began.
    fn rounds(count: u32, rise_m: f64, first_lap: bool) -> TrackCourse {
        let radius = 1000.0 / core::f64::consts::TAU;
        let mut text = String::from("<gpx><trk><trkseg>");
        for index in 0..=count * 200 {
            let (angle, at) = (f64::from(index) * 5.0 / radius, f64::from(index) / 200.0);
            let north = 50.9 + radius * angle.sin() / DEGREE_M;
            let east = 6.1 + radius * (1.0 - angle.cos()) / (DEGREE_M * 50.9_f64.to_radians().cos());
            let height = 100.0 + 8.0 * angle.sin() + rise_m * at;
            let _ = write!(text, "<trkpt lat='{north:.9}' lon='{east:.9}'><ele>{height}</ele></trkpt>");
        }
        let options = TrackOptions { first_lap, ..options() };
        Course::from_gpx(&(text + "</trkseg></trk></gpx>"), &options).unwrap()
    }

    #[test]
    fn a_circle_leads_every_way_in_turn() {
        let course = rounds(1, 0.0, false).course;
        let headings: Vec<f64> = course.segments().iter().map(|it| it.heading.unwrap().degrees()).collect();
        let at = |share: f64| headings[(share * headings.len() as f64) as usize];
        for (share, degrees) in [(0.25, 90.0), (0.5, 180.0), (0.75, 270.0)] {
            assert!((at(share) - degrees).abs() <= 3.0, "{} at {share}", at(share));
        }
        let north = read_back(&[straight(101)]).course;
        assert!(north.segments().iter().all(|it| it.heading.is_some_and(|it| it.degrees() < 1e-9)));
    }

    #[test]
    fn laps_are_counted_and_the_first_is_taken_when_asked() {
        let whole = rounds(4, 0.0, false).report;
        assert_eq!((whole.laps.count, whole.laps.is_first_alone), (4, false));
        assert!(
            (whole.laps.median_m - 1000.0).abs() < 5.0 && (whole.length_m - 4000.0).abs() < 15.0,
            "{whole:?}"
        );
        let first = rounds(4, 0.0, true).report;
        assert_eq!((first.laps.count, first.laps.is_first_alone), (4, true));
        assert!((first.length_m - 1000.0).abs() < 5.0 && first.is_loop);
        assert!((first.climb_m - whole.climb_m / 4.0).abs() < 0.3);
        assert!(!rounds(1, 0.0, true).report.laps.is_first_alone);
    }

    #[test]
    fn a_part_of_a_track_is_used() {
        let options = |from, to| TrackOptions {
            from: Some(TrackPlace::new(from).unwrap()),
            to: Some(TrackPlace::new(to).unwrap()),
            ..options()
        };
        let short = text(&[straight(101)]);
        let part = Course::from_gpx(&short, &options(102.0, 352.0)).unwrap().report;
        assert!((part.length_m - ALONG * 250.0).abs() < 0.5 && (part.climb_m - 25.0).abs() < 0.3, "{part:?}");
        let to_the_end = Course::from_gpx(&short, &options(300.0, 9000.0)).unwrap().report;
        assert!((to_the_end.length_m - ALONG * 200.0).abs() < 0.5);
        for (from, to) in [(800.0, 900.0), (300.0, 200.0), (300.0, 300.0)] {
            assert_eq!(Course::from_gpx(&short, &options(from, to)), Err(GpxError::NoPart), "{from} to {to}");
        }
        for (from, to, left) in [(Some(120.0), None, 380.0), (None, Some(120.0), 120.0)] {
            let [from, to] = [from, to].map(|place| place.map(|m| TrackPlace::new(m).unwrap()));
            let one_edge =
                Course::from_gpx(&short, &TrackOptions { from, to, ..self::options() }).unwrap().report;
            assert!((one_edge.length_m - ALONG * left).abs() < 0.5, "{one_edge:?}");
        }
        let far: Vec<Planted> = (0..7000).map(|i| (10.0 * f64::from(i), Some(5.0), f64::from(i))).collect();
        let far = text(&[far]);
        assert!(Course::from_gpx(&far, &options(60_000.0, 63_000.0)).is_ok());
        assert_eq!(Course::from_gpx(&far, &options(0.0, 63_000.0)), Err(GpxError::TooLong));
    }

    #[test]
    fn a_track_too_long_to_be_a_course_gives_its_first_lap() {
        let report = rounds(52, 0.0, false).report;
        assert_eq!((report.laps.count, report.laps.is_first_alone), (52, true));
        assert!((report.length_m - 1000.0).abs() < 5.0);
    }

    #[test]
    fn a_drifting_height_is_spread_along_the_loop() {
        let height_at_end = |track: &TrackCourse| {
            track.course.segments().iter().map(crate::course::segment::Segment::rise_m).sum::<f64>()
        };
        let drifted = rounds(1, 12.0, false);
        assert!(
            drifted.report.elevation.levelled && (drifted.report.elevation.mismatch_m - 12.0).abs() < 0.3
        );
        assert!(height_at_end(&drifted).abs() < 0.05, "{}", height_at_end(&drifted));
        let closed = rounds(1, 0.0, false);
        assert!((drifted.report.climb_m - closed.report.climb_m).abs() < 0.3);
        let hardly = rounds(1, 2.0, false);
        assert!(!hardly.report.elevation.levelled && (height_at_end(&hardly) - 2.0).abs() < 0.3);
        let absurd = rounds(1, 45.0, false);
        assert!(!absurd.report.elevation.levelled && (height_at_end(&absurd) - 45.0).abs() < 0.5);
        assert!(report(&[straight(101)]).elevation.mismatch_m == 0.0, "one way is no loop");
    }

    #[test]
    fn the_turn_of_a_sparse_way_is_no_stray() {
        let out = (0..=5).map(|i| (100.0 * f64::from(i), Some(20.0 + f64::from(i)), 20.0 * f64::from(i)));
        let points: Vec<Planted> = out
            .clone()
            .chain(out.rev().skip(1).map(|(north, height, time)| (north, height, 200.0 - time)))
            .collect();
        let found = report(&[points]);
        assert_eq!(found.cleaning.stray_points, 0);
        assert!((found.length_m - 1000.0).abs() < 2.0 && found.out_and_back);
    }

    #[test]
    fn a_pause_is_seen_through_a_wandering_position() {
        let mut points = straight(60);
        let (north, height, time) = points[59];
        let wandering = [0.0, 1.9, -0.8, 2.4, -1.7, 0.9];
        points.extend((1..=60).map(|i| (north + wandering[i % 6], height, time + i as f64)));
        points.extend((1..60).map(|i| (north + 5.0 * f64::from(i), height, time + 60.0 + f64::from(i))));
        let found = report(&[points]);
        assert_eq!(found.pauses.count, 1);
        assert!((found.pauses.total_s - 60.0).abs() <= 2.0, "{}", found.pauses.total_s);
        assert!((found.length_m - 295.0 - ALONG * 295.0).abs() < 4.0, "{}", found.length_m);
    }

    /// A recorder that stops writing while it stands: what was ridden before, back and forth near the place, stays.
    #[test]
    fn a_gap_in_the_recording_takes_nothing_ridden_with_it() {
        let there = straight(60);
        let back = (1..=5).map(|i| (295.0 - 5.0 * f64::from(i), Some(120.0), 59.0 + f64::from(i)));
        let on = |pause: f64| {
            (1..60).map(move |i| (270.0 - 5.0 * f64::from(i), Some(120.0), 64.0 + pause + f64::from(i)))
        };
        let ridden = |pause| report(&[there.iter().copied().chain(back.clone()).chain(on(pause)).collect()]);
        let (plain, paused) = (ridden(0.0), ridden(120.0));
        assert_eq!((plain.pauses.count, paused.pauses.count, paused.pauses.total_s), (0, 1, 121.0));
        assert_eq!(
            (paused.cleaning.close_points, paused.cleaning.longest_gap_m),
            (plain.cleaning.close_points, plain.cleaning.longest_gap_m)
        );
        assert!(
            (paused.length_m - plain.length_m).abs() < 1e-9,
            "{} not {}",
            paused.length_m,
            plain.length_m
        );
    }

    #[test]
    fn a_walk_recorded_every_second_may_be_lengthened() {
        let slow = (0..300).map(|i| (1.4 * f64::from(i), Some(5.0), f64::from(i))).collect();
        let found = report(&[slow]);
        assert!(found.is_lengthened() && found.pauses.count == 0);
        assert!(!report(&[straight(101)]).is_lengthened());
    }

    #[test]
    fn points_off_the_globe_are_named() {
        let text =
            "<gpx><trk><trkseg><trkpt lat='95' lon='6'/><trkpt lat='96' lon='6'/></trkseg></trk></gpx>";
        let error = Course::from_gpx(text, &options()).unwrap_err();
        assert_eq!(error, GpxError::OffTheGlobe { points: 2 });
        assert!(error.to_string().contains("2 points of the file have an impossible position"));
    }

    #[test]
    fn a_bad_file_is_refused_with_the_reason() {
        let options = options();
        let laughs = r#"<?xml version="1.0"?><!DOCTYPE gpx [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;">]>
            <gpx><trk><trkseg><trkpt lat="1" lon="1"><ele>&b;</ele></trkpt></trkseg></trk></gpx>"#;
        let mut points = straight(101);
        points.iter_mut().for_each(|point| point.1 = None);
        let cases = [
            (String::new(), GpxError::NotGpx),
            ("\u{1f6b2}\u{0}\u{1}".to_owned(), GpxError::NotGpx),
            ("<html><body>404</body></html>".to_owned(), GpxError::NotGpx),
            ("{\"type\": \"FeatureCollection\"}".to_owned(), GpxError::NotGpx),
            (laughs.to_owned(), GpxError::DocumentType),
            ("<gpx><trk><trkseg><trkpt lat='1' lon='1'".to_owned(), GpxError::Damaged { line: 1 }),
            ("<gpx/>".to_owned(), GpxError::TooFewPoints),
            (text(&[straight(1)]), GpxError::TooFewPoints),
            (text(&[points]), GpxError::NoElevation),
            (text(&[vec![(0.0, Some(1.0), 0.0), (60_000.0, Some(1.0), 9.0)]]), GpxError::TooLong),
            (" ".repeat((32 << 20) + 1), GpxError::TooLarge),
        ];
        for (text, error) in cases {
            assert_eq!(Course::from_gpx(&text, &options), Err(error), "{}", text.get(..60).unwrap_or(&text));
        }
    }

    #[test]
    fn too_many_points_are_refused() {
        let options = options();
        let point = "<trkpt lat='1' lon='1'/>".repeat(100_001);
        let text = format!("<gpx><trk><trkseg>{point}</trkseg></trk></gpx>");
        assert_eq!(Course::from_gpx(&text, &options), Err(GpxError::TooManyPoints));
    }
}
