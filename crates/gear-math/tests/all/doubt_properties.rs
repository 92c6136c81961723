//! What must hold of the bands of drawn doubts.
#![expect(clippy::unwrap_used, reason = "planted values lie within their limits")]

use gear_math::course::{Draw, DrawnBand, DrawnVerdict, Draws, LapDraw, OpenSpan, ReserveSetup, TimeBand};
use gear_math::rider::{
    Air, BikeMass, BodyMass, CriticalPower, EffortAccount, KitMass, PeakPower, WorkReserve,
};
use gear_math::{Bike, Circumference, Course, Drivetrain, LapSetup, Power, Rider};

fn setup(rings: &str, cassette: &str) -> ReserveSetup {
    let rider =
        Rider::new(BodyMass::new(63.0).unwrap(), KitMass::new(2.0).unwrap(), Power::new(225.0).unwrap());
    let drivetrain = Drivetrain { chainset: rings.parse().unwrap(), cassette: cassette.parse().unwrap() };
    let bike = Bike::new(BikeMass::new(9.0).unwrap(), drivetrain, Circumference::new(2120.0).unwrap());
    let peak = PeakPower::of_body(rider.body);
    let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, peak).unwrap();
    ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort))
}

const CLOSE: &str = "11-13-15-17-19-21-24-28";
const WIDE: &str = "11-13-15-18-21-25-30-36";

/// A bank that is ridden in some draws only.
fn course() -> Course {
    "90; 1; firm grass\n35; 13; firm grass\n30; -4; mud\n80; -5; firm grass".parse().unwrap()
}

fn drawn(setups: &[ReserveSetup; 2], draws: &Draws) -> Vec<LapDraw> {
    draws.all().map(|draw| LapDraw::of(&course(), setups, &draw)).collect()
}

fn width(band: &TimeBand) -> f64 {
    band.high_s - band.low_s
}

#[test]
fn two_bikes_that_are_alike_never_differ() {
    let one = setup("40", WIDE);
    let done = drawn(&[one, one], &Draws::usual());
    assert!(done.iter().all(|draw| draw.gained_s() == 0.0 && draw.on_foot_m[0] == draw.on_foot_m[1]));
    let band = DrawnBand::of(&done, 0.0).unwrap();
    assert_eq!(band.gained, TimeBand { low_s: 0.0, time_s: 0.0, high_s: 0.0 });
    assert_eq!((band.verdict, band.quicker_share, band.groups), (DrawnVerdict::Alike, [0.0; 2], None));
}

/// Changing places turns the difference round.
#[test]
fn the_second_loses_what_the_first_gains() {
    let pair = [setup("40", CLOSE), setup("42/30", WIDE)];
    for number in [0, 7, 30] {
        let draw = Draws::usual().draw(number);
        let [one, other] = [pair, [pair[1], pair[0]]].map(|it| LapDraw::of(&course(), &it, &draw).gained_s());
        assert!((one + other).abs() < 1e-9, "{one} and {other}");
    }
}

/// What differs between the bikes alone is moved by gears alone: the difference is much surer than the laps.
#[test]
fn wider_ranges_hold_narrower_ones() {
    let pair = [setup("40", CLOSE), setup("40", WIDE)];
    let bands = [0.0, 1.0, 2.0].map(|width| {
        let done = drawn(&pair, &Draws::as_wide(width));
        (DrawnBand::of(&done, 0.0).unwrap(), OpenSpan::all(&done, 0))
    });
    let [(none, closed), (usual, open), (twice, _)] = &bands;
    assert!(none.laps.iter().chain([&none.gained]).all(|band| width(band) == 0.0) && closed.is_empty());
    for side in [0, 1] {
        let (usual, twice) = (&usual.laps[side], &twice.laps[side]);
        assert!(twice.low_s < usual.low_s && usual.high_s < twice.high_s, "{twice:?} about {usual:?}");
        assert!(usual.low_s < twice.time_s && twice.time_s < usual.high_s);
        assert!(usual.low_s < none.laps[side].time_s && none.laps[side].time_s < usual.high_s);
    }
    assert!(width(&usual.gained) < 0.5 * width(&usual.laps[0]), "{usual:?}");
    assert!(open.iter().any(|span| span.from_m < 125.0 && span.to_m > 90.0), "the bank: {open:?}");
}

/// From 1.0 to 1.5 about 1.2, say: the middle of a range need not be the best guess.
#[test]
fn a_draw_in_the_middle_of_every_range_moves_what_lies_askew() {
    let (given, middle) = (setup("40", WIDE), Draws::as_wide(0.0).draw(0));
    let moved = middle.setup(&given);
    let [before, after] = [given, moved].map(|it| it.lap.rider.efficiency.share());
    assert!((before - after).abs() < 1e-12);
    assert!((moved.lap.bike.load.value() - 1.25).abs() < 1e-12);
    assert!((moved.account.cadence_cost.value() - 0.6).abs() < 1e-12);
    assert!((moved.lap.mounting.off.s() - 1.75).abs() < 1e-12);
    assert!((moved.account.effort.peak().watts() - 14.5 * 63.0).abs() < 1e-9);
    assert_eq!((moved.lap.limits, moved.budget, moved.wind), (given.lap.limits, given.budget, given.wind));
}

/// One who knows their peak is moved about it.
#[test]
fn ranges_lie_about_what_a_rider_states() {
    let mut given = setup("40", WIDE);
    let peak = PeakPower::new(1100.0).unwrap();
    given.account.effort =
        CriticalPower::new(given.lap.rider.power, given.account.effort.reserve(), peak).unwrap();
    let peaks: Vec<f64> =
        Draws::usual().all().map(|draw| draw.setup(&given).account.effort.peak().watts()).collect();
    let mean = peaks.iter().sum::<f64>() / peaks.len() as f64;
    assert!((mean - 1100.0 * 14.5 / 14.0).abs() < 1e-6, "{mean}");
}

/// However little is left, a peak is above what is sustained, or both stay as they are.
#[test]
fn nobody_sustains_more_than_their_peak() {
    let mut given = setup("40", WIDE);
    let peak = PeakPower::new(250.0).unwrap();
    given.account.effort =
        CriticalPower::new(given.lap.rider.power, given.account.effort.reserve(), peak).unwrap();
    let stays = |draw: Draw| draw.setup(&given).account.effort == given.account.effort;
    assert!(Draws::usual().all().any(stays) && !Draws::usual().all().all(stays));
}
