//! Work to time natively and in WebAssembly: many gear tables, and many cages solved.

use gear_math::{
    Cadence, Cage, CageMeasures, ChainDefaults, ChainSetup, Circumference, Drivetrain, PulleyCentres,
};
use std::error::Error;

const CADENCES_RPM: [f64; 3] = [60.0, 80.0, 100.0];

/// Computes `count` gear tables, each on another wheel, and adds up their figures so that none can be left out.
///
/// Not a number when the set-up is refused: the bench checks that both sides give the same figure.
#[unsafe(no_mangle)]
pub extern "C" fn gear_tables(count: u32) -> f64 {
    (0..count).map(|index| gear_table(index).unwrap_or(f64::NAN)).sum()
}

fn gear_table(index: u32) -> Result<f64, Box<dyn Error>> {
    let drivetrain =
        Drivetrain { chainset: "44/31".parse()?, cassette: "11-12-13-15-17-19-22-25-28-32-36".parse()? };
    let wheel = Circumference::new(1900.0 + f64::from(index % 400))?;
    let cadences = CADENCES_RPM.map(Cadence::new);
    let mut sum = 0.0;
    for gear in drivetrain.gears() {
        let development = gear.development(wheel);
        sum += gear.ratio().value() + development.m() + gear.gear_inches(wheel).inches();
        for cadence in cadences {
            sum += development.speed_at(cadence?).km_per_h();
        }
    }
    Ok(sum)
}

/// Solves the cage in all 24 gears of `count` 2×12 set-ups, each with another cage, and adds up where it stands.
///
/// Not a number when a set-up is refused: the bench checks that both sides give the same figure.
#[unsafe(no_mangle)]
pub extern "C" fn cages(count: u32) -> f64 {
    (0..count).map(|index| cages_of(index).unwrap_or(f64::NAN)).sum()
}

fn cages_of(index: u32) -> Result<f64, Box<dyn Error>> {
    let drivetrain =
        Drivetrain { chainset: "48/34".parse()?, cassette: "10-11-12-13-14-15-17-19-21-24-28-33".parse()? };
    let pulley_centres = PulleyCentres::new(60.0 + f64::from(index % 40))?;
    let setup = ChainSetup {
        chainline: ChainDefaults::chainline(&drivetrain),
        drivetrain,
        frame: ChainDefaults::FRAME,
        cage: Cage::new(CageMeasures { pulley_centres, ..ChainDefaults::CAGE })?,
    };
    Ok(setup.fit(None)?.gears.iter().map(|gear| gear.drawn_angle.degrees()).sum())
}
