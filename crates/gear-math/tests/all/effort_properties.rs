//! What must hold of the account of effort and of a climb ridden on it, whatever the rider, the gears and the ground.

#![expect(
    clippy::unwrap_used,
    reason = "strategies draw from the limits, and a draw outside them must fail the run"
)]

use gear_math::gears::PedalRate;
use gear_math::rider::{
    Advice, Air, BikeMass, BodyMass, CadenceCost, ChargeRate, Climb, ClimbLength, CriticalPower,
    DrivetrainEfficiency, EffortAccount, EffortBudget, EffortTime, Friction, KitMass, LowerGear, PacedClimb,
    PeakPower, PowerDemand, RepaidShare, RidingLimits, RoadLoad, RollingCoefficient, SecondsLost, Slope,
    Stance, StrengthShare, Time, Verdict, WorkReserve,
};
use gear_math::{
    Bike, Cadence, Cassette, Chainset, Circumference, Drivetrain, Gear, Gradient, Ground, Power, RideOrRun,
    Rider, Speed, Surface,
};
use proptest::prelude::*;

fn account(sustainable: f64, peak: f64) -> EffortAccount {
    let (power, peak) = (Power::new(sustainable).unwrap(), PeakPower::new(peak).unwrap());
    EffortAccount::new(CriticalPower::new(power, WorkReserve::USUAL, peak).unwrap())
}

/// Riders of 2 to 6 W/kg whose peak is some three to five times that, with every choice of the model moved.
fn accounts() -> impl Strategy<Value = EffortAccount> {
    let choices = (0.3..=0.7, 0.4..=0.6, 0.0..=0.5, prop::option::of(-8.0..=25.0));
    (100.0..=400.0, 3.0..=5.0, choices).prop_map(|(watts, over, (repaid, lasting, cost, own))| {
        let line = 42.5 + 0.142 * watts;
        EffortAccount {
            repaid: RepaidShare::new(repaid).unwrap(),
            lasting: StrengthShare::new(lasting).unwrap(),
            cadence_cost: CadenceCost::new(cost).unwrap(),
            own_cadence: own.map(|off: f64| Cadence::new(line + off).unwrap()),
            ..account(watts, over * watts)
        }
    })
}

fn watts(watts: f64) -> PowerDemand {
    Power::new(watts).unwrap().into()
}

fn rpm(rpm: f64) -> PedalRate {
    Cadence::new(rpm).unwrap().into()
}

/// A charge in W; infinite where it is impossible.
fn of(rate: Option<ChargeRate>) -> f64 {
    rate.map_or(f64::INFINITY, ChargeRate::watts)
}

proptest! {
    #[test]
    fn more_power_is_charged_more(account in accounts(), power in 20.0..1500.0, more in 0.5..200.0, n in 20.0..180.0) {
        let charge = |power| of(account.charge(watts(power), rpm(n)));
        prop_assert!(charge(power + more) > charge(power) || charge(power).is_infinite());
        let on_foot = |power| of(account.charge_on_foot(watts(power)));
        prop_assert!(on_foot(power + more) > on_foot(power) || on_foot(power).is_infinite());
        prop_assert!(charge(power) >= of(account.charge(PowerDemand::NONE, rpm(n))));
    }

    /// A thousandth of a watt or of a turn moves the charge by little more, unless the peak is near.
    #[test]
    fn the_charge_never_jumps(account in accounts(), power in 20.0..1500.0, n in 20.0..190.0) {
        let peak = account.peak_at(rpm(n)).watts();
        let felt = power * account.cadence_factor(watts(power), rpm(n));
        if felt > 0.8 * peak {
            return Ok(());
        }
        let here = of(account.charge(watts(power), rpm(n)));
        for near in [account.charge(watts(power + 1e-3), rpm(n)), account.charge(watts(power), rpm(n + 1e-3))] {
            prop_assert!((of(near) - here).abs() < 0.2, "{here} and {near:?}");
        }
    }

    /// Riding is never charged less than the same power on foot, and as much at the preferred cadence of a rider with
    /// strength to spare.
    #[test]
    fn cadence_only_costs(account in accounts(), power in 20.0..600.0, n in 20.0..190.0) {
        let on_foot = of(account.charge_on_foot(watts(power)));
        prop_assert!(of(account.charge(watts(power), rpm(n))) >= on_foot - 1e-9);
        prop_assert!(account.cadence_factor(watts(power), rpm(n)) >= 1.0);
        let preferred = account.preferred_cadence(watts(power));
        prop_assert!((account.cadence_factor(watts(power), preferred) - 1.0).abs() < 1e-12);
    }

    /// What is held at the lowest cadence for a power is that power; a turn slower it is less.
    #[test]
    fn the_lowest_cadence_holds_the_power(account in accounts(), power in 20.0..900.0, more in 1.0..100.0) {
        let lowest = |power| account.lowest_cadence(watts(power)).map(PedalRate::rpm);
        let Some(n) = lowest(power) else {
            prop_assert!(power > 0.999 * account.lasting.share() * account.effort.peak().watts());
            return Ok(());
        };
        prop_assert!(lowest(power + more).is_none_or(|higher| higher > n));
        let stronger = account_with_peak(&account, 1.1);
        prop_assert!(stronger.lowest_cadence(watts(power)).is_some_and(|easier| easier.rpm() < n));
        let lasting = |n| account.lasting.share() * account.peak_at(rpm(n)).watts();
        prop_assert!(n < 25.0 || (lasting(n) - power).abs() < 1e-6 && lasting(n - 1.0) < power);
    }

    /// h(P(t)) t = B, and what costs B lasts as long as the budget says.
    #[test]
    fn an_even_effort_costs_its_budget(account in accounts(), joules in 1.0..20000.0, s in 1.0..3600.0) {
        let (budget, time) = (EffortBudget::new(joules).unwrap(), EffortTime::new(s).unwrap());
        let power = account.power_for(budget, time);
        prop_assert!(power.watts() < account.effort.peak().watts());
        let charged = account.charge_on_foot(power).unwrap().watts() * s;
        prop_assert!((charged - joules).abs() < 1e-6 * joules, "{charged} for {joules}");
    }
}

fn account_with_peak(account: &EffortAccount, factor: f64) -> EffortAccount {
    let effort = &account.effort;
    let peak = PeakPower::new(factor * effort.peak().watts()).unwrap();
    let effort = CriticalPower::new(effort.sustainable(), effort.reserve(), peak).unwrap();
    EffortAccount { effort, ..*account }
}

/// One climb and all it depends on.
#[derive(Debug, Clone, Copy)]
struct Case {
    body: f64,
    power: f64,
    peak: f64,
    budget: f64,
    rolling: f64,
    friction: f64,
    efficiency: f64,
    own: Option<f64>,
    slope: f64,
    length: f64,
    surface: Surface,
    drivetrain: Drivetrain,
}

const SETS: [(&str, &str); 5] = [
    ("40", "11-13-15-17-20-23-27-32"),
    ("50/34", "11-12-13-14-15-17-19-21-24-27-30"),
    ("44", "11-13-15-18-21-24-28-34-40"),
    ("42", "25"),
    ("48/35", "12-14-16-18-20-23-26-29"),
];

fn drivetrain(set: usize) -> Drivetrain {
    let (rings, sprockets) = SETS[set];
    Drivetrain { chainset: rings.parse().unwrap(), cassette: sprockets.parse().unwrap() }
}

fn cases() -> impl Strategy<Value = Case> {
    let rider = (45.0..=95.0, 2.2..=5.5, 11.0..=18.0, 0.0..=5000.0_f64);
    let place = (0.0..=25.0, 8.0..=400.0, 0..Surface::ALL.len(), 0..SETS.len());
    (rider, place).prop_map(|((body, per_kg, peak_per_kg, budget), (slope, length, surface, set))| {
        let surface = Surface::ALL[surface];
        let ground = surface.ground();
        Case {
            body,
            power: per_kg * body,
            peak: peak_per_kg * body,
            // A third of the climbs cost nothing in the end.
            budget: (budget - 1700.0).max(0.0),
            rolling: ground.rolling.value(),
            friction: ground.friction.mu(),
            efficiency: 0.96,
            own: None,
            slope,
            length,
            surface,
            drivetrain: drivetrain(set),
        }
    })
}

impl Case {
    fn account(&self) -> EffortAccount {
        let own_cadence = self.own.map(|own| Cadence::new(own).unwrap());
        EffortAccount { own_cadence, ..account(self.power, self.peak) }
    }

    fn bike(&self) -> Bike {
        let (mass, wheel) = (BikeMass::new(9.0).unwrap(), Circumference::new(2120.0).unwrap());
        let efficiency = DrivetrainEfficiency::new(self.efficiency).unwrap();
        Bike { efficiency, ..Bike::new(mass, self.drivetrain, wheel) }
    }

    fn rider(&self) -> Rider {
        let (body, kit) = (BodyMass::new(self.body).unwrap(), KitMass::new(2.0).unwrap());
        Rider::new(body, kit, Power::new(self.power).unwrap())
    }

    fn ground(&self) -> Ground {
        Ground {
            rolling: RollingCoefficient::new(self.rolling).unwrap(),
            friction: Friction::new(self.friction).unwrap(),
            ..self.surface.ground()
        }
    }

    fn paced(&self) -> PacedClimb {
        self.paced_within(RidingLimits { grip: Some(Stance::SEATED), ..RidingLimits::GEAR_ONLY })
    }

    /// Up to where riding pays with so much taller rings, in teeth; 45 for all the way.
    fn crossover(&self, lost: f64, taller: u16) -> f64 {
        let rings = self.drivetrain.chainset.rings().iter().map(|ring| ring.teeth() + taller);
        let drivetrain = Drivetrain { chainset: Chainset::new(rings).unwrap(), ..self.drivetrain };
        let case = Self { drivetrain, ..*self };
        let limits = RidingLimits { grip: Some(Stance::SEATED), ..RidingLimits::GEAR_ONLY };
        let question = RideOrRun::new(case.rider(), case.bike(), Air::STILL, limits).unwrap();
        let (length, budget) =
            (ClimbLength::new(self.length).unwrap(), EffortBudget::new(self.budget).unwrap());
        let lost = SecondsLost::new(lost).unwrap();
        let found = question.paced_crossover(&self.account(), &self.ground(), length, budget, lost);
        found.map_or(45.0, Slope::percent)
    }

    fn paced_within(&self, limits: RidingLimits) -> PacedClimb {
        self.paced_by(&self.account(), limits)
    }

    fn paced_by(&self, account: &EffortAccount, limits: RidingLimits) -> PacedClimb {
        RideOrRun::new(self.rider(), self.bike(), Air::STILL, limits).unwrap().paced(
            account,
            &self.ground(),
            Climb::new(self.slope).unwrap(),
            ClimbLength::new(self.length).unwrap(),
            EffortBudget::new(self.budget).unwrap(),
        )
    }

    /// Power at the crank and drive force that a speed takes, worked out apart from the climb.
    fn taken(&self, speed: Speed) -> (f64, f64) {
        let (rider, bike) = (self.rider(), self.bike());
        let load = RoadLoad::new(rider.with(&bike), self.ground().rolling, &Air::STILL, bike.efficiency)
            .with_wheels();
        let power = load.power(speed, Gradient::new(self.slope).unwrap());
        (power.at_crank().watts(), power.at_wheel().watts() / speed.m_per_s())
    }

    /// What a climb at a speed in a gear takes from the reserve, J.
    fn charged(&self, speed: Speed, gear: Gear) -> f64 {
        let cadence = gear.development(self.bike().wheel).cadence_at(speed);
        let (power, _) = self.taken(speed);
        of(self.account().charge(watts(power.clamp(20.0, 2000.0)), cadence)) * self.length / speed.m_per_s()
    }
}

/// Time on the bike; infinite where there is no riding.
fn ridden(case: &Case) -> f64 {
    case.paced().ride.map_or(f64::INFINITY, |ride| ride.time.s())
}

fn on_foot(case: &Case) -> f64 {
    case.paced().foot.time.s()
}

/// Rounding of the search, relative.
const SAME: f64 = 1e-9;

proptest! {
    #[test]
    fn a_climb_is_within_its_budget_and_nothing_faster_is(case in cases(), faster in 1.0001..1.5_f64, gear in 0.0..1.0) {
        let Some(ride) = case.paced().ride else { return Ok(()) };
        let (power, drive) = case.taken(ride.speed);
        prop_assert!((power - ride.power.watts()).abs() < 1e-6 && (power <= 20.0 || ride.power.watts() < case.peak));
        prop_assert!(case.charged(ride.speed, ride.gear) <= case.budget + 1e-4);
        let gears: Vec<Gear> = case.bike().gears().collect();
        let other = gears[(gear * gears.len() as f64) as usize];
        let speed = Speed::from_km_per_h((3.6 * faster * ride.speed.m_per_s()).min(150.0)).unwrap();
        let holds = case.charged(speed, other) <= case.budget;
        let mu = case.friction;
        let normal = 9.81 * case.rider().with(&case.bike()).kg() / (case.slope / 100.0).hypot(1.0);
        let grip = normal * mu * (0.55 - case.rolling * 105.0 / 102.0) / (1.0 - mu * 105.0 / 102.0);
        prop_assert!(drive <= grip * (1.0 + SAME));
        let (_, drive) = case.taken(speed);
        prop_assert!(!holds || drive > grip, "{} m/s in {other} beats {ride:?}", speed.m_per_s());
    }

    #[test]
    fn more_of_the_rider_is_never_slower(case in cases(), more in 1.0..1.2_f64) {
        let better = [
            Case { power: case.power * more, peak: case.peak * more, ..case },
            Case { power: (case.power * more).min(0.9 * case.peak), ..case },
            Case { peak: case.peak * more, ..case },
            Case { budget: case.budget * more + 10.0, ..case },
        ];
        for better in better {
            prop_assert!(ridden(&better) <= ridden(&case) * (1.0 + SAME), "riding {better:?}");
            prop_assert!(on_foot(&better) <= on_foot(&case) * (1.0 + SAME), "on foot {better:?}");
        }
    }

    #[test]
    fn an_easier_climb_is_never_slower(case in cases(), more in 1.0..1.2_f64) {
        let easier = [
            Case { efficiency: (case.efficiency * more).min(1.0), ..case },
            Case { friction: case.friction * more, ..case },
            Case { rolling: case.rolling / more, ..case },
            Case { slope: case.slope / more, ..case },
        ];
        for easier in easier {
            prop_assert!(ridden(&easier) <= ridden(&case) * (1.0 + SAME), "{easier:?}");
        }
    }

    /// As long as grip does not bind: it grows with the mass, and air does not.
    #[test]
    fn a_lighter_rider_of_the_same_power_is_never_slower(case in cases(), more in 1.0..1.2) {
        let free = |case: &Case| case.paced_within(RidingLimits::GEAR_ONLY);
        let (light, heavy) = (free(&Case { body: case.body / more, ..case }), free(&case));
        prop_assert!(light.foot.time.s() <= heavy.foot.time.s() * (1.0 + SAME));
        let time = |paced: PacedClimb| paced.ride.map_or(f64::INFINITY, |ride| ride.time.s());
        prop_assert!(time(light) <= time(heavy) * (1.0 + SAME));
    }

    /// With two rings by no more than the reluctance to cross the chain: a straight gear may come in place of a crossed one.
    #[test]
    fn another_gear_never_slows(case in cases(), teeth in 10_u16..=50) {
        let mut sprockets: Vec<u16> = case.drivetrain.cassette.sprockets().iter().map(|it| it.teeth()).collect();
        sprockets.push(teeth);
        sprockets.sort_unstable();
        sprockets.dedup();
        let drivetrain = Drivetrain { cassette: Cassette::new(sprockets).unwrap(), ..case.drivetrain };
        let (one, more) = (ridden(&case), ridden(&Case { drivetrain, ..case }));
        let reluctance = if drivetrain.chainset.rings().len() > 1 { Bike::RELUCTANCE } else { 0.0 };
        prop_assert!(more * (1.0 - reluctance) <= one * (1.0 + SAME), "{more} s with one more of {teeth}, {one} s");
    }

    /// Sustainable power by the watt, own cadence by the turn, body by a tenth of a kilogram, or a tenth of that: the time may
    /// lean on each of them, but it does not jump, as long as riding is not about to end for want of strength.
    #[test]
    fn nothing_jumps(case in cases(), off_line in -8.0..25.0) {
        let own = 42.5 + 0.142 * case.power + off_line;
        let case = Case { own: Some(own), ..case };
        let weaker = Case { power: 0.97 * case.power, peak: 0.97 * case.peak, body: 1.02 * case.body, ..case };
        let rides = ridden(&weaker).is_finite();
        let moved = [
            Case { power: case.power + 0.1, ..case },
            Case { own: Some(own + 0.1), ..case },
            Case { body: case.body + 0.01, ..case },
        ];
        for moved in moved {
            let off = |time: fn(&Case) -> f64| (time(&moved) / time(&case) - 1.0).abs();
            prop_assert!(!rides || off(ridden) < 0.0015, "riding {} of {moved:?}", off(ridden));
            prop_assert!(off(on_foot) < 0.0015, "on foot {} of {moved:?}", off(on_foot));
        }
    }

    /// However much may be spent, nobody goes beyond the peak.
    #[test]
    fn no_budget_beats_the_peak(case in cases()) {
        let paced = Case { budget: 50000.0, length: 15.0, ..case }.paced();
        prop_assert!(paced.foot.power.watts() < case.peak && paced.foot.speed.m_per_s() <= 5.0 + 1e-9);
        if let Some(ride) = paced.ride {
            prop_assert!(ride.power <= case.account().peak_at(ride.cadence));
        }
    }

    /// Without a budget the foot goes at the sustainable power, and the bike at no more.
    #[test]
    fn what_lasts_is_the_sustainable_power(case in cases()) {
        let paced = Case { budget: 0.0, ..case }.paced();
        let foot = paced.foot.power.watts();
        prop_assert!((foot - case.power).abs() < 1e-6 || (paced.foot.speed.m_per_s() - 5.0).abs() < 1e-6, "{foot}");
        prop_assert!(paced.ride.is_none_or(|ride| ride.power.watts() <= case.power));
    }

    /// Where neither cadence costs nor strength is short, the account is the road-load equation at the sustainable power.
    #[test]
    fn without_a_cost_of_cadence_all_gears_are_alike(case in cases()) {
        let case = Case { budget: 0.0, ..case };
        let account = EffortAccount { cadence_cost: CadenceCost::new(0.0).unwrap(), ..case.account() };
        let Some(ride) = case.paced_by(&account, RidingLimits::GEAR_ONLY).ride else { return Ok(()) };
        if account.held_at(ride.cadence) == PowerDemand::from(Power::new(case.power).unwrap()) {
            let load = RoadLoad::new(case.rider().with(&case.bike()), case.ground().rolling, &Air::STILL, case.bike().efficiency);
            let power = Power::new(case.power).unwrap();
            let steady = load.with_wheels().steady_speed(power, Gradient::new(case.slope).unwrap()).m_per_s();
            prop_assert!((ride.speed.m_per_s() / steady - 1.0).abs() < 1e-8, "{ride:?} for {steady}");
        }
    }

    /// Balance and grip only take away, and the judgement follows the times.
    #[test]
    fn limits_only_slow_and_the_verdict_follows(case in cases()) {
        let (free, bound) = (case.paced_within(RidingLimits::GEAR_ONLY), case.paced_within(RidingLimits::all(&case.rider())));
        let time = |paced: &PacedClimb| paced.ride.map_or(f64::INFINITY, |ride| ride.time.s());
        prop_assert!(time(&bound) >= time(&free) * (1.0 - SAME));
        prop_assert!(bound.ride.is_none_or(|ride| ride.speed.m_per_s() >= 1.2 - SAME));
        prop_assert_eq!(bound.verdict == Verdict::FootForced, bound.ride.is_none());
        match bound.verdict {
            Verdict::Ride => prop_assert!(time(&bound) < bound.foot.time.s()),
            Verdict::Foot => prop_assert!(time(&bound) > bound.foot.time.s()),
            Verdict::TooClose | Verdict::FootForced => {}
        }
    }

    /// The slope up to which riding pays is that of equal times; more time lost in getting off only moves it up, a taller gear down.
    #[test]
    fn riding_pays_up_to_equal_times(case in cases(), lost in 0.0..8.0_f64) {
        let here = case.crossover(lost, 0);
        let longer = |slope: f64| {
            let paced = Case { slope, ..case }.paced();
            paced.ride.map_or(f64::INFINITY, |ride| ride.time.s() - paced.foot.time.s() - lost)
        };
        prop_assert!(here <= 0.0 || longer((here - 0.1).max(0.0)) < 0.0);
        prop_assert!(here >= 45.0 || longer((here + 0.1).min(45.0)) >= 0.0);
        prop_assert!(case.crossover(lost + 1.0, 0) >= here);
        prop_assert!(case.crossover(lost, 8) <= here);
    }

    /// The advice names the quickest, and a lower gear saves what it says against a bike that has every gear.
    #[test]
    fn the_advice_goes_by_the_times(case in cases(), lost in 0.0..8.0_f64, carried in prop::option::of(0.1..2.0_f64)) {
        let paced = case.paced();
        let carried = carried.map(|share| Case { length: (share * case.length).clamp(1.0, 5000.0), ..case }.paced().foot.time);
        let ascent = paced.ascent(SecondsLost::new(lost).unwrap(), carried);
        let carried = carried.map(Time::s);
        prop_assert!((ascent.foot.s() - paced.foot.time.s() - lost).abs() < 1e-9);
        prop_assert!(ascent.foot_at_best <= ascent.foot && ascent.foot <= ascent.foot_at_worst);
        let rides = paced.ride.map_or(f64::INFINITY, |ride| ride.time.s());
        match ascent.advice {
            Advice::Ride | Advice::Force => {
                prop_assert!(rides < ascent.foot_at_best.s());
                let forced = paced.ride.unwrap().power.watts() > 1.1 * case.power;
                prop_assert_eq!(ascent.advice == Advice::Force, forced);
            }
            Advice::Carry => {
                prop_assert!(carried.unwrap() < ascent.foot_at_best.s());
                prop_assert!(carried.unwrap() < rides || case.length < 10.0);
            }
            Advice::Run => prop_assert!(rides.min(carried.unwrap_or(f64::INFINITY)) >= ascent.foot.s() || rides > ascent.foot_at_worst.s()),
            Advice::TooClose => prop_assert!(ascent.bike.is_some()),
        }
        prop_assert_eq!(paced.hindrance.is_some(), paced.ride.is_none());
        if let LowerGear::Saves(saved) = ascent.lower_gear {
            prop_assert!((ascent.better().s() - saved.s() - paced.suited.unwrap().time.s()).abs() < 1e-9);
        }
    }

    /// No bike beats a gear that suits by more than cadence costs: less than 5 % in each of 200,000 cases.
    #[test]
    fn a_gear_that_suits_is_nearly_the_best(case in cases()) {
        let paced = case.paced();
        let (Some(suited), Some(ride)) = (paced.suited, paced.ride) else { return Ok(()) };
        prop_assert!(ride.time.s() > 0.95 * suited.time.s(), "{ride:?} {suited:?}");
    }
}
