//! The lap as it is ridden by what the pass found.

use crate::course::reserve::back::Planner;
use crate::course::reserve::control::{Choice, Entry};
use crate::course::reserve::field::{Field, NEVER};
use crate::course::reserve::way::OFF_M_PER_S;

/// Where a rider stands at the beginning of a step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum State {
    /// Riding at a speed in a gear.
    Riding(f64, usize),
    /// Beside the bike.
    OnFoot,
}

/// One step as it went.
#[derive(Debug, Clone, Copy)]
pub(super) struct Moment {
    /// The gear, riding.
    pub(super) gear: Option<usize>,
    /// Speed at its beginning, after a shift or after getting on.
    pub(super) entry: f64,
    pub(super) exit: f64,
    pub(super) power: f64,
    /// Time of the step with its extra.
    pub(super) time: f64,
    /// Time of getting off or on before it.
    pub(super) change: f64,
    pub(super) charged_w: f64,
    /// s, of the time for which that is charged.
    pub(super) charged_s: f64,
    pub(super) shift: Option<(usize, usize)>,
}

#[derive(Debug, Clone)]
pub(super) struct Ridden {
    pub(super) moments: Vec<Moment>,
    pub(super) begin: State,
    pub(super) end: State,
    pub(super) time: f64,
    pub(super) charge: f64,
}

impl Planner<'_> {
    /// Rides the lap from a state.
    pub(super) fn forward(&self, field: &Field, begin: State) -> Ridden {
        let mut moments = Vec::with_capacity(field.last());
        let mut state = begin;
        for at in 0..field.last() {
            let moment;
            (state, moment) = self.next(field, at, state);
            moments.push(moment);
        }
        let time = moments.iter().map(|it: &Moment| it.time + it.change).sum();
        let charge = moments.iter().map(|it| it.charged_w * it.charged_s).sum();
        Ridden { moments, begin, end: state, time, charge }
    }

    fn next(&self, field: &Field, at: usize, state: State) -> (State, Moment) {
        match state {
            State::OnFoot => self.from_foot(field, at, 0.0),
            State::Riding(speed, gear) => {
                let (choice, to, entry) = self.best_ride(field, at, speed, Some(gear));
                let fall = if speed <= OFF_M_PER_S + 1e-9 { 0.0 } else { 1e3 };
                let off = self.rule.way.off + field.foot[at] + fall;
                if off < choice.cost {
                    return self.from_foot(field, at, self.rule.way.off);
                }
                let shift = (to != gear).then_some((gear, to));
                self.ridden(at, choice, to, entry, 0.0, shift)
            }
        }
    }

    fn from_foot(&self, field: &Field, at: usize, change: f64) -> (State, Moment) {
        let walk = self.foot_cost(at) + field.foot[at + 1];
        if let Some(speed) = self.set_off(at) {
            let (choice, gear, entry) = self.best_ride(field, at, speed, None);
            if self.rule.way.on + choice.cost < walk {
                return self.ridden(at, choice, gear, entry, change + self.rule.way.on, None);
            }
        }
        let cell = &self.rule.way.cells[at];
        let pace = &self.paces[cell.segment];
        let seconds = cell.length / pace.speed;
        let moment = Moment {
            gear: None,
            entry: pace.speed,
            exit: pace.speed,
            power: pace.power,
            time: seconds + cell.extra,
            change,
            charged_w: pace.charged,
            charged_s: seconds,
            shift: None,
        };
        (State::OnFoot, moment)
    }

    /// The best gear to ride in, its choice and the speed after a shift to it.
    fn best_ride(&self, field: &Field, at: usize, speed: f64, from: Option<usize>) -> (Choice, usize, f64) {
        let ahead = field.speeds(at + 1);
        let range = (ahead[0], ahead[field.nodes - 1]);
        let mut best = (Choice::NONE, from.unwrap_or(0), speed);
        for gear in 0..self.gears() {
            let loss = from.map_or(0.0, |from| if from == gear { 0.0 } else { self.rule.gearing.shift_loss(from, gear) });
            let entered = if loss > 0.0 { (speed * speed - loss).max(0.0).sqrt() } else { speed };
            if loss > 0.0 && !field.view(at, gear).holds(entered) {
                continue;
            }
            let entry = Entry::new(self.rule.way, &self.rule.way.cells[at], entered, range);
            let guess = self.rule.charge.cp;
            let choice = self.rule.best(&entry, self.gear(gear), field.view(at + 1, gear), field.nodes / 2, guess);
            if choice.cost < best.0.cost - 1e-12 {
                best = (choice, gear, entered);
            }
        }
        best
    }

    fn ridden(
        &self,
        at: usize,
        choice: Choice,
        gear: usize,
        entry: f64,
        change: f64,
        shift: Option<(usize, usize)>,
    ) -> (State, Moment) {
        let cell = &self.rule.way.cells[at];
        let mean = 0.5 * (entry + choice.end);
        let used = self.rule.gearing.used(self.gear(gear), mean, choice.power);
        let time = cell.length / mean;
        let charged = self.rule.charge.charge_w(choice.power, self.rule.gearing.rpm[used] * mean);
        let moment = Moment {
            gear: Some(used),
            entry,
            exit: choice.end,
            power: choice.power,
            time,
            change,
            charged_w: if choice.cost < NEVER { charged } else { 0.0 },
            charged_s: time,
            shift,
        };
        (State::Riding(choice.end, gear), moment)
    }
}
