//! The pass against the riding: what it is worth to be anywhere.

use crate::course::reserve::control::{Entry, Rule};
use crate::course::reserve::field::{Field, NEVER, View};
use crate::course::reserve::gearing::In;
use crate::course::reserve::way::{OFF_M_PER_S, SLOWEST};

const FASTEST_SET_OFF: f64 = 2.9;
/// Cost of having to get off faster than anyone can, s.
const FALL: f64 = 1e3;

/// Pace on foot over a stretch at a price.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pace {
    pub(super) speed: f64,
    pub(super) power: f64,
    /// W
    pub(super) charged: f64,
}

/// What the pass and the ride share.
#[derive(Debug, Clone)]
pub(super) struct Planner<'a> {
    pub(super) rule: Rule<'a>,
    pub(super) paces: Vec<Pace>,
    /// Whether gears are chosen or free.
    pub(super) geared: bool,
}

const FASTEST_ON_FOOT: f64 = 5.0;
const SLOWEST_ON_FOOT: f64 = 0.2;

impl<'a> Planner<'a> {
    pub(super) fn new(rule: Rule<'a>, geared: bool) -> Self {
        let paces = (0..rule.way.on_foot.len()).map(|segment| pace(&rule, segment)).collect();
        Self { rule, paces, geared }
    }

    pub(super) fn gear(&self, index: usize) -> In {
        if self.geared { In::One(index) } else { In::Best }
    }

    pub(super) fn gears(&self) -> usize {
        if self.geared { self.rule.gearing.gears.len() } else { 1 }
    }

    pub(super) fn foot_cost(&self, at: usize) -> f64 {
        let cell = &self.rule.way.cells[at];
        let pace = &self.paces[cell.segment];
        cell.length / pace.speed * (1.0 + self.rule.price * pace.charged) + cell.extra
    }

    /// Speed after getting on, where that can be done.
    pub(super) fn set_off(&self, at: usize) -> Option<f64> {
        let cell = &self.rule.way.cells[at];
        let speed = self.paces[cell.segment].speed.min(FASTEST_SET_OFF) - cell.set_off_loss;
        let speed = speed.min(self.rule.way.ceilings[at]);
        (speed >= SLOWEST && !cell.blocked).then_some(speed)
    }

    /// Fills the field from its end, whose values stand.
    pub(super) fn back(&self, field: &mut Field, guesses: &mut [f64]) {
        let mut riding = vec![NEVER; field.nodes * field.gears];
        for at in (0..field.last()).rev() {
            self.ride(field, at, guesses, &mut riding);
            self.settle(field, at, &riding);
        }
    }

    fn ride(&self, field: &Field, at: usize, guesses: &mut [f64], riding: &mut [f64]) {
        let way = self.rule.way;
        let cell = &way.cells[at];
        let (nodes, gears) = (field.nodes, field.gears);
        let ahead = field.speeds(at + 1);
        let range = (ahead[0], ahead[nodes - 1]);
        for (node, &speed) in field.speeds(at).iter().enumerate() {
            let entry = Entry::new(way, cell, speed, range);
            for gear in 0..gears {
                let slot = gear * nodes + node;
                let next = field.view(at + 1, gear);
                let choice = self.rule.best(&entry, self.gear(gear), next, node, guesses[slot]);
                riding[slot] = choice.cost;
                if choice.cost < NEVER {
                    guesses[slot] = choice.power;
                }
            }
        }
    }

    fn settle(&self, field: &mut Field, at: usize, riding: &[f64]) {
        let nodes = field.nodes;
        let mut foot = self.foot_cost(at) + field.foot[at + 1];
        if let Some(speed) = self.set_off(at) {
            let speeds = field.speeds(at);
            let on = |values| View { speeds, values }.value(speed, 0);
            let best = riding.chunks(nodes).map(on).fold(NEVER, f64::min);
            foot = foot.min(self.rule.way.on + best);
        }
        field.foot[at] = foot;
        let off = self.rule.way.off + foot;
        self.shift(field, at, riding);
        for gear in 0..field.gears {
            let from = (at * field.gears + gear) * nodes;
            for node in 0..nodes {
                let speed = field.speeds[at * nodes + node];
                let fall = if speed <= OFF_M_PER_S + 1e-9 { 0.0 } else { FALL };
                let value = &mut field.values[from + node];
                *value = value.min(off + fall);
            }
        }
    }

    /// Riding on as one is, or after a shift.
    fn shift(&self, field: &mut Field, at: usize, riding: &[f64]) {
        let (nodes, gears) = (field.nodes, field.gears);
        let from = at * gears * nodes;
        field.values[from..from + gears * nodes].copy_from_slice(riding);
        if !self.geared {
            return;
        }
        let gearing = self.rule.gearing;
        let speeds = &field.speeds[at * nodes..(at + 1) * nodes];
        let mut rear = vec![NEVER; gears];
        for node in 0..nodes {
            let after = |loss: f64| (speeds[node] * speeds[node] - loss).max(0.0).sqrt();
            let (slower, slowest) = (after(gearing.rear), after(gearing.front));
            let mut front = NEVER;
            for gear in 0..gears {
                let view = View { speeds, values: &riding[gear * nodes..(gear + 1) * nodes] };
                rear[gear] = view.value(slower, node);
                front = front.min(view.value(slowest, node));
            }
            for gear in 0..gears {
                let same = |other: &usize| gearing.gears[*other].ring == gearing.gears[gear].ring;
                let shifted = (0..gears).filter(same).map(|other| rear[other]).fold(front, f64::min);
                let value = &mut field.values[from + gear * nodes + node];
                *value = value.min(shifted);
            }
        }
    }
}

fn pace(rule: &Rule<'_>, segment: usize) -> Pace {
    let demand = &rule.way.on_foot[segment];
    let cost = |speed: f64| (1.0 + rule.price * rule.charge.on_foot_w(demand.crank_w(speed))) / speed;
    let count = 24;
    let speed_of = |k: usize| SLOWEST_ON_FOOT * (FASTEST_ON_FOOT / SLOWEST_ON_FOOT).powf(k as f64 / count as f64);
    let best = (0..=count).min_by(|a, b| cost(speed_of(*a)).total_cmp(&cost(speed_of(*b)))).unwrap_or(0);
    let (mut low, mut high) = (speed_of(best.saturating_sub(1)), speed_of((best + 1).min(count)));
    for _ in 0..40 {
        let (a, b) = (low + 0.382 * (high - low), low + 0.618 * (high - low));
        if cost(a) < cost(b) { high = b } else { low = a }
    }
    let speed = 0.5 * (low + high);
    let power = demand.crank_w(speed);
    Pace { speed, power, charged: rule.charge.on_foot_w(power) }
}
