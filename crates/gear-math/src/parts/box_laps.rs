//! The laps of what goes together, as they are found.

use crate::course::ReserveSearch;
use crate::gears::{Drivetrain, GearSet};
use crate::order::places;
use crate::parts::combination::Combination;
use crate::parts::fit::Fit;
use crate::parts::found_lap::FoundLap;
use crate::parts::sorted::SortedBox;

/// The laps of what goes together, as they are found, in any order and by any number of workers: who rides them is
/// [`BoxRides`](crate::parts::BoxRides).
///
/// The first look of laps on a reserve is off by some tenths of a second, see [`Neighbours`](crate::course::Neighbours): with no
/// more than [`ReserveSearch::PLANNED`] different laps all are planned at once and nothing is missed; of more the quickest was
/// always among those planned where that was tried.
#[derive(Debug, Clone, PartialEq)]
pub struct BoxLaps {
    sorted: SortedBox,
    laps: Vec<(Drivetrain, GearSet)>,
    /// Which lap each fitting combination rides.
    lap_of: Vec<usize>,
    found: Vec<Option<FoundLap>>,
}

/// A combination that goes together, with its lap.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Combined {
    /// Which parts.
    pub combination: Combination,
    /// How they go together.
    pub fit: Fit,
    /// The number of its lap among [`BoxLaps::laps`].
    pub number: usize,
    /// Its lap.
    pub lap: FoundLap,
}

impl BoxLaps {
    /// Takes a box that is sorted to its end.
    #[must_use]
    pub fn new(sorted: SortedBox) -> Self {
        let (laps, lap_of) = sorted.laps();
        let found = vec![None; laps.len()];
        Self { sorted, laps, lap_of, found }
    }

    /// What goes together, and what does not.
    #[must_use]
    pub const fn sorted(&self) -> &SortedBox {
        &self.sorted
    }

    /// The laps to ride, by the numbers that [`take`](Self::take) goes by; the same for every worker.
    #[must_use]
    pub fn laps(&self) -> &[(Drivetrain, GearSet)] {
        &self.laps
    }

    /// Takes what was found of a lap; a number of none is passed over.
    pub fn take(&mut self, lap: usize, found: FoundLap) {
        if let Some(place) = self.found.get_mut(lap) {
            *place = Some(found);
        }
    }

    /// Laps that are to be looked at first; none where all will be planned.
    pub fn to_look_at(&self) -> impl Iterator<Item = usize> + '_ {
        (0..self.looks()).filter(|lap| self.found[*lap].is_none())
    }

    /// Laps to be planned in full once all were looked at: the best by that, and then what is quicker than all that are planned.
    #[must_use]
    pub fn to_plan(&self) -> Vec<usize> {
        let time = |it: &Option<FoundLap>| it.map_or(f64::INFINITY, |it| it.time_s);
        let is_open = |lap: &usize| self.found[*lap].is_none_or(|it| !it.planned);
        let order = places(&self.found.iter().map(time).collect::<Vec<_>>());
        let left = self.most_planned().saturating_sub(self.planned());
        let best: Vec<usize> = order.iter().copied().filter(is_open).take(left).collect();
        let ahead = order.first().copied().filter(|lap| best.is_empty() && is_open(lap));
        best.into_iter().chain(ahead).collect()
    }

    /// Pieces of work that are done: a lap looked at or planned.
    #[must_use]
    pub fn done(&self) -> usize {
        self.found.iter().flatten().count().min(self.looks()) + self.planned().min(self.most_planned())
    }

    /// Pieces of work there are.
    #[must_use]
    pub fn total(&self) -> usize {
        self.looks() + self.most_planned()
    }

    /// What was ridden so far, the quickest first; of equals what needs no new chain, then what leaves the cage most to spare.
    #[must_use]
    pub fn quickest(&self) -> Vec<Combined> {
        let all = self.sorted.fitting.iter().zip(&self.lap_of);
        let combined = |(&(combination, fit), &lap): (&(Combination, Fit), &usize)| {
            Some(Combined { combination, fit, number: lap, lap: self.found[lap]? })
        };
        let all: Vec<Combined> = all.filter_map(combined).collect();
        let in_order = |all: &[Combined], key: &dyn Fn(&Combined) -> f64| -> Vec<Combined> {
            places(&all.iter().map(key).collect::<Vec<_>>()).into_iter().map(|place| all[place]).collect()
        };
        // Equal ones keep their order, so that what counts most comes last.
        let by_spare = in_order(&all, &|it| -f64::from(it.fit.spare.unwrap_or(0)));
        let by_chain = in_order(&by_spare, &|it| f64::from(u8::from(it.fit.chain.is_none())));
        in_order(&by_chain, &|it| it.lap.time_s)
    }

    /// The different laps of the best, at most [`ReserveSearch::PLANNED`], the quickest first.
    #[must_use]
    pub fn best(&self) -> Vec<(Drivetrain, GearSet)> {
        let mut best = Vec::new();
        for lap in self.quickest().iter().map(|it| it.fit.ridden()) {
            if best.len() < ReserveSearch::PLANNED && !best.contains(&lap) {
                best.push(lap);
            }
        }
        best
    }

    fn planned(&self) -> usize {
        self.found.iter().flatten().filter(|it| it.planned).count()
    }

    /// How many laps are looked at before any is planned.
    fn looks(&self) -> usize {
        if self.laps.len() > ReserveSearch::PLANNED { self.laps.len() } else { 0 }
    }

    fn most_planned(&self) -> usize {
        self.laps.len().min(ReserveSearch::PLANNED)
    }
}

impl Combined {
    /// Its lap with its time.
    #[must_use]
    pub fn timed(&self) -> ((Drivetrain, GearSet), f64) {
        (self.fit.ridden(), self.lap.time_s)
    }
}
