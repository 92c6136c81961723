//! What of a box is quickest round a course, worked out a little at a time.

use crate::course::{ReserveSearch, TimeBand};
use crate::parts::box_laps::{BoxLaps, Combined};
use crate::parts::outing::Outing;
use crate::parts::parts_box::PartsBox;
use crate::parts::rides::BoxRides;
use crate::parts::sorted::SortedBox;
use crate::rider::{Bike, PowerBelowStanding};

/// What of a box is quickest round a course: everything that goes together is ridden, and the best by a first look are planned in
/// full. A little at a time, so that it can report and be stopped between, by one worker; several share the parts that it is made
/// of: each sorts the box ([`SortedBox`]) and rides some of the laps ([`BoxRides`]), and one gathers them ([`BoxLaps`]).
///
/// # Example
/// ```
/// use gear_math::{Bike, Cassette, Circumference, Drivetrain, LapSetup, Power, Rider};
/// use gear_math::course::Demo;
/// use gear_math::parts::{BareBike, BoxRider, Combining, Outing, PartsBox};
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
/// let order = combining.quickest();
/// assert_eq!((order.len(), combining.done()), (6, combining.total()));
/// assert!(order[0].lap.time_s <= order[5].lap.time_s);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone)]
pub struct Combining {
    outing: Outing,
    parts: PartsBox,
    sorted: SortedBox,
    riding: Option<(BoxRides, BoxLaps)>,
}

impl Combining {
    /// Takes a box and what it is combined for.
    #[must_use]
    pub fn new(outing: &Outing, parts: PartsBox) -> Self {
        Self { outing: outing.clone(), parts, sorted: SortedBox::default(), riding: None }
    }

    /// Does about `count` pieces of work: a combination tried, a lap looked at, or a lap planned. Whether there is more to do.
    ///
    /// # Errors
    /// [`PowerBelowStanding`] when an even power leaves nothing to move on foot with.
    pub fn advance(&mut self, count: usize) -> Result<bool, PowerBelowStanding> {
        let Some((rides, laps)) = &mut self.riding else {
            if !self.sorted.advance(&self.outing.bike, &self.parts, count) {
                let laps = BoxLaps::new(self.sorted.clone());
                let rides = BoxRides::new(&self.outing.course, &self.outing.rider, laps.laps())?;
                self.riding = Some((rides, laps));
            }
            return Ok(true);
        };
        let to_look_at: Vec<usize> = laps.to_look_at().take(count).collect();
        if to_look_at.is_empty() {
            for lap in laps.to_plan().into_iter().take(count) {
                laps.take(lap, rides.plan(&laps.laps()[lap]));
            }
        }
        for lap in to_look_at {
            laps.take(lap, rides.look(&laps.laps()[lap]));
        }
        Ok(laps.to_look_at().next().is_some() || !laps.to_plan().is_empty())
    }

    /// Pieces of work that are done.
    #[must_use]
    pub fn done(&self) -> usize {
        self.sorted.done() + self.laps().map_or(0, BoxLaps::done)
    }

    /// Pieces of work there are: no more than this until it is known how many laps differ.
    #[must_use]
    pub fn total(&self) -> usize {
        let count = self.parts.count();
        count + self.laps().map_or(count + ReserveSearch::PLANNED.min(count), BoxLaps::total)
    }

    /// What goes together so far, and what does not.
    #[must_use]
    pub const fn sorted(&self) -> &SortedBox {
        &self.sorted
    }

    /// The laps, once everything is sorted.
    #[must_use]
    pub fn laps(&self) -> Option<&BoxLaps> {
        self.riding.as_ref().map(|it| &it.1)
    }

    /// Who rides them, once everything is sorted.
    #[must_use]
    pub fn rides(&self) -> Option<&BoxRides> {
        self.riding.as_ref().map(|it| &it.0)
    }

    /// What was ridden so far, the quickest first: see [`BoxLaps::quickest`].
    #[must_use]
    pub fn quickest(&self) -> Vec<Combined> {
        self.laps().map_or_else(Vec::new, BoxLaps::quickest)
    }

    /// What the first gains over the next that rides another lap, and over the bike as it stands, where there are such and
    /// everything is ridden.
    #[must_use]
    pub fn leads(&self) -> [Option<TimeBand>; 2] {
        let (order, Some(rides)) = (self.quickest(), self.rides()) else { return [None; 2] };
        let Some(first) = order.first() else { return [None; 2] };
        let next = order.iter().find(|it| it.fit.ridden() != first.fit.ridden()).map(Combined::timed);
        let Bike { drivetrain, avoid, .. } = *self.outing.rider.bike();
        let own = (drivetrain, avoid);
        let others: Vec<_> = core::iter::once((own, rides.plan(&own).time_s)).chain(next).collect();
        let gains = rides.gains(&first.timed(), &others);
        [1, 0].map(|place| gains.get(place).map(turned))
    }
}

/// What the other gains.
fn turned(gained: &TimeBand) -> TimeBand {
    TimeBand { low_s: -gained.high_s, time_s: -gained.time_s, high_s: -gained.low_s }
}
