//! Trial.
use super::charge::Charge;
use super::fineness::Fineness;
use super::plan::Search;
use super::setup::{GroundFactors, ReserveSetup};
use crate::course::{CornerSpeed, Obstacle, ObstacleTime, Segment, Course};
use crate::rider::{Air, BikeMass, BodyMass, Compass, KitMass, Wind, WindSpeed};
use crate::{Bike, Circumference, Drivetrain, Gradient, LapSetup, Power, Rider, Surface};

const DIR: &str = "/work/shared/reference/data/lap-model/";

fn course(name: &str, file: &str) -> Course {
    let text = std::fs::read_to_string(format!("{DIR}{file}")).unwrap();
    let mut segments = Vec::new();
    for line in text.lines().filter(|l| !l.starts_with('#')).skip(1) {
        let c: Vec<&str> = line.split(',').collect();
        let c = if file.starts_with("band") { [vec![name], c].concat() } else { c };
        if c[0] != name { continue; }
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
    let charge = Charge { cp, peak, repaid: 0.5, kappa: 0.4, lasting: 0.5, own_rpm: Charge::line(cp) };
    ReserveSetup { lap: LapSetup::new(rider, bike, Air::STILL), charge, budget_j: 0.0, wind: None, ground: GroundFactors::TYPICAL }
}

fn run(name: &str, course: &Course, setup: &ReserveSetup, fineness: Fineness) -> f64 {
    let t0 = std::time::Instant::now();
    let search = Search::new(course, setup, fineness);
    let (best, log) = search.plan();
    let el = t0.elapsed().as_secs_f64() * 1e3;
    let r = &best.ridden;
    let t = r.time + best.price * (r.charge - setup.budget_j);
    let mut at = 0.0;
    let mut spans: Vec<(f64, f64)> = vec![];
    for (c, m) in search.way.cells.iter().zip(&r.moments) {
        if m.gear.is_none() {
            match spans.last_mut() { Some(s) if (s.1 - at).abs() < 1e-6 => s.1 = at + c.length, _ => spans.push((at, at + c.length)) }
        }
        at += c.length;
    }
    let rear = r.moments.iter().filter(|m| m.shift.is_some()).count();
    let high = r.moments.iter().filter(|m| m.gear.is_some()).map(|m| m.power).fold(0.0, f64::max);
    let above: f64 = r.moments.iter().filter(|m| m.gear.is_some()).map(|m| (m.power - setup.charge.cp).max(0.0) * m.time).sum();
    println!("{name}: {t:.2} price {:.5} N {:.0} above {above:.0} high {high:.0} shifts {rear} {spans:.1?} begin {:?} end {:?} {el:.1} ms", best.price, r.charge, r.begin, r.end);
    if std::env::var("LOG").is_ok() { for l in log { println!("   {:.5} {:.2} {:.0} -> {:.2}", l.0, l.1, l.2, l.1 + l.0 * (l.2 - setup.budget_j)); } }
    if std::env::var("TRACE").is_ok() {
        let mut at = 0.0;
        for (c, m) in search.way.cells.iter().zip(&r.moments) {
            println!("{at:.1} {:?} {:.3} {:.3} {:.0} {:.3} {:.3} {:?}", m.gear.map(|g| search.gearing.gears[g].to_string()), m.entry, m.exit, m.power, m.time, m.change, m.shift);
            at += c.length;
        }
    }
    t
}

#[test]
fn cases() {
    let text = std::fs::read_to_string(format!("{DIR}lap-cases.csv")).unwrap();
    let f = if std::env::var("QUICK").is_ok() { Fineness::QUICK } else { Fineness::FINE };
    let env = |n: &str, d: f64| std::env::var(n).ok().and_then(|v| v.parse().ok()).unwrap_or(d);
    let f = Fineness { step_m: env("STEP", f.step_m), speeds: env("SPEEDS", f.speeds as f64) as usize, near_speeds: env("NEAR", f.near_speeds as f64) as usize, ..f };
    for line in text.lines().filter(|l| !l.starts_with('#')).skip(1) {
        let c: Vec<&str> = line.split(',').collect();
        if let Ok(only) = std::env::var("ONLY") { if !c[0].contains(&only) { continue; } }
        let n = |i: usize| c[i].parse::<f64>().unwrap();
        let mut s = setup(n(2), n(3), n(4), n(5), n(6), c[9], c[10]);
        s.budget_j = n(12);
        if n(7) > 0.0 { s.wind = Some(Wind { speed: WindSpeed::new(n(7)).unwrap(), from: Compass::new(n(8)).unwrap() }); }
        let t = run(c[0], &course(c[1], "lap-courses.csv"), &s, f);
        println!("   expected {} tol {} price {} above {} charged {} high {} coasting {} {} shifts {}  off {:+.2}", n(14), n(16), n(17), n(18), n(19), n(20), n(21), c[22], c[24], t - n(14));
    }
}

#[test]
fn foot() {
    use crate::rider::FootDemand;
    let text = std::fs::read_to_string(format!("{DIR}single-climb.csv")).unwrap();
    let mut worst = 0.0f64;
    for line in text.lines().filter(|l| !l.starts_with('#')).skip(1) {
        let c: Vec<&str> = line.split(',').collect();
        let n = |i: usize| c[i].parse::<f64>().unwrap();
        let s = setup(n(0), n(1), n(2), n(3), n(4), c[5], c[6]);
        let ground = Surface::named(c[9]).unwrap().ground();
        let d = FootDemand::new(&s.lap.rider, &s.lap.bike, &Air::STILL, &ground, Gradient::new(100.0 * n(8)).unwrap());
        let p = d.crank_w(n(16));
        worst = worst.max((p - n(17)).abs() / n(17));
        let h = s.charge.on_foot_w(n(17)) * n(18);
        worst = worst.max((h - n(10)).abs() / 1e3);
    }
    println!("worst {worst}");
}
