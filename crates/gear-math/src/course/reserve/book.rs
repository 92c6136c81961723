//! What came of a lap, from its moments.

use crate::course::course::Course;
use crate::course::lap::account::main_reason;
use crate::course::lap::lap::{GearUse, Lap, PlanPart, TracePoint, WhyOnFoot};
use crate::course::lap::modes::Mode;
use crate::course::lap::reserve_use::{ReservePoint, ReserveUse};
use crate::course::reserve::cell::Cell;
use crate::course::reserve::entry::Entry;
use crate::course::reserve::fineness::Fineness;
use crate::course::reserve::moment::{Moment, Ridden};
use crate::course::reserve::search::Search;
use crate::course::reserve::setup::ReserveSetup;
use crate::gears::Gear;
use crate::order::ascending;

impl Lap {
    /// The quickest lap of many that a rider can make of a budget of effort: when to spend, when to rest, which gear, and where to go
    /// on foot.
    ///
    /// # Formula
    /// T + λ N least over power, brakes, gear and feet, with N = ∫ h dt the [charge](crate::rider::EffortAccount::charge) of the lap
    /// and one price λ of a charged joule, at which N = B. Where N jumps because getting off begins to pay, the nearer side is kept.
    /// One price for a whole lap leaves the order of efforts aside; it is good while a lap moves the reserve by less than a third.
    /// Solved from the line backwards over place, speed and gear; the time is that of the lap ridden forward by what was found.
    ///
    /// # Example
    /// ```
    /// use gear_math::{Bike, Circumference, Course, Drivetrain, Lap, LapSetup, Power, Rider};
    /// use gear_math::course::{Fineness, ReserveSetup};
    /// use gear_math::rider::{Air, BikeMass, BodyMass, CriticalPower, EffortAccount, EffortBudget, KitMass, PeakPower, WorkReserve};
    /// let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
    /// let drivetrain = Drivetrain { chainset: "40".parse()?, cassette: "11-13-15-17-20-23-27-32".parse()? };
    /// let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
    /// let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, PeakPower::of_body(rider.body))?;
    /// let for_ever = ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort));
    ///
    /// let course: Course = "150; 0; firm grass\n40; 12; firm grass\n60; -8; firm grass".parse()?;
    /// let lap = |setup| Lap::on_reserve(&course, setup, Fineness::QUICK);
    /// let steady = lap(&for_ever);
    /// let spent = lap(&ReserveSetup { budget: EffortBudget::new(1500.0)?, ..for_ever });
    /// let used = |lap: &Lap| lap.reserve.clone().expect("a lap on a reserve");
    /// assert!(used(&steady).highest_power_w > 250.0, "the bank is forced and paid back on the way down");
    /// assert!(spent.time_s < steady.time_s && used(&spent).price_s_per_j < used(&steady).price_s_per_j);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn on_reserve(course: &Course, setup: &ReserveSetup, fineness: Fineness) -> Self {
        let search = Search::new(course, setup, fineness);
        Book::of(&search, &search.quickest())
    }
}

/// The lap on its budget: all its times longer by the share by which the price of what it took beyond that, or left of it, makes it
/// so.
fn longer_by(mut lap: Lap, share: f64) -> Lap {
    let parts = lap.plan.iter_mut().map(|it| &mut it.time_s);
    let gears = lap.gears.iter_mut().map(|it| &mut it.time_s);
    let points = lap.trace.iter_mut().map(|it| &mut it.time_s);
    let all = [&mut lap.time_s, &mut lap.below_window_s].into_iter();
    all.chain(parts).chain(gears).chain(points).for_each(|time| *time *= share);
    lap
}

/// Adds up a lap moment by moment.
pub(super) struct Book<'a> {
    search: &'a Search<'a>,
    lap: Lap,
    reserve: ReserveUse,
    uses: Vec<GearUse>,
    at: f64,
    /// Why the last part is gone on foot, with the way for which that holds, m.
    reasons: Vec<(WhyOnFoot, f64)>,
    /// Time of getting on at the line, s.
    on_at_line: f64,
    /// What halving the steps would add, s.
    halved: f64,
    /// The slowest crank of the rider's window, rpm.
    slow_crank: f64,
}

impl<'a> Book<'a> {
    pub(super) fn of(search: &'a Search<'a>, ridden: &Ridden) -> Lap {
        let mut book = Self::begun(search, ridden);
        for (cell, moment) in search.way.cells.iter().zip(&ridden.moments) {
            book.take(cell, moment);
        }
        book.ended(ridden)
    }

    fn begun(search: &'a Search<'a>, ridden: &Ridden) -> Self {
        let unused = |gear: &Gear| GearUse { gear: *gear, time_s: 0.0, distance_m: 0.0 };
        let (steps, shifting) = (ridden.moments.len(), &search.setup.lap.shifting);
        Self {
            search,
            lap: Lap::begun(steps),
            reserve: ReserveUse::begun(ridden.price, steps),
            uses: search.gearing.gears.iter().map(unused).collect(),
            at: 0.0,
            reasons: Vec::new(),
            on_at_line: 0.0,
            halved: 0.0,
            slow_crank: shifting.preferred.rpm() * (1.0 - shifting.window.share()),
        }
    }

    fn ended(mut self, ridden: &Ridden) -> Lap {
        if let Some(part) = self.lap.plan.last_mut() {
            part.time_s += self.on_at_line;
        }
        self.uses.retain(|used| used.distance_m > 0.0);
        let (way, setup) = (&self.search.way, self.search.setup);
        ascending(&mut self.uses, |used| used.gear.development(setup.lap.bike.wheel).m());
        let beyond = ridden.net_charge() - setup.budget.j();
        let longer = 1.0 + (ridden.unclosed + ridden.price * beyond) / self.lap.time_s;
        let lap = Lap {
            step_m: way.cells.iter().fold(0.0, |most: f64, cell| most.max(cell.length)),
            step_error_s: Some(self.halved.abs()),
            gears: self.uses,
            reserve: Some(self.reserve),
            ..self.lap
        };
        longer_by(lap, longer)
    }

    fn take(&mut self, cell: &Cell, moment: &Moment) {
        let from = self.at;
        self.at += cell.length;
        self.lap.time_s += moment.time();
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
        self.reserve.charged_j += joules.max(0.0);
        self.reserve.repaid_j -= joules.min(0.0);
        let above = power - self.search.setup.account.sustainable_w();
        self.reserve.above_j += above.max(0.0) * moment.charged;
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
        let why = main_reason(&self.reasons);
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
        self.reserve.highest_power_w = self.reserve.highest_power_w.max(moment.power);
        self.reserve.coasting_s += if moment.power > 0.0 { 0.0 } else { moment.charged };
        self.halved += self.halved(cell, moment);
        self.turn(cell, moment, gear);
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
        first + second - moment.charged + self.reserve.price_s_per_j / way.efficiency * joules
    }

    /// Where the rider pedals: the slowest crank, and how long it turned slower than the window.
    fn turn(&mut self, cell: &Cell, moment: &Moment, gear: usize) {
        if moment.power > 0.0 {
            let rpm = self.search.gearing.rpm[gear] * cell.length / moment.charged;
            let lowest = &mut self.lap.lowest_cadence_rpm;
            *lowest = Some(lowest.map_or(rpm, |least| least.min(rpm)));
            self.lap.below_window_s += if rpm < self.slow_crank { moment.charged } else { 0.0 };
        }
    }

    fn trace(&mut self, moment: &Moment) {
        let gearing = &self.search.gearing;
        self.lap.trace.push(TracePoint {
            at_m: self.at,
            time_s: self.lap.time_s,
            speed_m_per_s: moment.exit,
            mode: moment.gear.map_or(Mode::Foot, |_| Mode::Ride),
            gear: moment.gear.map(|gear| gearing.gears[gear]),
            cadence_rpm: moment.gear.map(|gear| gearing.rpm[gear] * 0.5 * (moment.entry + moment.exit)),
        });
        let spent_j = self.reserve.net_j();
        self.reserve.trace.push(ReservePoint { power_w: moment.power, spent_j });
    }
}
