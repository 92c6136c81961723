//! What came of a lap: plan, gears, shifts, work and trace, from its moments.

use crate::course::lap::follow::Moment;
use crate::course::lap::lap::{GearUse, Lap, PlanPart, TracePoint, WhyOnFoot};
use crate::course::lap::modes::Mode;
use crate::course::lap::ride::Ride;
use crate::course::lap::setup::LapSetup;
use crate::course::lap::terrain::Cell;
use crate::course::quantity::Step;
use crate::gears::Gear;
use crate::rider::Reason;

/// Adds up a lap moment by moment.
pub(in crate::course) struct Account<'a> {
    ride: &'a Ride<'a>,
    slow_crank: f64,
    at: f64,
    lap: Lap,
    uses: Vec<GearUse>,
    last_gear: Option<u8>,
    /// Why the rider is on foot in the last part, with the way for which that holds, m.
    reasons: Vec<(WhyOnFoot, f64)>,
    /// Whether the rider has been above the slowest speed since getting on.
    going: bool,
    /// Time of getting on at the line, s.
    got_on_at_line: f64,
}

impl<'a> Account<'a> {
    pub(in crate::course) fn new(ride: &'a Ride<'a>, setup: &LapSetup) -> Self {
        let shifting = &setup.shifting;
        let unused = |gear: Gear| GearUse { gear, time_s: 0.0, distance_m: 0.0 };
        Self {
            ride,
            slow_crank: shifting.preferred.rpm() / 60.0 * (1.0 - shifting.window.share()),
            at: 0.0,
            lap: Lap::begun(ride.terrain.lap.len()),
            uses: ride.gears.all().map(unused).collect(),
            last_gear: None,
            reasons: Vec::new(),
            going: false,
            got_on_at_line: 0.0,
        }
    }

    pub(in crate::course) fn lap(mut self, moments: &[Moment], step: Step) -> Lap {
        for (cell, moment) in self.ride.terrain.cells[self.ride.terrain.lap.clone()].iter().zip(moments) {
            self.take(cell, moment);
        }
        self.end_on_foot();
        self.lap.step_m = step.m();
        self.lap.gears = self.uses.into_iter().filter(|used| used.distance_m > 0.0).collect();
        self.lap
    }

    fn take(&mut self, cell: &Cell, moment: &Moment) {
        let from = self.at;
        self.at += cell.stretch.length;
        self.lap.time_s += moment.time;
        let riding =
            moment.gear.map_or(moment.time, |_| 2.0 * cell.stretch.length / (moment.entry + moment.exit));
        self.got_on(moment.time - riding);
        self.plan(cell, moment, riding, from);
        match moment.gear {
            Some(gear) => self.ridden(cell, moment, gear, riding),
            None => self.going = false,
        }
        let cadence = moment.gear.map(|gear| 60.0 * moment.exit / self.ride.gears.development(gear));
        self.lap.trace.push(TracePoint {
            at_m: self.at,
            time_s: self.lap.time_s,
            speed_m_per_s: moment.exit,
            mode: moment.mode,
            gear: moment.gear.map(|gear| self.ride.gears.gear(gear)),
            cadence_rpm: cadence,
        });
    }

    /// Adds the time of getting on to the part on foot before it.
    fn got_on(&mut self, time: f64) {
        match self.lap.plan.last_mut() {
            Some(part) => part.time_s += if part.mode == Mode::Foot { time } else { 0.0 },
            None => self.got_on_at_line = time,
        }
    }

    /// Where the rider gets on at the line, the part on foot before it is the last one.
    fn end_on_foot(&mut self) {
        if let Some(part) = self.lap.plan.last_mut() {
            part.time_s += self.got_on_at_line;
        }
    }

    fn plan(&mut self, cell: &Cell, moment: &Moment, time: f64, from: f64) {
        if self.lap.plan.last().is_none_or(|part| part.mode != moment.mode) {
            self.reasons.clear();
            self.lap.plan.push(PlanPart {
                from_m: from,
                to_m: from,
                mode: moment.mode,
                why: None,
                time_s: 0.0,
            });
        }
        if moment.mode == Mode::Foot {
            self.note(self.why_on_foot(cell), cell.stretch.length);
        }
        if let Some(part) = self.lap.plan.last_mut() {
            part.to_m = self.at;
            part.time_s += time;
            part.why = main_reason(&self.reasons);
        }
    }

    fn note(&mut self, why: WhyOnFoot, way: f64) {
        match self.reasons.iter_mut().find(|it| it.0 == why) {
            Some(it) => it.1 += way,
            None => self.reasons.push((why, way)),
        }
    }

    fn why_on_foot(&self, cell: &Cell) -> WhyOnFoot {
        let (motion, slowest) = (&self.ride.terrain.motion, self.ride.slowest);
        let needed = motion.force_at(&cell.stretch, slowest);
        let held = self.ride.terrain.drive.power / slowest;
        if cell.blocked {
            WhyOnFoot::Obstacle
        } else if held < needed {
            WhyOnFoot::Because(if self.ride.slowest_by_gear() { Reason::Gear } else { Reason::Balance })
        } else if cell.stretch.grip < needed {
            WhyOnFoot::Because(Reason::Grip)
        } else if self.ride.drive_at_slowest() < needed {
            WhyOnFoot::Because(Reason::Force)
        } else {
            WhyOnFoot::Because(Reason::Energy)
        }
    }

    fn ridden(&mut self, cell: &Cell, moment: &Moment, gear: u8, time: f64) {
        let used = &mut self.uses[usize::from(gear)];
        used.time_s += time;
        used.distance_m += cell.stretch.length;
        self.shifted(gear);
        let driven = self.worked(cell, moment, time);
        self.cadence(moment, gear, time, driven);
    }

    fn shifted(&mut self, gear: u8) {
        if let Some(last) = self.last_gear.replace(gear) {
            let (rear, front) = self.ride.gears.shifts(last, gear);
            self.lap.shifts_rear += rear;
            self.lap.shifts_front += front;
        }
    }

    /// Books the work of a step; says whether the rider pedalled.
    fn worked(&mut self, cell: &Cell, moment: &Moment, time: f64) -> bool {
        let terrain = self.ride.terrain;
        let (mean, length) = (0.5 * (moment.entry + moment.exit), cell.stretch.length);
        let wheel = terrain.motion.power_of(&cell.stretch, mean, moment.entry) * time;
        let book = &mut self.lap.energy;
        let driven = wheel.max(0.0);
        book.crank_j += driven / terrain.efficiency;
        book.drivetrain_j += driven * (1.0 / terrain.efficiency - 1.0);
        book.brakes_j -= wheel.min(0.0);
        book.climbing_j += terrain.weight * cell.rise;
        book.bearings_j += (terrain.bearing + terrain.motion.bearing * mean) * length;
        book.air_j += terrain.motion.air * mean * mean * length;
        book.rolling_j += (cell.stretch.resistance - terrain.bearing) * length - terrain.weight * cell.rise;
        book.kinetic_j +=
            0.5 * terrain.motion.mass * (moment.exit * moment.exit - moment.entry * moment.entry);
        wheel > NO_WORK
    }

    fn cadence(&mut self, moment: &Moment, gear: u8, time: f64, driven: bool) {
        let turns = moment.exit / self.ride.gears.development(gear);
        self.going |= moment.exit >= self.ride.slowest;
        if driven && turns < self.slow_crank {
            self.lap.below_window_s += time;
        }
        if driven && self.going {
            let lowest = self.lap.lowest_cadence_rpm.map_or(f64::INFINITY, |rpm| rpm);
            self.lap.lowest_cadence_rpm = Some(lowest.min(60.0 * turns));
        }
    }
}

/// Work of a step that is only rounding, J.
const NO_WORK: f64 = 1e-6;

/// Way round an obstacle, or ground that cannot be ridden, on which it pays to be off the bike already or still, m: it is
/// gone on foot because of what it leads to. Estimate.
const AROUND_M: f64 = 20.0;

/// The reason that holds over most of the way.
pub(in crate::course) fn main_reason(reasons: &[(WhyOnFoot, f64)]) -> Option<WhyOnFoot> {
    let weight = |(why, way): &(WhyOnFoot, f64)| match why {
        WhyOnFoot::Because(Reason::Energy) => way - AROUND_M,
        _ => *way,
    };
    reasons.iter().max_by(|a, b| weight(a).total_cmp(&weight(b))).map(|it| it.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Way on which going on foot is only quicker counts 20 m less.
    #[test]
    fn the_reason_is_what_holds_over_most_of_the_way() {
        let [gear, quicker] = [Reason::Gear, Reason::Energy].map(WhyOnFoot::Because);
        let reason = |reasons: &[(WhyOnFoot, f64)]| main_reason(reasons);
        assert_eq!(reason(&[]), None);
        assert_eq!(reason(&[(quicker, 3.0)]), Some(quicker));
        assert_eq!(reason(&[(gear, 6.0), (quicker, 25.0)]), Some(gear));
        assert_eq!(reason(&[(quicker, 27.0), (gear, 6.0)]), Some(quicker));
        assert_eq!(reason(&[(WhyOnFoot::Obstacle, 1.0), (quicker, 19.0)]), Some(WhyOnFoot::Obstacle));
        assert_eq!(reason(&[(WhyOnFoot::Obstacle, 7.0), (gear, 6.0)]), Some(WhyOnFoot::Obstacle));
    }
}
