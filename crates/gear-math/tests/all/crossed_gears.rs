//! What must hold of gears that run cross-chained, on one climb, round a lap and in a search.
#![expect(clippy::unwrap_used, reason = "planted values lie within their limits")]

use gear_math::course::{Fineness, ReserveSetup, ShiftTime, Shifting};
use gear_math::gears::GearSet;
use gear_math::rider::{
    Air, BikeMass, BodyMass, Climb, ClimbLength, CriticalPower, EffortAccount, EffortBudget, EffortPrice,
    KitMass, PeakPower, Spending, WorkReserve,
};
use gear_math::{
    Bike, Circumference, Course, Drivetrain, Gear, Lap, LapSetup, Power, RideOrRun, Rider, Surface,
};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// On rings of 44 and 33 the 33×12 is the 44×16 and the 44×32 the 33×24: of each pair the first is crossed.
const PAIRED: &str = "12-14-16-18-21-24-28-32";

/// What a second with a crossed chain must gain, s: the reluctance at the usual price of a joule, 0.68 over the sustainable power.
const WORTH: f64 = 0.68 * Bike::RELUCTANCE;
/// What the fine search leaves open between two plans this much alike, s.
const OPEN_S: f64 = 0.02;

fn ridden(watts: f64, rings: &str, cassette: &str) -> ReserveSetup {
    let rider =
        Rider::new(BodyMass::new(66.0).unwrap(), KitMass::new(2.0).unwrap(), Power::new(watts).unwrap());
    let drivetrain = Drivetrain { chainset: rings.parse().unwrap(), cassette: cassette.parse().unwrap() };
    let bike = Bike::new(BikeMass::new(9.0).unwrap(), drivetrain, Circumference::new(2130.0).unwrap());
    let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, PeakPower::new(950.0).unwrap()).unwrap();
    ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort))
}

fn course(bank: f64, down: f64) -> Course {
    let sketch =
        format!("180; 0; firm grass\n60; {bank}; firm grass\n150; -{down}; tarmac\n120; 1; wet soft grass");
    sketch.parse().unwrap()
}

fn crossed(drivetrain: &Drivetrain) -> GearSet {
    GearSet::of(drivetrain, |gear| drivetrain.is_crossed(gear))
}

fn time_crossed(setup: &ReserveSetup, lap: &Lap) -> f64 {
    let crossed = lap.gears.iter().filter(|used| setup.lap.bike.drivetrain.is_crossed(used.gear));
    crossed.map(|used| used.time_s).sum()
}

fn cases(count: u32) -> ProptestConfig {
    ProptestConfig { rng_seed: RngSeed::Fixed(11), ..ProptestConfig::with_cases(count) }
}

proptest! {
    #![proptest_config(cases(12))]

    /// With shifts for nothing and a straight gear of every crossed ratio, nobody runs cross-chained.
    #[test]
    fn of_two_like_gears_a_lap_takes_the_straight_one(watts in 200.0..300.0, bank in 4.0..11.0, down in 1.0..4.0) {
        let free = ShiftTime::new(0.0).unwrap();
        let mut setup = ridden(watts, "44/33", PAIRED);
        setup.lap.shifting = Shifting { rear: free, front: free, ..setup.lap.shifting };
        let unpaired = Gear::new(33, 14).unwrap();
        setup.lap.bike.avoid = GearSet::of(&setup.lap.bike.drivetrain, |gear| gear == unpaired);
        let lap = Lap::on_reserve(&course(bank, down), &setup, Fineness::QUICK);
        prop_assert!(time_crossed(&setup, &lap) <= 0.0, "{:?}", lap.gears);
    }

    #[test]
    fn on_a_climb_as_well(watts in 180.0..300.0, percent in 0.0..14.0, times in 0.5..1.2) {
        let setup = ridden(watts, "44/33", PAIRED);
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

    /// Where a lap runs cross-chained, the one that may not is slower by what that counts for.
    #[test]
    fn a_crossed_gear_is_in_use_only_where_it_is_worth_it(
        watts in 200.0..300.0, bank in 4.0..16.0, down in 1.0..8.0, large in 40_u16..52, difference in 8_u16..17,
    ) {
        let rings = format!("{large}/{}", large - difference);
        let setup = ridden(watts, &rings, "11-12-13-15-17-19-21-24-28-32");
        let mut straight = setup;
        straight.lap.bike.avoid = crossed(&setup.lap.bike.drivetrain);
        let [lap, without] = [setup, straight].map(|it| Lap::on_reserve(&course(bank, down), &it, Fineness::FINE));
        let seconds = time_crossed(&setup, &lap);
        let gained = without.time_s - lap.time_s;
        prop_assert!(gained > WORTH * seconds - OPEN_S, "{seconds} s crossed gain {gained} s");
    }
}

/// A single ring crosses nothing, however far the chain bends.
#[test]
fn a_single_ring_is_ridden_without_reluctance() {
    let bike = ridden(240.0, "40", PAIRED).lap.bike;
    assert!(crossed(&bike.drivetrain).is_empty());
}
