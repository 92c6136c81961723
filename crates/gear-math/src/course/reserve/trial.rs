//! Trial.
use super::fineness::Fineness;
use super::lap::ReserveLap;
use super::setup::ReserveSetup;
use crate::course::{CornerSpeed, Course, Mode, Obstacle, ObstacleTime, Segment};
use crate::rider::{
    Air, BikeMass, BodyMass, Compass, CriticalPower, EffortAccount, EffortBudget, KitMass, PeakPower, Wind,
    WindSpeed, WorkReserve,
};
use crate::{Bike, Circumference, Drivetrain, Gradient, LapSetup, Power, Rider, Surface};

const DIR: &str = "/work/shared/reference/data/lap-model/";

fn course(name: &str, file: &str) -> Course {
    let text = std::fs::read_to_string(format!("{DIR}{file}")).unwrap();
    let mut segments = Vec::new();
    for line in text.lines().filter(|l| !l.starts_with('#')).skip(1) {
        let c: Vec<&str> = line.split(',').collect();
        let c = if file.starts_with("band") { [vec![name], c].concat() } else { c };
        if c[0] != name {
            continue;
        }
        let g = Gradient::new(100.0 * c[3].parse::<f64>().unwrap()).unwrap();
        let mut s = Segment::over(c[2].parse().unwrap(), g, Surface::named(c[4]).unwrap()).unwrap();
        s.corner = c[5].parse().ok().map(|v| CornerSpeed::new(v).unwrap());
        s.obstacle = c[6].parse().ok().map(|v| Obstacle { time: ObstacleTime::new(v).unwrap() });
        s.heading = c[7].parse().ok().map(|v| Compass::new(v).unwrap());
        segments.push(s);
    }
    Course::new(segments).unwrap()
}

fn setup(body: f64, kit: f64, bike: f64, cp: f64, peak: f64, rings: &str, sprockets: &str) -> ReserveSetup {
    let rider = Rider::new(BodyMass::new(body).unwrap(), KitMass::new(kit).unwrap(), Power::new(cp).unwrap());
    let d = Drivetrain { chainset: rings.parse().unwrap(), cassette: sprockets.parse().unwrap() };
    let bike = Bike::new(BikeMass::new(bike).unwrap(), d, Circumference::new(2100.0).unwrap());
    let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, PeakPower::new(peak).unwrap()).unwrap();
    ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort))
}

fn cpu() -> f64 {
    let text = std::fs::read_to_string("/proc/self/stat").unwrap();
    let f: Vec<&str> = text.rsplit(')').next().unwrap().split_whitespace().collect();
    10.0 * (f[11].parse::<f64>().unwrap() + f[12].parse::<f64>().unwrap())
}

fn run(name: &str, course: &Course, setup: &ReserveSetup, fineness: Fineness) -> f64 {
    let t0 = cpu();
    let reps: usize = std::env::var("REPS").ok().and_then(|v| v.parse().ok()).unwrap_or(1);
    let mut r = ReserveLap::of(course, setup, fineness);
    for _ in 1..reps {
        r = ReserveLap::of(course, setup, fineness);
    }
    let el = (cpu() - t0) / reps as f64;
    let spans: Vec<_> =
        r.plan.iter().filter(|p| p.mode == Mode::Foot).map(|p| (p.from_m, p.to_m, p.why)).collect();
    let e = &r.energy;
    let book = e.crank - (e.climbing + e.rolling + e.bearings + e.air + e.kinetic + e.brakes + e.drivetrain);
    println!(
        "{name}: {:.2} price {:.5} N {:.0} above {:.0} charged {:.0} high {:.0} coast {:.1} shifts {}+{} {spans:.1?} err {:.3} book {book:.1e} {el:.1} ms cpu",
        r.time_s,
        r.price_s_per_j,
        r.net_j(),
        r.above_j,
        r.charged_j,
        r.highest_power_w,
        r.coasting_s,
        r.shifts_rear,
        r.shifts_front,
        r.step_error_s
    );
    r.time_s
}

#[test]
fn cases() {
    let text = std::fs::read_to_string(format!("{DIR}lap-cases.csv")).unwrap();
    let f = if std::env::var("QUICK").is_ok() { Fineness::QUICK } else { Fineness::FINE };
    let env = |n: &str, d: f64| std::env::var(n).ok().and_then(|v| v.parse().ok()).unwrap_or(d);
    let f = Fineness {
        step_m: env("STEP", f.step_m),
        speeds: env("SPEEDS", f.speeds as f64) as usize,
        near_speeds: env("NEAR", f.near_speeds as f64) as usize,
        prices: [env("P0", f.prices[0] as f64) as usize, env("P1", f.prices[1] as f64) as usize],
        cranks: [env("C0", f.cranks[0]), env("C1", f.cranks[1])],
        reach: f.reach.map(|r| env("REACH", r)),
        ..f
    };
    for line in text.lines().filter(|l| !l.starts_with('#')).skip(1) {
        let c: Vec<&str> = line.split(',').collect();
        if let Ok(only) = std::env::var("ONLY") {
            if !c[0].contains(&only) {
                continue;
            }
        }
        let n = |i: usize| c[i].parse::<f64>().unwrap();
        let mut s = setup(n(2), n(3), n(4), n(5), n(6), c[9], c[10]);
        s.budget = EffortBudget::new(n(12)).unwrap();
        if n(7) > 0.0 {
            s.wind = Some(Wind { speed: WindSpeed::new(n(7)).unwrap(), from: Compass::new(n(8)).unwrap() });
        }
        let t = run(c[0], &course(c[1], "lap-courses.csv"), &s, f);
        println!(
            "   expected {} tol {} price {} above {} charged {} high {} coasting {} {} shifts {}  off {:+.2}",
            n(14),
            n(16),
            n(17),
            n(18),
            n(19),
            n(20),
            n(21),
            c[22],
            c[24],
            t - n(14)
        );
    }
}

#[test]
fn long() {
    let q = |n: &str| course(n, "lap-courses.csv");
    let segments = [q("orchard"), q("quarry"), q("common"), q("orchard"), q("quarry"), q("common")]
        .iter()
        .flat_map(|c| c.segments().to_vec())
        .collect();
    let long = Course::new(segments).unwrap();
    println!("{} m", long.length_m());
    for (rings, sprockets) in
        [("40", "11-12-13-14-15-17-19-21-24-28-32"), ("46/36", "11-12-13-14-15-17-19-21-23-25-28")]
    {
        let s = setup(68.0, 2.0, 8.5, 240.0, 950.0, rings, sprockets);
        let a = run("long quick", &long, &s, Fineness::QUICK);
        if std::env::var("BOTH").is_ok() {
            let b = run("long fine", &long, &s, Fineness::FINE);
            println!("off {:+.2}", a - b);
        }
    }
}
