//! Which rings and cassette would suit a course best: every set-up that fits, quickly.

use crate::cage::{CageVerdict, Derailleur};
use crate::course::course::Course;
use crate::course::lap::follow::Moment;
use crate::course::lap::gearbox::Gears;
use crate::course::lap::ride::Ride;
use crate::course::lap::settled::ridden;
use crate::course::lap::setup::LapSetup;
use crate::course::lap::terrain::Terrain;
use crate::course::lap::time_band::TimeBand;
use crate::course::lap::uncertainty::Moved;
use crate::course::quantity::Step;
use crate::gears::{Cassette, Chainring, Chainset, Drivetrain, GearSet};
use crate::rider::{Bike, PowerBelowStanding};

/// Set-ups to be searched.
#[derive(Debug, Clone, PartialEq)]
pub struct SearchSpace {
    /// Rings to be tried.
    pub chainsets: Vec<Chainset>,
    /// Cassettes to be tried.
    pub cassettes: Vec<Cassette>,
    /// What the derailleurs take; unknown figures allow everything.
    pub derailleur: Derailleur,
    /// The largest ring the frame clears.
    pub largest_ring: Option<Chainring>,
    /// Whether set-ups count that fit only if some gears are never used.
    pub with_gears_to_avoid: bool,
}

impl SearchSpace {
    /// Every set-up that fits.
    pub fn setups(&self) -> impl Iterator<Item = Drivetrain> + '_ {
        let all = self.chainsets.iter().flat_map(|&chainset| {
            self.cassettes.iter().map(move |&cassette| Drivetrain { chainset, cassette })
        });
        all.filter(|drivetrain| self.allows(drivetrain))
    }

    /// Whether frame and derailleurs take a set-up.
    #[must_use]
    pub fn allows(&self, drivetrain: &Drivetrain) -> bool {
        self.misfit(drivetrain).is_none()
    }

    /// Why frame or derailleurs do not take a set-up; none where they do.
    #[must_use]
    pub fn misfit(&self, drivetrain: &Drivetrain) -> Option<Misfit> {
        if self.largest_ring.is_some_and(|most| drivetrain.chainset.largest() > most) {
            return Some(Misfit::Frame);
        }
        match self.derailleur.check(drivetrain).verdict {
            CageVerdict::Fits | CageVerdict::FitsAsFarAsKnown | CageVerdict::Unknown => None,
            CageVerdict::FitsIfGearsAvoided => (!self.with_gears_to_avoid).then_some(Misfit::GearsToAvoid),
            _ => Some(Misfit::Derailleur),
        }
    }
}

/// Why a set-up is not searched.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Misfit {
    /// Its largest ring does not clear the frame.
    Frame,
    /// A derailleur does not take it.
    Derailleur,
    /// The derailleur takes it only if some gears are never used.
    GearsToAvoid,
}

/// One set-up of a search.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Candidate {
    /// Its rings and cassette.
    pub drivetrain: Drivetrain,
    /// Time of the lap, in seconds. On steady power in steps of 1 m: the same as
    /// [`Lap::in_steps`](crate::course::lap::lap::Lap::in_steps) gives.
    pub time_s: f64,
    /// Shifts from sprocket to sprocket.
    pub shifts_rear: u32,
    /// Shifts from ring to ring.
    pub shifts_front: u32,
    /// Largest step between neighbouring sprockets, in per cent; zero with a single sprocket.
    pub largest_step_percent: f64,
    /// Way per crank turn in the lowest gear, in metres.
    pub lowest_development_m: f64,
    /// Capacity of the cage left over, in teeth; none when it is not known.
    pub spare_capacity: Option<i32>,
}

/// A search over many set-ups, a few at a time, so that it can report, be stopped and be shared between workers.
///
/// Every set-up rides its lap in full, by its own quickest plan. What does not depend on the gears is worked out once
/// for all: the forces, the grip, braking for corners, and the time on foot of every step.
///
/// # Example
/// ```
/// use gear_math::{Bike, Cassette, Chainset, Circumference, Derailleur, Drivetrain, LapSetup, Power, Rider, Search};
/// use gear_math::course::{Demo, SearchSpace};
/// use gear_math::rider::{Air, BikeMass, BodyMass, KitMass};
/// let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
/// let drivetrain = Drivetrain { chainset: "44/31".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
/// let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2150.0)?);
/// let space = SearchSpace {
///     chainsets: Chainset::common().collect(),
///     cassettes: Cassette::common().take(3).collect(),
///     derailleur: Derailleur::default(),
///     largest_ring: None,
///     with_gears_to_avoid: false,
/// };
/// let setup = LapSetup::new(rider, bike, Air::STILL);
/// let mut search = Search::new(&Demo::Meadow.course(), &setup, space.derailleur, space.setups().collect())?;
/// let mut found = Vec::new();
/// while !search.is_done() {
///     found.extend(search.advance(20));
/// }
/// assert_eq!(found.len(), search.total());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone)]
pub struct Search {
    setup: LapSetup,
    derailleur: Derailleur,
    set_ups: Vec<(Drivetrain, GearSet)>,
    done: usize,
    terrain: Terrain,
}

impl Search {
    /// Steps of its laps. Estimate, because steps half as long take twice the time.
    pub const STEP: Step = Step::known(1.0);

    /// Takes the course, the rider and bike whose gears are to be replaced, the derailleur for its spare capacity,
    /// and the set-ups.
    ///
    /// # Errors
    /// [`PowerBelowStanding`] when the power leaves nothing to move on foot with.
    pub fn new(
        course: &Course,
        setup: &LapSetup,
        derailleur: Derailleur,
        set_ups: Vec<Drivetrain>,
    ) -> Result<Self, PowerBelowStanding> {
        let terrain = Terrain::new(course, setup, Search::STEP, &Moved::NOT)?;
        let set_ups = set_ups.into_iter().map(|drivetrain| (drivetrain, GearSet::NONE)).collect();
        Ok(Self { setup: *setup, derailleur, set_ups, done: 0, terrain })
    }

    /// The same, with gears that are not to be used in each set-up.
    #[must_use]
    pub fn avoiding(mut self, avoid: impl Fn(&Drivetrain) -> GearSet) -> Self {
        self.set_ups.iter_mut().for_each(|(drivetrain, avoided)| *avoided = avoid(drivetrain));
        self
    }

    /// The part of this search that worker `worker` of `workers` does, counted from zero.
    #[must_use]
    pub fn part(mut self, worker: usize, workers: usize) -> Self {
        let count = self.set_ups.len();
        let workers = workers.max(1);
        let edge = |worker: usize| count * worker.min(workers) / workers;
        self.set_ups = self.set_ups[edge(worker)..edge(worker.saturating_add(1))].to_vec();
        self
    }

    /// How many set-ups there are.
    #[must_use]
    pub fn total(&self) -> usize {
        self.set_ups.len()
    }

    /// How many are done.
    #[must_use]
    pub fn done(&self) -> usize {
        self.done
    }

    /// Whether all are done.
    #[must_use]
    pub fn is_done(&self) -> bool {
        self.done == self.set_ups.len()
    }

    /// Works out the next `count` set-ups.
    pub fn advance(&mut self, count: usize) -> Vec<Candidate> {
        let end = (self.done.saturating_add(count)).min(self.set_ups.len());
        let next = &self.set_ups[self.done..end];
        self.done = end;
        next.iter().map(|set_up| self.ride(set_up)).collect()
    }

    /// Works out one set-up without its gears to avoid, whether it is one of this search or not.
    #[must_use]
    pub fn ride(&self, &(drivetrain, avoid): &(Drivetrain, GearSet)) -> Candidate {
        let bike = Bike { drivetrain, avoid, ..self.setup.bike };
        let gears = Gears::new(&bike, &self.setup.shifting);
        let moments = ridden(&Ride::new(&self.terrain, &gears), self.setup.begin);
        let time_s = moments.iter().map(|moment| moment.time).sum();
        Candidate::known(&bike, time_s, shifts(&gears, &moments), &self.derailleur)
    }
}

/// Shifts of a lap at the rear and at the front.
fn shifts(gears: &Gears, moments: &[Moment]) -> [u32; 2] {
    let mut used = moments.iter().filter_map(|moment| moment.gear);
    let Some(mut last) = used.next() else { return [0; 2] };
    used.fold([0; 2], |[rear, front], gear| {
        let (more_rear, more_front) = gears.shifts(core::mem::replace(&mut last, gear), gear);
        [rear + more_rear, front + more_front]
    })
}

/// A set-up ridden in full, with every uncertain input moved.
#[derive(Debug, Clone, PartialEq)]
pub struct Finalist {
    /// The candidate, with time and shifts of the full lap.
    pub drivetrain: Drivetrain,
    /// Time of the lap, in seconds.
    pub time_s: f64,
    pub(in crate::course) moved_s: Vec<f64>,
}

/// Rides set-ups in full to tell which of them differ by more than the uncertainty.
#[derive(Debug, Clone)]
pub struct Finals {
    setup: LapSetup,
    /// As given, then with each uncertain input moved.
    terrains: Vec<Terrain>,
}

impl Finals {
    /// Takes the course and the rider and bike whose gears are to be replaced.
    ///
    /// # Errors
    /// [`PowerBelowStanding`] when the power leaves nothing to move on foot with.
    pub fn new(course: &Course, setup: &LapSetup) -> Result<Self, PowerBelowStanding> {
        let all = core::iter::once(&Moved::NOT).chain(&Moved::EACH);
        let terrains = all.map(|moved| Terrain::new(course, setup, Search::STEP, moved));
        Ok(Self { setup: *setup, terrains: terrains.collect::<Result<_, _>>()? })
    }

    /// Rides the lap in full without the gears to avoid, once as given and once for each input moved.
    #[must_use]
    pub fn ride(&self, drivetrain: &Drivetrain, avoid: GearSet) -> Finalist {
        let bike = Bike { drivetrain: *drivetrain, avoid, ..self.setup.bike };
        let gears = Gears::new(&bike, &self.setup.shifting);
        let time = |terrain: &Terrain| -> f64 {
            ridden(&Ride::new(terrain, &gears), self.setup.begin).iter().map(|moment| moment.time).sum()
        };
        let (given, moved) = self
            .terrains
            .split_first()
            .map_or((0.0, Vec::new()), |(given, moved)| (time(given), moved.iter().map(time).collect()));
        Finalist { drivetrain: *drivetrain, time_s: given, moved_s: moved }
    }
}

impl Finalist {
    /// Seconds this one gains over another, with likely edges; a tie when they lie on either side of zero.
    #[must_use]
    pub fn gained_over(&self, other: &Self) -> TimeBand {
        let time_s = other.time_s - self.time_s;
        let changes = other.moved_s.iter().zip(&self.moved_s).map(|(a, b)| a - b - time_s);
        TimeBand::around(time_s, changes.chain([STEP_ERROR_S, -STEP_ERROR_S]))
    }
}

/// How far the difference of two laps in the steps of a search may be off, s. Estimate, from halving the steps.
const STEP_ERROR_S: f64 = 1.0;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::gears::TotalCapacity;

    /// With one figure known and kept, nothing speaks against a set-up.
    #[test]
    fn a_figure_that_is_not_known_rules_nothing_out() {
        let space = |capacity: Option<u16>| SearchSpace {
            chainsets: vec!["44/31".parse().unwrap()],
            cassettes: vec!["11-13-15-18-21-24-28-32".parse().unwrap()],
            derailleur: Derailleur {
                total_capacity: capacity.map(|teeth| TotalCapacity::new(teeth).unwrap()),
                ..Derailleur::default()
            },
            largest_ring: None,
            with_gears_to_avoid: false,
        };
        let count = |capacity| space(capacity).setups().count();
        assert_eq!([count(None), count(Some(39)), count(Some(30))], [1, 1, 0]);
        let cleared = |teeth| SearchSpace { largest_ring: Chainring::new(teeth).ok(), ..space(None) };
        assert_eq!([cleared(44), cleared(43)].map(|it| it.setups().count()), [1, 0]);
    }

    const COURSE: &str = "100; 1; packed gravel\n40; 11; firm grass\n60; -2; firm grass";

    fn search(count: usize) -> Search {
        let rider = crate::Rider::new(
            crate::rider::BodyMass::new(64.0).unwrap(),
            crate::rider::KitMass::new(2.0).unwrap(),
            crate::Power::new(230.0).unwrap(),
        );
        let of = |ring: u16| Drivetrain {
            chainset: Chainset::new([ring]).unwrap(),
            cassette: "13-17-25".parse().unwrap(),
        };
        let wheel = crate::Circumference::new(2150.0).unwrap();
        let bike = Bike::new(crate::rider::BikeMass::new(9.0).unwrap(), of(40), wheel);
        let setup = LapSetup::new(rider, bike, crate::rider::Air::STILL);
        let set_ups = (0..count as u16).map(|more| of(34 + more)).collect();
        Search::new(&COURSE.parse().unwrap(), &setup, Derailleur::default(), set_ups).unwrap()
    }

    #[test]
    fn workers_share_a_search_without_a_gap() {
        for workers in 1..6 {
            let parts = (0..workers).map(|worker| search(7).part(worker, workers).set_ups);
            let all: Vec<_> = parts.flatten().collect();
            assert_eq!(all, search(7).set_ups, "{workers} workers");
        }
        assert_eq!((search(7).part(2, 3).total(), search(7).part(9, 3).total()), (3, 0));
    }

    #[test]
    fn a_search_says_how_far_it_is() {
        let mut search = search(3);
        assert_eq!((search.total(), search.done(), search.is_done()), (3, 0, false));
        assert_eq!(search.advance(2).len(), 2);
        assert_eq!((search.total(), search.done(), search.is_done()), (3, 2, false));
        assert_eq!((search.advance(5).len(), search.done(), search.is_done()), (1, 3, true));
    }

    /// 4 s gained, or 1 or 7 s where a doubt moves both; steps add a second.
    #[test]
    fn what_a_finalist_gains_is_moved_with_both() {
        let finalist = |time_s: f64, moved_s: [f64; 3]| Finalist {
            drivetrain: search(1).set_ups[0].0,
            time_s,
            moved_s: moved_s.to_vec(),
        };
        let (quick, slow) = (finalist(400.0, [410.0, 395.0, 400.0]), finalist(404.0, [411.0, 402.0, 404.0]));
        let (gained, lost) = (quick.gained_over(&slow), slow.gained_over(&quick));
        let edges = [gained.low_s, gained.time_s, gained.high_s];
        let expected = [4.0 - 10.0_f64.sqrt(), 4.0, 4.0 + 10.0_f64.sqrt()];
        assert!(edges.iter().zip(expected).all(|(a, b)| (a - b).abs() < 1e-9), "{gained:?}");
        assert!((lost.low_s + gained.high_s).abs() < 1e-9 && (lost.high_s + gained.low_s).abs() < 1e-9);
    }

    #[test]
    fn what_does_not_fit_is_told_by_what_it_does_not_fit() {
        let drivetrain = Drivetrain {
            chainset: "44/31".parse().unwrap(),
            cassette: "11-13-15-18-21-24-28-32".parse().unwrap(),
        };
        let mut met = [0; 3];
        for teeth in 16..45 {
            let derailleur =
                Derailleur { total_capacity: TotalCapacity::new(teeth).ok(), ..Derailleur::default() };
            let misfit = |with_gears_to_avoid| {
                let space = SearchSpace {
                    chainsets: Vec::new(),
                    cassettes: Vec::new(),
                    derailleur,
                    largest_ring: None,
                    with_gears_to_avoid,
                };
                space.misfit(&drivetrain)
            };
            let (kind, expected) = match derailleur.check(&drivetrain).verdict {
                CageVerdict::FitsIfGearsAvoided => (0, [Some(Misfit::GearsToAvoid), None]),
                CageVerdict::Fits | CageVerdict::FitsAsFarAsKnown | CageVerdict::Unknown => (1, [None; 2]),
                _ => (2, [Some(Misfit::Derailleur); 2]),
            };
            assert_eq!([misfit(false), misfit(true)], expected, "{teeth}");
            met[kind] += 1;
        }
        assert!(met[0] > 0 && met[1] > 0, "{met:?}");
    }

    /// What was given with the bike is not what is ridden.
    #[test]
    fn every_set_up_is_ridden_itself() {
        let mut search = search(8);
        let setup = search.setup;
        let course: Course = COURSE.parse().unwrap();
        let finals = Finals::new(&course, &setup).unwrap();
        let mut times = Vec::new();
        for found in search.advance(8) {
            let bike = Bike { drivetrain: found.drivetrain, ..setup.bike };
            let lap = crate::Lap::in_steps(&course, &LapSetup { bike, ..setup }, Search::STEP).unwrap();
            let finalist = finals.ride(&found.drivetrain, GearSet::NONE);
            assert!((found.time_s - lap.time_s).abs() < 1e-9 && (finalist.time_s - lap.time_s).abs() < 1e-9);
            assert!((found.lowest_development_m - bike.lowest_development().m()).abs() < 1e-12);
            times.push(found.time_s);
        }
        assert!(times.iter().any(|time| (time - times[0]).abs() > 1e-6), "{times:?}");
    }
}
