//! Verdicts on a slope and on a climb, each held against the speeds and times beside it.
#![expect(clippy::unwrap_used, reason = "planted values lie within their limits")]

use crate::ride_or_run_properties::{climbs, grounds, ordinary, questions};
use gear_math::rider::{
    Air, Answer, BalanceSpeed, Climb, ClimbLength, FootDrag, Gaits, Headwind, LegStrength, MarkKind, Reason,
    RidingLimits, SecondsLost, Slope, TornadoBar, Uncertain, Verdict, Watched, WheelInertia,
};
use gear_math::{Cadence, Ground, Power, RideOrRun, Rider, Speed, Surface};
use proptest::prelude::*;

fn speed(m_per_s: f64) -> Speed {
    Speed::from_km_per_h(m_per_s * 3.6).unwrap()
}

fn climb(percent: f64) -> Climb {
    Climb::new(percent).unwrap()
}

/// Foot over ride with its edges, on the speed that is kept up in the gear.
fn edges(answer: &Answer) -> [f64; 2] {
    let slowed = answer.riding.held.map_or(1.0, |held| answer.ride.m_per_s() / held.m_per_s());
    [answer.ratio.low * slowed, answer.ratio.high * slowed]
}

fn by_edges(answer: &Answer) -> Verdict {
    match edges(answer) {
        _ if answer.limits.any() => Verdict::FootForced,
        [_, high] if high < 1.0 => Verdict::Ride,
        [low, _] if low > 1.0 => Verdict::Foot,
        _ => Verdict::TooClose,
    }
}

proptest! {
    #[test]
    fn a_verdict_goes_by_the_edges_of_its_band(question in questions(), ground in grounds(), climb in climbs()) {
        let answer = question.answer(&ground, climb);
        prop_assert_eq!(answer.verdict, by_edges(&answer));
        let ratio = answer.foot.m_per_s() / answer.ride.m_per_s();
        prop_assert!((answer.ratio.reference - ratio).abs() < 1e-9 * ratio);
    }

    /// The band is one of the ways of moving; what spinning out costs is known and moves both edges alike.
    #[test]
    fn spinning_out_leaves_a_band_as_wide(question in questions(), ground in grounds(), climb in climbs()) {
        let answer = question.answer(&ground, climb);
        let [low, high] = edges(&answer);
        prop_assert!((high / low - answer.ratio.high / answer.ratio.low).abs() < 1e-9 * high / low);
    }

    #[test]
    fn a_climb_is_judged_by_the_times_told_with_it(
        question in questions(), ground in grounds(), gradient in climbs(), metres in 1.0..2000.0_f64, lost in 0.0..30.0_f64,
    ) {
        let (length, lost) = (ClimbLength::new(metres).unwrap(), SecondsLost::new(lost).unwrap());
        let plan = question.climb(&ground, gradient, length, lost);
        let answer = plan.answer;
        let on_foot = metres / answer.foot.m_per_s() + lost.s();
        prop_assert!((plan.foot.s() - on_foot).abs() < 1e-6 * on_foot);
        let at_best = metres / (answer.ratio.high * answer.ride.m_per_s()) + lost.s();
        prop_assert!((plan.foot_at_best.s() - at_best).abs() < 1e-6 * at_best);
        let at_worst = metres / (answer.ratio.low * answer.ride.m_per_s()) + lost.s();
        prop_assert!((plan.foot_at_worst.s() - at_worst).abs() < 1e-6 * at_worst);
        let ride = answer.riding.held.filter(|_| !answer.limits.any()).map(|held| metres / held.m_per_s());
        prop_assert_eq!(plan.ride.is_some(), ride.is_some());
        let Some(ride) = ride else {
            prop_assert_eq!(plan.verdict, Verdict::FootForced);
            return Ok(());
        };
        prop_assert!((plan.ride.unwrap().s() - ride).abs() < 1e-9 * ride);
        let verdict = if plan.foot_at_best.s() > ride {
            Verdict::Ride
        } else if plan.foot_at_worst.s() < ride {
            Verdict::Foot
        } else {
            Verdict::TooClose
        };
        prop_assert_eq!(plan.verdict, verdict);
    }

    /// Of the gears that can be turned the one nearest to 80 rpm; where all spin too fast, the tallest.
    #[test]
    fn the_gear_is_the_one_nearest_to_the_usual_cadence(
        percent in 0.0..25.0_f64, watts in 100.0..600.0_f64, fastest in 100.0..140.0_f64, slowest in 30.0..70.0_f64,
    ) {
        let (rider, bike) = ordinary();
        let rider = Rider {
            power: Power::new(watts).unwrap(),
            lowest_cadence: Cadence::new(slowest).unwrap(),
            highest_cadence: Cadence::new(fastest).unwrap(),
            ..rider
        };
        let Ok(question) = RideOrRun::new(rider, bike, Air::STILL, RidingLimits::GEAR_ONLY) else { return Ok(()) };
        let answer = question.answer(&Surface::FirmGrass.ground(), climb(percent));
        let rpm = |gear: gear_math::Gear| answer.ride.m_per_s() * 60.0 / gear.development(bike.wheel).m();
        let turnable: Vec<_> = bike.drivetrain.gears().filter(|&gear| rpm(gear) >= slowest).collect();
        prop_assert_eq!(answer.riding.held.is_some(), !turnable.is_empty());
        let by_rpm = |a: &gear_math::Gear, b: &gear_math::Gear| rpm(*a).total_cmp(&rpm(*b));
        let off = |gear: gear_math::Gear| (rpm(gear) - 80.0).abs();
        let best = if let Some(tallest) = turnable.iter().copied().min_by(by_rpm).filter(|&gear| rpm(gear) > fastest) {
            tallest
        } else {
            let within = turnable.iter().copied().filter(|&gear| rpm(gear) <= fastest);
            let Some(best) = within.min_by(|a, b| off(*a).total_cmp(&off(*b))) else { return Ok(()) };
            best
        };
        prop_assert_eq!(answer.riding.gear, best);
        let kept_up = answer.ride.m_per_s().min(fastest / 60.0 * best.development(bike.wheel).m());
        prop_assert!((answer.riding.held.unwrap().m_per_s() - kept_up).abs() < 1e-9);
    }

    /// Power on foot is (C + D (v + w)²) v. Speeds without air and in still air give C and D of this rider over the power;
    /// the wind must then fit.
    #[test]
    fn wind_on_foot_is_met_with_the_square_of_the_air_speed(
        body in 50.0..90.0_f64, percent in 0.0..20.0_f64, wind in -6.0..6.0_f64,
    ) {
        let (rider, bike) = ordinary();
        let rider = Rider { body: gear_math::rider::BodyMass::new(body).unwrap(), gaits: Gaits::RunOnly, ..rider };
        let at = |drag, wind| {
            let air = Air { foot_drag: FootDrag::new(drag).unwrap(), headwind: Headwind::new(wind).unwrap(), ..Air::STILL };
            let question = RideOrRun::new(rider, bike, air, RidingLimits::GEAR_ONLY).unwrap();
            question.foot_speed(&Surface::Tarmac.ground(), climb(percent)).m_per_s()
        };
        let (bare, still, windy) = (at(0.0, 0.0), at(0.01, 0.0), at(0.01, wind));
        let drag = (1.0 / still - 1.0 / bare) / (still * still);
        let against = windy + wind;
        prop_assert!((1.0 / windy - 1.0 / bare - drag * against * against.abs()).abs() < 1e-7);
        prop_assert_eq!(wind > 0.0, windy < still);
    }

    #[test]
    fn a_speed_runs_out_where_full_power_holds_just_that(
        question in questions(), ground in grounds(), m_per_s in 0.5..9.0_f64,
    ) {
        let rides = |percent| question.answer(&ground, climb(percent)).ride.m_per_s();
        match question.runs_out_at(&ground, speed(m_per_s)) {
            Some(slope) if slope.percent() > 0.0 => prop_assert!((rides(slope.percent()) - m_per_s).abs() < 1e-4),
            Some(_) => prop_assert!(rides(0.0) <= m_per_s + 1e-9),
            None => prop_assert!(rides(45.0) >= m_per_s - 1e-9),
        }
    }

    #[test]
    fn every_place_worth_a_mark_has_one(question in questions(), ground in grounds()) {
        let crossover = question.crossover(&ground);
        let marked = |kind| crossover.marks.iter().find(|mark| mark.kind == kind).map(|mark| mark.gradient);
        prop_assert_eq!(marked(MarkKind::Ends(Reason::Gear)), crossover.gear);
        prop_assert_eq!(marked(MarkKind::Ends(Reason::Energy)), crossover.energy);
        prop_assert_eq!(marked(MarkKind::TooCloseFrom), crossover.too_close_from);
        prop_assert_eq!(marked(MarkKind::FootFrom), crossover.foot_from);
        prop_assert!(crossover.marks.is_sorted_by(|a, b| a.gradient <= b.gradient));
        for mark in &crossover.marks {
            let rides = question.answer(&ground, climb(mark.gradient.percent().clamp(0.0, 45.0))).ride;
            prop_assert!((mark.speed.m_per_s() - rides.m_per_s()).abs() < 1e-6);
        }
    }

    /// A limit of speed ends riding at that speed, also where it ends it on the level.
    #[test]
    fn riding_ends_at_the_speed_of_what_ends_it(question in questions(), ground in grounds()) {
        let crossover = question.crossover(&ground);
        let Some(flip) = crossover.flip else { return Ok(()) };
        if flip.reason == Reason::Gear {
            prop_assert!((flip.speed.m_per_s() - crossover.lowest_gear_speed.m_per_s()).abs() < 1e-9);
        }
    }
}

#[test]
fn with_more_power_riding_ends_on_a_steeper_slope() {
    let flip = |watts: f64| {
        let (rider, bike) = ordinary();
        let rider = Rider { power: Power::new(watts).unwrap(), ..rider };
        let question = RideOrRun::new(rider, bike, Air::STILL, RidingLimits::GEAR_ONLY).unwrap();
        question.crossover(&Surface::FirmGrass.ground()).flip.unwrap()
    };
    let (weak, strong) = (flip(200.0), flip(300.0));
    assert!(strong.gradient.percent() - weak.gradient.percent() > 1.0);
}

/// Riding ends at the highest of the speeds that gear, strength and balance ask for.
#[test]
fn a_carried_speed_ends_at_the_highest_of_the_limits() {
    let ground = Surface::FirmGrass.ground();
    let exit = |lowest: f64, balance: Option<f64>, force: Option<LegStrength>| {
        let (rider, bike) = ordinary();
        let rider = Rider { lowest_cadence: Cadence::new(lowest).unwrap(), ..rider };
        let balance = balance.map(|slowest| BalanceSpeed::new(slowest).unwrap());
        let limits = RidingLimits { balance, force, ..RidingLimits::GEAR_ONLY };
        let question = RideOrRun::new(rider, bike, Air::STILL, limits).unwrap();
        question.carry(&ground, climb(20.0), speed(6.0), WheelInertia::USUAL).exit.m_per_s()
    };
    // 40 × 32 on 2.1 m: 2.625 m a turn.
    assert!((exit(60.0, None, None) - 2.625).abs() < 1e-9);
    assert!((exit(60.0, Some(1.5), None) - 2.625).abs() < 1e-9);
    assert!((exit(20.0, Some(1.5), None) - 1.5).abs() < 1e-9);
    let weak =
        LegStrength { peak: gear_math::rider::PeakPower::new(500.0).unwrap(), ..LegStrength::ENDURING };
    let (slowest, _) = weak.cadences_for(ordinary().0.power).unwrap();
    assert!((exit(20.0, None, Some(weak)) - 2.625 * slowest / 60.0).abs() < 1e-9);
}

/// A kicker shorter than this is ridden on the speed brought to it (estimate).
#[test]
fn a_ramp_is_shorter_than_ten_metres() {
    let is_ramp = |metres| ClimbLength::new(metres).unwrap().is_ramp();
    assert_eq!([1.0, 9.99, 10.0, 200.0].map(is_ramp), [true, true, false, false]);
}

/// Time over a climb by small steps of m dv/dt = η P/v − F(v).
fn stepped(
    question: &RideOrRun,
    ground: &Ground,
    gradient: Climb,
    entry: f64,
    length: f64,
    watts: f64,
) -> f64 {
    const STEP_S: f64 = 1e-3;
    let (rider, bike) = ordinary();
    let mass = gear_math::rider::TotalMass::of(rider.body, rider.kit, bike.mass).kg()
        + WheelInertia::USUAL.kg_m2() * (std::f64::consts::TAU / (bike.wheel.mm() / 1000.0)).powi(2);
    let resistance = question.resistance(ground, gradient);
    let (mut v, mut at, mut time) = (entry, 0.0, 0.0);
    while at < length {
        let drive = bike.efficiency.share() * watts / v;
        let after = v + STEP_S * (drive - resistance.force_n(speed(v))) / mass;
        at += STEP_S * v.midpoint(after);
        (v, time) = (after, time + STEP_S);
    }
    time
}

#[test]
fn a_carried_speed_takes_the_time_that_small_steps_take() {
    let (rider, bike) = ordinary();
    let rider = Rider { lowest_cadence: Cadence::new(20.0).unwrap(), ..rider };
    let question = RideOrRun::new(rider, bike, Air::STILL, RidingLimits::GEAR_ONLY).unwrap();
    let ground = Surface::FirmGrass.ground();
    for (percent, entry) in [(6.0, 9.0), (10.0, 7.0)] {
        let carry = question.carry(&ground, climb(percent), speed(entry), WheelInertia::USUAL);
        for length in [5.0, 20.0, 60.0, 150.0] {
            let expected = stepped(&question, &ground, climb(percent), entry, length, rider.power.watts());
            let found = carry.over(ClimbLength::new(length).unwrap()).unwrap().s();
            assert!((found - expected).abs() < 0.02, "{percent} %, {length} m: {found}, {expected}");
        }
    }
}

/// Where riding ends with one input moved, asked for anew.
fn moved(input: Uncertain, value: f64) -> Option<Slope> {
    use gear_math::rider::{
        BikeMass, DrivetrainEfficiency, FootCostFactor, Friction, GrossEfficiency, LoadFactor,
        StandingMetabolism,
    };
    let ((mut rider, mut bike), mut ground) = (ordinary(), Surface::Mud.ground());
    let mut limits = RidingLimits::all(&rider);
    match input {
        Uncertain::GrossEfficiency => rider.efficiency = GrossEfficiency::new(value).unwrap(),
        Uncertain::Load => bike.load = LoadFactor::new(value).unwrap(),
        Uncertain::FootCost => rider.foot_cost = FootCostFactor::new(value).unwrap(),
        Uncertain::Standing => rider.standing = StandingMetabolism::new(value).unwrap(),
        Uncertain::Drivetrain => bike.efficiency = DrivetrainEfficiency::new(value).unwrap(),
        Uncertain::BikeMass => bike.mass = BikeMass::new(value).unwrap(),
        Uncertain::LowestCadence => rider.lowest_cadence = Cadence::new(value).unwrap(),
        Uncertain::Balance => limits.balance = BalanceSpeed::new(value).ok(),
        Uncertain::Friction => ground.friction = Friction::new(value).unwrap(),
        _ => return None,
    }
    let question = RideOrRun::new(rider, bike, Air::STILL, limits).unwrap();
    question.crossover(&ground).flip.map(|flip| flip.gradient)
}

/// Rider 0.23, 1.0, 1.5 W/kg; bike 1.2, 0.96, 9 kg; 50 rpm; 1.2 m/s: each by what the text of its input says.
fn ends(input: Uncertain) -> Option<(f64, f64)> {
    let mud = Surface::Mud.ground();
    Some(match input {
        Uncertain::GrossEfficiency => (0.21, 0.25),
        Uncertain::Load => (1.0, 1.5),
        Uncertain::FootGround => {
            let extra = mud.foot.value() - 1.0;
            (1.0 + 0.5 * extra, 1.0 + 1.5 * extra)
        }
        Uncertain::SlopeShare => (0.0, 1.0),
        Uncertain::FootCost => (0.92, 1.08),
        Uncertain::Standing => (1.2, 1.7),
        Uncertain::Drivetrain => (0.92, 0.976),
        Uncertain::Power => (207.0, 253.0),
        Uncertain::BikeMass => (8.0, 10.0),
        Uncertain::LowestCadence => (45.0, 55.0),
        Uncertain::Balance => (1.0, 1.8),
        Uncertain::Friction => (0.7 * mud.friction.mu(), 1.4 * mud.friction.mu()),
        Uncertain::Rolling => return None,
    })
}

fn holds(bar: &TornadoBar) {
    let Some((low, high)) = ends(bar.input) else { return };
    let off = (bar.values.0 - low).abs() + (bar.values.1 - high).abs();
    assert!(off < 1e-9, "{:?}: {:?}, not {low} to {high}", bar.input, bar.values);
    let points = |slope: Option<Slope>| slope.map_or(45.0, Slope::percent);
    assert!((bar.swing_points - (points(bar.at_high) - points(bar.at_low)).abs()).abs() < 1e-9);
    if let Some(slope) = moved(bar.input, low) {
        assert!((slope.percent() - points(bar.at_low)).abs() < 1e-6, "{:?}", bar.input);
    }
    if let Some(slope) = moved(bar.input, high) {
        assert!((slope.percent() - points(bar.at_high)).abs() < 1e-6, "{:?}", bar.input);
    }
}

/// Each input of the tornado is moved as far as is said, and riding then ends where a question with it says.
#[test]
fn every_doubt_is_moved_as_far_as_is_said() {
    let (rider, bike) = ordinary();
    let question = RideOrRun::new(rider, bike, Air::STILL, RidingLimits::all(&rider)).unwrap();
    let bars = question.tornado(&Surface::Mud.ground(), Watched::Flip);
    assert_eq!(bars.len(), Uncertain::ALL.len());
    bars.iter().for_each(holds);
    assert!(bars.is_sorted_by(|a, b| a.swing_points >= b.swing_points));
}

#[test]
fn legs_spin_out_where_the_tallest_gear_is_too_low() {
    let spins_out = |watts: f64, fastest: f64| {
        let (rider, bike) = ordinary();
        let rider = Rider {
            power: Power::new(watts).unwrap(),
            highest_cadence: Cadence::new(fastest).unwrap(),
            ..rider
        };
        let question = RideOrRun::new(rider, bike, Air::STILL, RidingLimits::GEAR_ONLY).unwrap();
        let answer = question.answer(&Surface::Tarmac.ground(), climb(0.0));
        assert_eq!(question.answers(&Surface::Tarmac.ground(), &[climb(0.0)]), [answer]);
        answer.spins_out()
    };
    // 40 × 11 on 2.1 m is 7.64 m a turn: 45.8 km/h at 100 rpm, which takes some 400 W.
    assert_eq!(
        [spins_out(200.0, 100.0), spins_out(800.0, 100.0), spins_out(800.0, 150.0)],
        [false, true, false]
    );
}

proptest! {
    #[test]
    fn a_verdict_ends_between_two_others(question in questions(), ground in grounds(), wide in 0.5..5.0_f64) {
        let judged = |percent: f64| question.answer(&ground, climb(percent)).verdict;
        let steps = (0..).map(|step| f64::from(step) * wide).take_while(|low| low + wide < 45.0);
        let changes = steps.filter(|&low| judged(low) != judged(low + wide)).collect::<Vec<_>>();
        prop_assume!(!changes.is_empty());
        for low in changes {
            let end = question.verdict_end(&ground, climb(low), climb(low + wide)).percent();
            prop_assert!(judged(end) != judged(low));
            prop_assert_eq!(judged((end - wide / 32.0).max(low)), judged(low));
        }
    }
}
