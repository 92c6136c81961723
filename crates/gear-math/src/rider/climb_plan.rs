//! One climb: the time each way takes, and what a tall gear or a run-up makes of it.

use super::road_load::sine_cosine;
use crate::{
    Answer, Climb, ClimbLength, CriticalPower, Distance, Ground, PowerDemand, ReserveShare, RideOrRun,
    SecondsLost, Speed, Time, Verdict, WheelInertia, break_even_length,
};

/// A climb of known length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClimbPlan {
    /// The answer without length.
    pub answer: Answer,
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

/// Keeping a gear turning that is too tall for the slope.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OverGear {
    /// Speed of the lowest gear at the lowest cadence.
    pub speed: Speed,
    /// Power that it takes.
    pub power: PowerDemand,
    /// How long and how far it lasts; `None` when the power can be sustained.
    pub lasts: Option<(Time, Distance)>,
}

/// Speed carried into a slope.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Carry {
    /// Speed of the lowest gear at the lowest cadence, where riding ends.
    pub exit: Speed,
    /// Way and height gained before that, along the slope and upright, in metres; `None` when full power holds a
    /// higher speed.
    pub reach: Option<(Distance, Distance)>,
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
            ride,
            foot: foot_at(answer.ratio.reference),
            foot_at_best,
            foot_at_worst,
            break_even: held.and_then(|held| break_even_length(held, answer.foot, lost)),
            verdict: timed(ride, foot_at_best, foot_at_worst),
        }
    }

    /// What it takes to keep the lowest gear turning at the lowest cadence, and how long that lasts.
    #[must_use]
    pub fn over_gear(
        &self,
        ground: &Ground,
        gradient: Climb,
        effort: &CriticalPower,
        share: ReserveShare,
    ) -> OverGear {
        let speed = Speed::new(self.gearing.speed_without_cadence());
        let power = self.resistance(ground, gradient).power(speed).at_crank();
        let far = |time: Time| (time, Distance::new(speed.m_per_s() * time.s()));
        OverGear { speed, power, lasts: effort.lasts(power, share).map(far) }
    }

    /// How far up a slope the entry speed carries, pedalling on with full power, before the lowest gear runs out.
    #[must_use]
    pub fn carry(&self, ground: &Ground, gradient: Climb, entry: Speed, inertia: WheelInertia) -> Carry {
        let exit = Speed::new(self.gearing.speed_without_cadence());
        let mass = self.load(ground).effective_mass(inertia, self.bike.wheel);
        let way = self.resistance(ground, gradient).distance_slowing(self.rider.power, mass, entry, exit);
        let (sine, _) = sine_cosine(gradient.rise_over_run());
        Carry { exit, reach: way.map(|way| (way, Distance::new(way.m() * sine))) }
    }
}

fn timed(ride: Option<Time>, foot_at_best: Time, foot_at_worst: Time) -> Verdict {
    match ride {
        None => Verdict::FootForced,
        Some(ride) if foot_at_best > ride => Verdict::Ride,
        Some(ride) if foot_at_worst < ride => Verdict::Foot,
        Some(_) => Verdict::TooClose,
    }
}
