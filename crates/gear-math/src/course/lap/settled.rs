//! A lap ridden in steps that are halved until its time settles.

use crate::course::course::Course;
use crate::course::lap::account::Account;
use crate::course::lap::follow::{Moment, follow};
use crate::course::lap::gearbox::Gears;
use crate::course::lap::lap::Lap;
use crate::course::lap::modes::quickest;
use crate::course::lap::ride::{Ride, Rolling};
use crate::course::lap::setup::{Begin, LapSetup};
use crate::course::lap::terrain::Terrain;
use crate::course::lap::uncertainty::Moved;
use crate::course::quantity::Step;
use crate::rider::PowerBelowStanding;

/// Steps tried, from the first until the time and the number of parts of the plan no longer change.
const STEPS_M: [f64; 5] = [1.0, 0.5, 0.25, 0.125, 0.0625];
/// A change of the lap time that no longer matters, s. Estimate, because a stopwatch held at the line is no surer.
const SMALL_CHANGE_S: f64 = 0.25;
/// The stated error over the last change: halving reduces an error by two, so the rest is about as large again.
const ERROR_OVER_CHANGE: f64 = 2.0;
/// No time is stated to be surer than this, s. Estimate: what is left of how a flying lap was begun.
const LEAST_ERROR_S: f64 = 0.05;

impl Lap {
    /// Rides the lap by the quickest plan, halving the steps until the time settles.
    ///
    /// Speed is carried from step to step as kinetic energy, wheels included, with the power held. Gears follow the
    /// cadence with hysteresis; a shift costs its time without drive. Getting off costs its time and the speed above
    /// that on foot, getting on its time. Obstacles must be taken on foot, and so must ground on which speed falls
    /// below what the lowest gear and balance allow.
    ///
    /// # Errors
    /// [`PowerBelowStanding`] when the power leaves nothing to move on foot with.
    pub fn of(course: &Course, setup: &LapSetup) -> Result<Self, PowerBelowStanding> {
        let mut halved = Halved::begin(course, setup)?;
        while halved.go_on(course, setup)? {}
        Ok(halved.lap)
    }

    /// Whether steps half as long change little and nothing of the plan.
    fn has_settled_after(&self, coarser: &Self) -> bool {
        (self.time_s - coarser.time_s).abs() < SMALL_CHANGE_S && self.plan.len() == coarser.plan.len()
    }

    /// How far off the time may be, by what halving the steps changed.
    fn error_after(&self, coarser: &Self, setup: &LapSetup) -> f64 {
        let change = (self.time_s - coarser.time_s).abs();
        LEAST_ERROR_S + self.one_shift_more_s(setup) + ERROR_OVER_CHANGE * change
    }

    /// Time of a shift between rings and back: finer steps may bring one more or one fewer, or a few metres more on foot.
    /// Nothing on a lap ridden throughout in one gear.
    fn one_shift_more_s(&self, setup: &LapSetup) -> f64 {
        let is_steady = self.shifts_front + self.shifts_rear == 0 && self.plan.len() == 1;
        if is_steady { 0.0 } else { 2.0 * setup.shifting.front.s() }
    }

    /// The same in steps no longer than `step`, without looking whether the time has settled.
    ///
    /// # Errors
    /// [`PowerBelowStanding`] when the power leaves nothing to move on foot with.
    pub fn in_steps(course: &Course, setup: &LapSetup, step: Step) -> Result<Self, PowerBelowStanding> {
        let lap = |ride: &Ride<'_>| Account::new(ride, setup).lap(&ridden(ride, setup.begin), step);
        on_ride(course, setup, step, &Moved::NOT, lap)
    }
}

/// A lap whose steps are halved, one ride after another.
#[derive(Debug)]
pub(in crate::course) struct Halved {
    pub(in crate::course) lap: Lap,
    /// How many of the steps have been tried; all of them once it has settled.
    tried: usize,
}

impl Halved {
    pub(in crate::course) fn begin(course: &Course, setup: &LapSetup) -> Result<Self, PowerBelowStanding> {
        Ok(Self { lap: Lap::in_steps(course, setup, Step::known(STEPS_M[0]))?, tried: 1 })
    }

    /// Rides in steps half as long; whether that was still to be done.
    pub(in crate::course) fn go_on(
        &mut self,
        course: &Course,
        setup: &LapSetup,
    ) -> Result<bool, PowerBelowStanding> {
        let Some(step) = STEPS_M.get(self.tried).copied().map(Step::known) else { return Ok(false) };
        let coarser = core::mem::replace(&mut self.lap, Lap::in_steps(course, setup, step)?);
        self.lap.step_error_s = Some(self.lap.error_after(&coarser, setup));
        let has_settled = self.lap.has_settled_after(&coarser);
        self.tried = if has_settled { STEPS_M.len() } else { self.tried + 1 };
        Ok(true)
    }

    /// Rides once more in steps as long as those of another lap, where they are longer; whether that was to be done.
    pub(in crate::course) fn refine(
        &mut self,
        course: &Course,
        setup: &LapSetup,
        finest_m: f64,
    ) -> Result<bool, PowerBelowStanding> {
        let is_coarser = self.lap.step_m > finest_m;
        if is_coarser {
            let step_error_s = self.lap.step_error_s;
            self.lap = Lap { step_error_s, ..Lap::in_steps(course, setup, Step::known(finest_m))? };
        }
        Ok(is_coarser)
    }
}

/// Something of the ride round a course in steps no longer than `step`, with the uncertain inputs moved as `moved` says.
///
/// # Errors
/// [`PowerBelowStanding`] when the power leaves nothing to move on foot with.
pub(in crate::course) fn on_ride<T>(
    course: &Course,
    setup: &LapSetup,
    step: Step,
    moved: &Moved,
    of: impl FnOnce(&Ride<'_>) -> T,
) -> Result<T, PowerBelowStanding> {
    let terrain = Terrain::new(course, setup, step, moved)?;
    let gears = Gears::new(&setup.bike, &setup.shifting);
    Ok(of(&Ride::new(&terrain, &gears)))
}

/// The lap by the quickest plan, step by step.
pub(in crate::course) fn ridden(ride: &Ride<'_>, begin: Begin) -> Vec<Moment> {
    let start = started(ride, begin);
    let plan = quickest(ride, start);
    let mut moments = follow(ride, &plan.modes, start).unwrap_or_default();
    moments.truncate(ride.terrain.lap.end);
    moments.drain(..ride.terrain.lap.start);
    moments
}

/// How the way is begun: as the lap is, or some way before a flying lap at a steady speed.
fn started(ride: &Ride<'_>, begin: Begin) -> Rolling {
    let first = &ride.terrain.cells[0];
    let speed = match begin {
        Begin::Rolling(speed) => speed.m_per_s(),
        Begin::Flying => {
            ride.terrain.motion.steady_speed(&first.stretch, ride.terrain.drive.power).min(first.ceiling)
        }
    };
    ride.rolling(speed)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::course::lap::lap::PlanPart;
    use crate::course::lap::modes::Mode;
    use crate::gears::Drivetrain;
    use crate::quantity::Circumference;
    use crate::rider::{Air, Bike, BikeMass, BodyMass, KitMass, Power, Rider};

    fn lap(time_s: f64, plan: Vec<PlanPart>) -> Lap {
        Lap { time_s, plan, ..Lap::begun(0) }
    }

    fn ridden() -> Vec<PlanPart> {
        vec![PlanPart { from_m: 0.0, to_m: 100.0, mode: Mode::Ride, why: None, time_s: 5.0 }]
    }

    #[test]
    fn a_lap_has_settled_when_neither_time_nor_plan_changes() {
        let settled = |before: f64, parts: usize| {
            let finer = lap(600.0, ridden());
            finer.has_settled_after(&lap(before, ridden().repeat(parts)))
        };
        assert!(settled(600.24, 1) && settled(599.76, 1));
        assert!(!settled(600.25, 1) && !settled(599.75, 1));
        assert!(!settled(600.0, 2));
    }

    fn setup() -> LapSetup {
        let rider =
            Rider::new(BodyMass::new(66.0).unwrap(), KitMass::new(2.0).unwrap(), Power::new(220.0).unwrap());
        let drivetrain =
            Drivetrain { chainset: "42".parse().unwrap(), cassette: "12-14-17-21".parse().unwrap() };
        let bike = Bike::new(BikeMass::new(9.0).unwrap(), drivetrain, Circumference::new(2150.0).unwrap());
        LapSetup::new(rider, bike, Air::STILL)
    }

    #[test]
    fn the_stated_error_is_twice_the_last_change_and_a_shift_and_back() {
        let setup = setup();
        let error = |finer: Lap| finer.error_after(&lap(600.3, ridden()), &setup);
        let close = |found: f64, expected: f64| (found - expected).abs() < 1e-9;
        assert!(close(error(lap(600.0, ridden())), 0.05 + 0.6));
        let shift = 2.0 * setup.shifting.front.s();
        assert!(close(error(Lap { shifts_rear: 1, ..lap(600.0, ridden()) }), 0.65 + shift));
        assert!(close(error(Lap { shifts_front: 1, ..lap(600.6, ridden()) }), 0.65 + shift));
        assert!(close(error(lap(600.0, ridden().repeat(3))), 0.65 + shift));
    }

    /// The first lap of a settled one is that of the last steps tried, and the one before it had not settled.
    #[test]
    fn steps_are_halved_until_the_lap_settles() {
        let setup = setup();
        for course in
            [crate::course::demo::Demo::Meadow.course(), crate::course::demo::Demo::SandPit.course()]
        {
            let settled = Lap::of(&course, &setup).unwrap();
            let step = |m: f64| Lap::in_steps(&course, &setup, Step::known(m)).unwrap();
            let before = step(2.0 * settled.step_m);
            assert_eq!(settled.step_error_s, Some(settled.error_after(&before, &setup)));
            assert!(settled.has_settled_after(&before) || settled.step_m <= 0.0625);
            if settled.step_m < 0.5 {
                assert!(!before.has_settled_after(&step(4.0 * settled.step_m)));
            }
            assert!((settled.time_s - step(settled.step_m).time_s).abs() < 1e-9);
        }
    }
}
