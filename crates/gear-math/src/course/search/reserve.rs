//! Which rings and cassette would suit a course best on a reserve.

use crate::cage::Derailleur;
use crate::course::course::Course;
use crate::course::doubt::draw::Draw;
use crate::course::doubt::draws::Draws;
use crate::course::doubt::percentile::{band, sorted};
use crate::course::lap::lap::Lap;
use crate::course::lap::time_band::TimeBand;
use crate::course::reserve::fineness::Fineness;
use crate::course::reserve::setup::ReserveSetup;
use crate::course::search::neighbours::Neighbours;
use crate::course::search::search::Candidate;
use crate::gears::{Drivetrain, GearSet};
use crate::rider::Bike;
use std::cell::OnceCell;

/// A search over many set-ups on a reserve: a [first look](Neighbours) at all, the best by it planned in full.
///
/// # Example
/// ```
/// use gear_math::{Bike, Cassette, Circumference, Course, Derailleur, Drivetrain, LapSetup, Power, Rider};
/// use gear_math::course::{ReserveSearch, ReserveSetup};
/// use gear_math::gears::GearSet;
/// use gear_math::rider::{Air, BikeMass, BodyMass, CriticalPower, EffortAccount, KitMass, PeakPower, WorkReserve};
/// let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
/// let drivetrain = Drivetrain { chainset: "40".parse()?, cassette: "11-13-15-17-20-23-27-32".parse()? };
/// let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
/// let effort = CriticalPower::new(rider.power, WorkReserve::USUAL, PeakPower::of_body(rider.body))?;
/// let setup = ReserveSetup::new(LapSetup::new(rider, bike, Air::STILL), EffortAccount::new(effort));
/// let course: Course = "90; 0; firm grass\n40; 13; firm grass\n60; -8; firm grass".parse()?;
/// let all: Vec<(Drivetrain, GearSet)> =
///     Cassette::common().map(|cassette| (Drivetrain { cassette, ..drivetrain }, GearSet::NONE)).collect();
/// let search = ReserveSearch::new(&course, &setup, Derailleur::default(), &all);
/// let [look, plan] = [search.look(&all[0]), search.plan(&all[0])];
/// assert!((look.time_s - plan.time_s).abs() < 0.5);
/// assert_eq!(search.gains(&all[..1], &[plan.time_s])[0].time_s, 0.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone)]
pub struct ReserveSearch {
    course: Course,
    setup: ReserveSetup,
    derailleur: Derailleur,
    all: Vec<(Drivetrain, GearSet)>,
    /// Planned once a first look is taken: where all are planned anyway none is.
    neighbours: OnceCell<Neighbours>,
}

impl ReserveSearch {
    /// How many of the best by the first look are planned in full: the best of all was always among them, see [`Neighbours`].
    pub const PLANNED: usize = 60;
    /// By how many draws the likely edges of a gain are found.
    pub const DRAWN: usize = 16;

    /// Takes the course, rider and bike whose gears are to be replaced, the derailleur for its spare capacity, and all set-ups with
    /// their gears to avoid, some of which it plans for the first look.
    #[must_use]
    pub fn new(
        course: &Course,
        setup: &ReserveSetup,
        derailleur: Derailleur,
        all: &[(Drivetrain, GearSet)],
    ) -> Self {
        Self {
            course: course.clone(),
            setup: *setup,
            derailleur,
            all: all.to_vec(),
            neighbours: OnceCell::new(),
        }
    }

    fn neighbours(&self) -> &Neighbours {
        self.neighbours.get_or_init(|| Neighbours::among(&self.course, &self.setup, &self.all))
    }

    /// A set-up by the plans of its neighbours, with about its shifts.
    #[must_use]
    pub fn look(&self, (drivetrain, avoid): &(Drivetrain, GearSet)) -> Candidate {
        self.neighbours().candidate(drivetrain, *avoid, &self.derailleur)
    }

    /// A time that the first look makes of none of these set-ups less: see [`Neighbours::at_least_s`].
    #[must_use]
    pub fn at_least_s(&self, set_ups: &[(Drivetrain, GearSet)]) -> f64 {
        self.neighbours().at_least_s(set_ups)
    }

    /// A set-up planned in full, unless that was done for the first look.
    #[must_use]
    pub fn plan(&self, (drivetrain, avoid): &(Drivetrain, GearSet)) -> Candidate {
        let mut setup = self.setup;
        setup.lap.bike = Bike { drivetrain: *drivetrain, avoid: *avoid, ..setup.lap.bike };
        let known = self.neighbours.get().and_then(|it| it.planned(&setup.lap.bike, &self.derailleur));
        if let Some(known) = known {
            return known;
        }
        let lap = Lap::on_reserve(&self.course, &setup, Fineness::QUICK);
        Candidate::planned(&setup.lap.bike, &lap, &self.derailleur)
    }

    /// What each of some set-ups gains over the first of them, with likely edges, given their times as planned: everything doubtful
    /// is moved together, and what that does to the difference follows from the plans of a few of them.
    #[must_use]
    pub fn gains(&self, some: &[(Drivetrain, GearSet)], times_s: &[f64]) -> Vec<TimeBand> {
        let given = gains(&self.times(&self.setup, some));
        let all = Draws::usual();
        let draws = all.all().step_by(Draws::COUNT / Self::DRAWN);
        let of_draw = |draw: Draw| gains(&self.times(&draw.setup(&self.setup), some));
        let drawn: Vec<Vec<f64>> = draws.map(of_draw).collect();
        let planned = gains(times_s);
        let gain = |at: usize| {
            let moved = drawn.iter().map(|gains| planned[at] + gains[at] - given[at]);
            let TimeBand { low_s, high_s, .. } = band(&sorted(moved));
            let time_s = planned[at];
            TimeBand { low_s: low_s.min(time_s), time_s, high_s: high_s.max(time_s) }
        };
        (0..some.len().min(times_s.len())).map(gain).collect()
    }

    fn times(&self, setup: &ReserveSetup, some: &[(Drivetrain, GearSet)]) -> Vec<f64> {
        let neighbours = Neighbours::among(&self.course, setup, some);
        some.iter().map(|(drivetrain, avoid)| neighbours.time_s(drivetrain, *avoid)).collect()
    }
}

/// What each gains over the first.
fn gains(times_s: &[f64]) -> Vec<f64> {
    times_s.iter().map(|time| times_s[0] - time).collect()
}
