//! Where to ride and where to go on foot: the quickest plan by dynamic programming.
//!
//! On foot nothing is carried from one step to the next, so the quickest time at which a rider can stand beside the
//! bike at a place says all. Riding carries speed and gear, so each place from which the rider may have got on
//! starts a run of its own; a run is given up as soon as another is at the same place earlier, no slower and in as
//! good a gear. What is left is a handful of runs, and the plan is exact but for that comparison of gears.

use super::gearbox::Gearbox;
use super::ride::{Ride, Rolling};

/// Riding, or on foot beside the bike.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Mode {
    /// On the bike.
    Ride,
    /// Beside it.
    Foot,
}

/// How the lap is begun or ended.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum AtLine<S> {
    /// Riding.
    Rolling(Rolling<S>),
    /// On foot.
    OnFoot,
}

/// For every step, the mode; the fastest of all plans, or one to be tried.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Plan<S> {
    pub(super) modes: Vec<Mode>,
    /// s.
    pub(super) time: f64,
    pub(super) end: AtLine<S>,
}

/// A run: riding without a break since one place.
#[derive(Debug, Clone, Copy)]
struct Run<S> {
    time: f64,
    rolling: Rolling<S>,
    /// Which run, by order of setting off.
    number: u32,
}

/// Speeds closer than this are taken as equal, with the time it takes to make up the difference, m/s.
const SAME_SPEED: f64 = 1e-3;
/// A time that leads no further than this cannot come from a better gear: two shifts with the front, s. Estimate.
const WORTH_OF_A_GEAR: f64 = 1.0;
/// Most runs followed at a time; two or three are usual.
const MOST_RUNS: usize = 48;
/// Marks a step that is gone on foot from the one before.
const STILL_ON_FOOT: u32 = u32::MAX;
/// The run the lap is begun with.
const FIRST_RUN: u32 = 0;

/// The quickest plan for a lap begun as `start`.
pub(super) fn quickest<G: Gearbox>(ride: &Ride<'_, G>, start: AtLine<G::State>) -> Plan<G::State> {
    Search::to_the_end(ride, 0, start).plan()
}

/// How the lap ends when step `first` is begun as `start`.
pub(super) fn end_from<G: Gearbox>(ride: &Ride<'_, G>, first: usize, start: AtLine<G::State>) -> AtLine<G::State> {
    Search::to_the_end(ride, first, start).end().1
}

struct Search<'a, 'b, G: Gearbox> {
    ride: &'a Ride<'b, G>,
    /// The step begun with.
    first: usize,
    runs: Vec<Run<G::State>>,
    /// Quickest time on foot at the place reached, s.
    foot: f64,
    /// For each place, the run given up there for going on foot, or that the rider was on foot already.
    foot_from: Vec<u32>,
    /// For each run, the place it set off from.
    set_off: Vec<u32>,
}

impl<'a, 'b, G: Gearbox> Search<'a, 'b, G> {
    fn to_the_end(ride: &'a Ride<'b, G>, first: usize, start: AtLine<G::State>) -> Self {
        let mut search = Self::new(ride, first, start);
        for at in first..ride.terrain.cells.len() {
            search.get_on(at);
            search.step(at);
        }
        search
    }

    fn new(ride: &'a Ride<'b, G>, first: usize, start: AtLine<G::State>) -> Self {
        let mut search = Self {
            ride,
            first,
            runs: Vec::with_capacity(MOST_RUNS),
            foot: f64::INFINITY,
            foot_from: Vec::with_capacity(ride.terrain.cells.len() + 1),
            set_off: vec![0],
        };
        match start {
            AtLine::Rolling(rolling) => search.runs.push(Run { time: 0.0, rolling, number: FIRST_RUN }),
            AtLine::OnFoot => search.foot = 0.0,
        }
        search.get_off();
        search
    }

    /// Lets whoever rides stop here, where that is quicker than having come on foot.
    fn get_off(&mut self) {
        let mut from = STILL_ON_FOOT;
        for run in &self.runs {
            let time = run.time + self.ride.terrain.off;
            if time < self.foot {
                self.foot = time;
                from = run.number;
            }
        }
        self.foot_from.push(from);
    }

    /// Lets whoever came on foot get on before step `at`, unless a run is ahead anyway.
    fn get_on(&mut self, at: usize) {
        let came_on_foot = self.foot_from[at - self.first] == STILL_ON_FOOT && self.foot.is_finite();
        if !came_on_foot {
            return;
        }
        let walked = at.checked_sub(1).unwrap_or(self.ride.terrain.cells.len() - 1);
        let rolling = self.ride.mounted(self.ride.terrain.cells[walked].foot_speed);
        let time = self.foot + self.ride.terrain.on;
        let run = Run { time, rolling, number: self.set_off.len() as u32 };
        if self.ride.can_set_off(at, rolling.speed) && !self.runs.iter().any(|other| self.beats(other, &run)) {
            self.runs.retain(|other| !beats(self.ride, &run, other));
            if self.runs.len() < MOST_RUNS {
                self.runs.push(run);
                self.set_off.push(at as u32);
            }
        }
    }

    fn beats(&self, one: &Run<G::State>, other: &Run<G::State>) -> bool {
        beats(self.ride, one, other)
    }

    fn step(&mut self, at: usize) {
        self.foot += self.ride.terrain.cells[at].foot_time;
        let ride = self.ride;
        self.runs.retain_mut(|run| {
            let Some(ridden) = ride.step(at, &run.rolling) else { return false };
            run.time += ridden.time;
            run.rolling = ridden.end;
            true
        });
        self.drop_beaten();
        self.get_off();
    }

    fn drop_beaten(&mut self) {
        let mut kept = 0;
        while kept < self.runs.len() {
            let run = self.runs[kept];
            let beaten = self.runs.iter().any(|other| other.number != run.number && self.beats(other, &run));
            if beaten {
                self.runs.remove(kept);
            } else {
                kept += 1;
            }
        }
    }

    /// The run that ends the lap, if any, and how.
    fn end(&self) -> (Option<&Run<G::State>>, AtLine<G::State>) {
        let best = self.runs.iter().min_by(|a, b| a.time.total_cmp(&b.time)).filter(|run| run.time <= self.foot);
        (best, best.map_or(AtLine::OnFoot, |run| AtLine::Rolling(run.rolling)))
    }

    fn plan(&self) -> Plan<G::State> {
        let (run, end) = self.end();
        let time = run.map_or(self.foot, |run| run.time);
        Plan { modes: self.modes(run.map(|run| run.number)), time, end }
    }

    /// Goes back from the end through the places where the mode changed.
    fn modes(&self, last_run: Option<u32>) -> Vec<Mode> {
        let mut modes = vec![Mode::Foot; self.foot_from.len() - 1];
        let mut place = modes.len();
        let mut riding = last_run;
        loop {
            if let Some(run) = riding {
                let from = self.set_off[run as usize] as usize;
                modes[from..place].fill(Mode::Ride);
                place = from;
                if run == FIRST_RUN {
                    return modes;
                }
            }
            while self.foot_from[place] == STILL_ON_FOOT {
                if place == 0 {
                    return modes;
                }
                place -= 1;
            }
            riding = Some(self.foot_from[place]);
        }
    }
}

/// Whether nothing is lost by following only `one` of two runs at the same place.
fn beats<G: Gearbox>(ride: &Ride<'_, G>, one: &Run<G::State>, other: &Run<G::State>) -> bool {
    let slower = other.rolling.speed - one.rolling.speed;
    if slower > SAME_SPEED {
        return false;
    }
    let make_up = slower.max(0.0) * one.rolling.speed * ride.terrain.motion.mass / ride.terrain.drive.power;
    let gear = if one.rolling.gear == other.rolling.gear {
        (one.rolling.coast - other.rolling.coast).max(0.0)
    } else {
        WORTH_OF_A_GEAR + one.rolling.coast
    };
    let lead = other.time - one.time - make_up - gear;
    lead > 0.0 || (lead == 0.0 && one.number < other.number)
}
