//! A lap that was found, as numbers that can be handed on.

use crate::course::course::Course;
use crate::course::lap::lap::Lap;
use crate::course::reserve::book::Book;
use crate::course::reserve::fineness::Fineness;
use crate::course::reserve::moment::{Moment, Ridden, State};
use crate::course::reserve::search::Search;
use crate::course::reserve::setup::ReserveSetup;

/// Numbers of a step, and before the steps.
const STEP: usize = 10;
const HEAD: usize = 7;
/// Stands where there is no gear.
const NO_GEAR: f64 = -1.0;

/// The quickest lap on a reserve as it was found, without what comes of it: found by one, told by another.
///
/// # Example
/// ```
/// use gear_math::{Bike, Circumference, Course, Drivetrain, Lap, LapSetup, Power, Rider};
/// use gear_math::course::{Fineness, ReservePlan, ReserveSetup};
/// use gear_math::rider::{Air, BikeMass, BodyMass, CriticalPower, EffortAccount, KitMass, PeakPower, WorkReserve};
/// let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
/// let drivetrain = Drivetrain { chainset: "40".parse()?, cassette: "11-14-18-23-32".parse()? };
/// let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
/// let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, PeakPower::of_body(rider.body))?;
/// let setup = ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort));
/// let course: Course = "150; 0; firm grass\n40; 12; firm grass\n60; -8; firm grass".parse()?;
/// let sent = ReservePlan::of(&course, &setup, Fineness::QUICK).numbers();
/// let plan = ReservePlan::from_numbers(&sent).expect("the same plan");
/// assert_eq!(plan.lap(&course, &setup, Fineness::QUICK), Some(Lap::on_reserve(&course, &setup, Fineness::QUICK)));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone)]
pub struct ReservePlan(Ridden);

impl ReservePlan {
    /// Finds it: [`Lap::on_reserve`] without the account of it.
    #[must_use]
    pub fn of(course: &Course, setup: &ReserveSetup, fineness: Fineness) -> Self {
        Self(Search::new(course, setup, fineness).quickest())
    }

    /// The lap that it makes; none where it is of another course or bike, or was looked for in other steps.
    #[must_use]
    pub fn lap(&self, course: &Course, setup: &ReserveSetup, fineness: Fineness) -> Option<Lap> {
        let search = Search::new(course, setup, fineness);
        let known = |gear: &Option<usize>| gear.is_none_or(|gear| gear < search.gearing.gears.len());
        let moments = &self.0.moments;
        let gears = || moments.iter().flat_map(|it| [it.gear, it.shifted_from]);
        let fits = moments.len() == search.way.cells.len() && gears().all(|gear| known(&gear));
        fits.then(|| Book::of(&search, &self.0))
    }

    /// All of it as numbers.
    #[must_use]
    pub fn numbers(&self) -> Vec<f64> {
        let Ridden { moments, begin, end, price, unclosed, reluctance } = &self.0;
        let head = [state(*begin), state(*end), [*price, *unclosed]];
        head.into_iter().flatten().chain([*reluctance]).chain(moments.iter().flat_map(step)).collect()
    }

    /// The plan of these numbers; none where they are not as [`Self::numbers`] gives them.
    #[must_use]
    pub fn from_numbers(numbers: &[f64]) -> Option<Self> {
        let (head, steps) = numbers.split_at_checked(HEAD)?;
        let &[begin, in_gear, end, then_in, price, unclosed, reluctance] = head else { return None };
        let moments = steps.chunks_exact(STEP).map(moment).collect::<Option<Vec<_>>>()?;
        let whole = steps.len().is_multiple_of(STEP) && numbers.iter().all(|it| it.is_finite());
        let [begin, end] = [(begin, in_gear), (end, then_in)].map(|(speed, gear)| stood(speed, gear));
        whole.then_some(Self(Ridden { moments, begin, end, price, unclosed, reluctance }))
    }
}

fn index(gear: Option<usize>) -> f64 {
    gear.map_or(NO_GEAR, |gear| gear as f64)
}

fn gear(number: f64) -> Option<usize> {
    (number >= 0.0).then_some(number as usize)
}

fn state(state: State) -> [f64; 2] {
    match state {
        State::Riding(speed, gear) => [speed, gear as f64],
        State::OnFoot => [0.0, NO_GEAR],
    }
}

fn stood(speed: f64, number: f64) -> State {
    gear(number).map_or(State::OnFoot, |gear| State::Riding(speed, gear))
}

fn step(it: &Moment) -> [f64; STEP] {
    let Moment { entry, exit, power, charge, charged, off, on, extra, .. } = *it;
    [index(it.gear), entry, exit, power, charge, charged, off, on, extra, index(it.shifted_from)]
}

fn moment(numbers: &[f64]) -> Option<Moment> {
    let &[number, entry, exit, power, charge, charged, off, on, extra, from] = numbers else { return None };
    let [gear, shifted_from] = [number, from].map(gear);
    Some(Moment { gear, entry, exit, power, charge, charged, off, on, extra, shifted_from })
}
