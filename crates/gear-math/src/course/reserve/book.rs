//! What came of a lap, from its moments.

use crate::course::course::Course;
use crate::course::lap::lap::{EnergyBook, GearUse, PlanPart, WhyOnFoot};
use crate::course::lap::modes::Mode;
use crate::course::reserve::cell::Cell;
use crate::course::reserve::entry::Entry;
use crate::course::reserve::fineness::Fineness;
use crate::course::reserve::lap::{ReserveLap, ReservePoint};
use crate::course::reserve::moment::{Moment, Ridden};
use crate::course::reserve::search::Search;
use crate::course::reserve::setup::ReserveSetup;
use crate::gears::Gear;
use crate::order::ascending;

impl ReserveLap {
    /// The quickest lap, as finely looked for as asked.
    #[must_use]
    pub fn of(course: &Course, setup: &ReserveSetup, fineness: Fineness) -> Self {
        let search = Search::new(course, setup, fineness);
        Book::of(&search, &search.quickest())
    }
}

/// Adds up a lap moment by moment.
pub(super) struct Book<'a> {
    search: &'a Search<'a>,
    price: f64,
    lap: ReserveLap,
    uses: Vec<GearUse>,
    at: f64,
    /// Why the last part is gone on foot, with the way for which that holds, m.
    reasons: Vec<(WhyOnFoot, f64)>,
    /// Time of getting on at the line, s.
    on_at_line: f64,
}

impl<'a> Book<'a> {
    pub(super) fn of(search: &'a Search<'a>, ridden: &Ridden) -> ReserveLap {
        let mut book = Self::begun(search, ridden);
        for (cell, moment) in search.way.cells.iter().zip(&ridden.moments) {
            book.take(cell, moment);
        }
        book.ended(ridden)
    }

    fn begun(search: &'a Search<'a>, ridden: &Ridden) -> Self {
        let unused = |gear: &Gear| GearUse { gear: *gear, time_s: 0.0, distance_m: 0.0 };
        let uses = search.gearing.gears.iter().map(unused).collect();
        let lap = ReserveLap {
            time_s: 0.0,
            ridden_s: 0.0,
            charged_j: 0.0,
            repaid_j: 0.0,
            above_j: 0.0,
            price_s_per_j: ridden.price,
            highest_power_w: 0.0,
            coasting_s: 0.0,
            plan: Vec::new(),
            gears: Vec::new(),
            shifts_rear: 0,
            shifts_front: 0,
            energy: EnergyBook::default(),
            step_m: search.way.cells.iter().fold(0.0, |most: f64, cell| most.max(cell.length)),
            step_error_s: 0.0,
            trace: Vec::with_capacity(ridden.moments.len()),
        };
        Self { search, price: ridden.price, lap, uses, at: 0.0, reasons: Vec::new(), on_at_line: 0.0 }
    }

    fn ended(mut self, ridden: &Ridden) -> ReserveLap {
        if let Some(part) = self.lap.plan.last_mut() {
            part.time_s += self.on_at_line;
        }
        self.uses.retain(|used| used.distance_m > 0.0);
        let wheel = self.search.setup.lap.bike.wheel;
        ascending(&mut self.uses, |used| used.gear.development(wheel).m());
        let beyond = ridden.net_charge() - self.search.setup.budget.j();
        ReserveLap {
            time_s: self.lap.ridden_s + ridden.unclosed + ridden.price * beyond,
            step_error_s: self.lap.step_error_s.abs(),
            gears: self.uses,
            ..self.lap
        }
    }

    fn take(&mut self, cell: &Cell, moment: &Moment) {
        let from = self.at;
        self.at += cell.length;
        self.lap.ridden_s += moment.time();
        self.charge(moment);
        self.part(cell, moment, from);
        if let Some(gear) = moment.gear {
            self.shift(moment, gear);
            self.ride(cell, moment, gear);
        }
        self.trace(moment);
    }

    fn charge(&mut self, moment: &Moment) {
        let (joules, power) = (moment.charge * moment.charged, moment.power);
        self.lap.charged_j += joules.max(0.0);
        self.lap.repaid_j -= joules.min(0.0);
        let above = power - self.search.setup.account.sustainable_w();
        self.lap.above_j += above.max(0.0) * moment.charged;
    }

    /// Getting on belongs to the part on foot before it, at the line to the last one.
    fn part(&mut self, cell: &Cell, moment: &Moment, from: f64) {
        let mode = moment.gear.map_or(Mode::Foot, |_| Mode::Ride);
        if self.lap.plan.last().is_none_or(|part| part.mode != mode) {
            self.get_on(moment);
            self.reasons.clear();
            self.lap.plan.push(PlanPart { from_m: from, to_m: from, mode, why: None, time_s: 0.0 });
        }
        if mode == Mode::Foot {
            self.note(self.search.why_on_foot(cell, moment.entry), cell.length);
        }
        let why = self.reasons.iter().max_by(|a, b| a.1.total_cmp(&b.1)).map(|it| it.0);
        if let Some(part) = self.lap.plan.last_mut() {
            part.to_m = self.at;
            part.time_s += moment.time() - moment.on;
            part.why = why;
        }
    }

    fn get_on(&mut self, moment: &Moment) {
        match self.lap.plan.last_mut() {
            Some(part) => part.time_s += moment.on,
            None => self.on_at_line = moment.on,
        }
    }

    fn note(&mut self, why: WhyOnFoot, way: f64) {
        match self.reasons.iter_mut().find(|it| it.0 == why) {
            Some(it) => it.1 += way,
            None => self.reasons.push((why, way)),
        }
    }

    fn shift(&mut self, moment: &Moment, gear: usize) {
        if let Some(from) = moment.shifted_from {
            let rear = self.search.gearing.same_ring(from, gear);
            self.lap.shifts_rear += u32::from(rear);
            self.lap.shifts_front += u32::from(!rear);
        }
    }

    fn ride(&mut self, cell: &Cell, moment: &Moment, gear: usize) {
        let used = &mut self.uses[gear];
        used.time_s += moment.charged;
        used.distance_m += cell.length;
        self.lap.highest_power_w = self.lap.highest_power_w.max(moment.power);
        self.lap.coasting_s += if moment.power > 0.0 { 0.0 } else { moment.charged };
        self.lap.step_error_s += self.halved(cell, moment);
        self.spend(cell, moment);
    }

    fn spend(&mut self, cell: &Cell, moment: &Moment) {
        let (mean, length) = (0.5 * (moment.entry + moment.exit), cell.length);
        let crank = moment.power * moment.charged;
        let wheel = self.search.way.efficiency * crank;
        let squares = moment.exit * moment.exit - moment.entry * moment.entry;
        let kinetic = 0.5 * self.search.way.mass * squares;
        let [climbing, rolling, bearings, air] =
            [cell.gravity, cell.rolling, cell.bearing_force(mean), cell.air_force(mean)]
                .map(|force| force * length);
        let energy = &mut self.lap.energy;
        energy.crank_j += crank;
        energy.drivetrain_j += crank - wheel;
        energy.climbing_j += climbing;
        energy.rolling_j += rolling;
        energy.bearings_j += bearings;
        energy.air_j += air;
        energy.kinetic_j += kinetic;
        energy.brakes_j += if crank > 0.0 { 0.0 } else { -(climbing + rolling + bearings + air + kinetic) };
    }

    /// What two steps in place of one would take longer, the difference in speed at its price, s.
    fn halved(&self, cell: &Cell, moment: &Moment) -> f64 {
        if moment.power <= 0.0 {
            return 0.0;
        }
        let (way, half) = (&self.search.way, Cell { length: 0.5 * cell.length, ..*cell });
        let wheel = way.efficiency * moment.power;
        let step = |speed: f64| {
            let entry = Entry::bare(way, &half, speed);
            let end = entry.end_on(wheel, moment.exit);
            (end, entry.time(end))
        };
        let (middle, first) = step(moment.entry);
        let (end, second) = step(middle);
        let joules = 0.5 * way.mass * (moment.exit * moment.exit - end * end);
        first + second - moment.charged + self.price / way.efficiency * joules
    }

    fn trace(&mut self, moment: &Moment) {
        let mean = 0.5 * (moment.entry + moment.exit);
        let gearing = &self.search.gearing;
        self.lap.trace.push(ReservePoint {
            at_m: self.at,
            time_s: self.lap.ridden_s,
            speed_m_per_s: moment.exit,
            mode: moment.gear.map_or(Mode::Foot, |_| Mode::Ride),
            power_w: moment.power,
            gear: moment.gear.map(|gear| gearing.gears[gear]),
            cadence_rpm: moment.gear.map(|gear| gearing.rpm[gear] * mean),
            spent_j: self.lap.charged_j - self.lap.repaid_j,
        });
    }
}
