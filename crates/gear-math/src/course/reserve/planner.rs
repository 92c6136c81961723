//! What the pass back and the ride forward share.

use crate::course::lap::remount::Remount;
use crate::course::reserve::gearing::In;
use crate::course::reserve::pace::Pace;
use crate::course::reserve::rule::Rule;
use crate::course::reserve::way::OFF_M_PER_S;
use crate::quantity::Speed;

/// What it costs to have to get off faster than anyone can, s: a fall, which no plan takes that can do otherwise.
const FALL_S: f64 = 1e3;
const SAME: f64 = 1e-9;

/// What the pass back and the ride forward share.
#[derive(Debug, Clone)]
pub(super) struct Planner<'a> {
    pub(super) rule: Rule<'a>,
    /// On foot, by stretch.
    paces: Vec<Pace>,
    /// Whether gears are chosen, or changed for nothing.
    pub(super) geared: bool,
    /// Slowest and fastest crank pedalled in, over that of the gear that suits best.
    cranks: [f64; 2],
    /// Time of getting off, s.
    pub(super) off: f64,
}

impl<'a> Planner<'a> {
    pub(super) fn new(rule: Rule<'a>, geared: bool, cranks: [f64; 2]) -> Self {
        let paces = rule.way.on_foot.iter().map(|demand| Pace::at(&rule, demand)).collect();
        Self { off: rule.way.off, rule, paces, geared, cranks }
    }

    /// Where getting off takes so much longer, s.
    pub(super) fn doubting(self, off: f64) -> Self {
        Self { off: self.off + off, ..self }
    }

    pub(super) fn gear(&self, index: usize) -> In {
        if self.geared { In::One(index) } else { In::Best }
    }

    pub(super) fn gears(&self) -> usize {
        if self.geared { self.rule.gearing.gears.len() } else { 1 }
    }

    /// Turns of the crank a minute at 1 m/s, at least and at most, in the gears pedalled in at a speed.
    #[inline]
    pub(super) fn cranks_at(&self, speed: f64) -> [f64; 2] {
        let gearing = self.rule.gearing;
        let suits = gearing.rpm[gearing.best(speed, self.rule.account.sustainable_w())];
        self.cranks.map(|share| share * suits)
    }

    #[inline]
    pub(super) fn is_pedalled(&self, gear: usize, [slowest, fastest]: [f64; 2]) -> bool {
        let rpm = self.rule.gearing.rpm[gear];
        !self.geared || (rpm >= slowest && rpm <= fastest)
    }

    pub(super) fn pace(&self, at: usize) -> &Pace {
        &self.paces[self.rule.way.cells[at].segment]
    }

    /// Time and price of a step on foot, s.
    pub(super) fn foot_cost(&self, at: usize) -> f64 {
        let (cell, pace) = (&self.rule.way.cells[at], self.pace(at));
        cell.length / pace.speed * (1.0 + self.rule.price * pace.charge) + cell.extra
    }

    /// Speed after getting on before a step; none where that cannot be done.
    pub(super) fn set_off(&self, at: usize) -> Option<f64> {
        let cell = &self.rule.way.cells[at];
        let remount = Remount::at(Speed::new(self.pace(at).speed), cell.gradient, cell.coefficient);
        let speed = remount.speed.m_per_s().min(self.rule.way.ceilings[at]);
        (remount.is_possible() && !cell.blocked).then_some(speed)
    }

    /// What getting off at a speed costs beside the time that it takes, s.
    #[inline]
    pub(super) fn fall(speed: f64) -> f64 {
        if speed <= OFF_M_PER_S + SAME { 0.0 } else { FALL_S }
    }
}
