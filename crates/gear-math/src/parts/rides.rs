//! The laps that a box's set-ups ride.

use crate::cage::Derailleur;
use crate::course::{Course, Finalist, Finals, LapSetup, ReserveSearch, ReserveSetup, Search, TimeBand};
use crate::gears::{Drivetrain, GearSet};
use crate::parts::found_lap::FoundLap;
use crate::rider::{Bike, PowerBelowStanding};

/// Who rides the laps of a box, on what but the gears.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum BoxRider {
    /// On a reserve, as riders do.
    Reserve(ReserveSetup),
    /// At an even power.
    Steady(LapSetup),
}

impl BoxRider {
    /// The bike as it stands.
    #[must_use]
    pub const fn bike(&self) -> &Bike {
        match self {
            Self::Reserve(setup) => &setup.lap.bike,
            Self::Steady(setup) => &setup.bike,
        }
    }
}

/// The laps that a box's set-ups ride round one course: a first look at each, the best planned in full, and what they gain on one
/// another. A lap by itself changes nothing, so that workers may share them.
#[derive(Debug, Clone)]
pub enum BoxRides {
    /// On a reserve: what the first look misses is said at [`Neighbours`](crate::course::Neighbours).
    Reserve(Box<ReserveSearch>),
    /// At an even power, where the first look is the lap in full.
    Steady {
        /// Rides all.
        search: Box<Search>,
        /// Rides the best with everything doubtful moved.
        finals: Box<Finals>,
    },
}

impl BoxRides {
    /// Takes all laps that will be looked at, of which some are planned for the first look.
    ///
    /// # Errors
    /// [`PowerBelowStanding`] when an even power leaves nothing to move on foot with.
    pub fn new(
        course: &Course,
        rider: &BoxRider,
        laps: &[(Drivetrain, GearSet)],
    ) -> Result<Self, PowerBelowStanding> {
        let unknown = Derailleur::default();
        Ok(match rider {
            BoxRider::Reserve(setup) => {
                Self::Reserve(Box::new(ReserveSearch::new(course, setup, unknown, laps)))
            }
            BoxRider::Steady(setup) => Self::Steady {
                search: Box::new(Search::new(course, setup, unknown, Vec::new())?),
                finals: Box::new(Finals::new(course, setup)?),
            },
        })
    }

    /// A lap by a first look.
    #[must_use]
    pub fn look(&self, lap: &(Drivetrain, GearSet)) -> FoundLap {
        match self {
            Self::Reserve(search) => FoundLap::of(&search.look(lap), false),
            Self::Steady { .. } => self.plan(lap),
        }
    }

    /// A time that the first look makes of none of these laps less; no end where there is none but the laps in full.
    #[must_use]
    pub fn at_least_s(&self, laps: &[(Drivetrain, GearSet)]) -> f64 {
        match self {
            Self::Reserve(search) => search.at_least_s(laps),
            Self::Steady { .. } => f64::NEG_INFINITY,
        }
    }

    /// A lap in full.
    #[must_use]
    pub fn plan(&self, lap: &(Drivetrain, GearSet)) -> FoundLap {
        let planned = match self {
            Self::Reserve(search) => search.plan(lap),
            Self::Steady { search, .. } => search.ride(lap),
        };
        FoundLap::of(&planned, true)
    }

    /// What each of some laps gains over another one, all with their times in full in seconds: everything doubtful is moved for all
    /// of them together.
    #[must_use]
    pub fn gains(&self, over: &TimedLap, laps: &[TimedLap]) -> Vec<TimeBand> {
        let (laps, times): (Vec<_>, Vec<_>) = core::iter::once(over).chain(laps).copied().unzip();
        let gains = match self {
            Self::Reserve(search) => search.gains(&laps, &times),
            Self::Steady { finals, .. } => {
                let ridden: Vec<Finalist> =
                    laps.iter().map(|(drivetrain, avoid)| finals.ride(drivetrain, *avoid)).collect();
                ridden.iter().map(|finalist| finalist.gained_over(&ridden[0])).collect()
            }
        };
        gains.into_iter().skip(1).collect()
    }
}

/// A lap, by its gears and those of them that are not used, with its time.
type TimedLap = ((Drivetrain, GearSet), f64);
