//! Bands of drawn doubts against percentiles and crossovers that were worked out apart from gear-math.

use gear_math::chain::PinFriction;
use gear_math::course::{
    CornerSpeed, CrossoverBand, Draw, DrawnBand, Draws, LapDraw, ReserveSetup, Segment, TimeBand,
};
use gear_math::rider::{
    Air, BikeMass, BodyMass, ClimbLength, CriticalPower, EffortAccount, EffortBudget, KitMass, PeakPower,
    WorkReserve,
};
use gear_math::{Bike, Circumference, Course, Drivetrain, Gradient, LapSetup, Power, Rider, Surface};
use reference_checks::{check_all, close, rows};
use serde::Deserialize;
use std::error::Error;

type Outcome<T> = Result<T, Box<dyn Error>>;

const FILE: &str = "lap-model/band-draws.csv";
const SPROCKETS: [&str; 2] = ["11-12-13-14-15-17-19-21-23-25-28", "11-12-13-14-16-18-20-22-25-28-34"];

#[derive(Deserialize)]
#[expect(non_snake_case, reason = "named as the columns are")]
struct Row {
    draw: String,
    GE: Option<f64>,
    kroll: Option<f64>,
    kS: Option<f64>,
    lam: Option<f64>,
    Cs: Option<f64>,
    eta: Option<f64>,
    Pmax_per_kg: Option<f64>,
    kappa: Option<f64>,
    rho: Option<f64>,
    finf: Option<f64>,
    off_on: Option<f64>,
    kgrip: Option<f64>,
    CP_factor: Option<f64>,
    lap_A_s: f64,
    lap_B_s: f64,
    A_minus_B_s: f64,
    flip_A_percent: Option<f64>,
    flip_B_percent: Option<f64>,
}

impl Row {
    fn draw(&self) -> Outcome<Draw> {
        let of = |value: Option<f64>| value.ok_or("no draw");
        Ok(Draw {
            efficiency: of(self.GE)? - 0.23,
            rolling: of(self.kroll)?,
            foot: of(self.kS)?,
            load: of(self.lam)? - 1.2,
            person: of(self.Cs)?,
            drivetrain: of(self.eta)? - 0.96,
            peak: of(self.Pmax_per_kg)? / 14.0,
            cadence_cost: of(self.kappa)? / 0.4,
            repaid: of(self.rho)? - 0.5,
            lasting: of(self.finf)? - 0.5,
            mounting: of(self.off_on)? / 3.0,
            grip: of(self.kgrip)?,
            sustained: of(self.CP_factor)?,
            pins: PinFriction::USUAL,
        })
    }

    fn flips(&self) -> [Option<f64>; 2] {
        [self.flip_A_percent, self.flip_B_percent]
    }

    fn is_of_all(&self) -> bool {
        self.draw.starts_with('p')
    }

    fn check_flips(&self) -> Outcome<()> {
        for (side, expected) in self.flips().into_iter().enumerate() {
            let found = crossover(&self.draw()?, side)?;
            close("flip", found.unwrap_or(f64::INFINITY), expected.ok_or("a flip in every row")?, 0.1)?;
        }
        Ok(())
    }
}

fn setup(side: usize) -> Outcome<ReserveSetup> {
    let rider = Rider::new(BodyMass::new(68.0)?, KitMass::new(2.0)?, Power::new(240.0)?);
    let drivetrain = Drivetrain { chainset: "40".parse()?, cassette: SPROCKETS[side].parse()? };
    let bike = Bike::new(BikeMass::new(8.5)?, drivetrain, Circumference::new(2100.0)?);
    let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, PeakPower::of_body(rider.body))?;
    Ok(ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort)))
}

/// Of 60 m of firm grass for 1500 J, however slowly it is ridden.
fn crossover(draw: &Draw, side: usize) -> Outcome<Option<f64>> {
    let mut given = ReserveSetup { budget: EffortBudget::new(1500.0)?, ..setup(side)? };
    given.lap.limits.balance = None;
    Ok(draw.crossover_percent(&given, &Surface::FirmGrass.ground(), ClimbLength::new(60.0)?))
}

#[test]
fn riding_stops_paying_where_the_table_says() {
    let mut draws: Vec<Row> = rows(FILE);
    draws.retain(|row| !row.is_of_all());
    check_all(FILE, &draws, 65, |row| row.check_flips().map_err(|error| error.to_string()));
}

/// The table's own laps give the percentiles of its last rows, to the hundredths in which they are written.
#[test]
fn percentiles_are_those_of_the_table() {
    let (of_all, draws): (Vec<Row>, Vec<Row>) = rows(FILE).into_iter().partition(Row::is_of_all);
    let done = |row: &Row| LapDraw {
        time_s: [row.lap_A_s, row.lap_A_s - row.A_minus_B_s],
        on_foot_m: [Vec::new(), Vec::new()],
    };
    let drawn = || draws.iter().filter(|row| row.draw != "reference");
    let band = DrawnBand::of(&drawn().map(done).collect::<Vec<_>>(), 0.0).expect("64 draws");
    let at = |band: TimeBand| [band.low_s, band.time_s, band.high_s];
    let found: [[f64; 3]; 3] = [at(band.laps[0]), at(band.laps[1]), at(band.gained)];
    let flips =
        [0, 1].map(|side| CrossoverBand::of(&drawn().map(|row| row.flips()[side]).collect::<Vec<_>>()));
    let edges = |it: CrossoverBand| [it.low_percent, it.percent, it.high_percent];
    let table: Vec<(usize, Row)> = of_all.into_iter().enumerate().collect();
    check_all(FILE, &table, 3, |(edge, row)| {
        let expected = [row.lap_A_s, row.lap_B_s, row.A_minus_B_s];
        for (found, expected) in found.iter().zip(expected) {
            close("percentile", found[*edge], expected, 0.021)?;
        }
        for (band, expected) in flips.into_iter().zip(row.flips()) {
            let found = edges(band)[*edge].ok_or("none")?;
            close("flip in whole per cent", found, expected.ok_or("none")?, 0.501)?;
        }
        Ok(())
    });
}

#[derive(Deserialize)]
struct Stretch {
    horizontal_m: f64,
    gradient_rise_over_run: f64,
    ground: String,
    corner_m_per_s: Option<f64>,
}

impl Stretch {
    fn segment(&self) -> Outcome<Segment> {
        let gradient = Gradient::new(100.0 * self.gradient_rise_over_run)?;
        let ground = Surface::named(&self.ground).ok_or("no such ground")?;
        let open = Segment::over(self.horizontal_m, gradient, ground).ok_or("no stretch")?;
        let corner = self.corner_m_per_s.map(CornerSpeed::new).transpose()?;
        Ok(Segment { corner, ..open })
    }
}

/// Other draws of the same ranges make the same bands, as far as 64 of them tell: 3 s of a lap, 0.4 s of a difference, one per
/// cent of slope.
#[test]
fn other_draws_make_the_same_bands() {
    let stretches: Vec<Stretch> = rows("lap-model/band-course.csv");
    let segments = stretches.iter().map(Stretch::segment).collect::<Outcome<_>>().expect("stretches");
    let course = Course::new(segments).expect("a course");
    let setups = [0, 1].map(|side| setup(side).expect("a bike"));
    let draws: Vec<Draw> = Draws::usual().all().collect();
    let done: Vec<LapDraw> = draws.iter().map(|draw| LapDraw::of(&course, &setups, draw)).collect();
    let band = DrawnBand::of(&done, 0.0).expect("64 draws");
    let laps = [[116.05, 125.64, 136.48], [115.99, 125.43, 135.59]];
    let near = |what: &str, found: TimeBand, expected: [f64; 3], tolerance: f64| {
        let mut found = [found.low_s, found.time_s, found.high_s].into_iter().zip(expected);
        found.try_for_each(|(found, expected)| close(what, found, expected, tolerance))
    };
    near("A", band.laps[0], laps[0], 3.0).expect("the band of A");
    near("B", band.laps[1], laps[1], 3.0).expect("the band of B");
    near("A − B", band.gained, [-0.08, 0.07, 1.96], 0.4).expect("the band of the difference");
    let flips = |side| draws.iter().map(|draw| crossover(draw, side).expect("a climb")).collect::<Vec<_>>();
    for (side, expected) in [[9.0, 12.0, 16.0], [10.0, 14.0, 18.0]].into_iter().enumerate() {
        let slopes = CrossoverBand::of(&flips(side));
        let found = [slopes.low_percent, slopes.percent, slopes.high_percent];
        for (found, expected) in found.into_iter().zip(expected) {
            close("crossover", found.unwrap_or(f64::INFINITY), expected, 1.0).expect("the band of slopes");
        }
    }
}
