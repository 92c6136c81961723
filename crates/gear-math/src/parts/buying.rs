//! The parts worth buying beside a box.

use crate::course::TimeBand;
use crate::gears::{Drivetrain, GearSet};
use crate::parts::bought::Bought;
use crate::parts::branches::{Best, Branches, in_order};
use crate::parts::combination::Combination;
use crate::parts::fit::Fit;
use crate::parts::outing::Outing;
use crate::parts::parts_box::PartsBox;
use crate::parts::rides::BoxRides;
use crate::parts::sorted::SortedBox;
use crate::parts::usual::UsualPart;
use crate::rider::PowerBelowStanding;

/// The parts worth buying beside a box: of all [usual ones](PartsBox::usual_beside), up to so many at a time, those with which the
/// lap is quickest, and what they gain over the best of the box.
///
/// By the first look of [`BoxRides::look`] nothing better is left out: a lap is passed over only where the best that any gear of
/// its chainset, or of its cassette, could do with shifts for nothing comes behind what was found ([`BoxRides::at_least_s`]). The
/// few best are then planned in full, among which the order is sure; where the first look puts purchases wrong by some tenths of a
/// second, one that deserves to be named may come behind those.
///
/// # Example
/// ```
/// use gear_math::{Bike, Cassette, Circumference, Drivetrain, LapSetup, Power, Rider};
/// use gear_math::course::Demo;
/// use gear_math::parts::{BareBike, BoxRider, Buying, Combined, Combining, Outing, PartsBox};
/// use gear_math::rider::{Air, BikeMass, BodyMass, KitMass};
/// let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
/// let drivetrain = Drivetrain { chainset: "50".parse()?, cassette: "11-12-13-15-17-19-21-23-25".parse()? };
/// let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
/// let rider = BoxRider::Steady(LapSetup::new(rider, bike, Air::STILL));
/// let parts = PartsBox {
///     chainsets: vec![drivetrain.chainset],
///     cassettes: vec![drivetrain.cassette],
///     ..PartsBox::default()
/// };
/// let outing = Outing { course: Demo::Meadow.course(), rider, bike: BareBike::usual() };
/// let mut combining = Combining::new(&outing, parts.clone());
/// while combining.advance(20)? {}
/// let best = combining.quickest().first().map(Combined::timed);
/// let mut buying = Buying::new(&outing, &parts, best, 1);
/// while buying.advance(20)? {}
/// let best = &buying.purchases()[0];
/// assert!(best.parts.len() == 1 && best.gained.is_some_and(|gained| gained.time_s > 1.0));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone)]
pub struct Buying {
    outing: Outing,
    own: PartsBox,
    /// The box with the usual parts behind its own.
    all: PartsBox,
    budget: usize,
    best_of_box: Option<((Drivetrain, GearSet), f64)>,
    /// How many combinations were tried.
    tried: usize,
    sorted: SortedBox,
    shopping: Option<Shopping>,
    purchases: Option<Vec<Purchase>>,
}

/// Laps with parts that are bought.
#[derive(Debug, Clone)]
struct Shopping {
    rides: BoxRides,
    laps: Vec<(Drivetrain, GearSet)>,
    lap_of: Vec<usize>,
    branches: Branches,
    /// The best by the first look, as they are planned in full.
    planned: Vec<Best>,
}

/// Parts to buy together, and what comes of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Purchase {
    /// What to buy.
    pub parts: Vec<UsualPart>,
    /// How they go together with what is in the box.
    pub fit: Fit,
    /// The rear derailleur of the box that shifts it; none where that is bought, or the box has none.
    pub own_derailleur: Option<usize>,
    /// Time of the lap, in seconds, worked out in full.
    pub time_s: f64,
    /// What it gains over the best of the box, with likely edges; none where nothing in the box goes together.
    pub gained: Option<TimeBand>,
}

impl Buying {
    /// Most parts that are bought together: one of each kind.
    pub const MOST: usize = 3;
    /// Purchases that are planned in full.
    const PLANNED: usize = 8;
    /// Purchases that are named: the best and the next two.
    pub const NAMED: usize = 3;

    /// Takes a box and what it is combined for, the best of the box with its time in seconds, and how many parts may be bought, up
    /// to [`Self::MOST`].
    #[must_use]
    pub fn new(
        outing: &Outing,
        parts: &PartsBox,
        best_of_box: Option<((Drivetrain, GearSet), f64)>,
        budget: usize,
    ) -> Self {
        Self {
            outing: outing.clone(),
            own: parts.clone(),
            all: parts.with(&parts.usual_beside(outing.bike.sprockets)),
            budget: budget.min(Self::MOST),
            best_of_box,
            tried: 0,
            sorted: SortedBox::default(),
            shopping: None,
            purchases: None,
        }
    }

    /// Does about `count` pieces of work: a combination tried, a lap looked at, or a purchase planned. Whether there is more to do.
    ///
    /// # Errors
    /// [`PowerBelowStanding`] when an even power leaves nothing to move on foot with.
    pub fn advance(&mut self, count: usize) -> Result<bool, PowerBelowStanding> {
        if self.tried < self.all.count() {
            self.sort(count);
            return Ok(true);
        }
        let shopping = match &mut self.shopping {
            Some(shopping) => shopping,
            none => none.insert(Shopping::new(&self.outing, &self.own, &self.sorted)?),
        };
        if shopping.advance(count) {
            return Ok(true);
        }
        if self.purchases.is_none() {
            self.purchases = Some(self.named());
        }
        Ok(false)
    }

    /// Pieces of work that are done.
    #[must_use]
    pub fn done(&self) -> usize {
        self.tried + self.shopping.as_ref().map_or(0, |it| it.branches.looked_at() + it.planned.len())
    }

    /// Pieces of work there are at most.
    #[must_use]
    pub fn total(&self) -> usize {
        let most = self.shopping.as_ref().map_or(self.all.count(), |it| it.laps.len());
        if self.purchases.is_some() { self.done() } else { self.all.count() + most + Self::PLANNED }
    }

    /// What to buy, the quickest first: up to [`Self::NAMED`] that gain anything over the best of the box. Nothing before all is
    /// done.
    #[must_use]
    pub fn purchases(&self) -> &[Purchase] {
        self.purchases.as_deref().unwrap_or_default()
    }

    /// Tries combinations for which something is bought, but no more than may be.
    fn sort(&mut self, count: usize) {
        let to = self.tried.saturating_add(count).min(self.all.count());
        for combination in (self.tried..to).map(|number| self.all.combination(number)) {
            if (1..=self.budget).contains(&Bought::of(&self.own, combination).count())
                && let Ok(fit) = self.outing.bike.fit(&self.all, combination)
            {
                self.sorted.fitting.push((combination, fit));
            }
        }
        self.tried = to;
    }

    fn named(&self) -> Vec<Purchase> {
        let Some(shopping) = &self.shopping else { return Vec::new() };
        let mut best = in_order(&shopping.planned);
        let gains = |it: &Best| self.best_of_box.is_none_or(|of_box| it.time_s < of_box.1);
        best.retain(gains);
        best.truncate(Self::NAMED);
        let bands = self.bands(shopping, &best);
        best.iter()
            .enumerate()
            .filter_map(|(at, it)| self.purchase(shopping, it, bands.get(at).copied()))
            .collect()
    }

    /// What each gains over the best of the box.
    fn bands(&self, shopping: &Shopping, best: &[Best]) -> Vec<TimeBand> {
        let Some(of_box) = self.best_of_box.filter(|_| !best.is_empty()) else { return Vec::new() };
        let laps: Vec<_> = best.iter().map(|it| (shopping.laps[it.lap], it.time_s)).collect();
        shopping.rides.gains(&of_box, &laps)
    }

    fn purchase(&self, shopping: &Shopping, best: &Best, gained: Option<TimeBand>) -> Option<Purchase> {
        let all = self.sorted.fitting.iter().zip(&shopping.lap_of);
        let rides = |it: &Combination| Bought::of(&self.own, *it) == best.bought;
        let mut all = all.filter(|((combination, _), lap)| **lap == best.lap && rides(combination));
        let (combination, fit) = all.next()?.0;
        Some(Purchase {
            parts: best.bought.parts(&self.own, &self.all),
            fit: *fit,
            own_derailleur: combination.derailleur.filter(|place| *place < self.own.derailleurs.len()),
            time_s: best.time_s,
            gained,
        })
    }
}

impl Shopping {
    fn new(outing: &Outing, own: &PartsBox, sorted: &SortedBox) -> Result<Self, PowerBelowStanding> {
        let (laps, lap_of) = sorted.laps();
        let rides = BoxRides::new(&outing.course, &outing.rider, &laps)?;
        let mut purchases = vec![Vec::new(); laps.len()];
        for ((combination, _), &lap) in sorted.fitting.iter().zip(&lap_of) {
            let bought = Bought::of(own, *combination);
            if !purchases[lap].contains(&bought) {
                purchases[lap].push(bought);
            }
        }
        let branches = Branches::new(bounds(&rides, &laps), purchases);
        Ok(Self { rides, laps, lap_of, branches, planned: Vec::new() })
    }

    /// Whether there is more to do.
    fn advance(&mut self, count: usize) -> bool {
        for _ in 0..count {
            if let Some(lap) = self.branches.next() {
                self.branches.take(self.rides.look(&self.laps[lap]).time_s);
                continue;
            }
            let named = self.branches.worth_naming();
            let Some(next) = named.get(self.planned.len()).filter(|_| self.planned.len() < Buying::PLANNED)
            else {
                return false;
            };
            let time_s = self.rides.plan(&self.laps[next.lap]).time_s;
            self.planned.push(Best { time_s, ..*next });
        }
        true
    }
}

/// A time that each lap does not come below by the first look, by its chainset with all cassettes and by its cassette with all
/// chainsets.
fn bounds(rides: &BoxRides, laps: &[(Drivetrain, GearSet)]) -> Vec<f64> {
    let [by_chainset, by_cassette] =
        [least_by(rides, laps, |it| it.chainset), least_by(rides, laps, |it| it.cassette)];
    by_chainset.into_iter().zip(by_cassette).map(|(one, other)| one.max(other)).collect()
}

/// A time that each lap does not come below together with all that have the same part.
fn least_by<P: PartialEq>(
    rides: &BoxRides,
    laps: &[(Drivetrain, GearSet)],
    part: impl Fn(&Drivetrain) -> P,
) -> Vec<f64> {
    let mut groups: Vec<(P, Vec<(Drivetrain, GearSet)>)> = Vec::new();
    for lap in laps {
        let own = part(&lap.0);
        match groups.iter_mut().find(|it| it.0 == own) {
            Some((_, group)) => group.push(*lap),
            None => groups.push((own, vec![*lap])),
        }
    }
    let least: Vec<f64> = groups.iter().map(|(_, group)| rides.at_least_s(group)).collect();
    let of = |lap: &(Drivetrain, GearSet)| groups.iter().position(|it| it.0 == part(&lap.0)).unwrap_or(0);
    laps.iter().map(|lap| least[of(lap)]).collect()
}
