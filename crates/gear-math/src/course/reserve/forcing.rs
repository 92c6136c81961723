//! What drawing on the reserve is worth on a stretch of a lap.

use crate::course::course::Course;
use crate::course::lap::lap::{Lap, TracePoint};
use crate::course::lap::reserve_use::ReserveUse;
use crate::course::reserve::entry::Entry;
use crate::course::reserve::fineness::Fineness;
use crate::course::reserve::planner::Planner;
use crate::course::reserve::search::Search;
use crate::course::reserve::setup::ReserveSetup;
use crate::gears::Gear;

/// Stretches on which less is drawn are no place to force anything, J. Estimate: two seconds at half as much power again.
const LEAST_J: f64 = 200.0;
/// Less saved is no reason to force anything, s. Estimate: nobody feels it, and a shift costs as much.
const LEAST_S: f64 = 0.5;
/// What is drawn on the reserve for less than this between two stretches does not part them, m. Estimate.
const TOGETHER_M: f64 = 10.0;

/// A stretch ridden above what the rider can hold, and what that is worth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReserveForcing {
    /// From here, in metres from the line.
    pub from_m: f64,
    /// To here.
    pub to_m: f64,
    /// How long it takes, in seconds.
    pub time_s: f64,
    /// What it draws from the reserve, in joules.
    pub spent_j: f64,
    /// Highest power on it, in W.
    pub highest_power_w: f64,
    /// The lowest gear on it.
    pub gear: Gear,
    /// Seconds it saves against the same stretch with nothing drawn, on foot where that would not keep the rider in balance; the
    /// speed at its end counts at the price of a joule.
    pub saved_s: f64,
}

impl Lap {
    /// The stretches on which this lap, one [on a reserve](Lap::on_reserve) looked for as finely as is said, draws on the reserve,
    /// in order. None of a lap at a steady power.
    ///
    /// # Formula
    /// saved = t′ − t + λ/η ½ m_e (v² − v′²), with t′ and v′ from riding the stretch, begun as fast, at the power that lasts:
    /// min(CP, f P_m(n)) in the gear that suits best; on foot from where that falls below balance.
    #[must_use]
    pub fn forced_on_reserve(
        &self,
        course: &Course,
        setup: &ReserveSetup,
        fineness: Fineness,
    ) -> Vec<ReserveForcing> {
        let Some(reserve) = &self.reserve else { return Vec::new() };
        let search = Search::new(course, setup, fineness);
        if search.way.cells.len() != self.trace.len() {
            return Vec::new();
        }
        let held = Held { lap: self, reserve, planner: search.planner(reserve.price_s_per_j, false) };
        let runs = held.runs();
        let stretches = runs.into_iter().filter_map(|(from, to)| held.forcing(from, to));
        stretches.filter(|it| it.spent_j >= LEAST_J && it.saved_s >= LEAST_S).collect()
    }
}

/// A lap, beside what can be held.
struct Held<'a> {
    lap: &'a Lap,
    reserve: &'a ReserveUse,
    planner: Planner<'a>,
}

impl Held<'_> {
    fn spent_before(&self, step: usize) -> f64 {
        step.checked_sub(1).map_or(0.0, |before| self.reserve.trace[before].spent_j)
    }

    fn before(&self, step: usize) -> &TracePoint {
        let trace = &self.lap.trace;
        &trace[step.checked_sub(1).unwrap_or(trace.len() - 1)]
    }

    fn is_drawn(&self, step: usize) -> bool {
        self.lap.trace[step].gear.is_some() && self.reserve.trace[step].spent_j > self.spent_before(step)
    }

    /// First and last step of each stretch.
    fn runs(&self) -> Vec<(usize, usize)> {
        let mut runs: Vec<(usize, usize)> = Vec::new();
        for step in (0..self.lap.trace.len()).filter(|&step| self.is_drawn(step)) {
            match runs.last_mut() {
                Some((_, last)) if self.is_near(*last, step) => *last = step,
                _ => runs.push((step, step)),
            }
        }
        runs
    }

    /// Whether a step goes on with what an earlier one began: near, and ridden all the way.
    fn is_near(&self, last: usize, step: usize) -> bool {
        let between = &self.lap.trace[last..step];
        let way = self.before(step).at_m - self.lap.trace[last].at_m;
        way < TOGETHER_M && between.iter().all(|point| point.gear.is_some())
    }

    fn forcing(&self, from: usize, to: usize) -> Option<ReserveForcing> {
        let (first, last) = (self.before(from), &self.lap.trace[to]);
        let (from_m, began) = if from == 0 { (0.0, 0.0) } else { (first.at_m, first.time_s) };
        let gears = self.lap.trace[from..=to].iter().filter_map(|point| point.gear);
        let gear = gears.min_by(|a, b| a.ratio().value().total_cmp(&b.ratio().value()))?;
        let powers = self.reserve.trace[from..=to].iter().map(|point| point.power_w);
        let (time, end) = self.held(from, to, first.speed_m_per_s);
        let way = self.planner.rule.way;
        let squares = last.speed_m_per_s * last.speed_m_per_s - end * end;
        let worth = self.planner.rule.price / way.efficiency * 0.5 * way.mass * squares;
        Some(ReserveForcing {
            from_m,
            to_m: last.at_m,
            time_s: last.time_s - began,
            spent_j: self.reserve.trace[to].spent_j - self.spent_before(from),
            highest_power_w: powers.fold(0.0, f64::max),
            gear,
            saved_s: time - (last.time_s - began) + worth,
        })
    }

    /// Time and end speed of a stretch on what can be held.
    fn held(&self, from: usize, to: usize, begun: f64) -> (f64, f64) {
        let (mut time, mut speed) = (0.0, begun);
        for step in from..=to {
            match self.step(step, speed) {
                Some((passed, end)) => (time, speed) = (time + passed, end),
                None => return self.walked(step, to, time),
            }
        }
        (time, speed)
    }

    /// Time and end speed of a step; none where balance is lost.
    fn step(&self, step: usize, speed: f64) -> Option<(f64, f64)> {
        let rule = &self.planner.rule;
        let entry = Entry::bare(rule.way, &rule.way.cells[step], speed);
        let held = rule.gearing.rpm.iter().map(|rpm| rule.account.held_w(rpm * speed)).fold(0.0, f64::max);
        let end = entry.end_on(rule.way.efficiency * held, speed).min(rule.way.ceilings[step + 1]);
        (end >= rule.way.balance || end > speed).then(|| (entry.time(end), end))
    }

    fn walked(&self, from: usize, to: usize, began: f64) -> (f64, f64) {
        let way = self.planner.rule.way;
        let on_foot = |step: usize| way.cells[step].length / self.planner.pace(step).speed;
        let time: f64 = (from..=to).map(on_foot).sum();
        let speed = self.planner.set_off((to + 1) % way.cells.len()).unwrap_or(0.0);
        (began + way.off + time + way.on, speed)
    }
}
