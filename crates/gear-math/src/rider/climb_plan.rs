//! One climb: the time each way takes, and what a tall gear or a run-up makes of it.

use crate::gears::{Gear, PedalRate};
use crate::quantity::{Limits, Speed};
use crate::rider::effort::CriticalPower;
use crate::rider::gearing::Riding;
use crate::rider::ground::Ground;
use crate::rider::limits::Reason;
use crate::rider::obstacle::{Slowing, break_even_length};
use crate::rider::pedalling::LegStrength;
use crate::rider::quantity::{
    BalanceSpeed, Climb, ClimbLength, Distance, EffortTime, PowerDemand, ReserveShare, SecondsLost, Time,
    WheelInertia,
};
use crate::rider::ride_or_run::RideOrRun;
use crate::rider::road_load::sine_cosine;
use crate::rider::verdict::{Answer, Verdict};
use crate::solve::halved;

/// A climb of known length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClimbPlan {
    /// The answer without length.
    pub answer: Answer,
    /// The length.
    pub length: ClimbLength,
    /// Time on the bike; `None` where a limit forbids riding.
    pub ride: Option<Time>,
    /// Time on foot, getting off and on included.
    pub foot: Time,
    /// The same at the edge of the band that favours going on foot.
    pub foot_at_best: Time,
    /// The same at the edge that favours riding.
    pub foot_at_worst: Time,
    /// Length above which getting off pays; `None` when it never does, or when riding is out of the question.
    pub break_even: Option<Distance>,
    /// The judgement on time.
    pub verdict: Verdict,
}

/// Keeping up a speed that the sustained power does not hold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OverGear {
    /// The slowest speed that can be ridden: of the lowest gear at the lowest cadence, or of balance. Where nothing but
    /// strength that lasts is lacking it is that of full power, which shorter strength may turn.
    pub speed: Speed,
    /// The gear to do it in.
    pub gear: Gear,
    /// Its cadence.
    pub cadence: PedalRate,
    /// Power that it takes.
    pub power: PowerDemand,
    /// How long and how far the reserve lasts; `None` when the power can be sustained.
    pub lasts: Option<(Time, Distance)>,
    effort: CriticalPower,
    share: ReserveShare,
    legs: Option<LegStrength>,
}

/// What a rider has too little of to force a gear.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Shortfall {
    /// The legs do not give that power at that cadence for so long.
    Legs,
    /// The share of the reserve is spent before, or the power is above what a fresh rider holds so long.
    Reserve,
}

impl OverGear {
    /// Time over a climb of this length.
    ///
    /// # Errors
    /// [`Shortfall::Legs`] when leg strength counts and is too small at the cadence, [`Shortfall::Reserve`] when the
    /// power is above [`CriticalPower::race_power`].
    pub fn over(&self, length: ClimbLength) -> Result<Time, Shortfall> {
        let time = Time::new(length.m() / self.speed.m_per_s());
        let holds = self.effort.race_power(self.share, EffortTime::nearest(time.s()));
        if self.legs.is_some_and(|legs| self.power > legs.power_for(time, self.cadence)) {
            Err(Shortfall::Legs)
        } else if self.power > holds {
            Err(Shortfall::Reserve)
        } else {
            Ok(time)
        }
    }
}

/// Halvings of the model's lengths that leave less than a tenth of a metre.
const HALVINGS: u32 = 16;

impl OverGear {
    /// How long and how far legs and reserve allow it; `None` where they do not at all.
    #[must_use]
    pub fn longest(&self) -> Option<(Time, Distance)> {
        let time = |m: f64| self.over(ClimbLength::nearest(m)).ok();
        let Limits { min, max, .. } = ClimbLength::LIMITS;
        let able =
            if time(max).is_some() { max } else { halved(min, max, HALVINGS, |m| time(m).is_some()).0 };
        time(able).map(|time| (time, Distance::new(able)))
    }
}

/// Speed carried into a slope.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Carry {
    /// Speed at which riding ends: the highest that gear, strength or balance ask for.
    pub exit: Speed,
    /// What is gained before that; `None` when full power holds a higher speed.
    pub reach: Option<CarryReach>,
    slowing: Slowing,
}

/// How far a carried speed goes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CarryReach {
    /// Along the slope.
    pub way: Distance,
    /// Upright.
    pub height: Distance,
    /// The time it takes.
    pub time: Time,
}

impl Carry {
    /// Time over a climb of this length at full power; `None` when riding ends before.
    #[must_use]
    pub fn over(&self, length: ClimbLength) -> Option<Time> {
        self.slowing.over(length, self.exit)
    }
}

impl RideOrRun {
    /// Times a climb.
    #[must_use]
    pub fn climb(
        &self,
        ground: &Ground,
        gradient: Climb,
        length: ClimbLength,
        lost: SecondsLost,
    ) -> ClimbPlan {
        let answer = self.answer(ground, gradient);
        let foot_at = |ratio: f64| Time::new(length.m() / (ratio * answer.ride.m_per_s()) + lost.s());
        let held = answer.riding.held.filter(|_| !answer.limits.any());
        let ride = held.map(|held| Time::new(length.m() / held.m_per_s()));
        let (foot_at_best, foot_at_worst) = (foot_at(answer.ratio.high), foot_at(answer.ratio.low));
        ClimbPlan {
            answer,
            length,
            ride,
            foot: foot_at(answer.ratio.reference),
            foot_at_best,
            foot_at_worst,
            break_even: held.and_then(|held| break_even_length(held, answer.foot, lost)),
            verdict: timed(ride, foot_at_best, foot_at_worst),
        }
    }

    /// What it takes to keep riding at the slowest speed that gear and balance allow, and how long that lasts.
    #[must_use]
    pub fn over_gear(
        &self,
        ground: &Ground,
        gradient: Climb,
        effort: &CriticalPower,
        share: ReserveShare,
    ) -> OverGear {
        let balance = self.limits.balance.map_or(0.0, BalanceSpeed::m_per_s);
        let slowest = Speed::new(self.gearing.speed_without_cadence().max(balance));
        let answer = self.answer(ground, gradient);
        let speed = if answer.limits.is_force_alone() { answer.ride } else { slowest };
        let power = self.resistance(ground, gradient).power(speed).at_crank();
        let far = |time: Time| (time, Distance::new(speed.m_per_s() * time.s()));
        let Riding { gear, cadence, .. } = self.gearing.riding(speed.m_per_s());
        let lasts = effort.lasts(power, share).map(far);
        OverGear { speed, gear, cadence, power, lasts, effort: *effort, share, legs: self.limits.force }
    }

    /// How far up a slope the entry speed carries, pedalling on with full power, before gear, strength or balance end
    /// the riding.
    #[must_use]
    pub fn carry(&self, ground: &Ground, gradient: Climb, entry: Speed, inertia: WheelInertia) -> Carry {
        let ends = [Reason::Gear, Reason::Force, Reason::Balance];
        let exit = ends.into_iter().filter_map(|reason| self.least_speed(reason)).fold(0.0, f64::max);
        let mass = self.load(ground).effective_mass(inertia, self.bike.wheel);
        let slowing = self.resistance(ground, gradient).slowing(self.rider.power, mass, entry);
        let (sine, _) = sine_cosine(gradient.rise_over_run());
        let reach = slowing.down_to(Speed::new(exit)).map(|(way, time)| CarryReach {
            way,
            height: Distance::new(way.m() * sine),
            time,
        });
        Carry { exit: Speed::new(exit), reach, slowing }
    }
}

/// The judgement on a time, within the times on foot at the edges of their band.
pub(super) fn timed(ride: Option<Time>, foot_at_best: Time, foot_at_worst: Time) -> Verdict {
    match ride {
        None => Verdict::FootForced,
        Some(ride) if foot_at_best > ride => Verdict::Ride,
        Some(ride) if foot_at_worst < ride => Verdict::Foot,
        Some(_) => Verdict::TooClose,
    }
}
