//! Courses and laps against published points, recorded tracks and the steady speeds of ride or run.
#![expect(clippy::expect_used, reason = "reference values lie within their limits")]

use gear_math::course::{
    Begin, Coat, GpxError, Mode, ObstacleTime, Patch, Segment, SmoothingLength, StartSpeed, Step,
    StretchLength, TrackOptions, TrackReport,
};
use gear_math::rider::{Air, BikeMass, BodyMass, KitMass, RidingLimits};
use gear_math::{
    Bike, Cadence, Circumference, Course, Drivetrain, Gradient, Lap, LapSetup, Power, Rider, Surface,
};
use geographiclib_rs::{Geodesic, InverseGeodesic};
use reference_checks::{check_all, close, rows};
use serde::Deserialize;
use std::path::Path;

#[derive(Deserialize)]
struct Points {
    latitude_1: f64,
    longitude_1: f64,
    latitude_2: f64,
    longitude_2: f64,
    distance_m: f64,
}

/// Karney (2010), Test set for geodesics, doi:10.5281/zenodo.32156.
#[test]
fn distances_follow_the_published_geodesics() {
    let points: Vec<Points> = rows("geodesic.csv");
    check_all("geodesic.csv", &points, 18, |row| {
        let library: f64 =
            Geodesic::wgs84().inverse(row.latitude_1, row.longitude_1, row.latitude_2, row.longitude_2);
        close("library", library, row.distance_m, 1e-6)?;
        if row.distance_m < Course::LONGEST_M {
            close("course", course_between(row).length_m, row.distance_m, 1e-6)?;
        }
        Ok(())
    });
}

fn course_between(row: &Points) -> TrackReport {
    let Points { latitude_1, longitude_1, latitude_2, longitude_2, .. } = row;
    let text = format!(
        r#"<gpx><trk><trkseg><trkpt lat="{latitude_1}" lon="{longitude_1}"><ele>5</ele></trkpt>
        <trkpt lat="{latitude_2}" lon="{longitude_2}"><ele>5</ele></trkpt></trkseg></trk></gpx>"#
    );
    Course::from_gpx(&text, &options()).expect("two places make a course").report
}

#[derive(Deserialize)]
struct Slope {
    horizontal_m: f64,
    gradient: f64,
    slope_length_m: f64,
    climb_m: f64,
}

/// Length along the slope from the horizontal distance that positions give, for a stretch and for a recorded track.
#[test]
fn lengths_lie_along_the_slope() {
    let slopes: Vec<Slope> = rows("slope-length.csv");
    check_all("slope-length.csv", &slopes, 6, |row| {
        let stretch = Segment::over(row.horizontal_m, percent(row.gradient), Surface::FirmGrass);
        let stretch = stretch.ok_or("no stretch")?;
        close("length", stretch.length.m(), row.slope_length_m, 1e-4)?;
        close("climb", stretch.rise_m(), row.climb_m, 1e-4)?;
        let report = track_of(row);
        close("length of the track", report.length_m, row.slope_length_m, 0.01)?;
        close("climb of the track", report.climb_m, row.climb_m.max(0.0), 0.01)
    });
}

/// A point every five metres northward on an even slope.
fn track_of(row: &Slope) -> TrackReport {
    let place = |at: f64| 46.0 + at / degree_m();
    let count = (row.horizontal_m / 5.0).round() as u32;
    let point = |index: u32| {
        let at = row.horizontal_m * f64::from(index) / f64::from(count);
        format!(r#"<trkpt lat="{:.12}" lon="8"><ele>{}</ele></trkpt>"#, place(at), 500.0 + row.gradient * at)
    };
    let points: String = (0..=count).map(point).collect();
    Course::from_gpx(&format!("<gpx><trk><trkseg>{points}</trkseg></trk></gpx>"), &options())
        .expect("an even slope")
        .report
}

/// Metres in a degree of latitude north of the place, over the length of such a track.
fn degree_m() -> f64 {
    let way: f64 = Geodesic::wgs84().inverse(46.0, 8.0, 46.004, 8.0);
    way / 0.004
}

fn options() -> TrackOptions {
    TrackOptions {
        smoothing: SmoothingLength::new(40.0).expect("within limits"),
        surface: Surface::FirmGrass,
        from: None,
        to: None,
        first_lap: false,
    }
}

fn track(name: &str) -> Result<TrackReport, GpxError> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("data/gpx").join(name);
    let text = std::fs::read_to_string(path).expect("the fixture is there");
    Course::from_gpx(&text, &options()).map(|track| {
        assert!((track.report.length_m - track.course.length_m()).abs() < 1e-6);
        track.report
    })
}

/// Fixtures of the gpx crate, cut down; counts taken from the files by another program.
#[test]
fn recorded_tracks_are_read() {
    let walk = track("recorded-walk.gpx").expect("a recorded walk");
    assert_eq!(
        (
            walk.cleaning.points,
            walk.cleaning.segments,
            walk.elevation.missing,
            walk.cleaning.duplicate_points
        ),
        (988, 1, 0, 0)
    );
    assert!(walk.climb_m < walk.elevation.climb_recorded_m, "smoothing takes noise away");

    let hike = track("recorded-hike-two-segments.gpx").expect("a recorded hike");
    assert_eq!((hike.cleaning.points, hike.cleaning.segments), (535, 2));
    assert!(hike.pauses.count > 0 && hike.pauses.total_s > 600.0, "{hike:?}");

    let route = track("route-only.gpx").expect("a route");
    assert_eq!((route.cleaning.tracks, route.cleaning.routes, route.cleaning.points), (0, 1, 139));
    assert!(route.is_loop);

    assert_eq!(track("without-elevation.gpx"), Err(GpxError::NoElevation));
    assert_eq!(track("standing-still.gpx"), Err(GpxError::TooFewPoints));
}

/// The file this fixture was cut from states 6998.29 m. On a sphere the same points lie about 0.2 % closer together.
#[test]
fn a_stated_length_is_met() {
    let drawn = track("drawn-round-trip.gpx").expect("a drawn round trip");
    close("length", drawn.length_m, 6998.29, 0.003 * 6998.29).expect("stated by the file");
    assert!(drawn.is_loop && !drawn.out_and_back);
}

#[derive(Deserialize)]
struct Steady {
    surface: String,
    gradient_rise_over_run: f64,
    v_ride_power_limited_m_per_s: f64,
    v_foot_m_per_s: f64,
    decision_36x32_min40rpm: String,
}

/// The reference rider of the model on the way to steady speed, and on foot.
#[test]
fn long_stretches_reach_the_steady_speeds() {
    let speeds: Vec<Steady> = rows("speeds-reference.csv");
    let setup = LapSetup { begin: starting_at(3.0), ..reference("36", "32", 250.0) };
    check_all("speeds-reference.csv", &speeds, 18, |row| {
        let stretch =
            Segment::open(length(900.0), percent(row.gradient_rise_over_run), surface(&row.surface));
        let course = Course::new(vec![stretch]).expect("one stretch");
        let coat = Coat::Obstacle(Some(ObstacleTime::new(0.0).expect("zero")));
        let on_foot = course.patched(&Patch { from_m: 0.0, to_m: 900.0, coat }).expect("one stretch");
        close("foot", last_speed(&on_foot, &setup), row.v_foot_m_per_s, 1e-4)?;
        if row.decision_36x32_min40rpm != "foot_gear" && row.v_ride_power_limited_m_per_s > row.v_foot_m_per_s
        {
            close("ride", last_speed(&course, &setup), row.v_ride_power_limited_m_per_s, 1e-4)?;
        }
        Ok(())
    });
}

fn last_speed(course: &Course, setup: &LapSetup) -> f64 {
    let lap = Lap::in_steps(course, setup, Step::new(1.0).expect("within limits")).expect("enough power");
    lap.trace.last().expect("at least one step").speed_m_per_s
}

#[derive(Deserialize)]
struct Momentum {
    surface: String,
    gradient_rise_over_run: f64,
    entry_speed_m_per_s: f64,
    chainring_teeth: u16,
    sprocket_teeth: u16,
    #[serde(rename = "distance_m_at_250W")]
    at_250: Option<f64>,
    #[serde(rename = "distance_m_at_500W")]
    at_500: Option<f64>,
}

impl Momentum {
    /// Nobody pedals faster than 200 rpm; the rows that would are left out, as the power could not be held.
    fn can_be_pedalled(&self) -> bool {
        let development = 2.095 * f64::from(self.chainring_teeth) / f64::from(self.sprocket_teeth);
        self.entry_speed_m_per_s * 60.0 / development <= 200.0
    }
}

/// How far speed carries a rider up before the gear is too tall: the first part of the plan, to within a step.
#[test]
fn speed_carries_as_far_as_the_integral_says() {
    let carried: Vec<Momentum> = rows("momentum-reference.csv");
    let carried: Vec<Momentum> = carried.into_iter().filter(Momentum::can_be_pedalled).collect();
    check_all("momentum-reference.csv", &carried, 64, |row| {
        for (power, expected) in [(250.0, row.at_250), (500.0, row.at_500)] {
            if let Some(expected) = expected {
                close(&format!("distance at {power} W"), ridden_first(row, power), expected, 0.015)?;
            }
        }
        Ok(())
    });
}

fn ridden_first(row: &Momentum, power: f64) -> f64 {
    let (ring, sprocket) = (row.chainring_teeth.to_string(), row.sprocket_teeth.to_string());
    let setup =
        LapSetup { begin: starting_at(row.entry_speed_m_per_s), ..reference(&ring, &sprocket, power) };
    let bank = Segment::open(length(40.0), percent(row.gradient_rise_over_run), surface(&row.surface));
    let course = Course::new(vec![bank]).expect("one stretch");
    let lap = Lap::in_steps(&course, &setup, Step::new(0.01).expect("within limits")).expect("enough power");
    let first = lap.plan[0];
    assert_eq!(first.mode, Mode::Ride);
    first.to_m
}

/// The model's reference rider with gear and energy as the only limits.
fn reference(rings: &str, cassette: &str, power: f64) -> LapSetup {
    let rider = Rider {
        lowest_cadence: Cadence::new(40.0).expect("within limits"),
        highest_cadence: Cadence::new(200.0).expect("within limits"),
        ..Rider::new(
            BodyMass::new(70.0).expect("within limits"),
            KitMass::new(2.0).expect("within limits"),
            Power::new(power).expect("within limits"),
        )
    };
    let drivetrain = Drivetrain {
        chainset: rings.parse().expect("a ring"),
        cassette: cassette.parse().expect("a sprocket"),
    };
    let wheel = Circumference::new(2095.0).expect("within limits");
    let bike = Bike::new(BikeMass::new(8.5).expect("within limits"), drivetrain, wheel);
    LapSetup { limits: RidingLimits::GEAR_ONLY, wheels: false, ..LapSetup::new(rider, bike, Air::STILL) }
}

fn starting_at(m_per_s: f64) -> Begin {
    Begin::Rolling(StartSpeed::new(m_per_s).expect("within limits"))
}

fn length(m: f64) -> StretchLength {
    StretchLength::new(m).expect("within limits")
}

fn percent(rise_over_run: f64) -> Gradient {
    Gradient::new(100.0 * rise_over_run).expect("within limits")
}

fn surface(name: &str) -> Surface {
    Surface::named(name).expect("a known surface")
}
