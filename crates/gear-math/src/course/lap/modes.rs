//! Where to ride and where to go on foot: the quickest plan by dynamic programming.
//!
//! On foot nothing is carried from one step to the next, so the quickest time at which a rider can stand beside the
//! bike at a place says all. Riding carries speed and gear, so each place from which the rider may have got on
//! starts a run of its own; a run is given up as soon as another is at the same place earlier, no slower and in as
//! good a gear. What is left is a handful of runs. The plan is exact when shifts cost nothing; otherwise it may miss that
//! a slower rider is spared one.

use crate::course::lap::ride::{Ride, Rolling};

/// Riding, or on foot beside the bike.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Mode {
    /// On the bike.
    Ride,
    /// Beside it.
    Foot,
}

/// The mode of every step, and the time of the whole.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::course) struct Plan {
    pub(in crate::course) modes: Vec<Mode>,
    /// s.
    pub(in crate::course) time: f64,
}

/// A run: riding without a break since one place.
#[derive(Debug, Clone, Copy)]
struct Run {
    time: f64,
    rolling: Rolling,
    /// Which run, by order of setting off.
    number: u32,
}

/// Speeds closer than this are taken as equal, with the time it takes to make up the difference, m/s.
const SAME_SPEED: f64 = 1e-3;
/// The most a better gear can be worth: shifts to it, s. Estimate.
const WORTH_OF_A_GEAR: f64 = 1.0;
/// Most runs followed at a time; two or three are usual, more only where getting off and on is nearly free.
const MOST_RUNS: usize = 256;
/// Marks a place that was reached on foot.
const ON_FOOT: u32 = u32::MAX;
/// The run that is begun with.
const FIRST_RUN: u32 = 0;

/// The quickest plan for a course begun riding as `start`.
pub(in crate::course) fn quickest(ride: &Ride<'_>, start: Rolling) -> Plan {
    let mut search = Search::new(ride, start);
    for at in 0..ride.terrain.cells.len() {
        search.get_off();
        search.get_on(at);
        search.step(at);
    }
    search.plan()
}

struct Search<'a, 'b> {
    ride: &'a Ride<'b>,
    runs: Vec<Run>,
    /// Quickest time on foot at the place reached, s.
    foot: f64,
    /// For each place, the run given up there for going on foot, or that the rider was on foot already.
    foot_from: Vec<u32>,
    /// For each run, the place it set off from.
    set_off: Vec<u32>,
}

impl<'a, 'b> Search<'a, 'b> {
    fn new(ride: &'a Ride<'b>, start: Rolling) -> Self {
        Self {
            ride,
            runs: vec![Run { time: 0.0, rolling: start, number: FIRST_RUN }],
            foot: f64::INFINITY,
            foot_from: Vec::with_capacity(ride.terrain.cells.len()),
            set_off: vec![0],
        }
    }

    /// Lets whoever rides get off here, where that is quicker than having come on foot.
    fn get_off(&mut self) {
        let mut from = ON_FOOT;
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
        let time = self.foot + self.ride.terrain.on;
        let speed = self.ride.mounting_speed(at);
        let came_on_foot = self.foot_from[at] == ON_FOOT;
        if !came_on_foot || self.is_hopeless(time, speed) || !self.ride.can_set_off(at, speed) {
            return;
        }
        let run = Run { time, rolling: self.ride.rolling(speed), number: self.set_off.len() as u32 };
        if !self.runs.iter().any(|other| beats(self.ride, other, &run)) && self.runs.len() < MOST_RUNS {
            self.runs.push(run);
            self.set_off.push(at as u32);
            self.drop_beaten();
        }
    }

    /// Whether a run is ahead whatever the gears.
    fn is_hopeless(&self, time: f64, speed: f64) -> bool {
        self.runs
            .iter()
            .any(|run| run.rolling.speed >= speed && run.time + run.rolling.coast + WORTH_OF_A_GEAR < time)
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
    }

    fn drop_beaten(&mut self) {
        let mut kept = 0;
        while kept < self.runs.len() {
            let run = self.runs[kept];
            if self.runs.iter().any(|other| beats(self.ride, other, &run)) {
                self.runs.swap_remove(kept);
            } else {
                kept += 1;
            }
        }
    }

    fn plan(&self) -> Plan {
        let best =
            self.runs.iter().min_by(|a, b| a.time.total_cmp(&b.time)).filter(|run| run.time <= self.foot);
        let time = best.map_or(self.foot, |run| run.time);
        Plan { modes: self.modes(best.map(|run| run.number)), time }
    }

    /// Goes back from the end through the places where the mode changed.
    fn modes(&self, last_run: Option<u32>) -> Vec<Mode> {
        let mut modes = vec![Mode::Foot; self.foot_from.len()];
        let mut place = modes.len();
        let mut riding = last_run;
        loop {
            let run = riding.take().unwrap_or_else(|| {
                place = self.got_off_at(place.min(modes.len() - 1));
                self.foot_from[place]
            });
            let from = self.set_off[run as usize] as usize;
            modes[from..place].fill(Mode::Ride);
            if run == FIRST_RUN {
                return modes;
            }
            place = from;
        }
    }

    /// Where a rider on foot at `place` got off. The first place is reached riding, so there is one.
    fn got_off_at(&self, mut place: usize) -> usize {
        while self.foot_from[place] == ON_FOOT && place > 0 {
            place -= 1;
        }
        place
    }
}

/// Whether nothing is lost by following only `one` of two runs at the same place.
fn beats(ride: &Ride<'_>, one: &Run, other: &Run) -> bool {
    let slower = other.rolling.speed - one.rolling.speed;
    if slower > SAME_SPEED || one.number == other.number {
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::course::course::Course;
    use crate::course::lap::costs::{Mounting, Shifting};
    use crate::course::lap::follow::follow;
    use crate::course::lap::gearbox::Gears;
    use crate::course::lap::setup::{Begin, LapSetup};
    use crate::course::lap::terrain::Terrain;
    use crate::course::lap::uncertainty::Moved;
    use crate::course::quantity::{MountTime, ShiftTime, StartSpeed, Step};
    use crate::gears::Drivetrain;
    use crate::quantity::Circumference;
    use crate::rider::{Air, Bike, BikeMass, BodyMass, KitMass, Power, Rider};

    /// Steps of the course on which every plan is tried.
    const STEPS: usize = 13;

    fn setup(watts: f64, start: f64, mount: f64, shift: f64) -> LapSetup {
        let rider =
            Rider::new(BodyMass::new(64.0).unwrap(), KitMass::new(2.0).unwrap(), Power::new(watts).unwrap());
        let drivetrain = Drivetrain {
            chainset: "44/32".parse().unwrap(),
            cassette: "12-14-16-18-21-24-27".parse().unwrap(),
        };
        let wheel = Circumference::new(2150.0).unwrap();
        let bike = Bike::new(BikeMass::new(9.0).unwrap(), drivetrain, wheel);
        let time = MountTime::new(mount).unwrap();
        let shift = ShiftTime::new(shift).unwrap();
        LapSetup {
            begin: Begin::Rolling(StartSpeed::new(start).unwrap()),
            mounting: Mounting { off: time, on: time, ..Mounting::USUAL },
            shifting: Shifting { rear: shift, front: shift, ..Shifting::USUAL },
            ..LapSetup::new(rider, bike, Air::STILL)
        }
    }

    /// Tries every plan; says how much quicker the best is than the one found, and whether that changes mode.
    fn missed(sketch: &str, setup: &LapSetup) -> (f64, bool) {
        let course: Course = sketch.parse().unwrap();
        let terrain = Terrain::new(&course, setup, Step::new(2.0).unwrap(), &Moved::NOT).unwrap();
        assert_eq!(terrain.cells.len(), STEPS);
        let gears = Gears::new(&setup.bike, &setup.shifting);
        let ride = Ride::new(&terrain, &gears);
        let Begin::Rolling(speed) = setup.begin else { unreachable!() };
        let start = ride.rolling(speed.m_per_s());
        let time = |modes: &[Mode]| {
            follow(&ride, modes, start).map(|moments| moments.iter().map(|moment| moment.time).sum::<f64>())
        };
        let every = (0..1_u32 << STEPS).map(|bits| -> Vec<Mode> {
            (0..STEPS).map(|at| if bits >> at & 1 == 1 { Mode::Foot } else { Mode::Ride }).collect()
        });
        let best = every
            .filter_map(|modes| Some((time(&modes)?, modes)))
            .min_by(|a, b| a.0.total_cmp(&b.0))
            .unwrap();
        let found = quickest(&ride, start);
        assert!((time(&found.modes).unwrap() - found.time).abs() < 1e-9, "the plan takes the time it says");
        let missed = found.time - best.0;
        assert!(missed > 1e-9 || found.modes == best.1, "{sketch}");
        (missed, found.modes.windows(2).any(|pair| pair[0] != pair[1]))
    }

    /// All 2¹³ plans on each of 192 short courses: how often the mode changes, and the most that was missed.
    fn every_plan(shift: f64) -> (usize, f64) {
        let mut found = Vec::new();
        for middle in ["8; 18; mud", "8; 25; firm grass", "8; 0; loose sand; foot 0.5", "8; 12; deep mud"] {
            for end in ["8; 3; firm grass", "8; 20; wet soft grass", "8; -5; mud"] {
                for (watts, start) in [(180.0, 2.0), (260.0, 4.0), (260.0, 7.0), (400.0, 3.0)] {
                    for mount in [0.1, 0.4, 1.0, 1.5] {
                        let sketch = format!("10; 2; firm grass\n{middle}\n{end}");
                        found.push(missed(&sketch, &setup(watts, start, mount, shift)));
                    }
                }
            }
        }
        let mixed = found.iter().filter(|(_, mixed)| *mixed).count();
        (mixed, found.iter().map(|(missed, _)| *missed).fold(0.0, f64::max))
    }

    #[test]
    fn no_plan_of_all_is_quicker() {
        let (mixed, missed) = every_plan(0.0);
        assert!(missed < 1e-9, "missed {missed} s");
        assert!(mixed > 60, "only {mixed} plans change mode");
    }

    /// A slower rider may be spared a shift, which the comparison of runs does not foresee.
    #[test]
    fn with_shifts_no_more_than_three_are_missed() {
        let (_, missed) = every_plan(0.2);
        assert!(missed < 0.6, "missed {missed} s");
    }
}
