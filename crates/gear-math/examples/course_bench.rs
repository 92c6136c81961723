use gear_math::*;
use std::time::Instant;
fn main() -> Result<(), Box<dyn std::error::Error>> {
    let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
    for (cs, cass) in [("44/31", "11-13-15-18-21-24-28-32"), ("40", "11-13-15-17-19-21-24-28-32-37-42"), ("46/36", "11-12-13-14-15-17-19-21-23-25-28")] {
        let d = Drivetrain { chainset: cs.parse()?, cassette: cass.parse()? };
        let bike = Bike::new(BikeMass::new(9.0)?, d, Circumference::new(2150.0)?);
        let setup = LapSetup::new(rider, bike, Air::STILL);
        for demo in Demo::ALL {
            let course = demo.course();
            println!("== {cs} {cass} {} {:.0} m climb {:.0}", demo.name(), course.length_m(), course.climb_m());
            for s in [1.0, 0.5, 0.25, 0.125, 0.0625] {
                let t0 = Instant::now();
                let lap = Lap::in_steps(&course, &setup, Step::new(s)?)?;
                println!("{s} {:.4} s rear {} front {} low {:?} below {:.1}  {:?}", lap.time_s, lap.shifts_rear, lap.shifts_front, lap.lowest_cadence_rpm, lap.below_window_s, t0.elapsed());
            }
            let lap = Lap::of(&course, &setup)?;
            println!("{} {:?} {:?}", lap.time_s, lap.step_m, lap.step_error_s);
            for p in &lap.plan { println!("  {:?}", p); }
            println!("{:?}", lap.energy);
            let e = lap.energy;
            println!("balance {}", e.crank - e.drivetrain - e.climbing - e.rolling - e.bearings - e.air - e.brakes - e.kinetic);
        }
    }
    Ok(())
}
