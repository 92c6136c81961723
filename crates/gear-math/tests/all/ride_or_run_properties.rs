//! What must hold of riding and going on foot whatever the rider, the bike, the ground and the air.

#![expect(
    clippy::unwrap_used,
    reason = "strategies draw from the limits, and a draw outside them must fail the run"
)]

use gear_math::rider::{
    Air, AirDensity, Answer, BalanceSpeed, BikeMass, BodyMass, Climb, ClimbLength, CriticalPower, DragArea,
    DrivetrainEfficiency, FootCostFactor, FootDrag, FootFactor, Friction, Gait, Gaits, GrossEfficiency,
    Headwind, KitMass, LegStrength, LoadFactor, MarkKind, MassHeight, PeakFactor, PeakPower, RearShare,
    Reason, ReserveShare, RidingLimits, RoadLoad, RollingCoefficient, SecondsLost, Slope, SlopeShare, Stance,
    StandingMetabolism, StrengthShare, TotalMass, Uncertain, Verdict, Watched, WheelInertia, Wheelbase,
    WorkReserve, break_even_length, verdict_map,
};
use gear_math::wheel::{MountedWidth, WidthFactor};
use gear_math::{
    Bike, Cadence, Cassette, Chainset, Circumference, Drivetrain, Gradient, Ground, Limits, Power, RideOrRun,
    Rider, Speed, Surface,
};
use proptest::prelude::*;

fn within(limits: Limits) -> impl Strategy<Value = f64> {
    limits.min..=limits.max
}

macro_rules! any_of {
    ($($type:ident),+) => { ($(within($type::LIMITS).prop_map(|value| $type::new(value).unwrap())),+) };
}

fn riders() -> impl Strategy<Value = Rider> {
    let people = any_of!(BodyMass, KitMass, Power, GrossEfficiency, StandingMetabolism, FootCostFactor);
    let legs = (20.0..=100.0, 100.0..=200.0, any::<bool>());
    (people, legs).prop_map(
        |((body, kit, power, efficiency, standing, foot_cost), (slow, fast, run_only))| Rider {
            efficiency,
            standing,
            foot_cost,
            gaits: if run_only { Gaits::RunOnly } else { Gaits::RunOrWalk },
            lowest_cadence: Cadence::new(slow).unwrap(),
            highest_cadence: Cadence::new(fast).unwrap(),
            ..Rider::new(body, kit, power)
        },
    )
}

fn bikes() -> impl Strategy<Value = Bike> {
    let cassettes = prop::collection::btree_set(9_u16..=52, 1..=13);
    let chainsets = prop::collection::btree_set(20_u16..=60, 1..=3);
    let parts = any_of!(BikeMass, Circumference, DrivetrainEfficiency, LoadFactor, MountedWidth);
    (cassettes, chainsets, parts).prop_map(|(sprockets, rings, (mass, wheel, efficiency, load, tyre))| {
        let drivetrain = Drivetrain {
            chainset: Chainset::new(rings).unwrap(),
            cassette: Cassette::new(sprockets).unwrap(),
        };
        Bike { efficiency, load, tyre, ..Bike::new(mass, drivetrain, wheel) }
    })
}

fn airs() -> impl Strategy<Value = Air> {
    let parts = any_of!(DragArea, AirDensity, Headwind, FootDrag);
    (parts, any::<bool>()).prop_map(|((drag_area, density, headwind, foot_drag), windy)| {
        let headwind = if windy { headwind } else { Headwind::NONE };
        Air { drag_area, density, headwind, foot_drag }
    })
}

pub(crate) fn grounds() -> impl Strategy<Value = Ground> {
    any_of!(RollingCoefficient, FootFactor, SlopeShare, Friction, MountedWidth).prop_map(
        |(rolling, foot, slope_share, friction, tyre)| Ground {
            rolling,
            width: WidthFactor::on_soft_ground(tyre),
            foot,
            slope_share,
            friction,
        },
    )
}

fn limits() -> impl Strategy<Value = RidingLimits> {
    let seat = any_of!(BalanceSpeed, Wheelbase, MassHeight, RearShare, PeakFactor);
    let legs = any_of!(PeakPower, Cadence, StrengthShare);
    let on = (any::<bool>(), any::<bool>(), any::<bool>());
    (seat, legs, on).prop_map(
        |((slowest, wheelbase, height, rear, peak), (strength, optimal, usable), on)| RidingLimits {
            balance: on.0.then_some(slowest),
            grip: on.1.then_some(Stance { wheelbase, height, rear, peak }),
            force: on.2.then_some(LegStrength { peak: strength, optimal, usable }),
        },
    )
}

pub(crate) fn questions() -> impl Strategy<Value = RideOrRun> {
    let parts = (riders(), bikes(), airs(), limits());
    parts.prop_filter_map("power below standing", |(rider, bike, air, limits)| {
        RideOrRun::new(rider, bike, air, limits).ok()
    })
}

pub(crate) fn climbs() -> impl Strategy<Value = Climb> {
    within(Climb::LIMITS).prop_map(|percent| Climb::new(percent).unwrap())
}

/// What many riders would type.
pub(crate) fn ordinary() -> (Rider, Bike) {
    let rider =
        Rider::new(BodyMass::new(64.0).unwrap(), KitMass::new(2.0).unwrap(), Power::new(230.0).unwrap());
    let drivetrain = Drivetrain {
        chainset: Chainset::new([40]).unwrap(),
        cassette: Cassette::new([11, 15, 20, 32]).unwrap(),
    };
    (rider, Bike::new(BikeMass::new(9.0).unwrap(), drivetrain, Circumference::new(2100.0).unwrap()))
}

fn every_half_per_cent() -> Vec<Climb> {
    (0..=90).map(|k| Climb::new(f64::from(k) * 0.5).unwrap()).collect()
}

fn speed(m_per_s: f64) -> Speed {
    Speed::from_km_per_h(m_per_s * 3.6).unwrap()
}

fn is_sound(answer: &Answer) -> bool {
    let numbers = [
        answer.ride.m_per_s(),
        answer.foot.m_per_s(),
        answer.run.m_per_s(),
        answer.riding.cadence.rpm(),
        answer.ratio.low,
        answer.ratio.reference,
        answer.ratio.high,
        answer.riding.held.map_or(1.0, Speed::m_per_s),
    ];
    let ordered = answer.ratio.low <= answer.ratio.reference && answer.ratio.reference <= answer.ratio.high;
    ordered && numbers.iter().all(|number| number.is_finite() && *number > 0.0)
}

proptest! {
    #[test]
    fn no_input_gives_nonsense(question in questions(), ground in grounds()) {
        for answer in question.answers(&ground, &every_half_per_cent()) {
            prop_assert!(is_sound(&answer), "{answer:?}");
            prop_assert_eq!(answer.verdict == Verdict::FootForced, answer.limits.any());
            prop_assert!(answer.foot >= answer.run);
        }
    }

    #[test]
    fn gait_and_limits_change_at_most_once(question in questions(), ground in grounds()) {
        let answers = question.answers(&ground, &every_half_per_cent());
        for pair in answers.windows(2) {
            let (flatter, steeper) = (&pair[0], &pair[1]);
            prop_assert!(!(flatter.gait == Gait::Walk && steeper.gait == Gait::Run));
            let after: Vec<Reason> = steeper.limits.reasons().collect();
            prop_assert!(flatter.limits.reasons().all(|reason| after.contains(&reason)));
            prop_assert!(steeper.ride <= flatter.ride && steeper.foot <= flatter.foot);
        }
    }

    #[test]
    fn speed_on_foot_has_no_step(question in questions(), ground in grounds(), percent in 0.0..=44.9) {
        let at = |percent: f64| question.answer(&ground, Climb::new(percent).unwrap()).foot.m_per_s();
        let lost = 1.0 - at(percent + 1e-4) / at(percent);
        // A ten-thousandth of a per cent steeper costs less than a ten-thousandth of the speed.
        prop_assert!((0.0..1e-4).contains(&lost), "{lost}");
    }

    #[test]
    fn the_gaits_meet_where_they_change(
        air in airs(), ground in grounds(), foot in 1.0..1.6, watts_per_kg in 5.0..8.0
    ) {
        let (rider, bike) = ordinary();
        let power = Power::new(watts_per_kg * rider.body.kg()).unwrap();
        let question = {
            let rider = Rider { power, ..rider };
            RideOrRun::new(rider, bike, air, RidingLimits::all(&rider)).unwrap()
        };
        let ground = Ground { foot: FootFactor::new(foot).unwrap(), ..ground };
        let at = |percent: f64| question.answer(&ground, Climb::new(percent).unwrap());
        prop_assume!(at(0.0).gait == Gait::Run && at(45.0).gait == Gait::Walk);
        let (mut run, mut walk) = (0.0, 45.0);
        for _ in 0..45 {
            let middle = 0.5 * (run + walk);
            match at(middle).gait {
                Gait::Run => run = middle,
                Gait::Walk => walk = middle,
            }
        }
        prop_assert!((at(run).foot.m_per_s() - at(walk).foot.m_per_s()).abs() < 1e-9);
    }

    #[test]
    fn more_resistance_is_slower(
        question in questions(), ground in grounds(), climb in climbs(), more in 1.01_f64..2.0
    ) {
        let load = question.load(&ground);
        let on = |load: RoadLoad| load.steady_speed(Power::new(200.0).unwrap(), climb.into());
        let speed = on(load);
        prop_assume!(speed.m_per_s() < 40.0);
        let heavier = TotalMass::new((load.mass.kg() * more).min(TotalMass::LIMITS.max)).unwrap();
        let heavier = on(RoadLoad { mass: heavier, ..load });
        prop_assert!(heavier < speed);
        let rolling = load.rolling.value() * more;
        if let Ok(rolling) = RollingCoefficient::new(rolling) {
            let rougher = on(RoadLoad { rolling, ..load });
            prop_assert!(rougher < speed);
        }
    }

    #[test]
    fn a_burden_is_slower_on_foot(
        bike in bikes(), air in airs(), ground in grounds(), climb in climbs(), add in 0.05..0.5
    ) {
        let (rider, _) = ordinary();
        let foot = |bike: Bike, ground: &Ground| {
            RideOrRun::new(rider, bike, air, RidingLimits::GEAR_ONLY).unwrap().answer(ground, climb).foot
        };
        let base = foot(bike, &ground);
        if let Ok(load) = LoadFactor::new(bike.load.value() + add) {
            let loaded = foot(Bike { load, ..bike }, &ground);
            prop_assert!(loaded < base);
        }
        if let Ok(softer) = FootFactor::new(ground.foot.value() + add) {
            let sunk = foot(bike, &Ground { foot: softer, ..ground });
            prop_assert!(sunk < base);
        }
    }

    #[test]
    fn lower_gears_and_lower_cadences_go_steeper(
        rider in riders(), bike in bikes(), air in airs(), ground in grounds(), more in 1_u16..=8, slower in 1.0_f64..20.0
    ) {
        let gear = |rider: Rider, bike: Bike| {
            let question = RideOrRun::new(rider, bike, air, RidingLimits::GEAR_ONLY).ok()?;
            Some(question.crossover(&ground).gear.map_or(f64::INFINITY, Slope::percent))
        };
        let base = gear(rider, bike);
        prop_assume!(base.is_some());
        let cassette = Cassette::new([bike.drivetrain.cassette.largest().teeth() + more]).unwrap();
        let lower = Bike { drivetrain: Drivetrain { cassette, ..bike.drivetrain }, ..bike };
        prop_assert!(gear(rider, lower) >= base);
        let cadence = (rider.lowest_cadence.rpm() - slower).max(Cadence::LIMITS.min);
        let grinding = Rider { lowest_cadence: Cadence::new(cadence).unwrap(), ..rider };
        prop_assert!(gear(grinding, bike) >= base);
    }

    #[test]
    fn a_lowest_gear_that_turns_too_slowly_forces_the_rider_off(
        question in questions(), ground in grounds(), climb in climbs()
    ) {
        let answer = question.answer(&ground, climb);
        let lowest = question.crossover(&ground).lowest_gear_speed;
        prop_assert_eq!(answer.limits.gear, answer.ride < lowest);
        if answer.ride < lowest {
            prop_assert_eq!(answer.verdict, Verdict::FootForced);
            prop_assert!(answer.riding.held.is_none());
        }
    }

    #[test]
    fn the_flip_is_the_first_end_of_riding(question in questions(), ground in grounds()) {
        let flip = question.crossover(&ground).flip;
        let first = flip.map_or(f64::INFINITY, |flip| flip.gradient.percent());
        let limited = flip.is_some_and(|flip| flip.reason != Reason::Energy);
        for answer in question.answers(&ground, &every_half_per_cent()) {
            let percent = answer.gradient.percent();
            let ended = answer.limits.any() || answer.ratio.reference >= 1.0;
            prop_assert!(percent > first - 1e-6 || !ended, "{answer:?} before {flip:?}");
            prop_assert!(percent < first + 1e-6 || !limited || answer.limits.any(), "{answer:?} after {flip:?}");
        }
    }

    #[test]
    fn marks_are_in_order_and_on_the_axis(question in questions(), ground in grounds()) {
        let marks = question.crossover(&ground).marks;
        prop_assert!(marks.windows(2).all(|pair| pair[0].gradient <= pair[1].gradient));
        prop_assert!(marks.iter().all(|mark| (0.0..=45.0).contains(&mark.gradient.percent())));
    }

    #[test]
    fn the_map_is_made_of_answers(
        rider in riders(), a in bikes(), b in bikes(), air in airs(), limits in limits(), ground in grounds(),
        climb in climbs()
    ) {
        let same_but_gears = Bike { drivetrain: b.drivetrain, wheel: b.wheel, ..a };
        let asked = [a, same_but_gears, b].into_iter();
        let questions: Vec<RideOrRun> =
            asked.filter_map(|bike| RideOrRun::new(rider, bike, air, limits).ok()).collect();
        let maps = verdict_map(&questions, &[ground], &[climb]);
        prop_assert_eq!(maps.len(), questions.len());
        for (question, map) in questions.iter().zip(&maps) {
            let answer = question.answer(&ground, climb);
            prop_assert_eq!(map.len(), 1);
            prop_assert_eq!(map[0].verdict, answer.verdict);
            prop_assert_eq!(map[0].ratio, answer.ratio);
        }
    }

    #[test]
    fn a_planted_speed_comes_back(
        question in questions(), ground in grounds(), percent in within(Gradient::LIMITS), v in 0.3..15.0,
        wheels in any::<bool>()
    ) {
        let load = question.load(&ground);
        let load = if wheels { load.with_wheels() } else { load };
        let gradient = Gradient::new(percent).unwrap();
        let Ok(power) = Power::new(load.power(speed(v), gradient).at_crank().watts()) else { return Ok(()) };
        prop_assert!((load.steady_speed(power, gradient).m_per_s() - v).abs() < 1e-9 * v);
        let slope = load.gradient_for(power, speed(v)).unwrap();
        prop_assert!((slope.percent() - percent).abs() < 1e-6);
    }

    #[test]
    fn ways_add_up(
        question in questions(), ground in grounds(), climb in climbs(), first in 0.01..8.0, second in 0.01..8.0
    ) {
        let load = question.load(&ground);
        let mass = load.effective_mass(WheelInertia::USUAL, Circumference::new(2100.0).unwrap());
        let resistance = load.resistance(climb.into());
        let power = Power::new(180.0).unwrap();
        let held = resistance.steady_speed(power).m_per_s();
        prop_assume!(held < 20.0);
        let slowest = held + 0.01;
        let way = |from: f64, to: f64| {
            resistance.slowing(power, mass, speed(from)).down_to(speed(to)).map(|(way, _)| way.m())
        };
        let (middle, fastest) = (slowest + first, slowest + first + second);
        let parts = way(fastest, middle).unwrap() + way(middle, slowest).unwrap();
        // A wind from behind at the rider's speed puts a kink into the air force, which costs the quadrature digits.
        prop_assert!((way(fastest, slowest).unwrap() - parts).abs() < 1e-5 * parts.max(1.0));
        prop_assert!(way(fastest, held * 0.99).is_none());
    }

    #[test]
    fn a_carried_climb_takes_the_time_of_its_speeds(
        question in questions(), ground in grounds(), climb in climbs(), entry in 1.0..15.0, part in 0.01..=1.0
    ) {
        let carry = question.carry(&ground, climb, speed(entry), WheelInertia::USUAL);
        let Some(reach) = carry.reach else {
            let held = question.answer(&ground, climb).ride.m_per_s();
            let length = ClimbLength::new(part * 100.0).unwrap_or(ClimbLength::new(1.0).unwrap());
            let steady = length.m() / held;
            let time = carry.over(length);
            prop_assume!(held > carry.exit.m_per_s() * 1.001);
            let time = time.unwrap().s();
            prop_assert!(time <= steady * (1.0 + 1e-6) && time >= steady.min(length.m() / entry) * (1.0 - 1e-6));
            return Ok(());
        };
        prop_assert!(reach.height <= reach.way);
        if let Ok(length) = ClimbLength::new(part * reach.way.m()) {
            let time = carry.over(length).unwrap().s();
            let bounds = length.m() / entry..=length.m() / carry.exit.m_per_s();
            prop_assert!(bounds.contains(&(time * (1.0 + 1e-9))) || bounds.contains(&time), "{time} in {bounds:?}");
            prop_assert!(time <= reach.time.s() * (1.0 + 1e-9));
        }
        if let Ok(longer) = ClimbLength::new(1.001 * reach.way.m() + 1.0) {
            prop_assert!(carry.over(longer).is_none());
        }
    }

    #[test]
    fn a_planted_time_on_a_wall_without_power_comes_back(from in 4.0..12.0, slower in 0.1..0.9) {
        // With next to no power and no air the speed falls evenly, as that of a stone thrown up.
        let load = RoadLoad {
            drag_area: DragArea::new(0.0).unwrap(),
            ..RoadLoad::new(TotalMass::new(200.0).unwrap(), RollingCoefficient::new(0.4).unwrap(), &Air::STILL,
                DrivetrainEfficiency::new(0.8).unwrap())
        };
        let resistance = load.resistance(Gradient::new(45.0).unwrap());
        let mass = load.effective_mass(WheelInertia::new(0.0).unwrap(), Circumference::new(2100.0).unwrap());
        let (power, to) = (Power::new(20.0).unwrap(), from * (1.0 - slower));
        let (way, time) = resistance.slowing(power, mass, speed(from)).down_to(speed(to)).unwrap();
        let mean = way.m() / time.s();
        prop_assert!((mean - 0.5 * (from + to)).abs() < 0.01 * mean, "{mean}");
        let braked = resistance.force_n(speed(0.0)) / mass.kg() * time.s();
        prop_assert!((braked - (from - to)).abs() < 0.05 * (from - to));
        let length = ClimbLength::new(way.m().max(1.0)).unwrap();
        if let Some(again) = resistance.slowing(power, mass, speed(from)).over(length, speed(to)) {
            prop_assert!((again.s() - time.s()).abs() < 1e-6 * time.s());
        }
    }

    #[test]
    fn forcing_asks_no_more_than_legs_and_reserve_give(
        question in questions(), ground in grounds(), climb in climbs(), metres in 1.0..300.0,
        (power, reserve, peak, share) in any_of!(Power, WorkReserve, PeakPower, ReserveShare)
    ) {
        let Ok(effort) = CriticalPower::new(power, reserve, peak) else { return Ok(()) };
        let over = question.over_gear(&ground, climb, &effort, share);
        prop_assert!(over.speed >= question.crossover(&ground).lowest_gear_speed);
        let length = ClimbLength::new(metres).unwrap();
        if let Ok(time) = over.over(length) {
            let seconds = gear_math::rider::EffortTime::new(time.s().max(1.0)).unwrap();
            prop_assert!(over.power.watts() <= effort.power(seconds).watts().max(power.watts()));
            prop_assert!(over.lasts.is_none_or(|(_, far)| far.m() >= metres * (1.0 - 1e-9)));
        }
    }

    #[test]
    fn forcing_asks_no_more_than_the_legs_peak(
        (rider, bike) in (riders(), bikes()), ground in grounds(), climb in climbs(), metres in 1.0..300.0,
        (peak, optimal) in any_of!(PeakPower, Cadence)
    ) {
        let legs = LegStrength { peak, optimal, usable: StrengthShare::MINUTES };
        let limits = RidingLimits { force: Some(legs), ..RidingLimits::GEAR_ONLY };
        let Ok(effort) = CriticalPower::new(rider.power, WorkReserve::USUAL, peak) else { return Ok(()) };
        let Ok(question) = RideOrRun::new(rider, bike, Air::STILL, limits) else { return Ok(()) };
        let over = question.over_gear(&ground, climb, &effort, ReserveShare::ALL);
        let Ok(cadence) = Cadence::new(over.cadence.rpm()) else { return Ok(()) };
        if over.over(ClimbLength::new(metres).unwrap()).is_ok() {
            prop_assert!(over.power <= legs.power(cadence), "{over:?}");
        }
    }

    /// Below 34 rpm, where half of the estimated peak power no longer gives the power, strength and not cadence ends
    /// riding, and what is asked of the legs grows with the speed.
    #[test]
    fn more_power_never_ends_riding_earlier(
        rider in riders(), bike in bikes(), ground in grounds(), cadence in 35.0..100.0, more in 1.01_f64..4.0
    ) {
        let rider = Rider { lowest_cadence: Cadence::new(cadence).unwrap(), ..rider };
        let limited = |rider: Rider| {
            let question = RideOrRun::new(rider, bike, Air::STILL, RidingLimits::all(&rider)).ok()?;
            let marks = question.crossover(&ground).marks.into_iter();
            let ends = marks.filter_map(|mark| match mark.kind {
                MarkKind::Ends(Reason::Energy) => None,
                MarkKind::Ends(_) => Some(mark.gradient.percent()),
                _ => None,
            });
            Some(ends.fold(f64::INFINITY, f64::min))
        };
        let Ok(power) = Power::new(more * rider.power.watts()) else { return Ok(()) };
        if let (Some(before), Some(after)) = (limited(rider), limited(Rider { power, ..rider })) {
            prop_assert!(after >= before - 1e-9, "{after} after {before}");
        }
    }

    #[test]
    fn legs_that_give_the_power_at_no_cadence_leave_every_number_finite(
        rider in riders(), bike in bikes(), ground in grounds(), share in 0.05_f64..0.99
    ) {
        let peak = PeakPower::new((rider.power.watts() * share).max(200.0)).unwrap();
        let limits = RidingLimits {
            force: Some(LegStrength { peak, ..LegStrength::ENDURING }),
            ..RidingLimits::GEAR_ONLY
        };
        let Ok(question) = RideOrRun::new(rider, bike, Air::STILL, limits) else { return Ok(()) };
        let flip = question.crossover(&ground).flip;
        prop_assert!(flip.is_none_or(|flip| flip.speed.m_per_s().is_finite()), "{flip:?}");
    }

    #[test]
    fn both_ways_take_as_long_at_the_break_even_length(
        ride in 0.2..10.0, faster in 0.05..5.0, lost in 0.1..=30.0
    ) {
        let (ride, foot) = (speed(ride), speed(ride + faster));
        let length = break_even_length(ride, foot, SecondsLost::new(lost).unwrap()).unwrap().m();
        let difference = length / ride.m_per_s() - length / foot.m_per_s() - lost;
        prop_assert!(difference.abs() < 1e-9 * length);
        prop_assert!(break_even_length(foot, ride, SecondsLost::PRACTISED).is_none());
    }

    #[test]
    fn a_climb_is_judged_by_its_times(
        question in questions(), ground in grounds(), climb in climbs(), metres in 1.0..=5000.0, lost in 0.0..=30.0
    ) {
        let (length, lost) = (ClimbLength::new(metres).unwrap(), SecondsLost::new(lost).unwrap());
        let plan = question.climb(&ground, climb, length, lost);
        prop_assert!(plan.foot_at_best <= plan.foot && plan.foot <= plan.foot_at_worst);
        prop_assert_eq!(plan.ride.is_none(), plan.verdict == Verdict::FootForced);
        if let (Some(ride), Some(even)) = (plan.ride, plan.break_even) {
            let (longer, sooner) = (metres / even.m() - 1.0, ride.s() / plan.foot.s() - 1.0);
            prop_assert!(longer.abs() < 1e-6 || sooner.abs() < 1e-6 || (longer > 0.0) == (sooner > 0.0));
        }
    }

    #[test]
    fn the_tornado_is_complete_and_sorted(question in questions(), ground in grounds()) {
        let bars = question.tornado(&ground, Watched::Flip);
        prop_assert!(bars.len() >= Uncertain::ALL.len() - 2);
        prop_assert!(bars.windows(2).all(|pair| pair[0].swing_points >= pair[1].swing_points));
        prop_assert!(bars.iter().all(|bar| bar.values.0 <= bar.values.1 && bar.swing_points.is_finite()));
    }

    #[test]
    fn legs_give_the_power_they_are_asked_for(
        (peak, optimal, usable) in any_of!(PeakPower, Cadence, StrengthShare), power in within(Power::LIMITS)
    ) {
        let legs = LegStrength { peak, optimal, usable };
        let power = Power::new(power).unwrap();
        if let Some((slow, fast)) = legs.cadences_for(power) {
            for cadence in [slow, fast].into_iter().filter_map(|rpm| Cadence::new(rpm).ok()) {
                let given = usable.share() * legs.power(cadence).watts();
                prop_assert!((given - power.watts()).abs() < 1e-6 * power.watts());
            }
        } else {
            prop_assert!(usable.share() * legs.power(optimal).watts() < power.watts());
        }
    }

    #[test]
    fn more_reserve_lasts_longer(
        (power, reserve, peak) in any_of!(Power, WorkReserve, PeakPower), low in 0.05..0.4, add in 0.1..0.6
    ) {
        let Ok(effort) = CriticalPower::new(power, reserve, peak) else { return Ok(()) };
        let (rider, bike) = ordinary();
        let question = RideOrRun::new(rider, bike, Air::STILL, RidingLimits::all(&rider)).unwrap();
        let lasts = |share: f64| {
            let (ground, climb) = (Surface::Mud.ground(), Climb::new(20.0).unwrap());
            question.over_gear(&ground, climb, &effort, ReserveShare::new(share).unwrap()).lasts
        };
        match (lasts(low), lasts(low + add)) {
            (Some((short, near)), Some((long, far))) => prop_assert!(short < long && near < far),
            (shorter, longer) => prop_assert_eq!(shorter, longer),
        }
    }
}

proptest! {
    /// Wide tyres are quicker where wheels sink in, nowhere else, and how much is in the band.
    #[test]
    fn width_counts_on_soft_ground_alone((rider, bike) in (riders(), bikes()), percent in 0.0..20.0, (a, b) in any_of!(MountedWidth, MountedWidth)) {
        let Ok(question) = RideOrRun::new(rider, bike, Air::STILL, RidingLimits::GEAR_ONLY) else { return Ok(()) };
        let climb = Climb::new(percent).unwrap();
        let (narrow, wide) = (a.mm().min(b.mm()), a.mm().max(b.mm()));
        let [narrow, wide] = [narrow, wide].map(|mm| MountedWidth::new(mm).unwrap());
        for surface in Surface::ALL {
            let ask = |tyre| question.answer(&surface.ground_under(tyre), climb);
            prop_assert_eq!(&ask(MountedWidth::CROSS), &question.answer(&surface.ground(), climb));
            if surface.is_soft() {
                prop_assert!(ask(wide).ride >= ask(narrow).ride);
            } else {
                prop_assert_eq!(ask(wide), ask(narrow));
            }
            let known = Ground { width: WidthFactor::NONE, ..surface.ground_under(wide) };
            let (sure, doubtful) = (question.answer(&known, climb).ratio, ask(wide).ratio);
            prop_assert!(doubtful.low <= sure.low && sure.high <= doubtful.high);
            prop_assert!((doubtful.reference - sure.reference).abs() < 1e-12);
        }
    }
}

/// Nobody is judged on a slope that was not measured.
#[test]
fn downhill_and_the_steepest_ground_are_refused() {
    for percent in [-0.1, 45.1, f64::NAN, f64::INFINITY] {
        assert!(Climb::new(percent).is_err());
    }
    assert_eq!(Climb::new(-5.0).unwrap_err().to_string(), "slope must be 0 to 45 %");
}

/// A big rider at a stroll would have nothing left to move on foot with.
#[test]
fn power_below_standing_is_refused() {
    let (rider, bike) = ordinary();
    let resting = Rider { body: BodyMass::new(120.0).unwrap(), power: Power::new(40.0).unwrap(), ..rider };
    assert!(RideOrRun::new(resting, bike, Air::STILL, RidingLimits::all(&resting)).is_err());
}

/// A tenth more power from the same legs could be more than they ever give.
#[test]
fn more_power_moves_the_end_of_riding_up_also_for_the_strong() {
    let (rider, bike) = ordinary();
    let rider = Rider { lowest_cadence: Cadence::new(85.0).unwrap(), ..rider };
    let power = Power::new(460.0).unwrap();
    for peak in [PeakPower::estimated(power, rider.body), PeakPower::new(1000.0).unwrap()] {
        let limits = RidingLimits {
            force: Some(LegStrength { peak, ..LegStrength::ENDURING }),
            ..RidingLimits::GEAR_ONLY
        };
        let question = RideOrRun::new(Rider { power, ..rider }, bike, Air::STILL, limits).unwrap();
        let bars = question.tornado(&Surface::FirmGrass.ground(), Watched::Flip);
        let bar = bars.iter().find(|bar| bar.input == Uncertain::Power).unwrap();
        assert!(bar.at_low.unwrap() < bar.at_high.unwrap(), "{bar:?}");
    }
}
