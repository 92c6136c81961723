//! What there is to say of the climb that was asked about.

use crate::ride::report::RideReport;
use crate::ride::side::RideSide;
use gear_math::rider::{Advice, CarryReach, MarkKind, Time, Verdict};
use gear_math::{Cadence, Development};

/// A way that speed carries is worth a word from here on, metres.
const NEAR: f64 = 0.5;

/// Why this climb is answered otherwise than its slope would be if it went on and on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Otherwise {
    /// It is short enough for what may be drawn from the reserve.
    Reserve,
    /// Getting off and on takes its time.
    Lost,
    /// Full power at the lowest cadence is not asked for.
    Slower,
    /// What a cadence off the preferred one costs is counted.
    Cadence,
}

/// Power on foot that shows that the reserve counts, over the power that lasts: so much more of it is no longer rounding.
const DRAWN: f64 = 1.02;

impl RideReport {
    /// Whether the climb is so short that gears hardly count, and not too steep for grip.
    pub(crate) fn is_matter_of_momentum(&self) -> bool {
        self.inputs.length.is_ramp() && self.sides.iter().any(|side| !side.plan.answer.limits.grip)
    }

    /// The lowest gears that this climb asks of A and of B: at the power that lasts and the lowest cadence. None where grip or balance
    /// end riding first.
    pub(crate) fn asked_gears(&self) -> [Option<Development>; 2] {
        let lowest = self.inputs.rider.lowest_cadence;
        self.sides.each_ref().map(|side| {
            let answer = &side.plan.answer;
            let can_be_ridden = !answer.limits.grip && !answer.limits.balance;
            can_be_ridden.then(|| Development::of(answer.ride, lowest))
        })
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

    /// Whether a brought speed carries as far with both.
    pub(crate) fn carries_alike(&self) -> bool {
        self.sides[0].carry == self.sides[1].carry
    }
}

impl RideSide {
    /// From which slope something holds that holds on this climb, per cent.
    fn from(&self, kind: MarkKind) -> f64 {
        let mark = self.marks.iter().find(|mark| mark.kind == kind);
        mark.map_or(self.plan.answer.gradient.percent(), |mark| mark.gradient.percent())
    }

    /// The time of getting up on the bike, where that is the advice.
    pub(crate) fn advised_time(&self) -> Option<Time> {
        let (_, time) = self.ascent.bike.filter(|_| self.ascent.advice != Advice::Run)?;
        Some(time)
    }

    /// Whether a lap may do otherwise, though one way is advised.
    pub(crate) fn lap_may_differ(&self) -> bool {
        self.ascent.advice != Advice::TooClose && self.ascent.lap_may_differ()
    }

    /// Whether the advised way is the slower one by the best guess, and better for what it leaves in the reserve.
    pub(crate) fn is_spared(&self) -> bool {
        let is_run = self.ascent.advice == Advice::Run;
        self.ascent
            .bike
            .is_some_and(|(_, bike)| bike != self.ascent.foot && is_run == (bike < self.ascent.foot))
    }

    /// Why the advice is not that of the map for the same slope; `None` where it is, or where brought speed makes it.
    pub(crate) fn otherwise(&self, lowest: Cadence) -> Option<Otherwise> {
        let steady = self.plan.answer.verdict;
        let advised = match self.ascent.advice {
            Advice::Carry => return None,
            Advice::Ride | Advice::Force => Verdict::Ride,
            Advice::TooClose => Verdict::TooClose,
            Advice::Run => Verdict::Foot,
        };
        let is_like = |other: Verdict| other == steady || on_foot(other) && on_foot(steady);
        let paced = &self.paced;
        let is_slow = paced.ride.is_some_and(|ride| ride.cadence.rpm() < lowest.rpm());
        Some(match paced.foot.power.watts() > DRAWN * paced.sustainable.watts() {
            _ if is_like(advised) => return None,
            _ if is_like(paced.verdict) => Otherwise::Lost,
            _ if self.plan.answer.limits.gear && is_slow => Otherwise::Slower,
            true => Otherwise::Reserve,
            false => Otherwise::Cadence,
        })
    }

    /// How far speed carries up it, where that is a way worth a word.
    pub(crate) fn carries(&self) -> Option<CarryReach> {
        self.carry.reach.filter(|reach| reach.way.m() >= NEAR && !self.plan.answer.limits.grip)
    }
}

const fn on_foot(verdict: Verdict) -> bool {
    matches!(verdict, Verdict::Foot | Verdict::FootForced)
}
