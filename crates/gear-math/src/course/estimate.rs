//! The lap of any gears between two extremes, from one lap on a gearbox without steps.
//!
//! At a held power the steady speed is the same in every gear. What gears do to a lap is threefold: the lowest
//! decides where the rider is forced off, the highest where they spin out, and the ones between cost shifts. The first
//! two are in the lap on the [`Stepless`] gearbox, which all set-ups with these extremes share. A shift takes a little
//! work from a known place, and what a joule is worth there in seconds to the line is worked out once by going back
//! over the lap. So a set-up is one walk over the speeds of that lap.

use super::follow::{Moment, follow};
use super::gearbox::{Gearbox, Gears, Stepless};
use super::lap::planned;
use super::ride::Ride;
use super::terrain::{Cell, Terrain};
use crate::{Begin, Mode};

/// A step of the lap on the gearbox without steps, as far as shifts matter.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Pace {
    mode: Mode,
    /// Speed at the start, m/s.
    speed: f64,
    /// Time, s.
    time: f64,
    /// Seconds to the line that each second without drive costs here.
    worth: f64,
}

/// The lap on a gearbox without steps.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct SteplessLap {
    pub(super) gearbox: Stepless,
    pub(super) time: f64,
    pub(super) fastest: f64,
    paces: Vec<Pace>,
}

/// What a set-up makes of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Estimate {
    pub(super) time: f64,
    pub(super) shifts_rear: u32,
    pub(super) shifts_front: u32,
}

impl SteplessLap {
    pub(super) fn of(terrain: &Terrain, gearbox: Stepless, begin: Begin) -> Self {
        let ride = Ride::new(terrain, &gearbox);
        let (start, plan) = planned(&ride, begin);
        let moments = follow(&ride, &plan.modes, start).unwrap_or_default();
        let fastest = moments.iter().map(|moment| moment.entry.max(moment.exit)).fold(0.0, f64::max);
        let paces = paces(terrain, &moments, begin);
        Self { gearbox, time: plan.time, fastest, paces }
    }

    /// Walks over the lap with the shifts of `gears`.
    pub(super) fn estimate(&self, gears: &Gears) -> Estimate {
        let mut walk = Walk { gears, gear: None, mounted: false, coast: 0.0, lost: 0.0, rear: 0, front: 0 };
        for pace in &self.paces {
            walk.step(pace);
        }
        Estimate { time: self.time + walk.lost, shifts_rear: walk.rear, shifts_front: walk.front }
    }
}

struct Walk<'a> {
    gears: &'a Gears,
    gear: Option<u8>,
    mounted: bool,
    coast: f64,
    lost: f64,
    rear: u32,
    front: u32,
}

impl Walk<'_> {
    #[inline]
    fn step(&mut self, pace: &Pace) {
        if pace.mode == Mode::Foot {
            self.mounted = false;
            self.coast = 0.0;
            return;
        }
        self.shift(pace.speed);
        if self.coast > 0.0 {
            let undriven = self.coast.min(pace.time);
            self.lost += undriven * pace.worth;
            self.coast -= undriven;
        }
    }

    #[inline]
    fn shift(&mut self, speed: f64) {
        let Some(now) = self.gear.filter(|_| self.mounted) else {
            self.mounted = true;
            let first = self.gears.first(speed);
            self.count(first);
            return;
        };
        if self.coast > 0.0 {
            return;
        }
        if let Some((next, time)) = self.gears.shift(speed, now) {
            self.coast = time;
            self.count(next);
        }
    }

    fn count(&mut self, next: u8) {
        if let Some(last) = self.gear.replace(next).filter(|&last| last != next) {
            if self.gears.gear(last).ring == self.gears.gear(next).ring {
                self.rear += 1;
            } else {
                self.front += 1;
            }
        }
    }
}

/// Goes back over the lap and notes what a second without drive costs at each step.
///
/// # Formula
/// With D = 2 m (2v̄ − v₀) + L (b + 2a v̄ + P/v̄²) from the step's equation, a joule more in a step raises v̄ by 1/D,
/// and a faster start raises it by 2 m v̄/D; the end is faster by 2/D or 2·2 m v̄/D − 1. Time is L/v̄. A ceiling, the
/// fastest crank and an obstacle take what is gained before them.
fn paces(terrain: &Terrain, moments: &[Moment<()>], begin: Begin) -> Vec<Pace> {
    let passes = if begin == Begin::Flying { 2 } else { 1 };
    let mut worth = 0.0;
    let mut paces: Vec<Pace> = Vec::with_capacity(moments.len());
    for _ in 0..passes {
        paces.clear();
        for at in (0..moments.len()).rev() {
            paces.push(pace(terrain, moments, at, &mut worth));
        }
    }
    paces.reverse();
    paces
}

/// The pace of one step; `worth` is what a faster end saves, in s per m/s, and becomes what a faster start does.
fn pace(terrain: &Terrain, moments: &[Moment<()>], at: usize, worth: &mut f64) -> Pace {
    let (cell, moment) = (&terrain.cells[at], &moments[at]);
    let pace = Pace { mode: moment.mode, speed: moment.entry, time: moment.time, worth: 0.0 };
    if moment.mode == Mode::Foot {
        *worth = forced_off(terrain, cell, moments, at);
        return pace;
    }
    let (motion, length) = (&terrain.motion, cell.stretch.length);
    let mean = 0.5 * (moment.entry + moment.exit);
    let time = length / mean;
    let power = motion.power_of(&cell.stretch, mean, moment.entry);
    if power < HELD_BACK * terrain.drive.power {
        *worth = 0.5 * time / mean;
        return Pace { time, ..pace };
    }
    let stiffness = 2.0 * motion.mass * moment.exit
        + length * (motion.bearing + 2.0 * motion.air * mean + power / (mean * mean));
    let of_joule = (time / mean + 2.0 * *worth) / stiffness;
    let mean_by_start = 2.0 * motion.mass * mean / stiffness;
    *worth = time / mean * mean_by_start + *worth * (2.0 * mean_by_start - 1.0);
    Pace { time, worth: power * of_joule, ..pace }
}

/// What a faster arrival saves where a limit puts the rider on foot, in s per m/s: speed carries them farther before
/// it falls to the slowest, and that much less is gone on foot.
fn forced_off(terrain: &Terrain, cell: &Cell, moments: &[Moment<()>], at: usize) -> f64 {
    let speed = at.checked_sub(1).map_or(0.0, |before| moments[before].exit);
    let slowing = terrain.motion.force_at(&cell.stretch, speed) - terrain.drive.power / speed;
    let saved_per_m = 1.0 / cell.foot_speed - 1.0 / speed;
    let forced = !cell.blocked && slowing > 0.0 && saved_per_m > 0.0;
    if forced { terrain.motion.mass * speed * saved_per_m / slowing } else { 0.0 }
}

/// A rider who uses less than this part of the power is held back by a ceiling or the fastest crank.
const HELD_BACK: f64 = 0.98;
