//! What there is to say of the climb that was asked about.

use crate::ride::report::RideReport;
use crate::ride::side::RideSide;
use crate::side::Side;
use gear_math::rider::{
    Advice, CarryReach, ClimbLength, Distance, MarkKind, OnBike, OverGear, Shortfall, Time,
};

/// A way that speed carries is worth a word from here on, metres.
const NEAR: f64 = 0.5;

/// How long the power that forces a climb lasts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum ForcedFor {
    /// As long as one likes.
    Ever,
    /// The legs do not give it for so long at that cadence.
    TooLittle,
    /// The share of the reserve lasts so long and so far.
    Lasts { time: Time, far: Distance, enough: Enough },
}

/// Whether that is enough for the climb.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Enough {
    No,
    Yes,
    /// It is, but running is quicker.
    ButSlower,
}

impl RideReport {
    /// The set-up that has to be forced and is ahead by that power, not by its gears.
    pub(crate) fn ahead_by_power(&self) -> Option<Side> {
        let [a, b] = &self.sides;
        let is_ahead = |forced: &RideSide, other: &RideSide| {
            forced.ascent.advice == Advice::Force
                && matches!(other.ascent.advice, Advice::Ride | Advice::Force)
                && forced.ascent.quickest() < other.ascent.quickest()
        };
        [(a, b), (b, a)].into_iter().find(|(forced, other)| is_ahead(forced, other)).map(|(it, _)| it.side)
    }

    /// Whether the climb is so short that gears hardly count, and not too steep for grip.
    pub(crate) fn is_matter_of_momentum(&self) -> bool {
        self.inputs.length.is_ramp() && self.sides.iter().any(|side| !side.plan.answer.limits.grip)
    }

    /// Whether a side does best to force it.
    pub(crate) fn is_forced(&self) -> bool {
        self.sides.iter().any(|side| side.ascent.advice == Advice::Force)
    }

    /// From which slope a heavy, uneven stroke makes the rear wheel slip, where that is on this climb and someone rides
    /// it, per cent.
    pub(crate) fn slips_in_jerks_from(&self) -> Option<f64> {
        let side = self.ridden().filter(|side| side.plan.answer.slips_in_jerks)?;
        Some(side.from(MarkKind::SlipsInJerks))
    }

    /// The same of the front wheel that lifts.
    pub(crate) fn lifts_in_jerks_from(&self) -> Option<f64> {
        let side = self.ridden().filter(|side| side.plan.answer.front_lifts)?;
        Some(side.from(MarkKind::FrontLifts))
    }

    fn ridden(&self) -> Option<&RideSide> {
        self.sides.iter().find(|side| side.stays_on())
    }

    /// The headwind, where there is one, m/s.
    pub(crate) fn wind_m_s(&self) -> Option<f64> {
        Some(self.inputs.air.headwind.m_per_s()).filter(|&wind| wind != 0.0)
    }

    /// Whether forcing or carrying is done in the same gears with both: then all else of it is the same.
    pub(crate) fn forces_alike(&self) -> bool {
        let [a, b] =
            [&self.sides[0], &self.sides[1]].map(|side| (side.lowest, side.over_gear.map(|over| over.gear)));
        a == b
    }
}

impl RideSide {
    /// From which slope something holds that holds on this climb, per cent.
    fn from(&self, kind: MarkKind) -> f64 {
        let mark = self.marks.iter().find(|mark| mark.kind == kind);
        mark.map_or(self.plan.answer.gradient.percent(), |mark| mark.gradient.percent())
    }

    /// The time of getting up in another way than by a steady ride, where that is the advice.
    pub(crate) fn other_way(&self) -> Option<Time> {
        let (how, time) = self.ascent.bike.filter(|_| self.ascent.advice != Advice::Run)?;
        (how != OnBike::Ridden).then_some(time)
    }

    /// How long the power that forces a climb of this length lasts.
    pub(crate) fn forced_for(&self, over: &OverGear, length: ClimbLength) -> ForcedFor {
        let enough = match over.over(length) {
            Err(Shortfall::Reserve) if over.lasts.is_some_and(|(_, far)| far.m() < length.m()) => Enough::No,
            Err(_) => return ForcedFor::TooLittle,
            Ok(time) if time < self.plan.foot => Enough::Yes,
            Ok(_) => Enough::ButSlower,
        };
        over.lasts.map_or(ForcedFor::Ever, |(time, far)| ForcedFor::Lasts { time, far, enough })
    }

    /// How far speed carries up it, where that is a way worth a word.
    pub(crate) fn carries(&self) -> Option<CarryReach> {
        self.carry.reach.filter(|reach| reach.way.m() >= NEAR && !self.plan.answer.limits.grip)
    }
}
