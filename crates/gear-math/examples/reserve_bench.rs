//! How long the draws of a band and a first look at many set-ups take on a reserve, and how far coarse plans move a difference.
//! Run it with `cargo run --release --example reserve_bench`.

use gear_math::course::{CrossoverBand, Demo, DrawnBand, Draws, Fineness, LapDraw, Neighbours, ReserveSetup};
use gear_math::gears::GearSet;
use gear_math::rider::{
    Air, BikeMass, BodyMass, ClimbLength, CriticalPower, EffortAccount, KitMass, PeakPower, WorkReserve,
};
use gear_math::{
    Bike, Cassette, Chainset, Circumference, Course, Drivetrain, Lap, LapSetup, Power, Rider, Surface,
};
use std::error::Error;
use std::time::Instant;

fn main() -> Result<(), Box<dyn Error>> {
    let course = Demo::Meadow.course();
    let setups =
        [setup("44/31", "11-13-15-18-21-24-28-32")?, setup("40", "11-13-15-17-19-21-24-28-32-37-42")?];
    draws(&course, &setups)?;
    coarseness(&course, &setups);
    search(&course, &setups[0]);
    Ok(())
}

fn setup(rings: &str, cassette: &str) -> Result<ReserveSetup, Box<dyn Error>> {
    let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
    let drivetrain = Drivetrain { chainset: rings.parse()?, cassette: cassette.parse()? };
    let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2150.0)?);
    let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, PeakPower::of_body(rider.body))?;
    Ok(ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort)))
}

fn draws(course: &Course, setups: &[ReserveSetup; 2]) -> Result<(), Box<dyn Error>> {
    let started = Instant::now();
    let done: Vec<LapDraw> = Draws::usual().all().map(|draw| LapDraw::of(course, setups, &draw)).collect();
    let took = started.elapsed().as_secs_f64();
    println!("{:.0} m, {} draws of two laps: {took:.2} s", course.length_m(), done.len());
    println!("  {:?}", DrawnBand::of(&done, 0.0));
    let (grass, length) = (Surface::FirmGrass.ground(), ClimbLength::new(60.0)?);
    let started = Instant::now();
    let flips = |given: &ReserveSetup| {
        let each: Vec<_> =
            Draws::usual().all().map(|draw| draw.crossover_percent(given, &grass, length)).collect();
        CrossoverBand::of(&each)
    };
    println!("  {:?}, {:.2} s", setups.each_ref().map(flips), started.elapsed().as_secs_f64());
    for share in [8, 16, 32] {
        println!("  of {share}: {:?}", DrawnBand::of(&done[..share], 0.0).map(|band| band.gained));
    }
    Ok(())
}

/// The difference in quick and in fine plans.
fn coarseness(course: &Course, setups: &[ReserveSetup; 2]) {
    let mut off: Vec<f64> = Vec::new();
    for draw in Draws::usual().all().step_by(8) {
        let moved = setups.map(|setup| draw.setup(&setup));
        let [quick, fine] = [Fineness::QUICK, Fineness::FINE].map(|fineness| {
            let [a, b] = moved.map(|setup| Lap::on_reserve(course, &setup, fineness));
            a.time_s - b.time_s
        });
        off.push(quick - fine);
    }
    println!("differences by quick plans less those by fine ones: {off:.2?} s");
}

/// A first look at everything that is made, and the best of it planned in full.
fn search(course: &Course, setup: &ReserveSetup) {
    let cassettes: Vec<Cassette> = Cassette::common().collect();
    let with = |chainset| cassettes.iter().map(move |&cassette| Drivetrain { chainset, cassette });
    let all: Vec<(Drivetrain, GearSet)> =
        Chainset::made(8..=16).flat_map(with).map(|it| (it, GearSet::NONE)).collect();
    let started = Instant::now();
    let neighbours = Neighbours::among(course, setup, &all);
    let planned = started.elapsed().as_secs_f64();
    let mut about: Vec<(f64, Drivetrain)> =
        all.iter().map(|(it, avoid)| (neighbours.time_s(it, *avoid), *it)).collect();
    let looked = started.elapsed().as_secs_f64() - planned;
    about.sort_by(|a, b| a.0.total_cmp(&b.0));
    let each = looked * 1e3 / all.len() as f64;
    println!("{} set-ups: neighbours {planned:.2} s, then {looked:.2} s, {each:.3} ms each", all.len());
    let in_full = |(about, drivetrain): &(f64, Drivetrain)| {
        let mut setup = *setup;
        setup.lap.bike.drivetrain = *drivetrain;
        let time = Lap::on_reserve(course, &setup, Fineness::QUICK).time_s;
        println!("  {} with {}: {time:.2} s, about {about:.2}", drivetrain.chainset, drivetrain.cassette);
    };
    about.iter().take(5).for_each(in_full);
}
