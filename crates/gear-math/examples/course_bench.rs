//! How long a lap and a search take. Run it with `cargo run --release --example course_bench`.
//!
//! The times of the laps must be those that `tests/bench/lap.mjs` prints for the same course and set-ups.

use gear_math::course::{BandedLap, Demo, SearchSpace, Step, Weighting, ranked};
use gear_math::rider::{Air, BikeMass, BodyMass, KitMass};
use gear_math::{
    Bike, Cassette, Chainring, Chainset, Circumference, Course, Derailleur, Drivetrain, Lap, LapSetup, Power,
    Rider, Search,
};
use std::error::Error;
use std::hint::black_box;
use std::time::Instant;

const LAPS: u32 = 200;

fn main() -> Result<(), Box<dyn Error>> {
    let course = Demo::Meadow.course();
    let setups =
        [setup("44/31", "11-13-15-18-21-24-28-32")?, setup("40", "11-13-15-17-19-21-24-28-32-37-42")?];
    laps(&course, &setups)?;
    banded(&course, &setups)?;
    search(&course, &setups[0])
}

fn setup(rings: &str, cassette: &str) -> Result<LapSetup, Box<dyn Error>> {
    let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
    let drivetrain = Drivetrain { chainset: rings.parse()?, cassette: cassette.parse()? };
    let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2150.0)?);
    Ok(LapSetup::new(rider, bike, Air::STILL))
}

fn laps(course: &Course, setups: &[LapSetup; 2]) -> Result<(), Box<dyn Error>> {
    let step = Step::new(1.0)?;
    let mut least = f64::INFINITY;
    for _ in 0..LAPS {
        let started = Instant::now();
        for setup in setups {
            black_box(Lap::in_steps(black_box(course), setup, step)?);
        }
        least = least.min(started.elapsed().as_secs_f64());
    }
    println!("{:.0} m in 1 m steps, two set-ups: {:.3} ms at best", course.length_m(), least * 1e3);
    for setup in setups {
        let lap = Lap::in_steps(course, setup, step)?;
        println!("  {:.9} s, {} + {} shifts", lap.time_s, lap.shifts_rear, lap.shifts_front);
    }
    Ok(())
}

fn banded(course: &Course, setups: &[LapSetup; 2]) -> Result<(), Box<dyn Error>> {
    let started = Instant::now();
    for setup in setups {
        let banded = BandedLap::of(course, setup)?;
        println!("  {:?}, steps of {} m ± {:?} s", banded.band, banded.lap.step_m, banded.lap.step_error_s);
    }
    println!("settled, with bands, two set-ups: {:.1} ms", started.elapsed().as_secs_f64() * 1e3);
    Ok(())
}

fn search(course: &Course, setup: &LapSetup) -> Result<(), Box<dyn Error>> {
    let rings = (30..=52).filter_map(|teeth| Chainring::new(teeth).ok()).collect::<Vec<_>>();
    let space = SearchSpace {
        chainsets: Chainset::of_rings(&rings, 8..=16),
        cassettes: Cassette::common().collect(),
        derailleur: Derailleur::default(),
        largest_ring: None,
        with_gears_to_avoid: false,
    };
    let started = Instant::now();
    let mut search = Search::new(course, setup, space.derailleur, space.setups().collect())?;
    let found = search.advance(usize::MAX);
    let took = started.elapsed().as_secs_f64();
    println!("{} set-ups: {took:.2} s, {:.3} ms each", found.len(), took * 1e3 / found.len() as f64);
    let order = ranked(&found, &Weighting::USUAL);
    println!(
        "  {} unbeaten, ranked in {:.3} s in all",
        order.iter().filter(|ranked| ranked.unbeaten).count(),
        started.elapsed().as_secs_f64()
    );
    for ranked in order.iter().take(3) {
        let Drivetrain { chainset, cassette } = ranked.candidate.drivetrain;
        println!(
            "  {chainset} with {cassette}: {:.1} s, score {:.1}",
            ranked.candidate.time_s, ranked.score_s
        );
    }
    Ok(())
}
