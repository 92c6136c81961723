//! Times the map of verdicts: 91 gradients × 9 grounds for two set-ups, band and limits included.
//!
//! Prints the same sums as `tests/bench/ride_or_run_numpy.py`, so that the two can be seen to compute the same.
//! Run: `cargo run --release --example ride_or_run_map`.

use gear_math::rider::{
    Air, BikeMass, BodyMass, Cell, Climb, FootFactor, Friction, KitMass, RidingLimits, RollingCoefficient,
    SlopeShare, Verdict, verdict_map,
};
use gear_math::wheel::WidthFactor;
use gear_math::{Bike, Circumference, Drivetrain, Ground, Power, RideOrRun, Rider, Surface};
use std::error::Error;
use std::hint::black_box;
use std::time::Instant;

const RUNS: u32 = 200;

fn main() -> Result<(), Box<dyn Error>> {
    let questions = [
        question("44/31", "11-12-13-14-16-18-20-22-25-28-32")?,
        question("40", "10-11-12-13-15-17-19-21-24-28-33")?,
    ];
    let grounds = grounds()?;
    let gradients: Vec<Climb> = (0..91).map(|k| Climb::new(f64::from(k) * 0.5)).collect::<Result<_, _>>()?;
    let maps = verdict_map(&questions, &grounds, &gradients);
    report(&maps);
    let best =
        (0..RUNS).map(|_| timed(|| verdict_map(&questions, &grounds, &gradients))).fold(f64::MAX, f64::min);
    println!("gear-math: {best:.3} ms per map");
    Ok(())
}

fn question(rings: &str, sprockets: &str) -> Result<RideOrRun, Box<dyn Error>> {
    let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
    let drivetrain = Drivetrain { chainset: rings.parse()?, cassette: sprockets.parse()? };
    let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
    Ok(RideOrRun::new(rider, bike, Air::STILL, RidingLimits::all(&rider))?)
}

fn grounds() -> Result<Vec<Ground>, Box<dyn Error>> {
    let own = Ground {
        rolling: RollingCoefficient::new(0.06)?,
        width: WidthFactor::NONE,
        foot: FootFactor::new(1.35)?,
        slope_share: SlopeShare::FIXED,
        friction: Friction::new(0.4)?,
    };
    Ok(Surface::ALL.map(Surface::ground).into_iter().chain([own]).collect())
}

fn report(maps: &[Vec<Cell>]) {
    let sum = |of: fn(&Cell) -> f64| maps[0].iter().map(of).sum::<f64>();
    let codes = |map: &Vec<Cell>| map.iter().map(|cell| code(cell.verdict)).sum::<u32>();
    println!(
        "sums: low {:.6}, reference {:.6}, high {:.6}, verdicts {} and {}",
        sum(|cell| cell.ratio.low),
        sum(|cell| cell.ratio.reference),
        sum(|cell| cell.ratio.high),
        codes(&maps[0]),
        codes(&maps[1]),
    );
}

const fn code(verdict: Verdict) -> u32 {
    match verdict {
        Verdict::Ride => 0,
        Verdict::Foot => 1,
        Verdict::FootForced => 2,
        Verdict::TooClose => 3,
    }
}

/// Milliseconds of one call.
fn timed<T>(work: impl FnOnce() -> T) -> f64 {
    let start = Instant::now();
    black_box(work());
    start.elapsed().as_secs_f64() * 1e3
}
