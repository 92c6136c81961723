//! How often quick plans of a lap leave its budget open.
#![expect(clippy::unwrap_used, reason = "planted values lie within their limits")]

use gear_math::course::{Fineness, ReserveSetup};
use gear_math::rider::{
    Air, BikeMass, BodyMass, CriticalPower, EffortAccount, KitMass, PeakPower, WorkReserve,
};
use gear_math::{Bike, Circumference, Course, Drivetrain, Lap, LapSetup, Power, Rider};

/// As power rises, plans jump from more of its wall of mud on foot to less.
const WALL: &str = "200; 0; firm grass\n2; 0; firm grass; foot 1\n30; 3; mud; corner 14\n40; 25; mud\n150; -6; packed gravel";
/// Of what is sustained over a lap, that may stay open.
const OPEN: f64 = 0.02;
/// Of the laps, that may leave more open: one does, and eight did where no price was tried halfway between two plans.
const MOST: usize = 2;

fn ridden(watts: f64) -> ReserveSetup {
    let rider =
        Rider::new(BodyMass::new(64.0).unwrap(), KitMass::new(2.0).unwrap(), Power::new(watts).unwrap());
    let cassette = "11-13-15-18-21-24-28-32".parse().unwrap();
    let drivetrain = Drivetrain { chainset: "44/31".parse().unwrap(), cassette };
    let bike = Bike::new(BikeMass::new(9.0).unwrap(), drivetrain, Circumference::new(2150.0).unwrap());
    let peak = PeakPower::of_body(rider.body);
    let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, peak).unwrap();
    ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort))
}

/// What a lap leaves open, as a share of what is sustained over it.
fn open(course: &Course, watts: f64) -> f64 {
    let lap = Lap::on_reserve(course, &ridden(watts), Fineness::QUICK);
    lap.reserve.unwrap().net_j() / (watts * lap.time_s)
}

#[test]
fn quick_plans_rarely_miss_what_a_lap_may_take() {
    let course: Course = WALL.parse().unwrap();
    let laps = (215..255).map(|watts| (watts, open(&course, f64::from(watts))));
    let missed: Vec<(i32, f64)> = laps.filter(|(_, open)| open.abs() > OPEN).collect();
    assert!(missed.len() <= MOST, "{missed:?}");
}
