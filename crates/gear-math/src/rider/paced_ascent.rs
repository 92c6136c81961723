//! What to do about one climb on a budget of effort.

use crate::rider::ascent::{Ascent, LowerGear, OnBike, Ways};
use crate::rider::climb_plan::timed;
use crate::rider::limits::Reason;
use crate::rider::paced_climb::{PacedClimb, PacedRide};
use crate::rider::quantity::{Deficit, Power, SecondsLost, Time};
use crate::rider::ride_or_run::POWER_OFF;
use crate::rider::verdict::Verdict;

/// A gear that suits is worth a word from this share of the time on, and from half a second on, which is what a page shows of it.
/// Estimate: less is within the doubt of the time.
const WORTH: f64 = 0.02;
const LEAST_SAVED_S: f64 = 0.5;

impl PacedClimb {
    /// Decides between riding at the even pace, the speed that is brought and going on foot, getting off and on and what is taken from
    /// the reserve, at its price, included. The ride is
    /// called forced where its power is above the sustainable one by more than a rider's power may be off on the day.
    /// `carried` is the time with the speed that is brought, where that gets over; a [ramp](crate::rider::ClimbLength::is_ramp) is not forced then.
    ///
    /// # Example
    /// ```
    /// use gear_math::{Bike, Circumference, Drivetrain, Power, RideOrRun, Rider, Surface};
    /// use gear_math::rider::{
    ///     Advice, Air, BikeMass, BodyMass, Climb, ClimbLength, CriticalPower, EffortAccount, EffortBudget, KitMass,
    ///     RidingLimits, SecondsLost, WorkReserve,
    /// };
    /// let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
    /// let drivetrain = Drivetrain { chainset: "40".parse()?, cassette: "11-13-15-17-20-23-27-32".parse()? };
    /// let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
    /// let question = RideOrRun::new(rider, bike, Air::STILL, RidingLimits::all(&rider))?;
    /// let account = EffortAccount::new(CriticalPower::of_body(rider.power, WorkReserve::USUAL, rider.body));
    ///
    /// let (grass, bank, length) = (Surface::FirmGrass.ground(), Climb::new(12.0)?, ClimbLength::new(50.0)?);
    /// let paced = question.paced(&account, &grass, bank, length, EffortBudget::new(2000.0)?);
    /// assert_eq!(paced.ascent(SecondsLost::PRACTISED, None).advice, Advice::Force);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn ascent(&self, lost: SecondsLost, carried: Option<Time>) -> Ascent {
        let foot = [self.foot.time, self.foot.time_at_best, self.foot.time_at_worst];
        let ridden = self.ride.map(|ride| (ride.how(self.sustainable), ride.time));
        let foot = foot.map(|time| Time::new(time.s() + lost.s()));
        let is_carried = self.length.is_ramp() && carried.is_some_and(|carried| carried < foot[0]);
        let ways = Ways {
            ridden: ridden.filter(|&(how, _)| !is_carried || how == OnBike::Ridden),
            carried,
            forced: None,
            foot,
            drawn_s: [self.ride.map(|ride| ride.drawn), Some(self.foot.drawn)]
                .map(|drawn| self.worth_s(drawn)),
        };
        let ascent = ways.ascent();
        Ascent { lower_gear: self.lower_gear(&ascent), ..ascent }
    }

    /// The judgement on the times, getting off and on left aside.
    pub(super) fn judged(&self) -> Verdict {
        let dearer = |drawn| self.worth_s(Some(drawn)) - self.worth_s(Some(self.foot.drawn));
        let ride = self.ride.map(|ride| Time::new(ride.time.s() + dearer(ride.drawn)));
        timed(ride, self.foot.time_at_best, self.foot.time_at_worst)
    }

    fn lower_gear(&self, ascent: &Ascent) -> LowerGear {
        let Some(suited) = self.suited else {
            return self.hindrance.map_or(LowerGear::Needless, LowerGear::Useless);
        };
        let (better, time) = (ascent.better().s(), suited.time);
        let dearer = self.worth_s(Some(suited.drawn)) - self.worth_s(Some(self.foot.drawn));
        match time.s() {
            _ if self.ride.is_some_and(|ride| !ride.is_worth_a_lower_gear(time)) => LowerGear::Needless,
            suited if suited + dearer >= ascent.foot.s() => LowerGear::Useless(Reason::Energy),
            suited if suited < better => LowerGear::Saves(Time::new(better - suited)),
            _ => LowerGear::Spares,
        }
    }

    /// What is drawn from the reserve as time at its price, in s. What is repaid earns nothing here.
    pub(super) fn worth_s(&self, drawn: Option<Deficit>) -> f64 {
        self.spending.price.s_per_j() * drawn.map_or(0.0, |drawn| drawn.j().max(0.0))
    }
}

impl PacedRide {
    fn how(&self, sustainable: Power) -> OnBike {
        let is_forced = self.power.watts() > (1.0 + POWER_OFF) * sustainable.watts();
        if is_forced { OnBike::Forced(self.power) } else { OnBike::Ridden }
    }

    /// Whether the gear is taller than suits, and one that suits is quicker by more than nothing.
    fn is_worth_a_lower_gear(&self, suited: Time) -> bool {
        let saved = self.time.s() - suited.s();
        self.cadence < self.preferred && saved >= LEAST_SAVED_S.max(WORTH * self.time.s())
    }
}
