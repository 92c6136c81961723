//! A lap that others are planned by.

use crate::course::course::Course;
use crate::course::lap::lap::Lap;
use crate::course::reserve::book::Book;
use crate::course::reserve::fineness::Fineness;
use crate::course::reserve::plan::Plan;
use crate::course::reserve::search::Search;
use crate::course::reserve::setup::ReserveSetup;

/// A lap on a reserve that is kept with what it was found by, so that many laps of the same course on set-ups a little different,
/// such as the draws of a band, take less long to plan.
///
/// # Example
/// ```
/// use gear_math::{Bike, Circumference, Course, Drivetrain, Lap, LapSetup, Power, Rider};
/// use gear_math::course::{Fineness, PlannedLap, ReserveSetup};
/// use gear_math::rider::{Air, BikeMass, BodyMass, CriticalPower, EffortAccount, EffortBudget, KitMass, PeakPower, WorkReserve};
/// let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
/// let drivetrain = Drivetrain { chainset: "40".parse()?, cassette: "11-13-15-17-20-23-27-32".parse()? };
/// let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
/// let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, PeakPower::of_body(rider.body))?;
/// let given = ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort));
/// let moved = ReserveSetup { budget: EffortBudget::new(200.0)?, ..given };
///
/// let course: Course = "150; 0; firm grass\n40; 12; firm grass\n60; -8; firm grass".parse()?;
/// let planned = PlannedLap::of(&course, &given, Fineness::QUICK);
/// let near = planned.near(&course, &moved);
/// assert!((near.time_s - Lap::on_reserve(&course, &moved, Fineness::QUICK).time_s).abs() < 0.1);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone)]
pub struct PlannedLap {
    /// The lap.
    pub lap: Lap,
    fineness: Fineness,
    plan: Plan,
}

impl PlannedLap {
    /// The quickest lap, as [`Lap::on_reserve`] finds it.
    #[must_use]
    pub fn of(course: &Course, setup: &ReserveSetup, fineness: Fineness) -> Self {
        let search = Search::new(course, setup, fineness);
        let (ridden, plan) = search.planned();
        Self { lap: Book::of(&search, &ridden), fineness, plan }
    }

    /// The quickest lap of the same course on a set-up a little different, looked for about this one. Where it turns out to be
    /// ridden and gone on foot in other parts, or the course is another, it is looked for anew.
    #[must_use]
    pub fn near(&self, course: &Course, setup: &ReserveSetup) -> Lap {
        let search = Search::new(course, setup, self.fineness);
        Book::of(&search, &search.by(&self.plan))
    }
}
