//! What a lap says of itself, worked out a second way.
#![expect(clippy::unwrap_used, reason = "planted values lie within their limits")]

use gear_math::course::{
    Begin, LapComparison, Mode, PlanPart, Quicker, ShiftTime, Shifting, StartSpeed, Step, WhyOnFoot,
};
use gear_math::rider::{
    Air, BikeMass, BodyMass, Climb, DrivetrainEfficiency, KitMass, LegStrength, PeakPower, Reason,
    RidingLimits,
};
use gear_math::{
    Bike, Cadence, Circumference, Course, Drivetrain, Lap, LapSetup, Power, RideOrRun, Rider, Surface,
};

fn setup(rings: &str, cassette: &str, watts: f64) -> LapSetup {
    let rider =
        Rider::new(BodyMass::new(64.0).unwrap(), KitMass::new(2.0).unwrap(), Power::new(watts).unwrap());
    let drivetrain = Drivetrain { chainset: rings.parse().unwrap(), cassette: cassette.parse().unwrap() };
    let bike = Bike::new(BikeMass::new(9.0).unwrap(), drivetrain, Circumference::new(2150.0).unwrap());
    LapSetup::new(rider, bike, Air::STILL)
}

fn rolling(m_per_s: f64) -> Begin {
    Begin::Rolling(StartSpeed::new(m_per_s).unwrap())
}

fn lap(rows: &str, setup: &LapSetup) -> Lap {
    Lap::in_steps(&rows.parse().unwrap(), setup, Step::new(0.5).unwrap()).unwrap()
}

fn question(setup: &LapSetup) -> RideOrRun {
    RideOrRun::new(setup.rider, setup.bike, setup.air, setup.limits).unwrap()
}

fn on_foot(lap: &Lap) -> Vec<PlanPart> {
    lap.plan.iter().filter(|part| part.mode == Mode::Foot).copied().collect()
}

fn assert_close(found: f64, expected: f64, within: f64) {
    assert!((found - expected).abs() <= within, "{found} for {expected}");
}

/// A long bank, and what puts the rider on foot there, which the question on one climb is asked apart.
#[test]
fn why_on_foot_is_what_the_climb_alone_says() {
    let limits = |setup: LapSetup, limits| LapSetup { limits, ..setup };
    let all = |setup: LapSetup| setup;
    let weak = |setup: LapSetup| {
        let force = Some(LegStrength { peak: PeakPower::new(560.0).unwrap(), ..LegStrength::ENDURING });
        limits(setup, RidingLimits { force, ..setup.limits })
    };
    let low = "11-13-15-18-21-24-28-36-46";
    let cases = [
        (Reason::Gear, all(setup("44", "11-13-15-18-21-25", 230.0)), Surface::FirmGrass, 14),
        (Reason::Balance, all(setup("30", low, 200.0)), Surface::FirmGrass, 24),
        (Reason::Grip, all(setup("30", low, 420.0)), Surface::WetSoftGrass, 26),
        (Reason::Force, weak(setup("44", "11-13-15-18-21-24-28-32", 300.0)), Surface::PackedGravel, 11),
        (Reason::Energy, limits(setup("30", low, 240.0), RidingLimits::GEAR_ONLY), Surface::LooseSand, 8),
    ];
    for (reason, setup, surface, percent) in cases {
        let rows = format!("100; 0; firm grass\n150; {percent}; {}\n100; 0; firm grass", surface.name());
        let [part] = on_foot(&lap(&rows, &setup))[..] else { panic!("{reason:?}") };
        assert_eq!(part.why, Some(WhyOnFoot::Because(reason)));
        let answer = question(&setup).answer(&surface.ground(), Climb::new(f64::from(percent)).unwrap());
        match reason {
            Reason::Energy => assert!(!answer.limits.any() && answer.foot > answer.ride),
            limit => assert!(answer.limits.reasons().any(|held| held == limit), "{:?}", answer.limits),
        }
    }
}

/// After an obstacle of 12 m on a bank no gear is low enough to get on again for longer than that.
#[test]
fn the_reason_is_what_holds_longest() {
    let found = |after: u32| {
        let rows = format!(
            "60; 0; firm grass\n12; 15; firm grass; foot 1\n{after}; 15; firm grass\n80; 0; firm grass"
        );
        let [part] = on_foot(&lap(&rows, &setup("44", "11-13-15-18-21-25", 230.0)))[..] else {
            panic!("{rows}")
        };
        part.why
    };
    assert_eq!(found(30), Some(WhyOnFoot::Because(Reason::Gear)));
    assert_eq!(found(4), Some(WhyOnFoot::Obstacle));
}

/// Both times of mounting, the obstacle's own, and the way at the speed on foot that the single climb is told.
#[test]
fn a_part_on_foot_takes_its_way_its_obstacle_and_mounting() {
    let setup = LapSetup { begin: rolling(4.0), ..setup("44", "11-13-15-18-21-24-28-32", 230.0) };
    let found = lap("60; 0; mud\n12; 0; mud; foot 2.5\n60; 0; mud", &setup);
    let [part] = on_foot(&found)[..] else { panic!("{:?}", found.plan) };
    assert_eq!((part.from_m, part.to_m, part.why), (60.0, 72.0, Some(WhyOnFoot::Obstacle)));
    let speed = question(&setup).foot_speed(&Surface::Mud.ground(), Climb::LEVEL);
    assert_close(part.time_s, 1.5 + 12.0 / speed.m_per_s() + 2.5 + 1.5, 1e-9);
    assert_close(found.on_foot_m(), 12.0, 1e-9);
}

/// Way over mean speed, step by step; one who gets on begins at the speed on foot.
#[test]
fn time_in_the_only_gear_is_that_of_the_trace() {
    let setup = LapSetup { begin: rolling(4.0), ..setup("40", "20", 230.0) };
    let found = lap("60; 0; firm grass\n2; 0; mud; foot 1\n90; 1; firm grass", &setup);
    let (mut entry, mut at, mut time, mut way) = (4.0, 0.0, 0.0, 0.0);
    for point in &found.trace {
        if point.mode == Mode::Ride {
            time += 2.0 * (point.at_m - at) / (entry + point.speed_m_per_s);
            way += point.at_m - at;
        }
        (entry, at) = (point.speed_m_per_s, point.at_m);
    }
    let [used] = found.gears[..] else { panic!("{:?}", found.gears) };
    assert_close(used.time_s, time, 1e-9);
    assert_close(used.distance_m, way, 1e-9);
    assert_close(found.time_s - used.time_s, on_foot(&found)[0].time_s, 1e-9);
}

const UPHILL: &str = "150; 0.5; packed gravel\n120; 6; firm grass\n60; 3; firm grass";

/// Uphill without time for shifts every step is pedalled, so that the trace holds every cadence.
#[test]
fn cadences_are_those_of_the_trace() {
    let free = ShiftTime::new(0.0).unwrap();
    let shifting = Shifting { rear: free, front: free, ..Shifting::USUAL };
    let given = LapSetup { shifting, ..setup("42", "13-16-19-24", 230.0) };
    let slowest = 42.0 / 24.0 * 2.150 * Cadence::GRINDING.rpm() / 60.0;
    for begin in [0.6, 6.0] {
        let found = lap(UPHILL, &LapSetup { begin: rolling(begin), ..given });
        assert!(found.plan.len() == 1 && found.shifts_rear > 0, "{:?}", found.plan);
        let going = found.trace.iter().skip_while(|point| point.speed_m_per_s < slowest);
        let lowest = going.filter_map(|point| point.cadence_rpm).fold(f64::INFINITY, f64::min);
        assert_close(found.lowest_cadence_rpm.unwrap(), lowest, 1e-9);
        let (mut below, mut last) = (0.0, 0.0);
        for point in &found.trace {
            let is_slow = point.cadence_rpm.unwrap() < 80.0 * (1.0 - 0.15);
            below += if is_slow { point.time_s - last } else { 0.0 };
            last = point.time_s;
        }
        assert!(below > 1.0 && below < found.time_s - 1.0);
        assert_close(found.below_window_s, below, 1e-9);
    }
}

/// Faster than the legs can follow, nothing is pedalled: no cadence counts and nothing is done at the crank.
#[test]
fn rolling_freely_is_no_pedalling() {
    let setup = LapSetup { begin: rolling(14.0), ..setup("30", "30", 230.0) };
    let found = lap("200; -12; tarmac", &setup);
    assert_eq!((found.lowest_cadence_rpm, found.below_window_s), (None, 0.0));
    assert!(found.energy.crank_j.abs() < 1e-6 && found.energy.brakes_j.abs() < 1e-6, "{:?}", found.energy);
    assert_close(
        found.energy.climbing_j + found.energy.rolling_j + found.energy.air_j,
        -found.energy.kinetic_j - found.energy.bearings_j,
        1e-6,
    );
}

/// Slower than the window only while the legs could turn the cranks at all.
#[test]
fn braking_is_no_pedalling_either() {
    let setup = LapSetup { begin: rolling(3.0), ..setup("48", "12", 230.0) };
    let found = lap("80; -15; firm grass; corner 11", &setup);
    assert_eq!((found.lowest_cadence_rpm, found.below_window_s), (None, 0.0));
    assert!(found.energy.brakes_j > 1000.0, "{:?}", found.energy);
}

/// What is pedalled at the end of a lap of many goes on at its beginning.
#[test]
fn a_flying_lap_ends_as_it_begins() {
    let setup = setup("44/31", "11-13-15-18-21-24-28-32", 230.0);
    let course: Course = "200; 3; firm grass\n150; -2; mud\n120; -1.5; firm grass".parse().unwrap();
    let found = Lap::in_steps(&course, &setup, Step::new(0.5).unwrap()).unwrap();
    assert_close(found.energy.kinetic_j, 0.0, 5.0);
    let begun = LapSetup { begin: rolling(found.trace.last().unwrap().speed_m_per_s), ..setup };
    let again = Lap::in_steps(&course, &begun, Step::new(0.5).unwrap()).unwrap();
    assert_close(again.time_s, found.time_s, 0.3);
}

/// Power is held but for the shifts, each of which is time without drive.
#[test]
fn work_at_the_crank_is_power_for_the_time_without_shifts() {
    for (rear, front) in [(0.2, 0.6), (0.5, 1.5), (0.0, 0.0)] {
        let [rear, front] = [rear, front].map(|s| ShiftTime::new(s).unwrap());
        let given = setup("48/30", "14-17-21", 230.0);
        let limits = RidingLimits { force: None, grip: None, ..given.limits };
        let shifting = Shifting { rear, front, ..Shifting::USUAL };
        let found = lap(UPHILL, &LapSetup { begin: rolling(7.0), limits, shifting, ..given });
        assert!(found.plan.len() == 1 && found.shifts_rear > 0 && found.shifts_front > 0);
        let idle = f64::from(found.shifts_rear) * rear.s() + f64::from(found.shifts_front) * front.s();
        assert_close(found.energy.crank_j / 230.0, found.time_s - idle, 0.1);
    }
}

/// On the level with power for far more, the only gear is spun as fast as the legs follow and no faster.
#[test]
fn legs_that_spin_out_hold_the_speed() {
    let given = setup("30", "25", 400.0);
    let limits = RidingLimits { force: None, ..given.limits };
    let found = lap("300; 0; tarmac", &LapSetup { begin: rolling(3.0), limits, ..given });
    let cadences: Vec<f64> = found.trace.iter().filter_map(|point| point.cadence_rpm).collect();
    let fastest = cadences.iter().copied().fold(0.0, f64::max);
    assert!(fastest <= Cadence::SPINNING.rpm() + 1e-9);
    assert_close(fastest, Cadence::SPINNING.rpm(), 2.0);
    assert_close(cadences[cadences.len() - 1], Cadence::SPINNING.rpm(), 2.0);
}

/// What holds back costs time and what drives saves it, on a lap that is ridden throughout without a moment for shifts.
#[test]
fn what_holds_back_costs_time() {
    let free = ShiftTime::new(0.0).unwrap();
    let shifting = Shifting { rear: free, front: free, ..Shifting::USUAL };
    let given = LapSetup { shifting, begin: rolling(4.0), ..setup("42", "13-16-19-24-32", 230.0) };
    let time = |setup: &LapSetup| {
        let found = lap(UPHILL, setup);
        assert_eq!(found.plan.len(), 1);
        found.time_s
    };
    let (rider, bike) = (given.rider, given.bike);
    let helped = [
        LapSetup { rider: Rider { power: Power::new(240.0).unwrap(), ..rider }, ..given },
        LapSetup { rider: Rider { kit: KitMass::new(1.0).unwrap(), ..rider }, ..given },
        LapSetup { rider: Rider { body: BodyMass::new(62.0).unwrap(), ..rider }, ..given },
        LapSetup { bike: Bike { mass: BikeMass::new(8.0).unwrap(), ..bike }, ..given },
        LapSetup { bike: Bike { efficiency: DrivetrainEfficiency::CLEAN, ..bike }, ..given },
        LapSetup { wheels: false, ..given },
        LapSetup { begin: rolling(5.0), ..given },
    ];
    for setup in helped {
        assert!(time(&setup) < time(&given) - 0.01, "{setup:?}");
    }
}

#[test]
fn a_comparison_turned_round_says_the_opposite() {
    let course: Course = "80; 0; firm grass\n90; 12; packed gravel\n60; -2; mud".parse().unwrap();
    let sprockets = "11-13-15-18-21-24-28-32";
    for (one, other, decided) in [("46", "31", true), ("44/31", "42/30", false)] {
        let [one, other] = [one, other].map(|rings| setup(rings, sprockets, 230.0));
        let there = LapComparison::of(&course, &one, &other).unwrap();
        let back = LapComparison::of(&course, &other, &one).unwrap();
        assert_close(there.gained.time_s, -back.gained.time_s, 1e-9);
        assert_close(there.gained.low_s, -back.gained.high_s, 1e-9);
        assert_close(there.gained.high_s, -back.gained.low_s, 1e-9);
        let turned = match back.quicker {
            Quicker::First => Quicker::Second,
            Quicker::Second => Quicker::First,
            Quicker::TooClose => Quicker::TooClose,
        };
        assert_eq!(there.quicker, turned);
        assert_eq!(there.quicker == Quicker::TooClose, !decided, "{:?}", there.gained);
        let parts = |it: &LapComparison| it.gains.parts.iter().map(|part| part.gained_s).sum::<f64>();
        assert_close(parts(&there), -parts(&back), 1e-9);
        assert_eq!((&there.first, &there.second), (&back.second, &back.first));
    }
}
