//! The lap as it is ridden by what the pass found.

use crate::course::reserve::entry::Entry;
use crate::course::reserve::field::{Field, NEVER};
use crate::course::reserve::moment::{Moment, Ridden, State};
use crate::course::reserve::planner::Planner;
use crate::course::reserve::rule::Choice;

/// A gear is changed for more than this, s: less is rounding.
const LEAST_GAIN: f64 = 1e-9;
/// Shifts that are tried, of those worth most by the field.
const LIKELY: usize = 2;
/// Most laps ridden until one ends as it began.
const MOST_LAPS: usize = 5;

/// Riding on, after a shift where there is one.
#[derive(Debug, Clone, Copy)]
struct Ahead {
    choice: Choice,
    gear: usize,
    /// Speed after a shift, m/s.
    entry: f64,
}

impl Planner<'_> {
    /// Rides laps from a state until one ends as it began.
    pub(super) fn flying(&self, field: &Field, begin: State) -> Ridden {
        let mut ridden = self.forward(field, begin);
        for _ in 1..MOST_LAPS {
            if ridden.begin.is_like(ridden.end) {
                break;
            }
            ridden = self.forward(field, ridden.end);
        }
        ridden
    }

    fn forward(&self, field: &Field, begin: State) -> Ridden {
        let mut end = begin;
        let step = |at: usize| {
            let (state, moment) = self.next(field, at, end);
            end = state;
            moment
        };
        let moments: Vec<Moment> = (0..field.end()).map(step).collect();
        let reluctance = moments.iter().map(|moment| self.reluctance(moment)).sum();
        let unclosed = field.at_line(end) - field.at_line(begin);
        Ridden { moments, begin, end, price: self.rule.price, unclosed, reluctance }
    }

    fn reluctance(&self, moment: &Moment) -> f64 {
        let pedalled = moment.gear.filter(|_| moment.power > 0.0);
        pedalled.map_or(0.0, |gear| self.rule.gearing.reluctance[gear] * moment.charged)
    }

    fn next(&self, field: &Field, at: usize, state: State) -> (State, Moment) {
        let State::Riding(speed, gear) = state else {
            return self.after_foot(field, at, 0.0);
        };
        let [slowest, fastest] = field.range(at);
        let ahead = self.ahead(field, at, speed.clamp(slowest, fastest), Some(gear));
        let off = self.off;
        if off + field.foot[at] + Self::fall(speed) < ahead.choice.cost {
            return self.after_foot(field, at, off);
        }
        let shifted_from = (ahead.gear != gear).then_some(gear);
        let (state, moment) = self.ridden(at, &ahead);
        (state, Moment { shifted_from, ..moment })
    }

    fn after_foot(&self, field: &Field, at: usize, off: f64) -> (State, Moment) {
        let on = self.rule.way.on;
        let ahead = self.set_off(at).map(|speed| self.ahead(field, at, speed, None));
        let better = ahead.filter(|it| on + it.choice.cost < self.foot_cost(at) + field.foot[at + 1]);
        let Some(ahead) = better else {
            return (State::OnFoot, self.on_foot(at, off));
        };
        let (state, moment) = self.ridden(at, &ahead);
        (state, Moment { off, on, ..moment })
    }

    fn on_foot(&self, at: usize, off: f64) -> Moment {
        let (cell, pace) = (&self.rule.way.cells[at], self.pace(at));
        Moment {
            gear: None,
            entry: pace.speed,
            exit: pace.speed,
            power: pace.power,
            charge: pace.charge,
            charged: cell.length / pace.speed,
            off,
            on: 0.0,
            extra: cell.extra,
            shifted_from: None,
        }
    }

    /// The best way on, in the gear that is in or in those into which a shift is worth most by the field.
    fn ahead(&self, field: &Field, at: usize, speed: f64, from: Option<usize>) -> Ahead {
        let none = Ahead { choice: Choice::NONE, gear: from.unwrap_or(0), entry: speed };
        let stays = from.map_or(none, |gear| self.ahead_in(field, at, speed, gear));
        let mut others: Vec<(f64, f64, usize)> = (0..self.gears())
            .filter(|gear| Some(*gear) != from)
            .map(|gear| {
                let loss = from.map_or(0.0, |from| self.rule.gearing.loss(from, gear));
                let entry = (speed * speed - loss).max(0.0).sqrt();
                (field.riding(at, gear).nearest(entry), entry, gear)
            })
            .collect();
        others.sort_unstable_by(|a, b| a.0.total_cmp(&b.0));
        let tried = if from.is_some() { LIKELY } else { usize::MAX };
        others.iter().take(tried).fold(stays, |best, &(_, entry, gear)| {
            let other = self.ahead_in(field, at, entry, gear);
            if other.choice.cost < best.choice.cost - LEAST_GAIN { other } else { best }
        })
    }

    fn ahead_in(&self, field: &Field, at: usize, entry: f64, gear: usize) -> Ahead {
        let way = self.rule.way;
        let step = Entry::new(way, &way.cells[at], entry, field.range(at + 1));
        let (node, usual) = (field.nodes / 2, self.rule.account.sustainable_w());
        let (chosen, line) = (self.gear(gear), field.line(at + 1, gear));
        let choice = if self.is_pedalled(gear, self.cranks_at(entry)) {
            self.rule.surely(&step, chosen, line, node, usual)
        } else {
            self.rule.idle(&step, line, node)
        };
        Ahead { choice, gear, entry }
    }

    fn ridden(&self, at: usize, ahead: &Ahead) -> (State, Moment) {
        let Ahead { choice: Choice { end, power, cost }, gear, entry } = *ahead;
        let mean = 0.5 * (entry + end);
        let chosen = self.gear(gear);
        let moment = Moment {
            gear: Some(self.rule.gearing.used(chosen, mean, power)),
            entry,
            exit: end,
            power,
            charge: if cost < NEVER { self.rule.charge(chosen, mean, power) } else { 0.0 },
            charged: self.rule.way.cells[at].length / mean,
            off: 0.0,
            on: 0.0,
            extra: 0.0,
            shifted_from: None,
        };
        (State::Riding(end, gear), moment)
    }
}
