//! The plan of a lap: its price, and the lap ridden at it.

use crate::course::course::Course;
use crate::course::reserve::back::Planner;
use crate::course::reserve::control::Rule;
use crate::course::reserve::field::Field;
use crate::course::reserve::fineness::Fineness;
use crate::course::reserve::forward::{Ridden, State};
use crate::course::reserve::gearing::Gearing;
use crate::course::reserve::setup::ReserveSetup;
use crate::course::reserve::way::{SLOWEST, Way};

const LOOK_AHEAD_M: f64 = 1200.0;

/// A lap at a price.
#[derive(Debug, Clone)]
pub(super) struct Priced {
    pub(super) price: f64,
    pub(super) ridden: Ridden,
}

pub(super) struct Search<'a> {
    pub(super) setup: &'a ReserveSetup,
    pub(super) fineness: Fineness,
    pub(super) way: Way,
    pub(super) gearing: Gearing,
}

impl<'a> Search<'a> {
    pub(super) fn new(course: &Course, setup: &'a ReserveSetup, fineness: Fineness) -> Self {
        let way = Way::new(course, setup, fineness.step_m);
        let gearing = Gearing::new(setup, way.mass);
        Self { setup, fineness, way, gearing }
    }

    fn planner(&self, price: f64, geared: bool) -> Planner<'_> {
        let turns = std::env::var("TURNS").ok().and_then(|v| v.parse().ok()).unwrap_or(2);
        let rule = Rule { way: &self.way, charge: &self.setup.charge, gearing: &self.gearing, price, turns, refine: std::env::var("REFINE").ok().and_then(|v| v.parse().ok()).unwrap_or(0) };
        Planner::new(rule, geared)
    }

    fn rounds(&self) -> usize {
        let length: f64 = self.way.cells.iter().map(|cell| cell.length).sum();
        (LOOK_AHEAD_M / length).ceil().max(1.0) as usize + 1
    }

    fn lap(&self, planner: &Planner<'_>, field: &mut Field, rounds: usize, begin: Option<State>) -> Ridden {
        let mut guesses = vec![self.setup.charge.cp; field.nodes * field.gears];
        for round in 0..rounds {
            if round > 0 {
                field.repeat();
            }
            planner.back(field, &mut guesses);
        }
        let mut state = begin.unwrap_or_else(|| self.some_state(field));
        let mut ridden = planner.forward(field, state);
        for _ in 0..4 {
            let done = alike(ridden.begin, ridden.end);
            if done {
                break;
            }
            state = ridden.end;
            ridden = planner.forward(field, state);
        }
        ridden
    }

    fn some_state(&self, field: &Field) -> State {
        let speeds = field.speeds(0);
        State::Riding(speeds[field.nodes / 2].min(6.0).min(speeds[field.nodes - 1]), 0)
    }

    pub(super) fn free_ranges(&self) -> Vec<(f64, f64)> {
        self.way.ceilings.iter().map(|&ceiling| (SLOWEST, ceiling)).collect()
    }

    /// The lap whose charge comes nearest to the budget.
    pub(super) fn plan(&self) -> (Priced, Vec<(f64, f64, f64)>) {
        let cp = self.setup.charge.cp;
        let mut log = Vec::new();
        let mut field = Field::new(self.fineness.speeds, 1, &self.free_ranges());
        let mut price = 0.7 / cp;
        field.begin(price, self.way.mass / self.way.efficiency);
        let (mut rounds, mut state) = (self.rounds(), None);
        let mut hunt = Hunt::new(self.setup.budget_j);
        let mut best: Option<Priced> = None;
        for _ in 0..self.fineness.prices {
            let planner = self.planner(price, false);
            let ridden = self.lap(&planner, &mut field, rounds, state);
            log.push((price, ridden.time, ridden.charge));
            (rounds, state) = (1, Some(ridden.end));
            field.repeat();
            let off = ridden.charge - self.setup.budget_j;
            let tolerance = self.fineness.near_budget * cp * ridden.time;
            let next = hunt.next(price, ridden.charge, cp * ridden.time);
            let better = best.as_ref().is_none_or(|it| (it.ridden.charge - self.setup.budget_j).abs() > off.abs());
            if better {
                best = Some(Priced { price, ridden });
            }
            let Some(next) = next else { break };
            if off.abs() < tolerance {
                break;
            }
            price = next.min(0.98 / (cp * self.setup.charge.repaid));
        }
        let Some(free) = best else { unreachable!() };
        self.geared(free, &mut log)
    }

    fn geared(&self, free: Priced, log: &mut Vec<(f64, f64, f64)>) -> (Priced, Vec<(f64, f64, f64)>) {
        let gears = self.gearing.gears.len();
        let cp = self.setup.charge.cp;
        let mut price = free.price;
        let mut hunt = Hunt::new(self.setup.budget_j);
        let mut field = Field::new(self.fineness.near_speeds, gears, &self.near_ranges(&free.ridden));
        field.begin(price, self.way.mass / self.way.efficiency);
        let mut rounds = self.rounds();
        let mut state = None;
        let mut best: Option<Priced> = None;
        for _ in 0..self.fineness.passes {
            let planner = self.planner(price, true);
            let ridden = self.lap(&planner, &mut field, rounds, state);
            log.push((price, ridden.time, ridden.charge));
            (rounds, state) = (1, Some(ridden.end));
            field.repeat();
            let off = ridden.charge - self.setup.budget_j;
            let next = hunt.next(price, ridden.charge, cp * ridden.time);
            let better = best.as_ref().is_none_or(|it| (it.ridden.charge - self.setup.budget_j).abs() > off.abs());
            if better {
                best = Some(Priced { price, ridden });
            }
            let Some(next) = next else { break };
            price = next.min(0.98 / (cp * self.setup.charge.repaid));
        }
        (best.unwrap_or(free), core::mem::take(log))
    }

    fn near_ranges(&self, ridden: &Ridden) -> Vec<(f64, f64)> {
        let reach = 1.0 + self.fineness.reach;
        let count = ridden.moments.len();
        let speed = |at: usize| ridden.moments[at % count].gear.map(|_| ridden.moments[at % count].entry);
        let range = |(at, &ceiling): (usize, &f64)| {
            let before = speed(at + count - 1);
            let (low, high) = match (before, speed(at)) {
                (Some(_), Some(speed)) => (speed / reach, speed * reach),
                _ => (SLOWEST, 4.5),
            };
            (low.max(SLOWEST).min(0.9 * ceiling).max(SLOWEST), high.min(ceiling))
        };
        if self.fineness.reach >= 1.0 { self.free_ranges() } else { self.way.ceilings.iter().enumerate().map(range).collect() }
    }
}

fn alike(one: State, other: State) -> bool {
    match (one, other) {
        (State::OnFoot, State::OnFoot) => true,
        (State::Riding(a, g), State::Riding(b, h)) => g == h && (a - b).abs() < 2e-3 * a,
        _ => false,
    }
}

/// Looks for the price at which the charge is the budget.
#[derive(Debug, Clone, Copy)]
struct Hunt {
    budget: f64,
    last: Option<(f64, f64)>,
    /// Logarithm of price and charge where too much is spent, and where too little.
    over: Option<(f64, f64)>,
    under: Option<(f64, f64)>,
}

impl Hunt {
    fn new(budget: f64) -> Self {
        Self { budget, last: None, over: None, under: None }
    }

    fn next(&mut self, price: f64, charge: f64, scale: f64) -> Option<f64> {
        let here = (price.ln(), charge - self.budget);
        if here.1 > 0.0 { self.over = Some(here) } else { self.under = Some(here) }
        let next = match (self.over, self.under) {
            (Some(over), Some(under)) => {
                let width = under.0 - over.0;
                if width.abs() < 1e-3 {
                    return None;
                }
                let share = over.1 / (over.1 - under.1);
                over.0 + width * share.clamp(0.1, 0.9)
            }
            _ => here.0 + (4.0 * here.1 / scale).clamp(-0.5, 0.5),
        };
        self.last = Some(here);
        Some(next.exp())
    }
}
