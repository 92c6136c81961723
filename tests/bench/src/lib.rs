//! Work to time natively and in WebAssembly: many gear tables, many cages solved, maps of riding or
//! running, laps.

use gear_math::chain::{Cage, CageMeasures, ChainDefaults, PulleyCentres};
use gear_math::course::{Demo, Fineness, ReserveSetup, Step};
use gear_math::parts::{BareBike, BoxRider, Combining, Outing, PartsBox, RearDerailleur};
use gear_math::rider::{
    Air, BikeMass, BodyMass, Climb, CriticalPower, EffortAccount, FootFactor, Friction, KitMass, PeakPower,
    RidingLimits, RollingCoefficient, SlopeShare, WorkReserve, verdict_map,
};
use gear_math::wheel::WidthFactor;
use gear_math::{
    Bike, Cadence, Cassette, ChainSetup, Circumference, Derailleur, Drivetrain, Ground, Lap, LapSetup, Power,
    RideOrRun, Rider, Sprocket, Surface, TotalCapacity,
};
use std::error::Error;

const CADENCES_RPM: [f64; 3] = [60.0, 80.0, 100.0];

/// The set-ups, rider and grounds of `ride_or_run_numpy.py`, so that the two work out the same map.
const SET_UPS: [(&str, &str); 2] =
    [("44/31", "11-12-13-14-16-18-20-22-25-28-32"), ("40", "10-11-12-13-15-17-19-21-24-28-33")];
const GRADIENTS: u32 = 91;

/// The set-ups of the laps, which `lap.mjs` and `reserve/lap.mjs` ride as well.
const PAIR: (&str, &str) = ("44/31", "11-13-15-18-21-24-28-32");
const SINGLE: (&str, &str) = ("40", "11-13-15-17-19-21-24-28-32-37-42");

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

/// Works out `count` maps of 91 gradients and 9 grounds for two set-ups, band and limits included, and adds up
/// their ratios. Not a number when anything is refused.
#[unsafe(no_mangle)]
pub extern "C" fn verdict_maps(count: u32) -> f64 {
    (0..count).map(|_| map().unwrap_or(f64::NAN)).sum()
}

fn map() -> Result<f64, Box<dyn Error>> {
    let questions = [question(SET_UPS[0])?, question(SET_UPS[1])?];
    let own = Ground {
        rolling: RollingCoefficient::new(0.06)?,
        width: WidthFactor::NONE,
        foot: FootFactor::new(1.35)?,
        slope_share: SlopeShare::FIXED,
        friction: Friction::new(0.4)?,
    };
    let grounds: Vec<Ground> = Surface::ALL.map(Surface::ground).into_iter().chain([own]).collect();
    let gradients: Vec<Climb> =
        (0..GRADIENTS).map(|step| Climb::new(f64::from(step) / 2.0)).collect::<Result<_, _>>()?;
    let maps = verdict_map(&questions, &grounds, &gradients);
    Ok(maps[0].iter().map(|cell| cell.ratio.reference).sum())
}

/// Rides `count` laps of the course of `lap.mjs` in steps of 1 m on each of its set-ups and adds up their times.
#[unsafe(no_mangle)]
pub extern "C" fn laps(count: u32) -> f64 {
    (0..count).map(|_| both_laps().unwrap_or(f64::NAN)).sum()
}

fn both_laps() -> Result<f64, Box<dyn Error>> {
    let (course, step) = (Demo::Meadow.course(), Step::new(1.0)?);
    let (one, other) = (lap_setup(PAIR)?, lap_setup(SINGLE)?);
    Ok(Lap::in_steps(&course, &one, step)?.time_s + Lap::in_steps(&course, &other, step)?.time_s)
}

/// Rides `count` laps of the same course as riders do with one ring and adds up their times.
#[unsafe(no_mangle)]
pub extern "C" fn reserve_single(count: u32) -> f64 {
    (0..count).map(|_| on_reserve(SINGLE).unwrap_or(f64::NAN)).sum()
}

/// The same with two rings.
#[unsafe(no_mangle)]
pub extern "C" fn reserve_pair(count: u32) -> f64 {
    (0..count).map(|_| on_reserve(PAIR).unwrap_or(f64::NAN)).sum()
}

fn on_reserve(gears: (&str, &str)) -> Result<f64, Box<dyn Error>> {
    Ok(Lap::on_reserve(&Demo::Meadow.course(), &reserve_setup(gears)?, Fineness::QUICK).time_s)
}

fn reserve_setup(gears: (&str, &str)) -> Result<ReserveSetup, Box<dyn Error>> {
    let lap = lap_setup(gears)?;
    let Rider { power, body, .. } = lap.rider;
    let effort = CriticalPower::new(power, WorkReserve::USUAL, PeakPower::of_body(body))?;
    Ok(ReserveSetup::new(lap, EffortAccount::new(effort)))
}

/// Combines `count` boxes of 168 combinations for the same course and adds up the times of their best.
#[unsafe(no_mangle)]
pub extern "C" fn boxes(count: u32) -> f64 {
    (0..count).map(|_| box_of_parts().unwrap_or(f64::NAN)).sum()
}

fn box_of_parts() -> Result<f64, Box<dyn Error>> {
    let rear = |capacity, largest| -> Result<RearDerailleur, Box<dyn Error>> {
        let figures = Derailleur {
            total_capacity: Some(TotalCapacity::new(capacity)?),
            largest_sprocket: Some(Sprocket::new(largest)?),
            ..Derailleur::default()
        };
        Ok(RearDerailleur { figures, pulley_centres: None })
    };
    let eleven = Cassette::common().filter(|it| it.sprockets().len() == 11);
    let parts = PartsBox {
        chainsets: vec!["50/34".parse()?, "44/32".parse()?, "42".parse()?, "38".parse()?],
        cassettes: eleven.chain(["11-13-15-17-20-23-26-29-32-35-38".parse()?]).collect(),
        derailleurs: vec![rear(35, 32)?, rear(39, 36)?, rear(45, 42)?],
        ..PartsBox::default()
    };
    let rider = BoxRider::Reserve(reserve_setup(SINGLE)?);
    let outing = Outing { course: Demo::Meadow.course(), rider, bike: BareBike::usual() };
    let mut combining = Combining::new(&outing, parts);
    while combining.advance(50)? {}
    let best = combining.quickest();
    let found = best.len() + combining.sorted().not_fitting.len();
    Ok(if found == 168 { best[0].lap.time_s } else { f64::NAN })
}

fn lap_setup((rings, sprockets): (&str, &str)) -> Result<LapSetup, Box<dyn Error>> {
    let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
    let drivetrain = Drivetrain { chainset: rings.parse()?, cassette: sprockets.parse()? };
    let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2150.0)?);
    Ok(LapSetup::new(rider, bike, Air::STILL))
}

fn question((rings, sprockets): (&str, &str)) -> Result<RideOrRun, Box<dyn Error>> {
    let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
    let drivetrain = Drivetrain { chainset: rings.parse()?, cassette: sprockets.parse()? };
    let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
    Ok(RideOrRun::new(rider, bike, Air::STILL, RidingLimits::all(&rider))?)
}
