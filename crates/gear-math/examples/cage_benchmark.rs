//! Times how long all cages of a 2×12 set-up take: every gear solved, on one cage and on eight.
//!
//! `cargo run --release -p gear-math --example cage_benchmark`

use gear_math::chain::{Cage, CageMeasures, ChainDefaults, PulleyCentres};
use gear_math::{ChainSetup, Derailleur, Drivetrain};
use std::error::Error;
use std::hint::black_box;
use std::time::Instant;

/// Pulley centres from short cages to wide-range ones, in millimetres.
const CAGES_MM: [f64; 8] = [50.0, 55.0, 72.5, 75.0, 82.0, 89.0, 93.0, 100.0];
const ROUNDS: u32 = 2_000;

fn main() -> Result<(), Box<dyn Error>> {
    let setups = CAGES_MM.map(setup).into_iter().collect::<Result<Vec<_>, _>>()?;
    let medium = setups[3];
    println!("24 gears on one cage:    {:8.1} µs", microseconds(|| black_box(&medium).fit(None).is_ok()));
    println!(
        "24 gears on eight cages: {:8.1} µs",
        microseconds(|| setups.iter().all(|setup| black_box(setup).fit(None).is_ok()))
    );
    println!(
        "advice on a short cage:  {:8.1} µs",
        microseconds(|| {
            black_box(&setups[0]).advise(None, &Derailleur::default(), &ChainDefaults::HANGER).is_ok()
        })
    );
    Ok(())
}

fn setup(pulley_centres_mm: f64) -> Result<ChainSetup, Box<dyn Error>> {
    let drivetrain =
        Drivetrain { chainset: "48/34".parse()?, cassette: "10-11-12-13-14-15-17-19-21-24-28-33".parse()? };
    let pulley_centres = PulleyCentres::new(pulley_centres_mm)?;
    let cage = Cage::new(CageMeasures { pulley_centres, ..ChainDefaults::CAGE })?;
    Ok(ChainSetup {
        chainline: ChainDefaults::chainline(&drivetrain),
        drivetrain,
        frame: ChainDefaults::FRAME,
        cage,
    })
}

fn microseconds(work: impl Fn() -> bool) -> f64 {
    let start = Instant::now();
    for _ in 0..ROUNDS {
        assert!(black_box(work()), "the benchmark's set-up is sound");
    }
    start.elapsed().as_secs_f64() * 1e6 / f64::from(ROUNDS)
}
