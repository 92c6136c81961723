//! What must hold of one climb on which a joule of the reserve has a price, and of it beside the lap that has the same.
#![expect(clippy::unwrap_used, reason = "planted values lie within their limits")]

use gear_math::course::{Fineness, Mode, ReserveSetup, Segment, StretchLength};
use gear_math::rider::{
    Air, Ascent, BikeMass, BodyMass, Climb, ClimbLength, CriticalPower, EffortAccount, EffortBudget,
    EffortPrice, KitMass, PacedClimb, PeakPower, SecondsLost, Slope, Spending, WorkReserve,
};
use gear_math::{
    Bike, Circumference, Course, Drivetrain, Gradient, Ground, Lap, LapSetup, Power, RideOrRun, Rider,
    Surface,
};
use proptest::prelude::*;
use proptest::strategy::ValueTree as _;

/// Someone before a climb.
#[derive(Debug, Clone)]
struct Case {
    setup: ReserveSetup,
    surface: Surface,
    percent: f64,
    length: f64,
}

fn cases() -> impl Strategy<Value = Case> {
    let rings = prop::sample::select(vec!["44/31", "42", "38", "46/33"]);
    let climb = (30.0..160.0, 2.0..22.0, 0..Surface::ALL.len());
    (rings, 52.0..86.0, 2.6..4.4, 12.0..17.0, climb).prop_map(|(rings, kg, watts, peak, climb)| Case {
        setup: ridden(kg, watts * kg, peak * kg, rings),
        surface: Surface::ALL[climb.2],
        percent: climb.1,
        length: climb.0,
    })
}

fn ridden(kg: f64, watts: f64, peak: f64, rings: &str) -> ReserveSetup {
    let rider =
        Rider::new(BodyMass::new(kg).unwrap(), KitMass::new(2.5).unwrap(), Power::new(watts).unwrap());
    let cassette = "11-13-15-18-21-24-28-32";
    let drivetrain = Drivetrain { chainset: rings.parse().unwrap(), cassette: cassette.parse().unwrap() };
    let bike = Bike::new(BikeMass::new(9.0).unwrap(), drivetrain, Circumference::new(2150.0).unwrap());
    let peak = PeakPower::new(peak).unwrap();
    let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, peak).unwrap();
    ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort))
}

fn budget(joules: f64) -> EffortBudget {
    EffortBudget::new(joules).unwrap()
}

impl Case {
    fn question(&self) -> RideOrRun {
        let of = &self.setup.lap;
        RideOrRun::new(of.rider, of.bike, of.air, of.limits).unwrap()
    }

    fn paced(&self, spending: &Spending) -> PacedClimb {
        let (climb, length) = (Climb::new(self.percent).unwrap(), ClimbLength::new(self.length).unwrap());
        self.question().paced_at(&self.setup.account, &self.surface.ground(), climb, length, spending)
    }

    /// At a price, over that of a lap that is usual.
    fn at(&self, times_usual: f64, most: f64) -> Spending {
        let price = times_usual * self.setup.account.usual_price().s_per_j();
        Spending { price: EffortPrice::new(price).unwrap(), most: budget(most) }
    }

    /// A lap of 200 m of firm, level grass, the climb, and as far down on firm grass.
    fn lap(&self) -> Lap {
        let stretch = |length: f64, percent: f64, surface: Surface| {
            Segment::open(StretchLength::new(length).unwrap(), Gradient::new(percent).unwrap(), surface)
        };
        let course = Course::new(vec![
            stretch(FLAT, 0.0, Surface::FirmGrass),
            stretch(self.length, self.percent, self.surface),
            stretch(self.length, -self.percent, Surface::FirmGrass),
        ]);
        Lap::on_reserve(&course.unwrap(), &self.setup, Fineness::QUICK)
    }

    /// Whether a lap rides more of the climb than it goes on foot.
    fn is_ridden_on(&self, lap: &Lap) -> bool {
        let (from, to) = (FLAT, FLAT + self.length);
        let on_foot = lap.plan.iter().filter(|part| part.mode == Mode::Foot);
        let metres: f64 = on_foot.map(|part| (part.to_m.min(to) - part.from_m.max(from)).max(0.0)).sum();
        metres < 0.5 * self.length
    }
}

const FLAT: f64 = 200.0;

/// Time and what is drawn at its price.
fn costs(paced: &PacedClimb, price: EffortPrice) -> [f64; 2] {
    let cost = |time: f64, joules: f64| time + price.s_per_j() * joules.max(0.0);
    let ride = paced.ride.map_or(f64::INFINITY, |ride| cost(ride.time.s(), ride.drawn.j()));
    [ride, cost(paced.foot.time.s(), paced.foot.drawn.j())]
}

/// By how many seconds riding is the better.
fn lead_s(ascent: &Ascent) -> f64 {
    let bike = ascent.bike.map_or(f64::INFINITY, |(_, time)| time.s() + ascent.dearer.s());
    ascent.foot.s() - bike
}

proptest! {
    /// No budget between nothing and the most makes less of time and price together, on the bike or on foot, by more than half a per
    /// cent: a tall gear that the budget hardly allows may be overlooked.
    #[test]
    fn no_other_pace_costs_less(case in cases(), times in 0.3..1.4, most in 500.0..8000.0) {
        let spending = case.at(times, most);
        let found = costs(&case.paced(&spending), spending.price);
        for share in 0..=20 {
            let other = costs(&case.paced(&budget(most * f64::from(share) / 20.0).into()), spending.price);
            for (found, other) in found.into_iter().zip(other) {
                prop_assert!(found <= other * (1.0 + 6e-3), "{found} for {other}");
            }
        }
    }

    /// Joules that cost nothing are all spent, dear ones are not, and none are ever earned.
    #[test]
    fn what_is_spent_follows_the_price(case in cases(), most in 500.0..8000.0) {
        let free = Spending { price: EffortPrice::NONE, most: budget(most) };
        prop_assert_eq!(case.paced(&free), case.paced(&budget(most).into()));
        let mut before = f64::INFINITY;
        for times in [0.2, 0.5, 0.8, 1.1, 1.4, 2.0] {
            let paced = case.paced(&case.at(times, most));
            let drawn = paced.foot.drawn.j();
            prop_assert!((-1e-3..=most + 1e-3).contains(&drawn) || paced.foot.speed.m_per_s() > 4.99);
            prop_assert!(drawn <= before + 0.05, "{drawn} J for a higher price than {before} J");
            before = drawn;
            prop_assert!(paced.ride.is_none_or(|ride| ride.drawn.j() <= most + 1e-3));
        }
    }

    /// What pays on a metre does not depend on how many there are.
    #[test]
    fn a_climb_twice_as_long_is_ridden_as_hard(case in cases()) {
        let twice = Case { length: 2.0 * case.length, ..case.clone() };
        let [one, two] = [&case, &twice].map(|case| {
            let spending = case.at(1.0, 50000.0);
            let paced = case.paced(&spending);
            let is_free = paced.ride.is_some_and(|ride| ride.drawn.j() < 20000.0);
            let [ride, foot] = costs(&paced, spending.price);
            [if is_free { ride } else { f64::INFINITY }, foot]
        });
        for (one, two) in one.into_iter().zip(two).filter(|(one, two)| one.is_finite() && two.is_finite()) {
            prop_assert!((two - 2.0 * one).abs() < 1e-3 * two, "{two} for twice {one}");
        }
    }

    /// Riding pays up to where it stops being the better way, to a quarter of a point or 0.3 s.
    #[test]
    fn riding_pays_as_far_as_it_is_the_better_way(case in cases(), most in 500.0..8000.0) {
        let (spending, lost) = (case.at(1.0, most), SecondsLost::PRACTISED);
        let ground: Ground = case.surface.ground();
        let length = ClimbLength::new(case.length).unwrap();
        let end = case.question().paced_crossover_at(&case.setup.account, &ground, length, &spending, lost);
        let end = end.map_or(45.0, Slope::percent);
        let lead = lead_s(&case.paced(&spending).ascent(lost, None));
        prop_assert!(lead.abs() < 0.3 || (case.percent - end).abs() < 0.25 || (lead > 0.0) == (case.percent < end), "{lead} s, up to {end}");
    }
}

/// Law 13: at the lap's own price the climb's advice is what the lap does, unless the two ways are within a good second: less is worth
/// that a lap comes into the climb with speed, gets off where that has gone, and gets on where it is flat. One case in fifty is as near.
#[test]
fn the_lap_takes_the_advice_on_its_climb() {
    const NEARER_S: f64 = 0.3;
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    let (mut looked_at, mut apart) = (0, Vec::new());
    for _ in 0..300 {
        let case = cases().new_tree(&mut runner).unwrap().current();
        let lap = case.lap();
        let spending =
            Spending { price: lap.reserve.as_ref().unwrap().price(), most: budget(EffortBudget::LIMITS.max) };
        let lead = lead_s(&case.paced(&spending).ascent(SecondsLost::PRACTISED, None));
        if lead.abs() > NEARER_S {
            looked_at += 1;
            if case.is_ridden_on(&lap) != (lead > 0.0) {
                apart.push((lead, case));
            }
        }
    }
    assert!(looked_at > 290, "{looked_at}");
    assert!(apart.iter().all(|(lead, _)| lead.abs() < Ascent::LAP_MAY_DIFFER_S), "{apart:?}");
    assert!(40 * apart.len() <= looked_at, "{} of {looked_at}: {apart:?}", apart.len());
}
