//! A course in steps, for one rider on one bike.

use crate::course::course::Course;
use crate::course::reserve::cell::Cell;
use crate::course::reserve::person::Person;
use crate::course::reserve::range::Range;
use crate::course::reserve::setup::ReserveSetup;
use crate::rider::{BalanceSpeed, FootDemand};

/// Part of a step that a stretch may be longer without another step: a recorded track comes in stretches of about a step.
const LONGER: f64 = 0.02;
/// The fastest at which anyone gets off, m/s. Estimate.
pub(super) const OFF_M_PER_S: f64 = 3.5;
/// The fastest looked at, m/s: 54 km/h. Estimate, because a course of cyclo-cross gives no room for more.
const FASTEST: f64 = 15.0;
/// The slowest at which anyone rides, gaining speed, m/s. Estimate.
pub(super) const SLOWEST: f64 = 0.8;
/// Room above it where a corner is slower, so that there are speeds to look at, m/s.
const ROOM: f64 = 0.05;

/// A course in steps, for one rider on one bike, as one lap of many.
#[derive(Debug, Clone)]
pub(super) struct Way {
    pub(super) cells: Vec<Cell>,
    /// Highest speed at the beginning of every step, and once more that of the first, m/s.
    pub(super) ceilings: Vec<f64>,
    /// What going on foot takes, by stretch.
    pub(super) on_foot: Vec<FootDemand>,
    /// Mass that resists a change of speed, kg.
    pub(super) mass: f64,
    /// Drivetrain efficiency.
    pub(super) efficiency: f64,
    /// m/s².
    pub(super) braking: f64,
    /// Slowest speed in balance unless it grows, m/s.
    pub(super) balance: f64,
    /// Time of getting off and of getting on, s.
    pub(super) off: f64,
    pub(super) on: f64,
}

impl Way {
    /// Cuts a course into steps of `step_m` at most, or barely more where a stretch is that long.
    pub(super) fn new(course: &Course, setup: &ReserveSetup, step_m: f64) -> Self {
        let (person, lap) = (Person { setup }, &setup.lap);
        let cells = cells(&person, course, step_m);
        let braking = lap.mounting.braking.m_per_s2();
        Self {
            ceilings: ceilings(&cells, braking),
            cells,
            on_foot: course.segments().iter().map(|segment| person.on_foot(segment)).collect(),
            mass: person.mass(),
            efficiency: lap.bike.efficiency.share(),
            braking,
            balance: lap.limits.balance.map_or(SLOWEST, BalanceSpeed::m_per_s),
            off: lap.mounting.off.s(),
            on: lap.mounting.on.s(),
        }
    }

    pub(super) fn length(&self) -> f64 {
        self.cells.iter().map(|cell| cell.length).sum()
    }

    /// How many steps from the line make up a way, all of them where the lap is shorter.
    pub(super) fn steps_in(&self, way_m: f64) -> usize {
        let mut left = way_m;
        let reached = self.cells.iter().position(|cell| {
            left -= cell.length;
            left <= 0.0
        });
        reached.map_or(self.cells.len(), |last| last + 1)
    }

    /// Speeds looked at in every place: all that can be ridden there.
    pub(super) fn ranges(&self) -> Vec<Range> {
        self.ceilings.iter().map(|&ceiling| Range::even([SLOWEST, ceiling])).collect()
    }
}

fn cells(person: &Person<'_>, course: &Course, step_m: f64) -> Vec<Cell> {
    let mut cells = Vec::new();
    for (number, segment) in course.segments().iter().enumerate() {
        let count = (segment.length.m() / step_m - LONGER).ceil().max(1.0);
        cells.resize(cells.len() + count as usize, person.cell(segment, number, count));
    }
    cells
}

/// Highest speeds at the beginning of every step, so that braking in front of what must be slow suffices, round and round.
fn ceilings(cells: &[Cell], braking: f64) -> Vec<f64> {
    let mut ceilings = vec![FASTEST; cells.len() + 1];
    for _ in 0..2 {
        let last = ceilings[0];
        ceilings[cells.len()] = last;
        for at in (0..cells.len()).rev() {
            let before = cells[at.checked_sub(1).unwrap_or(cells.len() - 1)].corner;
            ceilings[at] = ceiling(&cells[at], ceilings[at + 1], braking).min(before).max(SLOWEST + ROOM);
        }
    }
    ceilings
}

fn ceiling(cell: &Cell, ahead: f64, braking: f64) -> f64 {
    let braked = (ahead * ahead + 2.0 * braking * cell.length).sqrt();
    if cell.blocked { OFF_M_PER_S } else { cell.corner.min(braked).min(FASTEST) }
}
