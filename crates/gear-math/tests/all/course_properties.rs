//! What must hold on every course and for every set-up.
#![expect(clippy::unwrap_used, reason = "planted values lie within their limits")]

use gear_math::course::{
    BandedLap, Begin, Coat, CornerSpeed, CourseError, LapComparison, Mode, MountTime, Mounting, Obstacle,
    ObstacleTime, Patch, Segment, ShiftTime, Shifting, SmoothingLength, StartSpeed, Step, StretchLength,
    TrackOptions,
};
use gear_math::rider::{Air, BikeMass, BodyMass, KitMass, RidingLimits};
use gear_math::wheel::MountedWidth;
use gear_math::{
    Bike, Cadence, Circumference, Course, Drivetrain, Gradient, Lap, LapSetup, Power, Rider, Search, Surface,
};
use proptest::prelude::*;
use proptest::strategy::ValueTree;
use proptest::test_runner::RngSeed;

/// A stretch anyone might meet.
fn stretch() -> impl Strategy<Value = Segment> {
    let kind = prop_oneof![8 => Just(0), 1 => Just(1), 2 => Just(2)];
    (3.0..150.0, -15.0..25.0, 0..Surface::ALL.len(), kind, 0.0..3.0, 2.5..8.0).prop_map(
        |(length, percent, surface, kind, time, speed)| {
            let length = if kind == 1 { length / 20.0 } else { length };
            let mut segment = Segment::open(metres(length), gradient(percent), Surface::ALL[surface]);
            segment.obstacle = (kind == 1).then(|| Obstacle { time: ObstacleTime::new(time).unwrap() });
            segment.corner = (kind == 2).then(|| CornerSpeed::new(speed).unwrap());
            segment
        },
    )
}

fn course() -> impl Strategy<Value = Course> {
    prop::collection::vec(stretch(), 3..25).prop_map(|segments| Course::new(segments).unwrap())
}

/// A track as it is recorded: short stretches of equal length over hills, on a few grounds.
fn wavy() -> impl Strategy<Value = Course> {
    let hills = prop::collection::vec((20.0..400.0, 0.0..6.0), 1..4);
    (hills, 50_usize..600, 2.0..5.0, 1_usize..20).prop_map(|(hills, count, length, grounds)| {
        let height = |at: f64| hills.iter().map(|(wave, size)| size * (at / wave).sin()).sum::<f64>();
        let segment = |place: usize| {
            let rise = height((place + 1) as f64 * length) - height(place as f64 * length);
            let surface = Surface::ALL[place * grounds / count % Surface::ALL.len()];
            Segment::open(metres(length), gradient((100.0 * rise / length).clamp(-45.0, 45.0)), surface)
        };
        Course::new((0..count).map(segment).collect()).unwrap()
    })
}

fn height_at(course: &Course, at: f64) -> f64 {
    let mut left = at;
    let climbed = |segment: &Segment| {
        let share = (left / segment.length.m()).clamp(0.0, 1.0);
        left -= segment.length.m();
        share * segment.rise_m()
    };
    course.segments().iter().map(climbed).sum()
}

fn setup() -> impl Strategy<Value = LapSetup> {
    let rings = prop::sample::select(vec!["44/31", "42", "48/34", "38", "50/36"]);
    let cassette =
        prop::sample::select(vec!["11-13-15-18-21-24-28-32", "12-13-15-17-19-22-25", "10-13-17-22-29-38-46"]);
    (rings, cassette, 160.0..380.0, 50.0..90.0).prop_map(|(rings, cassette, watts, kg)| {
        let rider =
            Rider::new(BodyMass::new(kg).unwrap(), KitMass::new(2.5).unwrap(), Power::new(watts).unwrap());
        LapSetup::new(rider, bike(rings, cassette), Air::STILL)
    })
}

fn bike(rings: &str, cassette: &str) -> Bike {
    let drivetrain = Drivetrain { chainset: rings.parse().unwrap(), cassette: cassette.parse().unwrap() };
    Bike::new(BikeMass::new(9.0).unwrap(), drivetrain, Circumference::new(2150.0).unwrap())
}

fn metres(m: f64) -> StretchLength {
    StretchLength::new(m).unwrap()
}

fn gradient(percent: f64) -> Gradient {
    Gradient::new(percent).unwrap()
}

fn step(m: f64) -> Step {
    Step::new(m).unwrap()
}

fn rolling(setup: &LapSetup) -> LapSetup {
    LapSetup { begin: Begin::Rolling(StartSpeed::new(4.0).unwrap()), ..*setup }
}

fn mounting(seconds: f64) -> Mounting {
    let time = MountTime::new(seconds).unwrap();
    Mounting { off: time, on: time, ..Mounting::USUAL }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// The work is added up again from the trace: height from the course, air and rolling from speeds and lengths.
    #[test]
    fn work_in_is_climbing_losses_and_kinetic(course in course(), setup in setup()) {
        let lap = Lap::in_steps(&course, &setup, step(0.5)).unwrap();
        let book = lap.energy;
        let spent = book.drivetrain_j + book.climbing_j + book.rolling_j + book.bearings_j + book.air_j + book.brakes_j + book.kinetic_j;
        prop_assert!((book.crank_j - spent).abs() <= 1e-3 * book.crank_j.max(1.0), "{} in, {spent} out", book.crank_j);

        let mass = setup.rider.with(&setup.bike).kg();
        let (mut climbing, mut rolling, mut air) = (0.0, 0.0, 0.0);
        let (mut at, mut speed, mut mode) = (0.0, 0.0, Mode::Foot);
        let mut ends = course.profile().into_iter().skip(1).zip(course.segments()).peekable();
        for point in &lap.trace {
            while ends.peek().is_some_and(|(end, _)| end.at_m < point.at_m - 1e-6) {
                ends.next();
            }
            let Some((_, segment)) = ends.peek() else { break };
            if point.mode == Mode::Ride {
                let length = point.at_m - at;
                let entry = if mode == Mode::Ride { speed } else { point.speed_m_per_s };
                climbing += mass * 9.81 * length * segment.gradient.sine();
                let cosine = segment.gradient.rise_over_run().hypot(1.0).recip();
                rolling += mass * 9.81 * length * cosine * segment.surface.ground().rolling.value();
                air += 0.5 * 1.2 * 0.4044 * length * 0.5 * (entry * entry + point.speed_m_per_s.powi(2));
            }
            (at, speed, mode) = (point.at_m, point.speed_m_per_s, point.mode);
        }
        let close = |found: f64, expected: f64, share: f64| (found - expected).abs() <= share * expected.abs() + 1.0;
        prop_assert!(close(book.climbing_j, climbing, 1e-6), "climbing {} for {climbing}", book.climbing_j);
        prop_assert!(close(book.rolling_j, rolling, 1e-6), "rolling {} for {rolling}", book.rolling_j);
        prop_assert!(close(book.air_j, air, 0.02), "air {} for {air}", book.air_j);
        prop_assert!(book.crank_j <= setup.rider.power.watts() * lap.time_s * (1.0 + 1e-6));
    }

    /// Nothing but the ground that wheels sink into knows how wide a tyre is.
    #[test]
    fn width_reaches_a_lap_on_soft_ground_alone(course in course(), setup in setup(), mm in 25.0..50.0_f64) {
        let tyre = MountedWidth::new(mm).unwrap();
        let on = |tyre| Lap::in_steps(&course, &LapSetup { bike: Bike { tyre, ..setup.bike }, ..setup }, step(1.0)).unwrap();
        let (usual, other) = (on(MountedWidth::CROSS), on(tyre));
        if course.segments().iter().any(|segment| segment.surface.is_soft()) {
            let [wide, narrow] = if mm > 33.0 { [other, usual] } else { [usual, other] };
            prop_assert!(wide.time_s <= narrow.time_s * 1.002 + 1.0, "{} on the wider, {}", wide.time_s, narrow.time_s);
        } else {
            prop_assert_eq!(usual, other);
        }
    }

    #[test]
    fn the_plan_is_never_slower_than_going_on_foot(course in course(), setup in setup()) {
        let setup = rolling(&setup);
        let lap = Lap::in_steps(&course, &setup, step(1.0)).unwrap();
        let nothing = ObstacleTime::new(0.0).unwrap();
        let segments = course.segments().iter().map(|segment| Segment {
            obstacle: segment.obstacle.or(Some(Obstacle { time: nothing })),
            ..*segment
        });
        let on_foot = Lap::in_steps(&Course::new(segments.collect()).unwrap(), &setup, step(1.0)).unwrap();
        prop_assert!(on_foot.plan.iter().all(|part| part.mode == Mode::Foot));
        prop_assert!(lap.time_s <= on_foot.time_s + 1e-9);
    }

    /// With half a minute for getting off nobody does who can ride on; with free mounting that plan is still there.
    #[test]
    fn the_plan_is_never_slower_than_riding_all_the_way(course in course(), setup in setup()) {
        let setup = rolling(&setup);
        let costly = Lap::in_steps(&course, &LapSetup { mounting: mounting(30.0), ..setup }, step(1.0)).unwrap();
        let usual = Lap::in_steps(&course, &setup, step(1.0)).unwrap();
        let free = Lap::in_steps(&course, &LapSetup { mounting: mounting(0.0), ..setup }, step(1.0)).unwrap();
        prop_assert!(usual.time_s <= costly.time_s + 1e-9);
        prop_assert!(free.time_s <= usual.time_s + 1e-9);
    }

    #[test]
    fn a_lower_gear_costs_nothing_but_shifts(course in course(), setup in setup()) {
        let free = ShiftTime::new(0.0).unwrap();
        let shifting = Shifting { rear: free, front: free, ..Shifting::USUAL };
        let limits = RidingLimits { force: None, ..RidingLimits::all(&setup.rider) };
        let given = LapSetup { shifting, limits, ..rolling(&setup) };
        let mut teeth: Vec<u16> =
            given.bike.drivetrain.cassette.sprockets().iter().map(|sprocket| sprocket.teeth()).collect();
        teeth.push(teeth.iter().max().unwrap() + 4);
        let mut lower = given;
        lower.bike.drivetrain.cassette = gear_math::Cassette::new(teeth).unwrap();
        let (before, after) =
            (Lap::in_steps(&course, &given, step(1.0)).unwrap(), Lap::in_steps(&course, &lower, step(1.0)).unwrap());
        prop_assert!(after.time_s <= before.time_s + 1e-3, "{} after {}", after.time_s, before.time_s);
    }

    /// Even ground looks the same from both ends; of two grounds, a lap of many passes the same two edges.
    #[test]
    fn turning_a_flat_course_round_changes_nothing(
        lengths in prop::collection::vec(60.0..200.0, 2..6), one in 0..3usize, other in 0..3usize, setup in setup()
    ) {
        let surfaces = [Surface::ALL[one], Surface::ALL[other]];
        let half = lengths.len() / 2;
        let flat = |(place, &length): (usize, &f64)| {
            Segment::open(metres(length), gradient(0.0), surfaces[usize::from(place >= half)])
        };
        let course = Course::new(lengths.iter().enumerate().map(flat).collect()).unwrap();
        let (there, back) = (Lap::of(&course, &setup).unwrap(), Lap::of(&course.reversed(), &setup).unwrap());
        let begun = 0.1; // what may still show of how the lap before was begun
        let error = there.step_error_s.unwrap() + back.step_error_s.unwrap() + begun;
        prop_assert!((there.time_s - back.time_s).abs() <= error, "{} and {}", there.time_s, back.time_s);
        if one == other {
            prop_assert!((there.time_s - back.time_s).abs() <= 1e-6 * there.time_s);
        }
    }

    #[test]
    fn painting_keeps_length_and_height(course in course(), from in -50.0..1500.0, length in 0.0..700.0) {
        let painted = match course.patched(&Patch { from_m: from, to_m: from + length, coat: Coat::Ground(Surface::DeepMud) }) {
            Ok(painted) => painted,
            Err(error) => {
                prop_assert_eq!(error, CourseError::NothingThere);
                prop_assert!(length < 0.2 || from + length < 0.1 || from > course.length_m() - 0.1);
                return Ok(());
            }
        };
        prop_assert!((painted.length_m() - course.length_m()).abs() < 1e-6);
        prop_assert!((painted.climb_m() - course.climb_m()).abs() < 1e-6);
    }

    #[test]
    fn joining_stretches_moves_no_height_by_more_than_it_says(course in wavy(), most in 1_usize..80) {
        let joined = course.joined(most);
        let kinds = 1 + course.segments().windows(2).filter(|pair| pair[0].surface != pair[1].surface).count();
        prop_assert!(joined.course.segments().len() <= most.max(kinds));
        prop_assert!((joined.course.length_m() - course.length_m()).abs() < 0.1);
        let mut most_off = 0.0_f64;
        for place in course.profile() {
            let height = height_at(&joined.course, place.at_m);
            most_off = most_off.max((height - place.height_m).abs());
            prop_assert!((height - place.height_m).abs() <= joined.height_error_m + 1e-9, "{} not {}", height, place.height_m);
        }
        prop_assert!(joined.height_error_m <= most_off + 0.06, "{} said, {most_off} found", joined.height_error_m);
        if most == 79 && kinds < 20 {
            prop_assert!(joined.height_error_m < 0.5, "{}", joined.height_error_m);
        }
        prop_assert_eq!(joined.course.sketch().parse::<Course>().unwrap(), joined.course);
    }

    #[test]
    fn joining_leaves_corners_obstacles_and_grounds_where_they_are(course in course()) {
        let joined = course.joined(1).course;
        let kinds = |course: &Course| {
            let mut kinds: Vec<_> = course.segments().iter().map(|it| (it.surface, it.corner, it.obstacle.is_some())).collect();
            kinds.dedup();
            kinds
        };
        prop_assert_eq!(kinds(&joined), kinds(&course));
        let time = |course: &Course| course.segments().iter().filter_map(|it| it.obstacle).map(|it| it.time.s()).sum::<f64>();
        prop_assert!((time(&joined) - time(&course)).abs() < 1e-9);
    }

    #[test]
    fn the_trace_adds_up(course in course(), setup in setup()) {
        let lap = Lap::in_steps(&course, &setup, step(1.0)).unwrap();
        let end = lap.trace.last().unwrap();
        prop_assert!((end.at_m - course.length_m()).abs() < 1e-6 && (end.time_s - lap.time_s).abs() < 1e-6);
        prop_assert!(lap.trace.windows(2).all(|pair| pair[1].time_s > pair[0].time_s));
        let parts: f64 = lap.plan.iter().map(|part| part.time_s).sum();
        prop_assert!((parts - lap.time_s).abs() < 1e-6);
        let in_gears: f64 = lap.gears.iter().map(|used| used.distance_m).sum();
        prop_assert!((in_gears + lap.on_foot_m() - course.length_m()).abs() < 1e-6);
        let on_foot: f64 = lap.plan.iter().filter(|part| part.mode == Mode::Foot).map(|part| part.time_s).sum();
        prop_assert!((on_foot - lap.on_foot_s()).abs() < 1e-6, "{on_foot} of {}", lap.on_foot_s());
    }

    #[test]
    fn a_search_finds_what_the_lap_says(course in course(), setup in setup()) {
        let mut search = Search::new(&course, &setup, Default::default(), vec![setup.bike.drivetrain]).unwrap();
        let found = search.advance(1)[0];
        let lap = Lap::in_steps(&course, &setup, step(1.0)).unwrap();
        prop_assert!((found.time_s - lap.time_s).abs() <= 1e-9 * lap.time_s, "{} for {}", found.time_s, lap.time_s);
        prop_assert_eq!((found.shifts_rear, found.shifts_front), (lap.shifts_rear, lap.shifts_front));
    }
}

/// By how much halving the step once more changes a lap beyond the error that it states, in seconds.
fn beyond_the_stated_error_s(course: &Course, setup: &LapSetup) -> f64 {
    let lap = Lap::of(course, setup).unwrap();
    let finer = Lap::in_steps(course, setup, step(lap.step_m / 2.0)).unwrap();
    (lap.time_s - finer.time_s).abs() - lap.step_error_s.unwrap()
}

/// A shift may tip a plan by a hair, so that one course in some thousands is further off; the same courses every time.
#[test]
fn halving_the_step_changes_less_than_the_stated_error() {
    const COURSES: usize = 256;
    let config = ProptestConfig { rng_seed: RngSeed::Fixed(5), ..ProptestConfig::default() };
    let mut runner = proptest::test_runner::TestRunner::new(config);
    let drawn = (0..COURSES).map(|_| (course(), setup()).new_tree(&mut runner).unwrap().current());
    let beyond: Vec<f64> = drawn.map(|(course, setup)| beyond_the_stated_error_s(&course, &setup)).collect();
    let off = beyond.iter().filter(|&&s| s > 0.0).count();
    assert!(off <= COURSES / 128, "{off} of {COURSES}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(8))]

    #[test]
    fn a_band_holds_its_lap_and_a_set_up_ties_with_itself(course in course(), setup in setup()) {
        let banded = BandedLap::of(&course, &setup).unwrap();
        prop_assert!(banded.band.low_s <= banded.band.time_s && banded.band.time_s <= banded.band.high_s);
        let same = LapComparison::of(&course, &setup, &setup).unwrap();
        prop_assert_eq!(same.quicker, gear_math::course::Quicker::TooClose);
        prop_assert_eq!((same.gained.low_s, same.gained.time_s, same.gained.high_s), (0.0, 0.0, 0.0));
        prop_assert_eq!(same.first.lap, same.second.lap);
        prop_assert!(same.gains.parts.is_empty());
    }
}

/// A bank that one gear just takes and another does not: whether it does hangs on the lowest cadence, what it costs on the
/// time lost getting off and on.
#[test]
fn a_difference_holds_lowest_cadence_and_mounting_moved() {
    let rider =
        Rider::new(BodyMass::new(66.0).unwrap(), KitMass::new(2.0).unwrap(), Power::new(260.0).unwrap());
    let of = |rings: &str| LapSetup::new(rider, bike(rings, "11-13-15-18-21-24-28-32"), Air::STILL);
    let course: Course = "400; 0; firm grass\n40; 15; firm grass\n400; -1; firm grass".parse().unwrap();
    let gained = |cadence: f64, mount: f64| {
        let moved = |setup: LapSetup| {
            let lowest_cadence = Cadence::new(setup.rider.lowest_cadence.rpm() + cadence).unwrap();
            LapSetup {
                rider: Rider { lowest_cadence, ..setup.rider },
                mounting: mounting(1.5 + mount),
                ..setup
            }
        };
        LapComparison::of(&course, &moved(of("44")), &moved(of("32"))).unwrap()
    };
    let given = gained(0.0, 0.0).gained;
    assert!(given.time_s > 2.0, "{given:?}");
    for (cadence, mount) in [(-5.0, 0.0), (5.0, 0.0), (0.0, -0.5), (0.0, 0.5)] {
        let moved = gained(cadence, mount).gained.time_s;
        assert!((given.low_s - 0.1..=given.high_s + 0.1).contains(&moved), "{moved} not in {given:?}");
    }
}

#[test]
fn a_steady_lap_is_exact_to_a_tenth_of_a_second() {
    let rider =
        Rider::new(BodyMass::new(66.0).unwrap(), KitMass::new(2.0).unwrap(), Power::new(220.0).unwrap());
    let setup = LapSetup::new(rider, bike("44/31", "11-13-15-18-21-24-28-32"), Air::STILL);
    let course: Course = "1500; 0; tarmac".parse().unwrap();
    let error = Lap::of(&course, &setup).unwrap().step_error_s.unwrap();
    assert!(error < 0.1, "{error}");
}

fn options() -> TrackOptions {
    TrackOptions {
        smoothing: SmoothingLength::new(40.0).unwrap(),
        surface: Surface::FirmGrass,
        from: None,
        to: None,
        first_lap: false,
    }
}

/// Pieces a damaged file may be made of.
fn fragment() -> impl Strategy<Value = String> {
    let known = prop::sample::select(vec![
        "<gpx>",
        "</gpx>",
        "<trk>",
        "</trk>",
        "<trkseg>",
        "</trkseg>",
        "</trkpt>",
        "<ele>",
        "</ele>",
        "<time>",
        "</time>",
        "<rte>",
        "</rte>",
        "<rtept lat='1' lon='2'/>",
        "<trkpt lat=\"50.1\" lon=\"4.2\">",
        "<trkpt lat=\"50.2\" lon=\"4.2\">",
        "<trkpt lat='x' lon=''/>",
        "<trkpt lat='91' lon='0'/>",
        "12.5",
        "1e999",
        "NaN",
        "2026-01-01T00:00:00Z",
        "&amp;",
        "&x;",
        "<!DOCTYPE g>",
        "<![CDATA[1]]>",
        "<!--",
        "-->",
        "<?x?>",
        "\u{0}",
        "<gpx:trkpt lat='3' lon='4'>",
        "<a b=<c>",
    ]);
    prop_oneof![4 => known.prop_map(str::to_owned), 1 => ".{0,12}"]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(512))]

    #[test]
    fn no_text_breaks_the_gpx_reader(pieces in prop::collection::vec(fragment(), 0..40)) {
        let inside = pieces.concat();
        for text in [inside.clone(), format!("<gpx><trk><trkseg>{inside}</trkseg></trk></gpx>")] {
            if let Ok(track) = Course::from_gpx(&text, &options()) {
                prop_assert!(track.course.length_m().is_finite() && track.course.length_m() > 0.0);
                prop_assert!(track.course.climb_m().is_finite());
            }
        }
    }

    #[test]
    fn no_places_break_the_gpx_reader(places in prop::collection::vec((-90.0..=90.0, -180.0..=180.0, -1e4..1e5), 0..30), near in any::<bool>()) {
        let scale = if near { 1e-5 } else { 1.0 };
        let points = places.iter().map(|(lat, lon, ele)| {
            format!("<trkpt lat='{}' lon='{}'><ele>{ele}</ele></trkpt>", lat * scale, lon * scale)
        });
        let text = format!("<gpx><trk><trkseg>{}</trkseg></trk></gpx>", points.collect::<String>());
        if let Ok(track) = Course::from_gpx(&text, &options()) {
            prop_assert!(track.course.segments().iter().all(|segment| segment.gradient.percent().is_finite()));
        }
    }

    #[test]
    fn no_text_breaks_the_sketch_reader(text in "([0-9.,%a-z;|#\\-\n\t ]|firm grass|mud|foot|corner){0,60}") {
        if let Ok(course) = text.parse::<Course>() {
            prop_assert!(course.sketch().parse::<Course>().is_ok());
        }
    }
}
