use gear_math::*;
use std::time::Instant;
fn main() -> Result<(), Box<dyn std::error::Error>> {
    let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
    let d = Drivetrain { chainset: "44/31".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
    let bike = Bike::new(BikeMass::new(9.0)?, d, Circumference::new(2150.0)?);
    let setup = LapSetup::new(rider, bike, Air::STILL);
    let rings: Vec<Chainring> = (30..=52).step_by(2).filter_map(|t| Chainring::new(t).ok()).collect();
    let space = SearchSpace { chainsets: SearchSpace::rings(&rings, 6..=16), cassettes: Cassette::common().collect(), derailleur: Derailleur::default(), largest_ring: None, with_gears_to_avoid: false };
    for demo in Demo::ALL {
        let course = demo.course();
        let t0 = Instant::now();
        let mut search = Search::new(&course, &setup, space.derailleur, space.set_ups().collect())?;
        let n = search.total();
        let found = search.advance(n);
        println!("{} set-ups {:?}", n, t0.elapsed());
        let mut worst: f64 = 0.0; let mut sum=0.0; let mut k=0; let mut sh=0;
        let t0 = Instant::now();
        let mut errs = vec![];
        for c in found.iter().step_by(7) {
            let mut s = setup; s.bike.drivetrain = c.drivetrain;
            let lap = Lap::in_steps(&course, &s, Step::new(1.0)?)?;
            let e = c.time_s - lap.time_s;
            errs.push(e);
            if e.abs() > worst { worst = e.abs(); println!("{} {} {:.2} vs {:.2} shifts {}+{} vs {}+{}", c.drivetrain.chainset, c.drivetrain.cassette, c.time_s, lap.time_s, c.shifts_rear, c.shifts_front, lap.shifts_rear, lap.shifts_front); }
            sum += e; k+=1; sh = sh.max(c.shifts_rear.abs_diff(lap.shifts_rear));
        }
        errs.sort_by(f64::total_cmp);
        println!("{k} checked {:?} mean {} worst {worst} shift diff {sh} quantiles {:?}", t0.elapsed(), sum/k as f64, [errs[k/20], errs[k/4], errs[k/2], errs[3*k/4], errs[k*19/20]]);
    }
    Ok(())
}
