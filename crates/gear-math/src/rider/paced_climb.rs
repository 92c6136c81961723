//! One climb at an even pace: as fast as a budget of effort allows, in the best gear, and on foot.

use crate::gears::{Gear, PedalRate};
use crate::physics::GRAVITY;
use crate::quantity::Speed;
use crate::rider::account::EffortAccount;
use crate::rider::air::Air;
use crate::rider::energy::Energy;
use crate::rider::ground::Ground;
use crate::rider::limits::Reason;
use crate::rider::on_foot::{FASTEST_ON_FOOT, Incline};
use crate::rider::pace::{Metre, Pace};
use crate::rider::quantity::{
    BalanceSpeed, Climb, ClimbLength, Deficit, EffortBudget, Headwind, Power, PowerDemand, SecondsLost, Time,
};
use crate::rider::resistance::FASTEST;
use crate::rider::ride_or_run::RideOrRun;
use crate::rider::rider::Rider;
use crate::rider::spending::Spending;
use crate::rider::verdict::Verdict;
use crate::solve::{Near, halved, lowest, rising_root};

/// Slower than this nobody rides, m/s, even where balance is not looked at. Estimate: a third of the
/// [usual limit](BalanceSpeed::USUAL).
const SLOWEST: f64 = 0.4;
/// Halvings of the model's powers or speeds that leave rounding.
const HALVINGS: u32 = 60;
/// Steps of the search for the power on foot, over it, that leave rounding; and where only the choice counts.
const FINELY: Near = Near::Step(1e-12);
const ROUGHLY: Near = Near::Step(1e-5);
/// Powers on foot at which the cost of a metre is looked at, in equal ratios, close enough to tell a walk from a run, and how often
/// the two about the least are cut.
const POWERS: i32 = 24;
const CUTS: u32 = 24;

/// One climb at an even pace; made by [`RideOrRun::paced`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PacedClimb {
    /// On the bike; `None` where strength, grip or balance allow no riding.
    pub ride: Option<PacedRide>,
    /// On foot.
    pub foot: PacedFoot,
    /// The judgement on the two times, each with the price of what it takes from the reserve, getting off and on left aside, within
    /// the [band](crate::rider::Band) of the ratio at the power on foot.
    pub verdict: Verdict,
    /// On the bike in a gear that suits the pace, whatever gears there are; `None` where grip or balance allow no riding.
    pub suited: Option<SuitedRide>,
    /// What may be taken from the reserve.
    pub spending: Spending,
    /// What allows no riding: grip, balance, or that no gear is low enough for the legs.
    pub hindrance: Option<Reason>,
    /// The power that lasts.
    pub sustainable: Power,
    /// The length.
    pub length: ClimbLength,
}

/// Riding a climb at an even pace.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PacedRide {
    /// Time over the climb.
    pub time: Time,
    /// The speed.
    pub speed: Speed,
    /// Power at the crank that it takes.
    pub power: PowerDemand,
    /// Cadence in the gear.
    pub cadence: PedalRate,
    /// Cadence preferred at that power.
    pub preferred: PedalRate,
    /// The gear in which it is fastest, or costs least at a price; of equally fast ones that which takes least from the reserve, and
    /// none with a crossed chain that is not better by about the [reluctance](crate::rider::Bike::RELUCTANCE) to ride it.
    pub gear: Gear,
    /// What it takes from the reserve; less than nothing where grip or cadence keep it below the sustainable power.
    pub drawn: Deficit,
}

/// Riding a climb at an even pace in a gear that suits it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SuitedRide {
    /// Time over the climb.
    pub time: Time,
    /// What it takes from the reserve.
    pub drawn: Deficit,
}

/// Going up on foot at an even pace.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PacedFoot {
    /// Time over the climb, getting off and on left aside.
    pub time: Time,
    /// The same at the edge of the band that favours going on foot.
    pub time_at_best: Time,
    /// The same at the edge that favours riding.
    pub time_at_worst: Time,
    /// The speed, no more than 5 m/s.
    pub speed: Speed,
    /// Crank power that costs the same metabolic power.
    pub power: PowerDemand,
    /// What it takes from the reserve.
    pub drawn: Deficit,
}

impl RideOrRun {
    /// The fastest even pace over a climb that takes no more than `budget` from the reserve, on the bike and on foot.
    ///
    /// The budget is [none](EffortBudget::NONE) for what can be repeated for ever, or the share that a climb of every lap may cost.
    /// Of this question's limits grip and balance count where they are there, cadence and leg strength by the account alone. The
    /// wheels' bearings and spokes count, and wind on the bike alone, as on a lap.
    ///
    /// # Formula
    /// The greatest v with h(P, n) L/v ≤ B, η P = F(v) v, and F no more than grip holds, over all gears that may be used; on foot
    /// with [`charge_on_foot`](EffortAccount::charge_on_foot). That one budget is charged evenly is a choice of this model.
    ///
    /// # Example
    /// ```
    /// use gear_math::{Bike, Circumference, Drivetrain, Power, RideOrRun, Rider, Surface};
    /// use gear_math::rider::{
    ///     Air, BikeMass, BodyMass, Climb, ClimbLength, CriticalPower, EffortAccount, EffortBudget, KitMass,
    ///     PeakPower, RidingLimits, WorkReserve,
    /// };
    /// let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
    /// let drivetrain = Drivetrain { chainset: "40".parse()?, cassette: "11-13-15-17-20-23-27-32".parse()? };
    /// let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
    /// let question = RideOrRun::new(rider, bike, Air::STILL, RidingLimits::all(&rider))?;
    /// let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, PeakPower::of_body(rider.body))?;
    ///
    /// let (account, grass) = (EffortAccount::new(effort), Surface::FirmGrass.ground());
    /// let (bank, length) = (Climb::new(12.0)?, ClimbLength::new(50.0)?);
    /// let paced = |joules| -> Result<_, gear_math::OutOfLimits> {
    ///     Ok(question.paced(&account, &grass, bank, length, EffortBudget::new(joules)?))
    /// };
    /// let (steady, forced) = (paced(0.0)?.ride.expect("rideable"), paced(2000.0)?.ride.expect("rideable"));
    /// assert_eq!(steady.gear.to_string(), "40×32");
    /// assert!(steady.cadence.rpm() < 47.0, "the lowest gear is tall here");
    /// assert!(steady.time.s() - forced.time.s() > 6.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn paced(
        &self,
        account: &EffortAccount,
        ground: &Ground,
        gradient: Climb,
        length: ClimbLength,
        budget: EffortBudget,
    ) -> PacedClimb {
        self.paced_at(account, ground, gradient, length, &budget.into())
    }

    /// The even pace over a climb at which time and what is taken from the reserve, at its price, come to least, on the bike and on
    /// foot: as hard as a lap at that price rides a climb that goes on for long.
    ///
    /// # Formula
    /// (1 + λ h(P, n))/v least over speeds and gears, with h L/v no less than 0 and no more than the budget; the rest as for
    /// [`paced`](Self::paced).
    ///
    /// # Example
    /// ```
    /// use gear_math::{Bike, Circumference, Drivetrain, Power, RideOrRun, Rider, Surface};
    /// use gear_math::rider::{
    ///     Air, BikeMass, BodyMass, Climb, ClimbLength, CriticalPower, EffortAccount, EffortBudget, KitMass,
    ///     RidingLimits, Spending, WorkReserve,
    /// };
    /// let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
    /// let drivetrain = Drivetrain { chainset: "40".parse()?, cassette: "11-13-15-17-20-23-27-32".parse()? };
    /// let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
    /// let question = RideOrRun::new(rider, bike, Air::STILL, RidingLimits::all(&rider))?;
    /// let account = EffortAccount::new(CriticalPower::of_body(rider.power, WorkReserve::USUAL, rider.body));
    ///
    /// let (grass, bank) = (Surface::FirmGrass.ground(), Climb::new(8.0)?);
    /// let spending = Spending { price: account.usual_price(), most: EffortBudget::new(4000.0)? };
    /// let ride = |m| -> Result<_, gear_math::OutOfLimits> {
    ///     let paced = question.paced_at(&account, &grass, bank, ClimbLength::new(m)?, &spending);
    ///     Ok(paced.ride.expect("rideable"))
    /// };
    /// let (short, long) = (ride(20.0)?, ride(60.0)?);
    /// assert!((short.power.watts() - long.power.watts()).abs() < 0.1, "as hard on either");
    /// assert!(long.drawn.j() < 4000.0 && (long.drawn.j() / short.drawn.j() - 3.0).abs() < 0.01);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn paced_at(
        &self,
        account: &EffortAccount,
        ground: &Ground,
        gradient: Climb,
        length: ClimbLength,
        spending: &Spending,
    ) -> PacedClimb {
        let pace = self.pace(account, ground, gradient, spending.most.j() / length.m());
        let ride = self.cheapest_ride(&pace, length, spending).or_else(|| self.paced_ride(&pace, length));
        let suited = suited(&pace, length, spending);
        let incline = Incline::new(gradient);
        let budget_per_m = self.spent_on_foot(account, ground, &incline, length, spending);
        let power = self.paced_foot_power(account, ground, &incline, budget_per_m, FINELY);
        let foot = self.paced_foot(account, power, ground, &incline, length);
        let paced = PacedClimb {
            ride,
            foot,
            verdict: Verdict::FootForced,
            suited,
            spending: *spending,
            hindrance: ride.is_none().then(|| pace.hindrance(suited.is_some())),
            sustainable: account.effort.sustainable(),
            length,
        };
        PacedClimb { verdict: paced.judged(), ..paced }
    }

    /// The ride at which time and what is taken, at its price, come to least; none where a joule costs nothing, or in no gear a speed
    /// is found that the budget allows.
    fn cheapest_ride(&self, pace: &Pace<'_>, length: ClimbLength, spending: &Spending) -> Option<PacedRide> {
        let price = spending.price.s_per_j();
        let in_gear =
            |gear: Gear| Some((pace.cheapest_in(gear.development(self.bike.wheel).m(), price)?, gear));
        let reluctance = |gear: Gear| self.bike.reluctance_w(gear, pace.account.effort.sustainable());
        let counted = |(metre, gear): (Metre, Gear)| metre.cost + price * reluctance(gear) / metre.speed;
        let cheaper = |a: (Metre, Gear), b: (Metre, Gear)| if counted(b) < counted(a) { b } else { a };
        let gears = self.bike.gears().filter(|_| price > 0.0);
        let (metre, gear) = gears.filter_map(in_gear).reduce(cheaper)?;
        Some(self.ride_at(metre.speed, gear, pace, length))
    }

    /// What is to be spent on a metre on foot, in J.
    fn spent_on_foot(
        &self,
        account: &EffortAccount,
        ground: &Ground,
        incline: &Incline,
        length: ClimbLength,
        spending: &Spending,
    ) -> f64 {
        let speed = |power: f64| self.on_foot_with(power).speeds(ground, incline).foot.min(FASTEST_ON_FOOT);
        let charge = |power: f64| account.charge_on_foot_w(power);
        spending.per_m(length, |price| {
            let (held, most) = (account.sustainable_w(), spending.most.j() / length.m());
            let hardest = self.paced_foot_power(account, ground, incline, most, ROUGHLY).max(held);
            let cost = |power: f64| (1.0 + price * charge(power)) / speed(power);
            let power = lowest((held, hardest), POWERS, CUTS, cost);
            Some(charge(power) / speed(power))
        })
    }

    fn pace<'a>(
        &self,
        account: &'a EffortAccount,
        ground: &Ground,
        gradient: Climb,
        budget_per_m: f64,
    ) -> Pace<'a> {
        let resistance = self.load(ground).with_wheels().resistance(gradient.into());
        let normal = self.rider.with(&self.bike).kg() * GRAVITY / gradient.rise_over_run().hypot(1.0);
        let grip = self.limits.grip.map(|stance| stance.drive_n(ground.friction, ground.rolling, normal));
        let holds = |grip: f64| halved(0.0, FASTEST, HALVINGS, |speed| resistance.force(speed) <= grip).0;
        Pace {
            account,
            resistance,
            budget_per_m,
            slowest: self.limits.balance.map_or(SLOWEST, BalanceSpeed::m_per_s),
            fastest: grip.map_or(FASTEST, holds),
        }
    }

    fn paced_ride(&self, pace: &Pace<'_>, length: ClimbLength) -> Option<PacedRide> {
        let in_gear = |gear: Gear| {
            let metres = gear.development(self.bike.wheel).m();
            pace.fastest_in(metres).map(|speed| (speed, -pace.charge(speed, metres), gear))
        };
        let counted =
            |(speed, left, gear): (f64, f64, Gear)| ((1.0 - self.bike.reluctance(gear)) * speed, left);
        let better = |a: (f64, f64, Gear), b: (f64, f64, Gear)| if counted(b) > counted(a) { b } else { a };
        let (speed, _, gear) = self.bike.gears().filter_map(in_gear).reduce(better)?;
        Some(self.ride_at(speed, gear, pace, length))
    }

    fn ride_at(&self, speed: f64, gear: Gear, pace: &Pace<'_>, length: ClimbLength) -> PacedRide {
        let (seconds, power) = (length.m() / speed, PowerDemand::new(pace.power(speed)));
        let development = gear.development(self.bike.wheel);
        PacedRide {
            time: Time::new(seconds),
            speed: Speed::new(speed),
            power,
            preferred: pace.account.preferred_cadence(power),
            cadence: development.cadence_at(Speed::new(speed)),
            gear,
            drawn: Deficit::new(pace.charge(speed, development.m()) * seconds),
        }
    }

    /// Whether riding a climb is quicker than going up on foot and losing some seconds, without the rest.
    pub(super) fn pays(
        &self,
        account: &EffortAccount,
        ground: &Ground,
        gradient: Climb,
        length: ClimbLength,
        spending: &Spending,
        lost: SecondsLost,
    ) -> bool {
        let (incline, price) = (Incline::new(gradient), spending.price.s_per_j());
        let budget_per_m = self.spent_on_foot(account, ground, &incline, length, spending);
        let power = self.paced_foot_power(account, ground, &incline, budget_per_m, ROUGHLY);
        let foot = length.m() / self.on_foot_with(power).speeds(ground, &incline).foot + lost.s();
        let cost = foot / length.m() + price * budget_per_m;
        let pace = self.pace(account, ground, gradient, spending.most.j() / length.m());
        let no_slower = |speed: f64| Pace { slowest: pace.slowest.max(speed), ..pace };
        let (cheap, spent) =
            (no_slower(1.0 / cost), no_slower(1.0 / (cost - price * pace.budget_per_m).max(0.0)));
        let metres = || self.bike.gears().map(|gear| gear.development(self.bike.wheel).m());
        price > 0.0 && metres().any(|metres| cheap.is_worth_it_in(metres, price, cost))
            || metres().any(|metres| spent.holds_slowest_in(metres))
            || metres().any(|metres| spent.holds_faster_in(metres))
    }

    /// The climb on foot at a power.
    fn paced_foot(
        &self,
        account: &EffortAccount,
        power_w: f64,
        ground: &Ground,
        incline: &Incline,
        length: ClimbLength,
    ) -> PacedFoot {
        let energy = self.on_foot_with(power_w);
        let speeds = energy.speeds(ground, incline);
        let band = energy.band(&speeds, ground, incline);
        let time = length.m() / speeds.foot;
        let at = |edge: f64| Time::new(time * band.reference / edge);
        PacedFoot {
            time: Time::new(time),
            time_at_best: at(band.high),
            time_at_worst: at(band.low),
            speed: Speed::new(speeds.foot),
            power: PowerDemand::new(power_w),
            drawn: Deficit::new(account.charge_on_foot_w(power_w) * time),
        }
    }

    /// The most power on foot that the budget allows and that is not too much for the fastest speed, in W.
    fn paced_foot_power(
        &self,
        account: &EffortAccount,
        ground: &Ground,
        incline: &Incline,
        budget_per_m: f64,
        near: Near,
    ) -> f64 {
        let held = account.sustainable_w();
        let room = account.effort.peak().watts() - held;
        let speed = |power: f64| self.on_foot_with(power).speeds(ground, incline).foot;
        let power = rising_root((held, held + room), held, near, |power| {
            let charge = budget_per_m * speed(power);
            let left = room / (charge + room);
            // The speed is taken to grow with the power, which it nearly does.
            (power - held - charge * left, 1.0 - charge * left * left / power)
        });
        let power = power.min(Power::LIMITS.max);
        if speed(power) <= FASTEST_ON_FOOT {
            return power;
        }
        halved(Power::LIMITS.min, power, HALVINGS, |power| speed(power) <= FASTEST_ON_FOOT).0
    }

    /// The rider with another power, out of the wind.
    fn on_foot_with(&self, power_w: f64) -> Energy {
        let rider = Rider { power: Power::nearest(power_w), ..self.rider };
        Energy::new(&rider, &self.bike, &Air { headwind: Headwind::NONE, ..self.air })
    }
}

/// The ride in a gear that suits, with what is to be spent on it.
fn suited(pace: &Pace<'_>, length: ClimbLength, spending: &Spending) -> Option<SuitedRide> {
    let cheapest = |price: f64| pace.cheapest_suited(price).map(|it| it.charge_j);
    let pace = pace.spending(spending.per_m(length, cheapest));
    let speed = pace.fastest_suited()?;
    let drawn = Deficit::new(pace.charge_suited(speed) * length.m() / speed);
    Some(SuitedRide { time: Time::new(length.m() / speed), drawn })
}
