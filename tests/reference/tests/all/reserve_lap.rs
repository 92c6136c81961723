//! Whole laps on a reserve against a search that shares nothing with gear-math. Each time is the least there is: one below it
//! means energy from nowhere, one above a poorer plan.

use gear_math::course::{
    CornerSpeed, Fineness, GroundFactors, MountTime, Mounting, Obstacle, ObstacleTime, ReserveSetup,
    ReserveUse, Segment, ShiftTime, Shifting,
};
use gear_math::rider::{
    Air, BikeMass, BodyMass, CadenceCost, Compass, CriticalPower, DrivetrainEfficiency, EffortAccount,
    EffortBudget, FootCostFactor, GrossEfficiency, KitMass, LoadFactor, PeakPower, RepaidShare,
    StrengthShare, Wind, WindSpeed, WorkReserve,
};
use gear_math::{Bike, Circumference, Course, Drivetrain, Gradient, Lap, LapSetup, Power, Rider, Surface};
use reference_checks::{check_all, close, rows};
use serde::Deserialize;
use std::error::Error;

type Outcome<T> = Result<T, Box<dyn Error>>;

#[derive(Deserialize)]
struct Stretch {
    course: Option<String>,
    horizontal_m: f64,
    gradient_rise_over_run: f64,
    ground: String,
    corner_m_per_s: Option<f64>,
    blocked_extra_s: Option<f64>,
    heading_deg: f64,
}

impl Stretch {
    fn segment(&self) -> Outcome<Segment> {
        let gradient = Gradient::new(100.0 * self.gradient_rise_over_run)?;
        let ground = Surface::named(&self.ground).ok_or("no such ground")?;
        let open = Segment::over(self.horizontal_m, gradient, ground).ok_or("no stretch")?;
        let time = self.blocked_extra_s.map(ObstacleTime::new).transpose()?;
        let corner = self.corner_m_per_s.map(CornerSpeed::new).transpose()?;
        let heading = Some(Compass::new(self.heading_deg)?);
        Ok(Segment { obstacle: time.map(|time| Obstacle { time }), corner, heading, ..open })
    }
}

fn course(file: &str, name: Option<&str>) -> Outcome<Course> {
    let stretches: Vec<Stretch> = rows(file);
    let wanted = stretches.iter().filter(|stretch| stretch.course.as_deref() == name);
    Ok(Course::new(wanted.map(Stretch::segment).collect::<Outcome<_>>()?)?)
}

/// Rider, bike and effort that a table moves.
struct Who<'a> {
    masses_kg: [f64; 3],
    sustained_w: f64,
    peak_w: f64,
    rings: &'a str,
    sprockets: &'a str,
}

impl Who<'_> {
    fn setup(&self) -> Outcome<ReserveSetup> {
        let [body, kit, bike] = self.masses_kg;
        let rider = Rider::new(BodyMass::new(body)?, KitMass::new(kit)?, Power::new(self.sustained_w)?);
        let drivetrain = Drivetrain { chainset: self.rings.parse()?, cassette: self.sprockets.parse()? };
        let bike = Bike::new(BikeMass::new(bike)?, drivetrain, Circumference::new(2100.0)?);
        let peak = PeakPower::new(self.peak_w)?;
        let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, peak)?;
        Ok(ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort)))
    }
}

#[derive(Deserialize)]
#[expect(non_snake_case, reason = "named as the columns are")]
struct Case {
    course: String,
    body_kg: f64,
    kit_kg: f64,
    bike_kg: f64,
    CP_W: f64,
    Pmax_W: f64,
    wind_m_per_s: f64,
    wind_from_deg: f64,
    rings: String,
    sprockets: String,
    budget_J: f64,
    lap_length_m: f64,
    time_s: f64,
    tolerance_s: f64,
    price_s_per_J: f64,
    joules_above_CP_J: f64,
    charged_above_CP_J: f64,
    highest_power_W: f64,
    dismounts_m: String,
    on_foot_m: f64,
    rear_shifts: u32,
    front_shifts: u32,
}

impl Case {
    fn setup(&self) -> Outcome<ReserveSetup> {
        let who = Who {
            masses_kg: [self.body_kg, self.kit_kg, self.bike_kg],
            sustained_w: self.CP_W,
            peak_w: self.Pmax_W,
            rings: &self.rings,
            sprockets: &self.sprockets,
        };
        let wind =
            Wind { speed: WindSpeed::new(self.wind_m_per_s)?, from: Compass::new(self.wind_from_deg)? };
        Ok(ReserveSetup { budget: EffortBudget::new(self.budget_J)?, wind: Some(wind), ..who.setup()? })
    }

    fn lap(&self, fineness: Fineness) -> Outcome<Lap> {
        let course = course("lap-model/lap-courses.csv", Some(&self.course))?;
        close("length", course.length_m(), self.lap_length_m, 0.01)?;
        Ok(Lap::on_reserve(&course, &self.setup()?, fineness))
    }

    fn check(&self) -> Outcome<()> {
        let lap = self.lap(Fineness::FINE)?;
        close("time", lap.time_s, self.time_s, self.tolerance_s)?;
        let used = used(&lap)?;
        close("net charge", used.net_j(), self.budget_J, 0.01 * self.CP_W * self.time_s)?;
        close("price", used.price_s_per_j, self.price_s_per_J, 0.06 * self.price_s_per_J)?;
        close("highest power", used.highest_power_w, self.highest_power_W, 0.05 * self.highest_power_W)?;
        self.check_joules(&lap)?;
        self.check_dismounts(&lap)
    }

    /// Joules are flat at the best: the other search had powers in steps, and so more of both.
    fn check_joules(&self, lap: &Lap) -> Outcome<()> {
        let used = used(lap)?;
        close("charged", used.charged_j, self.charged_above_CP_J, 0.15 * self.charged_above_CP_J)?;
        close("above", used.above_j, self.joules_above_CP_J, 0.3 * self.joules_above_CP_J)?;
        close("shifts", lap.shifts_rear.into(), self.rear_shifts.into(), 2.0)?;
        Ok(close("front shifts", lap.shifts_front.into(), self.front_shifts.into(), 1.0)?)
    }

    fn check_dismounts(&self, lap: &Lap) -> Outcome<()> {
        let found = lap.on_foot_round();
        let expected: Vec<&str> = self.dismounts_m.split(' ').collect();
        close("dismounts", found.len() as f64, expected.len() as f64, 0.0)?;
        for (part, span) in found.iter().zip(expected) {
            let (from, to) = span.split_once('-').ok_or("no span")?;
            close("off", part.from_m, from.parse()?, 3.0)?;
            close("on", part.to_m, to.parse()?, 3.0)?;
        }
        Ok(close("on foot", lap.on_foot_m(), self.on_foot_m, 3.0)?)
    }

    /// A coarse search may miss the best plan by 0.3 % beyond the tolerance, and must not fall below it either.
    fn check_quick(&self) -> Outcome<()> {
        let lap = self.lap(Fineness::QUICK)?;
        Ok(close("time", lap.time_s, self.time_s, self.tolerance_s)?)
    }
}

/// What a lap makes of the reserve.
fn used(lap: &Lap) -> Outcome<&ReserveUse> {
    Ok(lap.reserve.as_ref().ok_or("a lap without a reserve")?)
}

fn told(outcome: Outcome<()>) -> Result<(), String> {
    outcome.map_err(|error| error.to_string())
}

const CASES: &str = "lap-model/lap-cases.csv";

#[test]
fn laps_are_the_least_there_is() {
    check_all(CASES, &rows::<Case>(CASES), 12, |row| told(row.check()));
}

#[test]
fn quick_laps_are_nearly_so() {
    check_all(CASES, &rows::<Case>(CASES), 12, |row| told(row.check_quick()));
}

#[derive(Deserialize)]
struct Series {
    changed: String,
    value: String,
    time_s: f64,
}

const SPROCKETS: &str = "11-12-13-14-15-17-19-21-24-28-32";

impl Series {
    fn who<'a>(&self, sprockets: &'a str) -> Outcome<Who<'a>> {
        let value = |name: &str, usual: f64| -> Outcome<f64> {
            if self.changed == name { Ok(self.value.parse()?) } else { Ok(usual) }
        };
        Ok(Who {
            masses_kg: [value("body_kg", 68.0)?, 2.0, 8.5],
            sustained_w: value("CP_W", 240.0)?,
            peak_w: 950.0,
            rings: "40",
            sprockets,
        })
    }

    fn sprockets(&self) -> String {
        match self.changed.as_str() {
            "largest_sprocket" => format!("11-12-13-14-15-17-19-21-24-{}", self.value),
            "sprockets" => self.value.clone(),
            _ => SPROCKETS.to_owned(),
        }
    }

    fn setup(&self) -> Outcome<ReserveSetup> {
        let mut setup = self.who(&self.sprockets())?.setup()?;
        match self.changed.as_str() {
            "budget_J" => setup.budget = EffortBudget::new(self.value.parse()?)?,
            "kappa" => setup.account.cadence_cost = CadenceCost::new(self.value.parse()?)?,
            "rear_shift_loss_s" => {
                setup.lap.shifting =
                    Shifting { rear: ShiftTime::new(self.value.parse()?)?, ..Shifting::USUAL };
            }
            _ => {}
        }
        Ok(setup)
    }

    /// The last series are coarser plans of the same lap, by the other search: those are only never to be beaten by more.
    fn tolerance(&self) -> f64 {
        if self.changed == "cells_m/grid" { 0.5 } else { 0.3 }
    }

    fn time(&self) -> Outcome<f64> {
        let course = course("lap-model/lap-courses.csv", Some("orchard"))?;
        Ok(Lap::on_reserve(&course, &self.setup()?, Fineness::FINE).time_s)
    }
}

/// Every row, and the differences between neighbours of a series.
#[test]
fn one_thing_changed_moves_a_lap_as_it_should() {
    let file = "lap-model/lap-series.csv";
    let series: Vec<Series> = rows(file);
    let times: Outcome<Vec<f64>> = series.iter().map(Series::time).collect();
    let times = times.expect("every row is a lap");
    let found: Vec<_> = series.iter().zip(times).collect();
    check_all(file, &found, 33, |(row, time)| close(&row.value, *time, row.time_s, row.tolerance()));
    let pairs: Vec<_> = found.windows(2).filter(|pair| pair[0].0.changed == pair[1].0.changed).collect();
    let alike: Vec<_> = pairs.into_iter().filter(|pair| pair[0].0.tolerance() < 0.4).collect();
    check_all(file, &alike, 22, |pair| {
        let what = format!("{} {} to {}", pair[0].0.changed, pair[0].0.value, pair[1].0.value);
        close(&what, pair[1].1 - pair[0].1, pair[1].0.time_s - pair[0].0.time_s, 0.2)
    });
}

#[derive(Deserialize)]
#[expect(non_snake_case, reason = "named as the columns are")]
struct Draw {
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
}

const BODY_KG: f64 = 68.0;
const A: &str = "11-12-13-14-15-17-19-21-23-25-28";
const B: &str = "11-12-13-14-16-18-20-22-25-28-34";

impl Draw {
    fn setup(&self, sprockets: &str) -> Outcome<ReserveSetup> {
        let of = |value: Option<f64>| value.ok_or("no draw");
        let who = Who {
            masses_kg: [BODY_KG, 2.0, 8.5],
            sustained_w: 240.0 * of(self.CP_factor)?,
            peak_w: BODY_KG * of(self.Pmax_per_kg)?,
            rings: "40",
            sprockets,
        };
        let mut setup = who.setup()?;
        let time = MountTime::new(0.5 * of(self.off_on)?)?;
        setup.lap.rider.efficiency = GrossEfficiency::new(of(self.GE)?)?;
        setup.lap.rider.foot_cost = FootCostFactor::new(of(self.Cs)?)?;
        setup.lap.bike.load = LoadFactor::new(of(self.lam)?)?;
        setup.lap.bike.efficiency = DrivetrainEfficiency::new(of(self.eta)?)?;
        setup.lap.mounting = Mounting { off: time, on: time, ..Mounting::USUAL };
        setup.account.cadence_cost = CadenceCost::new(of(self.kappa)?)?;
        setup.account.repaid = RepaidShare::new(of(self.rho)?)?;
        setup.account.lasting = StrengthShare::new(of(self.finf)?)?;
        setup.ground = GroundFactors { rolling: of(self.kroll)?, foot: of(self.kS)?, grip: of(self.kgrip)? };
        Ok(setup)
    }

    fn laps(&self, course: &Course) -> Outcome<[f64; 2]> {
        let lap = |sprockets| -> Outcome<f64> {
            Ok(Lap::on_reserve(course, &self.setup(sprockets)?, Fineness::FINE).time_s)
        };
        Ok([lap(A)?, lap(B)?])
    }
}

/// The draws with both laps of each.
fn drawn() -> Outcome<Vec<(Draw, [f64; 2])>> {
    let course = course("lap-model/band-course.csv", None)?;
    let mut draws: Vec<Draw> = rows(DRAWS);
    draws.retain(|draw| !draw.draw.starts_with('p'));
    let with_laps = |draw: Draw| {
        let laps = draw.laps(&course)?;
        Ok((draw, laps))
    };
    draws.into_iter().map(with_laps).collect()
}

/// `Ok` when a lap takes no longer than the table's by more than its tolerance, and is quicker by less than 1.4 %.
fn poorer_at_most(what: &str, found: f64, expected: f64) -> Result<(), String> {
    let middle = expected * (1.0 - 0.007) + 0.25;
    close(what, found, middle, 0.007 * expected + 0.25)
}

const DRAWS: &str = "lap-model/band-draws.csv";
/// Of 65 draws, those in which both laps and their difference are within the table's own tolerance. In the others the table's
/// plan, looked for in steps of 4 m, is poorer, by up to a hundredth: in steps of 1, 2 and 4 m gear-math finds the same.
const CLOSE: usize = 43;

/// What is doubtful moved all together, the same for both bikes.
#[test]
fn both_bikes_follow_the_draws() {
    let drawn = drawn().expect("every draw is a lap");
    check_all(DRAWS, &drawn, 65, |(draw, [a, b])| {
        poorer_at_most("A", *a, draw.lap_A_s)?;
        poorer_at_most("B", *b, draw.lap_B_s)?;
        close("A − B", a - b, draw.A_minus_B_s, 1.1)
    });
    let is_close = |(draw, [a, b]): &&(Draw, [f64; 2])| {
        let off = [(*a - draw.lap_A_s) / 0.5, (*b - draw.lap_B_s) / 0.5, (a - b - draw.A_minus_B_s) / 0.3];
        off.iter().all(|share| share.abs() <= 1.0)
    };
    let count = drawn.iter().filter(is_close).count();
    assert!(count >= CLOSE, "{count} draws are close");
}
