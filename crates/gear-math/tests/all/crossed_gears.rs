//! What must hold of gears that run cross-chained, on one climb and round a lap.
#![expect(clippy::unwrap_used, reason = "planted values lie within their limits")]

use gear_math::course::{Fineness, ReserveSetup, ShiftTime, Shifting};
use gear_math::gears::GearSet;
use gear_math::rider::{
    Air, BikeMass, BodyMass, Climb, ClimbLength, CriticalPower, CrossedLoss, EffortAccount, EffortBudget,
    EffortPrice, KitMass, PeakPower, Spending, WorkReserve,
};
use gear_math::{
    Bike, Circumference, Course, Drivetrain, Gear, Lap, LapSetup, Power, RideOrRun, Rider, Surface,
};
use proptest::prelude::*;

/// On rings of 44 and 33 the 33×12 is the 44×16 and the 44×32 the 33×24: of each pair the first is crossed.
const PAIRED: &str = "12-14-16-18-21-24-28-32";

/// What a quick plan may be off beside the error of its steps, as a share of the lap (law 1).
const JUMP: f64 = 1.5e-3;

fn ridden(watts: f64, rings: &str, loss: f64) -> ReserveSetup {
    let rider =
        Rider::new(BodyMass::new(66.0).unwrap(), KitMass::new(2.0).unwrap(), Power::new(watts).unwrap());
    let drivetrain = Drivetrain { chainset: rings.parse().unwrap(), cassette: PAIRED.parse().unwrap() };
    let bike = Bike::new(BikeMass::new(9.0).unwrap(), drivetrain, Circumference::new(2130.0).unwrap());
    let bike = Bike { crossed_loss: CrossedLoss::new(loss).unwrap(), ..bike };
    let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, PeakPower::new(950.0).unwrap()).unwrap();
    ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort))
}

fn course(bank: f64, down: f64) -> Course {
    let sketch =
        format!("180; 0; firm grass\n60; {bank}; firm grass\n150; -{down}; tarmac\n120; 1; wet soft grass");
    sketch.parse().unwrap()
}

fn time_crossed(setup: &ReserveSetup, lap: &Lap) -> f64 {
    let crossed = lap.gears.iter().filter(|used| setup.lap.bike.drivetrain.is_crossed(used.gear));
    crossed.map(|used| used.time_s).sum()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(12))]

    /// With shifts for nothing and a straight gear of every crossed ratio, nobody runs cross-chained.
    #[test]
    fn of_two_like_gears_a_lap_takes_the_straight_one(watts in 200.0..300.0, bank in 4.0..11.0, down in 1.0..4.0) {
        let free = ShiftTime::new(0.0).unwrap();
        let mut setup = ridden(watts, "44/33", 0.01);
        setup.lap.shifting = Shifting { rear: free, front: free, ..setup.lap.shifting };
        let unpaired = Gear::new(33, 14).unwrap();
        setup.lap.bike.avoid = GearSet::of(&setup.lap.bike.drivetrain, |gear| gear == unpaired);
        let lap = Lap::on_reserve(&course(bank, down), &setup, Fineness::QUICK);
        prop_assert!(time_crossed(&setup, &lap) <= 0.0, "{:?}", lap.gears);
    }

    #[test]
    fn on_a_climb_as_well(watts in 180.0..300.0, percent in 0.0..14.0, times in 0.5..1.2) {
        let setup = ridden(watts, "44/33", 0.01);
        let question = RideOrRun::new(setup.lap.rider, setup.lap.bike, Air::STILL, setup.lap.limits).unwrap();
        let price = EffortPrice::new(times * setup.account.usual_price().s_per_j()).unwrap();
        for price in [price, EffortPrice::NONE] {
            let spending = Spending { price, most: EffortBudget::new(2500.0).unwrap() };
            let (climb, length) = (Climb::new(percent).unwrap(), ClimbLength::new(80.0).unwrap());
            let paced = question.paced_at(&setup.account, &Surface::Tarmac.ground(), climb, length, &spending);
            let gear = paced.ride.unwrap().gear;
            prop_assert!(![(33, 12), (44, 32)].contains(&(gear.ring.teeth(), gear.sprocket.teeth())), "{gear}");
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(4))]

    /// What a crossed chain loses makes no lap quicker, and all of it is accounted for.
    #[test]
    fn a_loss_makes_no_lap_quicker(watts in 200.0..300.0, bank in 2.0..11.0, down in 1.0..6.0) {
        let laps = [0.0, 0.01, 0.02].map(|loss| {
            Lap::on_reserve(&course(bank, down), &ridden(watts, "44/33", loss), Fineness::FINE)
        });
        for pair in laps.windows(2) {
            let slack = JUMP * pair[0].time_s + pair[0].step_error_s.unwrap();
            prop_assert!(pair[1].time_s > pair[0].time_s - slack, "{} {}", pair[0].time_s, pair[1].time_s);
        }
        for lap in &laps {
            let it = &lap.energy;
            let spent = it.climbing_j + it.rolling_j + it.bearings_j + it.air_j + it.kinetic_j + it.brakes_j;
            prop_assert!((it.crank_j - spent - it.drivetrain_j).abs() < 1e-6 * it.crank_j);
        }
    }
}

/// A single ring crosses nothing, however far the chain bends.
#[test]
fn a_single_ring_loses_nothing() {
    let laps = [0.0, 0.02]
        .map(|loss| Lap::on_reserve(&course(9.0, 3.0), &ridden(240.0, "40", loss), Fineness::QUICK));
    assert_eq!(laps[0], laps[1]);
}
