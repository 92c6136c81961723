//! One climb: the quickest way up that can be done, decided once for all who speak of it.

use crate::rider::climb_plan::{Carry, ClimbPlan, OverGear, timed};
use crate::rider::limits::Reason;
use crate::rider::quantity::{PowerDemand, Time};
use crate::rider::verdict::Verdict;

/// The speed brought to a climb is no reason to ride it unless it takes the time below this share of the steady one.
/// Estimate: less than that is within the doubt of the time.
const MUCH: f64 = 0.8;

/// A way up without getting off.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum OnBike {
    /// At the power of the effort, or what the legs can spin of it.
    Ridden,
    /// On the speed brought to the climb, with that power.
    Carried,
    /// At more power than that, out of the reserve.
    Forced(PowerDemand),
}

/// The advice on one climb.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Advice {
    /// Ride it at the power of the effort.
    Ride,
    /// Carry the speed over it.
    Carry,
    /// Ride it at more than the power of the effort, out of the reserve.
    Force,
    /// Riding and running are equally quick, as far as can be told.
    TooClose,
    /// Get off: that is quicker, or nothing else can be done.
    Run,
}

/// What a lower gear is worth on one climb.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum LowerGear {
    /// Nothing: the climb is ridden in a gear that the bike has.
    Needless,
    /// So much time against the quickest way without it.
    Saves(Time),
    /// No time, only the power above that of the effort or the speed that has to be brought.
    Spares,
    /// Nothing: balance or grip ends riding in any gear, or running is quicker than any (energy).
    Useless(Reason),
}

/// What there is to do about a climb; made by [`PacedClimb::ascent`](crate::rider::PacedClimb::ascent), which climb and lap agree on,
/// and at a steady power by [`ClimbPlan::ascent`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ascent {
    /// The advice: the quickest that can be done.
    pub advice: Advice,
    /// The quickest way on the bike and its time, where there is one.
    pub bike: Option<(OnBike, Time)>,
    /// The time with the speed that is brought, where that is much less than a steady one.
    pub brought: Option<Time>,
    /// Time on foot, dismount and remount included.
    pub foot: Time,
    /// The same at the edge of the band that favours going on foot.
    pub foot_at_best: Time,
    /// The same at the edge that favours riding.
    pub foot_at_worst: Time,
    /// What the way on the bike takes from the reserve beyond going on foot, as time at its [price](crate::rider::Spending); it counts
    /// like time in the advice.
    pub dearer: Time,
    /// What a lower gear would be worth.
    pub lower_gear: LowerGear,
}

impl Ascent {
    /// Ways nearer to one another than this are not told apart by a lap as by a climb alone, s. Estimate: the widest lead of 300 climbs
    /// that a lap did otherwise on.
    pub const LAP_MAY_DIFFER_S: f64 = 1.5;

    /// The time of the better way, by the best guess: the quicker one, unless it takes more from the reserve than its time is worth.
    #[must_use]
    pub fn better(&self) -> Time {
        self.bike.map(|(_, time)| time).filter(|_| self.is_better_on_bike()).unwrap_or(self.foot)
    }

    /// Whether that is on the bike.
    #[must_use]
    pub fn is_better_on_bike(&self) -> bool {
        self.bike.is_some_and(|(_, time)| time.s() + self.dearer.s() < self.foot.s())
    }

    /// What the better way gains on the other, what it takes from the reserve counted as time; none where there is no way on the bike.
    #[must_use]
    pub fn lead(&self) -> Option<Time> {
        let (_, bike) = self.bike?;
        Some(Time::new((self.foot.s() - bike.s() - self.dearer.s()).abs()))
    }

    /// Whether a lap at the same price may well do otherwise on this climb: it comes in with speed, gets off where that has gone, and
    /// gets on where it is flat. See [`Self::LAP_MAY_DIFFER_S`].
    #[must_use]
    pub fn lap_may_differ(&self) -> bool {
        self.lead().is_some_and(|lead| lead.s() < Self::LAP_MAY_DIFFER_S)
    }
}

/// The ways up a climb, before one is chosen.
pub(super) struct Ways {
    /// The ride at an even pace.
    pub(super) ridden: Option<(OnBike, Time)>,
    /// On the speed that is brought.
    pub(super) carried: Option<Time>,
    /// Another ride at more power.
    pub(super) forced: Option<(OnBike, Time)>,
    /// On foot, by the best guess, at the best and at the worst, dismount and remount included.
    pub(super) foot: [Time; 3],
    /// What ride and going on foot take from the reserve, as time at its price, in s.
    pub(super) drawn_s: [f64; 2],
}

impl Ways {
    /// The choice; what a lower gear is worth is for the maker to say.
    pub(super) fn ascent(&self) -> Ascent {
        let brought = self.ridden.and_then(|ridden| self.brought(ridden));
        let bike = self.on_bike(self.carried.filter(|_| self.ridden.is_none()).or(brought));
        let [foot, foot_at_best, foot_at_worst] = self.foot;
        let (advice, lower_gear) = (self.advice(bike), LowerGear::Needless);
        let dearer = Time::new(bike.map_or(0.0, |(how, _)| self.dearer_s(how)));
        Ascent { advice, bike, brought, foot, foot_at_best, foot_at_worst, dearer, lower_gear }
    }

    /// Brought speed that counts beside a ride: much quicker than one at the power of the effort, or quicker than one at more.
    fn brought(&self, (how, ride): (OnBike, Time)) -> Option<Time> {
        let share = if how == OnBike::Ridden { MUCH } else { 1.0 };
        self.carried.filter(|time| time.s() < share * ride.s())
    }

    /// What a way takes from the reserve beyond going on foot; a speed that is brought takes nothing.
    fn dearer_s(&self, how: OnBike) -> f64 {
        let [ride, foot] = self.drawn_s;
        if how == OnBike::Carried { -foot } else { ride - foot }
    }

    /// Time of a way, to be held against that on foot.
    fn beside_foot(&self, (how, time): (OnBike, Time)) -> Time {
        Time::new(time.s() + self.dearer_s(how))
    }

    fn on_bike(&self, carried: Option<Time>) -> Option<(OnBike, Time)> {
        let is_plain = |&way: &(OnBike, Time)| way.0 == OnBike::Ridden && self.judged(way) == Verdict::Ride;
        if self.ridden.as_ref().is_some_and(is_plain) {
            return self.ridden;
        }
        let carried = carried.map(|time| (OnBike::Carried, time));
        let quicker = |a: (OnBike, Time), b: (OnBike, Time)| if b.1 < a.1 { b } else { a };
        [self.ridden, carried, self.forced].into_iter().flatten().reduce(quicker)
    }

    fn advice(&self, bike: Option<(OnBike, Time)>) -> Advice {
        let Some(way) = bike else { return Advice::Run };
        match (self.judged(way), way.0) {
            (Verdict::Ride, OnBike::Ridden) => Advice::Ride,
            (Verdict::Ride, OnBike::Carried) => Advice::Carry,
            (Verdict::Ride, OnBike::Forced(_)) => Advice::Force,
            // What asks for more than the even ride has to be better by the best guess.
            (Verdict::TooClose, _) if bike == self.ridden || self.beside_foot(way) < self.foot[0] => {
                Advice::TooClose
            }
            _ => Advice::Run,
        }
    }

    fn judged(&self, way: (OnBike, Time)) -> Verdict {
        let [_, best, worst] = self.foot;
        timed(Some(self.beside_foot(way)), best, worst)
    }
}

impl ClimbPlan {
    /// Decides between riding, carrying speed, forcing a gear and running. `over` is what forcing takes, where power is
    /// left for it.
    #[must_use]
    pub fn ascent(&self, carry: &Carry, over: Option<&OverGear>) -> Ascent {
        let ways = Ways {
            ridden: self.ride.map(|time| (OnBike::Ridden, time)),
            carried: self.carried(carry),
            forced: self.forced(over),
            foot: [self.foot, self.foot_at_best, self.foot_at_worst],
            drawn_s: [0.0; 2],
        };
        let ascent = ways.ascent();
        Ascent { lower_gear: self.lower_gear(ascent.better()), ..ascent }
    }

    /// Time with the speed brought to it; `None` where that does not carry over it, where the wheel slips, or where the
    /// legs cannot follow.
    #[must_use]
    pub fn carried(&self, carry: &Carry) -> Option<Time> {
        carry.over(self.length).filter(|_| !self.answer.limits.grip && !self.answer.spins_out())
    }

    /// Whether more power, or strength that need not last, would keep the bike going: it has grip, but is too slow for the
    /// gear, for balance, or for what the legs give for minutes.
    #[must_use]
    pub fn is_forceable(&self) -> bool {
        let limits = self.answer.limits;
        (limits.gear || limits.balance || limits.force) && !limits.grip
    }

    fn forced(&self, over: Option<&OverGear>) -> Option<(OnBike, Time)> {
        let over = over.filter(|_| self.is_forceable())?;
        Some((OnBike::Forced(over.power), over.over(self.length).ok()?))
    }

    fn lower_gear(&self, quickest: Time) -> LowerGear {
        let limits = self.answer.limits;
        let ridden = self.length.m() / self.answer.ride.m_per_s();
        match limits {
            _ if !limits.gear && !limits.force => LowerGear::Needless,
            _ if limits.grip => LowerGear::Useless(Reason::Grip),
            _ if limits.balance => LowerGear::Useless(Reason::Balance),
            _ if ridden >= self.foot.s() => LowerGear::Useless(Reason::Energy),
            _ if ridden < quickest.s() => LowerGear::Saves(Time::new(quickest.s() - ridden)),
            _ => LowerGear::Spares,
        }
    }
}
