//! What of a box is quickest round a course, worked out a little at a time.

use crate::course::{Candidate, Course, ReserveSearch, TimeBand};
use crate::gears::{Drivetrain, GearSet};
use crate::order::places;
use crate::parts::bare_bike::BareBike;
use crate::parts::combination::Combination;
use crate::parts::fit::Fit;
use crate::parts::parts_box::PartsBox;
use crate::parts::rides::{BoxRider, BoxRides};
use crate::parts::sorted::SortedBox;
use crate::rider::PowerBelowStanding;

/// What of a box is quickest round a course: everything that goes together is ridden, and the best by a first look are planned in
/// full. A little at a time, so that it can report and be stopped between.
///
/// The first look of laps on a reserve is off by some tenths of a second, see [`Neighbours`](crate::course::Neighbours): with no
/// more than [`ReserveSearch::PLANNED`] different laps all are planned and nothing is missed; of more the quickest was always among
/// those planned where that was tried.
///
/// # Example
/// ```
/// use gear_math::{Bike, Cassette, Circumference, Drivetrain, LapSetup, Power, Rider};
/// use gear_math::course::Demo;
/// use gear_math::parts::{BareBike, BoxRider, Combining, PartsBox};
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
/// let mut combining = Combining::new(&Demo::Meadow.course(), &rider, BareBike::usual(), parts);
/// while combining.advance(20)? {}
/// let order = combining.quickest();
/// assert_eq!((order.len(), combining.done()), (6, combining.total()));
/// assert!(order[0].time_s <= order[5].time_s);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone)]
pub struct Combining {
    course: Course,
    rider: BoxRider,
    bike: BareBike,
    parts: PartsBox,
    sorted: SortedBox,
    riding: Option<Riding>,
}

/// Laps of what goes together.
#[derive(Debug, Clone)]
struct Riding {
    rides: BoxRides,
    laps: Vec<(Drivetrain, GearSet)>,
    /// Which lap each fitting combination rides.
    lap_of: Vec<usize>,
    found: Vec<Candidate>,
    planned: Vec<bool>,
}

/// A lap with its time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RiddenLap {
    /// The gears it is ridden in, and those that are not used.
    pub lap: (Drivetrain, GearSet),
    /// Its time, in seconds.
    pub time_s: f64,
}

/// A combination that goes together, with its lap.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Combined {
    /// Which parts.
    pub combination: Combination,
    /// How they go together.
    pub fit: Fit,
    /// Time of its lap, in seconds.
    pub time_s: f64,
    /// Whether the lap was worked out in full, or by a first look.
    pub planned: bool,
    /// Shifts and lowest gear.
    pub lap: Candidate,
}

impl Combining {
    /// Takes what is to be combined on which bike, and who rides it where.
    #[must_use]
    pub fn new(course: &Course, rider: &BoxRider, bike: BareBike, parts: PartsBox) -> Self {
        let (course, sorted) = (course.clone(), SortedBox::default());
        Self { course, rider: *rider, bike, parts, sorted, riding: None }
    }

    /// Does about `count` pieces of work: a combination tried, a lap looked at, or a lap planned. Whether there is more to do.
    ///
    /// # Errors
    /// [`PowerBelowStanding`] when an even power leaves nothing to move on foot with.
    pub fn advance(&mut self, count: usize) -> Result<bool, PowerBelowStanding> {
        if self.sorted.done() < self.parts.count() {
            self.sorted.advance(&self.bike, &self.parts, count);
            return Ok(true);
        }
        let riding = match &mut self.riding {
            Some(riding) => riding,
            none => none.insert(Riding::new(&self.course, &self.rider, &self.sorted)?),
        };
        Ok(riding.advance(count))
    }

    /// Pieces of work that are done.
    #[must_use]
    pub fn done(&self) -> usize {
        self.sorted.done() + self.riding.as_ref().map_or(0, Riding::done)
    }

    /// Pieces of work there are: no more than this until it is known how many laps differ.
    #[must_use]
    pub fn total(&self) -> usize {
        let count = self.parts.count();
        count + self.riding.as_ref().map_or(count + ReserveSearch::PLANNED.min(count), Riding::total)
    }

    /// The box.
    #[must_use]
    pub const fn parts(&self) -> &PartsBox {
        &self.parts
    }

    pub(super) const fn bike(&self) -> &BareBike {
        &self.bike
    }

    pub(super) const fn course(&self) -> &Course {
        &self.course
    }

    pub(super) const fn rider(&self) -> &BoxRider {
        &self.rider
    }

    /// What goes together so far, and what does not.
    #[must_use]
    pub fn sorted(&self) -> &SortedBox {
        &self.sorted
    }

    /// What was ridden so far, the quickest first; of equals what needs no new chain, then what leaves the cage most to spare.
    #[must_use]
    pub fn quickest(&self) -> Vec<Combined> {
        let Some(riding) = &self.riding else { return Vec::new() };
        let all = self.sorted.fitting.iter().zip(&riding.lap_of);
        let mut all: Vec<Combined> =
            all.filter_map(|((combination, fit), &lap)| riding.combined(*combination, fit, lap)).collect();
        all.sort_by(|a, b| {
            let least = |it: &Combined| (it.fit.chain.is_none(), -it.fit.spare.unwrap_or(0), it.combination);
            a.time_s.total_cmp(&b.time_s).then_with(|| least(a).cmp(&least(b)))
        });
        all
    }

    /// What each of some laps gains over another, with likely edges: see [`BoxRides::gains`]. None before laps are ridden.
    #[must_use]
    pub fn gains(&self, over: &RiddenLap, laps: &[RiddenLap]) -> Option<Vec<TimeBand>> {
        let all = || core::iter::once(over).chain(laps);
        let (set_ups, times): (Vec<_>, Vec<_>) = all().map(|it| (it.lap, it.time_s)).unzip();
        let gains = self.riding.as_ref()?.rides.gains(&set_ups, &times);
        Some(gains.into_iter().skip(1).collect())
    }

    /// The lap of the bike as it stands, in full. None before laps are ridden.
    #[must_use]
    pub fn as_it_stands(&self) -> Option<RiddenLap> {
        let lap = self.rider.as_it_stands();
        Some(RiddenLap { lap, time_s: self.riding.as_ref()?.rides.plan(&lap).time_s })
    }
}

impl Combined {
    /// Its lap.
    #[must_use]
    pub fn ridden(&self) -> RiddenLap {
        RiddenLap { lap: self.fit.ridden(), time_s: self.time_s }
    }
}

impl Riding {
    fn new(course: &Course, rider: &BoxRider, sorted: &SortedBox) -> Result<Self, PowerBelowStanding> {
        let (laps, lap_of) = sorted.laps();
        let rides = BoxRides::new(course, rider, &laps)?;
        let planned = vec![rides.looks_in_full(); laps.len()];
        Ok(Self { rides, laps, lap_of, found: Vec::new(), planned })
    }

    fn advance(&mut self, count: usize) -> bool {
        let from = self.found.len();
        if from < self.laps.len() {
            let next = &self.laps[from..from.saturating_add(count).min(self.laps.len())];
            self.found.extend(next.iter().map(|lap| self.rides.look(lap)));
        } else {
            for lap in self.to_plan().into_iter().take(count) {
                self.found[lap] = self.rides.plan(&self.laps[lap]);
                self.planned[lap] = true;
            }
        }
        self.found.len() < self.laps.len() || !self.to_plan().is_empty()
    }

    /// Laps to be planned in full: the best by the first look, and what is quicker than all of them by it.
    fn to_plan(&self) -> Vec<usize> {
        if self.rides.looks_in_full() {
            return Vec::new();
        }
        let order = places(&self.found.iter().map(|it| it.time_s).collect::<Vec<_>>());
        let done = self.planned.iter().filter(|it| **it).count();
        let left = self.planned_at_most().saturating_sub(done);
        let open: Vec<usize> = order.iter().copied().filter(|lap| !self.planned[*lap]).take(left).collect();
        let ahead = order.first().copied().filter(|lap| open.is_empty() && !self.planned[*lap]);
        open.into_iter().chain(ahead).collect()
    }

    fn planned_at_most(&self) -> usize {
        self.laps.len().min(ReserveSearch::PLANNED)
    }

    fn done(&self) -> usize {
        let planned =
            if self.rides.looks_in_full() { 0 } else { self.planned.iter().filter(|it| **it).count() };
        self.found.len() + planned
    }

    fn total(&self) -> usize {
        let to_plan = if self.rides.looks_in_full() { 0 } else { self.planned_at_most() };
        self.done().max(self.laps.len() + to_plan)
    }

    fn combined(&self, combination: Combination, fit: &Fit, lap: usize) -> Option<Combined> {
        let found = self.found.get(lap)?;
        Some(Combined {
            combination,
            fit: *fit,
            time_s: found.time_s,
            planned: self.planned[lap],
            lap: *found,
        })
    }
}
