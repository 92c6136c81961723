//! Riding with given gears: where it is possible, and each step of it.

use crate::course::lap::gearbox::Gears;
use crate::course::lap::motion::Stretch;
use crate::course::lap::terrain::{Cell, Terrain};

/// Slower than this a bike does not roll on, even when setting off, m/s. Estimate.
const LEAST_ROLLING: f64 = 0.3;

/// A rider on the way: everything that decides how it goes on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::course) struct Rolling {
    /// m/s.
    pub(in crate::course) speed: f64,
    pub(in crate::course) gear: u8,
    /// Time without drive still to come, s.
    pub(in crate::course) coast: f64,
}

/// One step ridden.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::course) struct Ridden {
    /// s.
    pub(in crate::course) time: f64,
    pub(in crate::course) end: Rolling,
}

/// Terrain and gears together.
#[derive(Debug, Clone)]
pub(in crate::course) struct Ride<'a> {
    pub(in crate::course) terrain: &'a Terrain,
    pub(in crate::course) gears: &'a Gears,
    /// Slowest speed that can be held: lowest gear at the slowest crank, or balance, m/s.
    pub(in crate::course) slowest: f64,
    /// Fastest speed the legs can drive, m/s.
    spin: f64,
    /// For each step, whether the rider would get up to the slowest speed there.
    rising: Vec<bool>,
}

impl<'a> Ride<'a> {
    pub(in crate::course) fn new(terrain: &'a Terrain, gears: &'a Gears) -> Self {
        let (lowest, highest) = gears.range();
        let slowest = (terrain.slowest_crank * lowest).max(terrain.balance);
        let spin = terrain.fastest_crank * highest;
        let mut ride = Self { terrain, gears, slowest, spin, rising: Vec::new() };
        ride.rising = ride.where_rising();
        ride
    }

    fn where_rising(&self) -> Vec<bool> {
        let mut last: Option<(&Cell, bool)> = None;
        let rises = |cell: &'a Cell| {
            let known = last.filter(|(before, _)| before.segment == cell.segment);
            let rises = known.map_or_else(|| self.surplus(&cell.stretch) >= 0.0, |(_, rises)| rises);
            last = Some((cell, rises));
            rises
        };
        self.terrain.cells.iter().map(rises).collect()
    }

    /// Drive force left at the slowest speed in the lowest gear, N.
    fn surplus(&self, stretch: &Stretch) -> f64 {
        self.drive_at_slowest().min(stretch.grip) - self.terrain.motion.force_at(stretch, self.slowest)
    }

    /// Drive force at the slowest speed, grip aside, N.
    pub(in crate::course) fn drive_at_slowest(&self) -> f64 {
        let (lowest, _) = self.gears.range();
        self.terrain.drive.at(self.slowest / lowest) / self.slowest
    }

    /// Whether the lowest gear, rather than balance, sets the slowest speed.
    pub(in crate::course) fn slowest_by_gear(&self) -> bool {
        self.slowest > self.terrain.balance
    }

    /// Whether a rider who gets on before step `at` gets going there.
    pub(in crate::course) fn can_set_off(&self, at: usize, speed: f64) -> bool {
        !self.terrain.cells[at].blocked && self.goes_on(at, speed)
    }

    /// A speed can be kept up when it is not below the slowest, or when the rider is getting up to that.
    #[inline]
    fn goes_on(&self, at: usize, speed: f64) -> bool {
        speed >= self.slowest || (self.rising[at] && speed >= LEAST_ROLLING)
    }

    /// Speed at which a rider gets on before step `at`: that on foot over the step before.
    pub(in crate::course) fn mounting_speed(&self, at: usize) -> f64 {
        self.terrain.cells[at.saturating_sub(1)].foot_speed.max(LEAST_ROLLING)
    }

    /// A rider at a speed, in the gear for it.
    pub(in crate::course) fn rolling(&self, speed: f64) -> Rolling {
        Rolling { speed, gear: self.gears.first(speed), coast: 0.0 }
    }

    /// Step `at`, entered as `start`; none where riding is not possible.
    #[inline]
    pub(in crate::course) fn step(&self, at: usize, start: &Rolling) -> Option<Ridden> {
        let cell = &self.terrain.cells[at];
        if cell.blocked {
            return None;
        }
        let (gear, coast) = self.geared(start);
        let (entry, length) = (start.speed, cell.stretch.length);
        let undriven = (coast * entry / length).min(1.0);
        let power = self.terrain.drive.at(entry / self.gears.development(gear)) * (1.0 - undriven);
        let exit = self.exit(&cell.stretch, power, entry).min(cell.ceiling);
        if !self.goes_on(at, exit) {
            return None;
        }
        let time = 2.0 * length / (entry + exit);
        let coast = if undriven < 1.0 { 0.0 } else { (coast - time).max(0.0) };
        Some(Ridden { time, end: Rolling { speed: exit, gear, coast } })
    }

    #[inline]
    fn geared(&self, start: &Rolling) -> (u8, f64) {
        if start.coast > 0.0 {
            return (start.gear, start.coast);
        }
        self.gears.shift(start.speed, start.gear).unwrap_or((start.gear, 0.0))
    }

    /// Speed at the end of a step: driven as far as the legs follow, rolling freely beyond.
    #[inline]
    fn exit(&self, stretch: &Stretch, power: f64, entry: f64) -> f64 {
        let motion = &self.terrain.motion;
        let driven = 2.0 * motion.mean_speed(stretch, power, entry) - entry;
        if driven <= self.spin {
            return driven;
        }
        (2.0 * motion.mean_speed(stretch, 0.0, entry) - entry).max(self.spin)
    }
}
