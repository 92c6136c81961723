//! What must hold of the advice on one climb, of where running wins, and of the bands that are called likely.

#![expect(
    clippy::unwrap_used,
    reason = "strategies draw from the limits, and a draw outside them must fail the run"
)]

use gear_math::rider::{
    Advice, Air, Ascent, BalanceSpeed, BikeMass, BodyMass, Climb, ClimbLength, CriticalPower,
    DrivetrainEfficiency, FootCostFactor, FootFactor, Friction, GrossEfficiency, KitMass, Level, LoadFactor,
    LowerGear, MarkKind, OnBike, PeakPower, Reason, ReserveShare, RidingLimits, RollingCoefficient,
    SecondsLost, Slope, SlopeBand, SlopeShare, StandingMetabolism, Time, Verdict, Watched, WheelInertia,
    WorkReserve,
};
use gear_math::{
    Bike, Cadence, Circumference, Drivetrain, Ground, LIKELY_SHARE, Power, RideOrRun, Rider, Speed, Surface,
};
use proptest::prelude::*;

fn rider(kg: f64, watts: f64, rpm: f64) -> Rider {
    let (body, power) = (BodyMass::new(kg).unwrap(), Power::new(watts).unwrap());
    Rider {
        lowest_cadence: Cadence::new(rpm).unwrap(),
        ..Rider::new(body, KitMass::new(2.0).unwrap(), power)
    }
}

fn bike(rings: &str, sprockets: &str) -> Bike {
    let drivetrain = Drivetrain { chainset: rings.parse().unwrap(), cassette: sprockets.parse().unwrap() };
    Bike::new(BikeMass::new(9.0).unwrap(), drivetrain, Circumference::new(2150.0).unwrap())
}

fn asked(rider: Rider, bike: Bike, limits: RidingLimits) -> RideOrRun {
    RideOrRun::new(rider, bike, Air::STILL, limits).unwrap()
}

fn metres(m: f64) -> ClimbLength {
    ClimbLength::new(m).unwrap()
}

fn seconds(s: f64) -> SecondsLost {
    SecondsLost::new(s).unwrap()
}

fn percent(percent: f64) -> Climb {
    Climb::new(percent).unwrap()
}

fn surfaces() -> impl Strategy<Value = Ground> {
    (0..Surface::ALL.len()).prop_map(|index| Surface::ALL[index].ground())
}

/// The advice on a climb entered at 15 km/h, and what forcing it takes.
fn advised(rider: Rider, ground: &Ground, slope: f64, length: f64) -> (Ascent, Option<Time>) {
    let question = asked(rider, bike("50/36", "11-13-15-17-19-22-25-28"), RidingLimits::all(&rider));
    let peak = PeakPower::estimated(rider.power, rider.body);
    let reserve = WorkReserve::estimated(rider.power, rider.body);
    let effort = CriticalPower::new(rider.power, reserve, peak).unwrap();
    let over = question.over_gear(ground, percent(slope), &effort, ReserveShare::EACH_LAP);
    let entry = Speed::from_km_per_h(15.0).unwrap();
    let carry = question.carry(ground, percent(slope), entry, WheelInertia::USUAL);
    let plan = question.climb(ground, percent(slope), metres(length), SecondsLost::PRACTISED);
    (plan.ascent(&carry, Some(&over)), over.longest().map(|(time, _)| time))
}

proptest! {
    #[test]
    fn the_advice_is_the_quickest_that_can_be_done(
        kg in 45.0..100.0, per_kg in 2.0..6.0, rpm in 35.0..70.0, ground in surfaces(), slope in 0.0..30.0,
        length in 3.0..400.0
    ) {
        let (ascent, longest) = advised(rider(kg, kg * per_kg, rpm), &ground, slope, length);
        let time = ascent.bike.map(|(_, time)| time);
        prop_assert!(ascent.better() <= ascent.foot && time.is_none_or(|time| ascent.better() <= time));
        match ascent.advice {
            Advice::Ride | Advice::Carry | Advice::Force => prop_assert!(time.unwrap() < ascent.foot),
            Advice::Run => prop_assert!(time.is_none_or(|time| time >= ascent.foot), "{ascent:?}"),
            Advice::TooClose => prop_assert!(time.is_some()),
        }
        if let Some((OnBike::Forced(power), time)) = ascent.bike {
            prop_assert!(power.watts() > kg * per_kg * 0.999);
            prop_assert!(longest.unwrap().s() >= time.s() * (1.0 - 1e-3), "{longest:?} for {time:?}");
        }
    }

    /// Ridden steadily, on the speed brought along, or forced: whichever can be done is tried apart, on climbs of every length.
    #[test]
    fn no_way_up_is_quicker_than_the_one_named(
        kg in 45.0..100.0, per_kg in 2.0..6.0, rpm in 35.0..70.0, ground in surfaces(), slope in 0.0..30.0,
        km_per_h in 5.0..35.0
    ) {
        let rider = rider(kg, kg * per_kg, rpm);
        let question = asked(rider, bike("50/36", "11-13-15-17-19-22-25-28"), RidingLimits::all(&rider));
        let peak = PeakPower::estimated(rider.power, rider.body);
        let effort = CriticalPower::new(rider.power, WorkReserve::estimated(rider.power, rider.body), peak).unwrap();
        let over = question.over_gear(&ground, percent(slope), &effort, ReserveShare::EACH_LAP);
        let entry = Speed::from_km_per_h(km_per_h).unwrap();
        let carry = question.carry(&ground, percent(slope), entry, WheelInertia::USUAL);
        for length in (0..24).map(|step| metres(3.0 * 1.23_f64.powi(step))) {
            let plan = question.climb(&ground, percent(slope), length, SecondsLost::PRACTISED);
            let ascent = plan.ascent(&carry, Some(&over));
            let limits = plan.answer.limits;
            let carried = carry.over(length).filter(|_| !limits.grip && !plan.answer.spins_out());
            prop_assert_eq!(plan.carried(&carry), carried);
            prop_assert_eq!(plan.is_forceable(), !limits.grip && (limits.gear || limits.balance));
            let worth = carried.filter(|time| plan.ride.is_none_or(|ride| time.s() < 0.8 * ride.s()));
            prop_assert_eq!(ascent.brought, worth.filter(|_| plan.ride.is_some()));
            let forced = over.over(length).ok().filter(|_| plan.is_forceable());
            let all = [plan.ride, worth, forced].into_iter().flatten();
            let quickest = all.min_by(|a, b| a.s().total_cmp(&b.s()));
            let expected = if plan.verdict == Verdict::Ride { plan.ride } else { quickest };
            prop_assert_eq!(ascent.bike.map(|(_, time)| time), expected);
            match (ascent.advice, ascent.bike) {
                (Advice::Ride, how) => prop_assert!(matches!(how, Some((OnBike::Ridden, _)))),
                (Advice::Carry, how) => prop_assert!(matches!(how, Some((OnBike::Carried, _)))),
                (Advice::Force, how) => prop_assert!(matches!(how, Some((OnBike::Forced(_), _)))),
                (Advice::TooClose, Some((how, time))) => prop_assert!(how == OnBike::Ridden || time < plan.foot),
                (Advice::TooClose, None) => prop_assert!(false, "too close to nothing"),
                (Advice::Run, way) => prop_assert!(way.is_none_or(|(_, time)| time >= plan.foot), "{ascent:?}"),
            }
        }
    }

    #[test]
    fn a_lower_gear_saves_what_the_bike_that_has_it_saves(
        kg in 45.0..100.0, per_kg in 2.5..5.0, ground in surfaces(), slope in 2.0..20.0, length in 20.0..300.0
    ) {
        let rider = rider(kg, kg * per_kg, 60.0);
        let climb = |bike: Bike| {
            let question = asked(rider, bike, RidingLimits::all(&rider));
            question.climb(&ground, percent(slope), metres(length), SecondsLost::PRACTISED)
        };
        let (tall, low) = (climb(bike("42", "11-16")), climb(bike("42/20", "11-16-24-36-50")));
        let standing = Speed::from_km_per_h(1.0).unwrap();
        let question = asked(rider, bike("42", "11-16"), RidingLimits::all(&rider));
        let carry = question.carry(&ground, percent(slope), standing, WheelInertia::USUAL);
        let ascent = tall.ascent(&carry, None);
        match (ascent.lower_gear, low.ride) {
            (LowerGear::Saves(saved), Some(ride)) => {
                prop_assert!((ascent.better().s() - ride.s() - saved.s()).abs() < 1e-9);
            }
            (LowerGear::Saves(_), None) => prop_assert!(low.answer.limits.gear || low.answer.limits.force),
            (LowerGear::Useless(Reason::Energy), Some(ride)) => prop_assert!(ride >= low.foot),
            (LowerGear::Useless(reason), None) => {
                prop_assert!(low.answer.limits.reasons().any(|held| held == reason));
            }
            (LowerGear::Needless, _) => prop_assert!(tall.ride.is_some() || tall.answer.limits.grip || tall.answer.limits.balance),
            other => prop_assert!(false, "{other:?}"),
        }
    }

    /// What is said of every flatter and every steeper slope holds of each: no climb is called otherwise.
    #[test]
    fn the_crossover_never_contradicts_a_climb(
        kg in 45.0..100.0, per_kg in 2.0..6.0, ground in surfaces(), length in 5.0..1000.0, lost in 0.0..10.0
    ) {
        let rider = Rider { highest_cadence: Cadence::new(200.0).unwrap(), ..rider(kg, kg * per_kg, 20.0) };
        let question = asked(rider, bike("44/20", "9-12-16-21-28-38-52"), RidingLimits::GEAR_ONLY);
        let wins = question.running_wins(&ground, metres(length), seconds(lost));
        let or_never = |slope: Option<Slope>| slope.map_or(f64::INFINITY, Slope::percent);
        let (early, best, late) = (or_never(wins.earliest), or_never(wins.gradient), or_never(wins.latest));
        prop_assert!(early <= best && best <= late, "{wins:?}");
        for half in 0..=90 {
            let slope = f64::from(half) / 2.0;
            let plan = question.climb(&ground, percent(slope), metres(length), seconds(lost));
            if plan.ride.is_none() { continue }
            if slope < early - 0.01 { prop_assert_eq!(plan.verdict, Verdict::Ride, "{} in {:?}", slope, wins) }
            if slope > late + 0.01 { prop_assert_eq!(plan.verdict, Verdict::Foot, "{} in {:?}", slope, wins) }
        }
    }

    #[test]
    fn running_wins_below_the_speed_that_takes_as_long(
        kg in 45.0..100.0, per_kg in 2.0..6.0, ground in surfaces(), slope in 0.0..40.0, length in 5.0..1000.0
    ) {
        let rider = rider(kg, kg * per_kg, 50.0);
        let question = asked(rider, bike("40", "11-15-20-28"), RidingLimits::GEAR_ONLY);
        let plan = question.climb(&ground, percent(slope), metres(length), SecondsLost::PRACTISED);
        let below = plan.running_wins_below();
        prop_assert!(below.low <= below.best && below.best <= below.high);
        prop_assert!((length / below.best.m_per_s() - plan.foot.s()).abs() < 1e-9 * plan.foot.s());
        prop_assert!(below.best < plan.answer.foot);
    }

    #[test]
    fn reserve_and_peak_follow_body_and_power(kg in 35.0..110.0, watts in 60.0..600.0, more in 1.0..100.0) {
        let of = |kg: f64, watts: f64| {
            let (power, body) = (Power::new(watts).unwrap(), BodyMass::new(kg).unwrap());
            (WorkReserve::estimated(power, body).kj(), PeakPower::estimated(power, body).watts())
        };
        let (given, stronger, heavier) = (of(kg, watts), of(kg, watts + more), of(kg + more / 3.0, watts));
        prop_assert!(stronger.0 >= given.0 && heavier.0 >= given.0 && given.0 <= 25.0);
        prop_assert!(stronger.1 >= given.1 && heavier.1 >= given.1 && given.1 >= 4.0 * watts);
        prop_assert!(given.1 <= (18.4 * kg).max(4.0 * watts));
    }
}

/// Anchors: a trained man of 72 kg who keeps up 256 W has 15 to 18 kJ, and riders of 60 to 80 kg have 10 to 25.
#[test]
fn the_reserve_is_that_of_the_riders_who_were_measured() {
    let kj = |watts: f64, kg: f64| {
        WorkReserve::estimated(Power::new(watts).unwrap(), BodyMass::new(kg).unwrap()).kj()
    };
    assert!((15.0..=18.0).contains(&kj(256.0, 72.0)));
    for kg in [60.0, 70.0, 80.0] {
        let body = BodyMass::new(kg).unwrap();
        for level in Level::ALL {
            assert!((10.0..=25.0).contains(&kj(level.power(body).watts(), kg)), "{level:?} {kg}");
        }
    }
}

/// A plain generator of numbers between 0 and 1, so that the draws are the same in every run.
struct Draws(u64);

impl Draws {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn even(&mut self) -> f64 {
        2.0 * self.next() - 1.0
    }

    /// A normal draw with a deviation of one: the sum of twelve even ones.
    fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.next()).sum::<f64>() - 6.0
    }
}

fn first_limit(question: &RideOrRun, ground: &Ground) -> Option<Slope> {
    let ends = |kind| matches!(kind, MarkKind::Ends(reason) if reason != Reason::Energy);
    let marks = question.crossover(ground).marks;
    marks.iter().find(|mark| ends(mark.kind)).map(|mark| mark.gradient)
}

/// The end of riding with every doubt drawn at once. `by` gives −1 and 1 for the ends of a range.
fn drawn(rider: Rider, bike: Bike, ground: Ground, mut by: impl FnMut() -> f64) -> f64 {
    let mut off = |low: f64, high: f64| {
        let by = by();
        if by < 0.0 { -by * low } else { by * high }
    };
    macro_rules! moved {
        ($type:ident, $value:expr) => {
            $type::new(f64::clamp($value, $type::LIMITS.min, $type::LIMITS.max)).unwrap()
        };
    }
    let ground = Ground {
        rolling: moved!(RollingCoefficient, ground.rolling.value() * (1.0 + off(-0.3, 0.3))),
        foot: moved!(FootFactor, 1.0 + (ground.foot.value() - 1.0) * (1.0 + off(-0.5, 0.5))),
        friction: moved!(Friction, ground.friction.mu() * (1.0 + off(-0.3, 0.4))),
        slope_share: moved!(SlopeShare, off(0.0, 1.0)),
        ..ground
    };
    let rider = Rider {
        power: moved!(Power, rider.power.watts() * (1.0 + off(-0.1, 0.1))),
        lowest_cadence: Cadence::new(rider.lowest_cadence.rpm() + off(-5.0, 5.0)).unwrap(),
        efficiency: moved!(GrossEfficiency, rider.efficiency.share() + off(-0.02, 0.02)),
        standing: moved!(StandingMetabolism, rider.standing.w_per_kg() + off(-0.3, 0.2)),
        foot_cost: moved!(FootCostFactor, rider.foot_cost.value() * (1.0 + off(-0.08, 0.08))),
        ..rider
    };
    let bike = Bike {
        mass: moved!(BikeMass, bike.mass.kg() + off(-1.0, 1.0)),
        efficiency: moved!(DrivetrainEfficiency, bike.efficiency.share() + off(-0.04, 0.016)),
        load: moved!(LoadFactor, bike.load.value() + off(-0.2, 0.3)),
        ..bike
    };
    let limits = RidingLimits {
        balance: Some(moved!(BalanceSpeed, BalanceSpeed::USUAL.m_per_s() + off(-0.2, 0.6))),
        ..RidingLimits::all(&rider)
    };
    first_limit(&asked(rider, bike, limits), &ground).map_or(45.0, Slope::percent)
}

/// “Likely” claims about 3 in 4. The band of the slope where riding ends must not hold much less with the ends of the
/// ranges taken as one deviation, no less with all between them as likely, and never everything.
#[test]
fn the_band_of_the_end_of_riding_holds_the_share_of_cases_it_claims() {
    for (surface, watts, rings) in [
        (Surface::WetSoftGrass, 220.0, "50/34"),
        (Surface::FirmGrass, 260.0, "40"),
        (Surface::Mud, 300.0, "38/26"),
    ] {
        let (rider, bike, ground) =
            (rider(62.0, watts, 55.0), bike(rings, "11-14-18-24-30"), surface.ground());
        let question = asked(rider, bike, RidingLimits::all(&rider));
        let best = first_limit(&question, &ground);
        let band = SlopeBand::of(best, &question.tornado(&ground, Watched::Limits));
        let (low, high) = (band.low.percent(), band.high.map_or(45.0, Slope::percent));
        let mut draws = Draws(7);
        let mut share = |normal: bool| {
            let held = (0..400).filter(|_| {
                let end = drawn(rider, bike, ground, || if normal { draws.normal() } else { draws.even() });
                (low..=high).contains(&end)
            });
            held.count() as f64 / 400.0
        };
        let (normal, even) = (share(true), share(false));
        assert!(normal > LIKELY_SHARE - 0.15 && even > LIKELY_SHARE, "{surface:?}: {normal}, {even}");
        assert!(normal < 0.9 && even < 0.98, "{surface:?}: {normal}, {even}: {low} to {high}");
    }
}
