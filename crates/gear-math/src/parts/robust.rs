//! Which choice is least regretted when the day is not as entered.

use crate::course::Course;
use crate::gears::{Drivetrain, GearSet};
use crate::parts::condition::Condition;
use crate::parts::outing::Outing;
use crate::parts::rides::{BoxRider, BoxRides};
use crate::quantity::{Limits, OutOfLimits, measured};
use crate::rider::PowerBelowStanding;

measured! {
    /// How much a course counts beside others: twice as much with a weight of 2 as with one of 1.
    CourseWeight(value): "weight of a course", "", 0.01 ..= 100.0;
}

/// How the best of a box stand up to another day and to other courses: the times of the best, by the first look, under every [`Condition`].
///
/// # Formula
/// A choice's time under a condition is the mean over the courses by their weights, its regret there what it is behind the
/// quickest choice, and its regret in all the largest of these (minimax regret; Savage 1951, *J Am Stat Assoc* 46:55–67, from
/// memory).
///
/// # Example
/// ```
/// use gear_math::{Bike, Cassette, Circumference, Drivetrain, LapSetup, Power, Rider};
/// use gear_math::course::Demo;
/// use gear_math::parts::{BareBike, BoxRider, Combining, Outing, PartsBox, Robust};
/// use gear_math::rider::{Air, BikeMass, BodyMass, KitMass};
/// let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
/// let drivetrain = Drivetrain { chainset: "40".parse()?, cassette: "11-13-15-17-20-23-26-30".parse()? };
/// let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
/// let rider = BoxRider::Steady(LapSetup::new(rider, bike, Air::STILL));
/// let parts = PartsBox {
///     chainsets: vec!["40".parse()?, "44/31".parse()?],
///     cassettes: Cassette::common().take(3).collect(),
///     ..PartsBox::default()
/// };
/// let outing = Outing { course: Demo::Meadow.course(), rider, bike: BareBike::usual() };
/// let mut combining = Combining::new(&outing, parts);
/// while combining.advance(20)? {}
/// let best = combining.laps().ok_or("all is sorted")?.best();
/// let mut robust = Robust::new(&outing, best, Vec::new());
/// while robust.advance()? {}
/// let least = robust.least().ok_or("one of them")?;
/// assert!(robust.regrets().iter().all(|it| it.worst_s >= least.worst_s));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone)]
pub struct Robust {
    laps: Vec<(Drivetrain, GearSet)>,
    courses: Vec<(Course, CourseWeight)>,
    rider: BoxRider,
    /// Times of all laps, course by course within condition by condition.
    times_s: Vec<Vec<f64>>,
}

/// What a choice is regretted by.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Regret {
    /// Which set-up: the gears it has and those that are not used.
    pub lap: (Drivetrain, GearSet),
    /// What it is behind the quickest under each of [`Condition::ALL`], in seconds.
    pub behind_s: [f64; Condition::ALL.len()],
    /// The largest of these.
    pub worst_s: f64,
}

impl CourseWeight {
    /// 1: that of the course a box is combined for.
    pub const ONE: Self = Self(1.0);
}

impl Robust {
    /// Takes the [best](crate::parts::BoxLaps::best) of a box and what it was combined for, and other courses that count beside its
    /// own.
    #[must_use]
    pub fn new(outing: &Outing, laps: Vec<(Drivetrain, GearSet)>, more: Vec<(Course, CourseWeight)>) -> Self {
        let own = (outing.course.clone(), CourseWeight::ONE);
        let courses = core::iter::once(own).chain(more).collect();
        Self { laps, courses, rider: outing.rider, times_s: Vec::new() }
    }

    /// Rides one course under one condition. Whether there is more to do.
    ///
    /// # Errors
    /// [`PowerBelowStanding`] when an even power leaves nothing to move on foot with.
    pub fn advance(&mut self) -> Result<bool, PowerBelowStanding> {
        if self.done() == self.total() {
            return Ok(false);
        }
        let condition = Condition::ALL[self.done() / self.courses.len()];
        let course = condition.course(&self.courses[self.done() % self.courses.len()].0);
        let rides = BoxRides::new(&course, &condition.rider(&self.rider), &self.laps)?;
        self.times_s.push(self.laps.iter().map(|lap| rides.look(lap).time_s).collect());
        Ok(self.done() < self.total())
    }

    /// How many pieces of work are done.
    #[must_use]
    pub fn done(&self) -> usize {
        self.times_s.len()
    }

    /// How many there are.
    #[must_use]
    pub fn total(&self) -> usize {
        if self.laps.is_empty() { 0 } else { Condition::ALL.len() * self.courses.len() }
    }

    /// What each of the best is regretted by, in their order; nothing before all is done.
    #[must_use]
    pub fn regrets(&self) -> Vec<Regret> {
        if self.done() < self.total() {
            return Vec::new();
        }
        let under: Vec<Vec<f64>> =
            self.times_s.chunks(self.courses.len()).map(|it| self.behind(it)).collect();
        let regret = |(at, lap): (usize, &(Drivetrain, GearSet))| {
            let behind_s = core::array::from_fn(|condition| under[condition][at]);
            Regret {
                lap: *lap,
                behind_s,
                worst_s: behind_s.iter().fold(0.0, |worst: f64, it| worst.max(*it)),
            }
        };
        self.laps.iter().enumerate().map(regret).collect()
    }

    /// The choice that is least regretted; of equals the quickest as entered.
    #[must_use]
    pub fn least(&self) -> Option<Regret> {
        self.regrets().into_iter().min_by(|a, b| a.worst_s.total_cmp(&b.worst_s))
    }

    /// What each lap is behind the quickest over all courses.
    fn behind(&self, by_course: &[Vec<f64>]) -> Vec<f64> {
        let weights = || self.courses.iter().map(|it| it.1.value());
        let whole: f64 = weights().sum();
        let mean = |at: usize| {
            by_course.iter().zip(weights()).map(|(times, it)| it * times[at]).sum::<f64>() / whole
        };
        let means: Vec<f64> = (0..self.laps.len()).map(mean).collect();
        let least = means.iter().copied().fold(f64::INFINITY, f64::min);
        means.into_iter().map(|it| it - least).collect()
    }
}
