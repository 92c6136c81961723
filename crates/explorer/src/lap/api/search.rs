//! The search for what would be quickest.

use crate::api::objects::{derailleur, input, output, thrown};
use crate::lap::api::lap::LapInput;
use crate::lap::api::progress::{Progress, said};
use gear_math::cage::DerailleurFigure;
use gear_math::course::{Candidate, Ranked, ReserveSearch, ReserveSetup, SearchSpace, Weighting, ranked};
use gear_math::gears::GearSet;
use gear_math::{Bike, Cassette, Chainring, Chainset, Course, Drivetrain, Search};
use serde::{Deserialize, Serialize};
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// Set-ups between two calls of a progress callback.
const BATCH: usize = 50;

/// What `search` takes: a lap whose bike's rings and sprockets are replaced, what to try, and what the derailleurs take. A
/// limit that is left out is not checked. Set-ups that have one of the bike's `gearsToAvoid` are ridden without it.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
pub struct SearchInput {
    #[serde(flatten)]
    lap: LapInput,
    /// Teeth of the smallest and the largest ring to be tried.
    smallest_ring: u16,
    largest_ring: u16,
    /// Pairs that differ by at least and at most so many teeth; single rings only when left out.
    #[tsify(optional)]
    pair_differences: Option<[u16; 2]>,
    /// Only these rings, of those from the smallest to the largest; every number of teeth when left out.
    #[tsify(optional)]
    rings: Option<Vec<u16>>,
    /// Cassettes to be tried, each by its sprockets; those in common use when left out.
    #[tsify(optional)]
    cassettes: Option<Vec<Vec<u16>>>,
    /// Only cassettes with one of these numbers of sprockets; any number when left out.
    #[tsify(optional)]
    sprocket_counts: Option<Vec<u16>>,
    #[tsify(optional)]
    total_capacity_teeth: Option<u16>,
    #[tsify(optional)]
    largest_sprocket_teeth: Option<u16>,
    #[tsify(optional)]
    smallest_sprocket_teeth: Option<u16>,
    #[tsify(optional)]
    chainring_difference_teeth: Option<u16>,
}

/// One set-up that was tried.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct SearchRow {
    rings: Vec<u16>,
    sprockets: Vec<u16>,
    /// In steps of 1 m at a steady power.
    time_s: f64,
    /// Whether the lap was planned in full. On a reserve all set-ups get a first look by the plans of a few, which is within half a
    /// second, and the best by it are planned in full.
    planned: bool,
    /// Zero where it was not planned.
    shifts_rear: u32,
    shifts_front: u32,
    largest_step_percent: f64,
    lowest_development_m: f64,
    spare_capacity_teeth: Option<i32>,
    /// What it is ranked by: the time, and what the rest is worth.
    score_s: f64,
    /// No other is as good on every count and better on one.
    unbeaten: bool,
    /// Limits that were not checked, because they were left out of what was asked; the same in every row. The length of
    /// the cage is known only by its total capacity.
    not_checked: Vec<NotChecked>,
}

/// A limit of the derailleurs.
#[derive(Debug, Clone, Copy, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum NotChecked {
    /// Total capacity, and with it whether any chain suits every gear.
    TotalCapacity,
    /// Largest sprocket.
    LargestSprocket,
    /// Smallest sprocket.
    SmallestSprocket,
    /// Chainring difference.
    ChainringDifference,
}

impl From<DerailleurFigure> for NotChecked {
    fn from(figure: DerailleurFigure) -> Self {
        match figure {
            DerailleurFigure::TotalCapacity => Self::TotalCapacity,
            DerailleurFigure::LargestSprocket => Self::LargestSprocket,
            DerailleurFigure::SmallestSprocket => Self::SmallestSprocket,
            DerailleurFigure::RingDifference => Self::ChainringDifference,
        }
    }
}

/// Every set-up that keeps the limits given, best first; what was not given is not checked, and each row names it in
/// `notChecked`. Whether frame, hanger and chain length suit is not checked either. `progress` is called with how many are
/// done and how many there are; when it returns `false` the search stops there.
///
/// # Errors
/// When anything is outside its limits, when rings, differences or cassettes leave nothing to try, or when the power is
/// hardly more than standing takes.
#[wasm_bindgen(unchecked_return_type = "SearchRow[]")]
pub fn search(
    #[wasm_bindgen(unchecked_param_type = "SearchInput")] asked: JsValue,
    #[wasm_bindgen(unchecked_optional_param_type = "(done: number, total: number) => boolean | void")]
    progress: JsValue,
) -> Result<JsValue, JsError> {
    let asked: SearchInput = input(asked)?;
    let progress = Progress::of(progress);
    let space = asked.checked()?.space()?;
    let rows = match asked.lap.on_reserve()? {
        Some(setup) => reserve_rows(&asked.lap.course.course()?, &setup, &space, progress.as_ref())?,
        None => even_rows(&asked.lap, &space, progress.as_ref())?,
    };
    let not_checked: Vec<NotChecked> = space.derailleur.unknown().map(NotChecked::from).collect();
    let row = |row: SearchRow| SearchRow { not_checked: not_checked.clone(), ..row };
    output(&rows.into_iter().map(row).collect::<Vec<_>>())
}

/// Every set-up ridden in full at a steady power, best first.
fn even_rows(
    lap: &LapInput,
    space: &SearchSpace,
    progress: Option<&Progress>,
) -> Result<Vec<SearchRow>, JsError> {
    let setup = lap.setup()?;
    let avoid = avoided(&setup.bike);
    let all = space.setups().collect();
    let search = Search::new(&lap.course.course()?, &setup, space.derailleur, all).map_err(thrown)?;
    let found = run(search.avoiding(avoid), progress)?;
    Ok(ranked(&found, &Weighting::USUAL).iter().map(|ranked| SearchRow::of(ranked, true)).collect())
}

/// The bike's gears to avoid, in another set-up.
fn avoided(bike: &Bike) -> impl Fn(&Drivetrain) -> GearSet {
    let Bike { drivetrain, avoid, .. } = *bike;
    move |it| GearSet::of(it, |gear| avoid.holds(&drivetrain, gear))
}

/// Every set-up on a reserve: all looked at, the best planned in full, best first.
fn reserve_rows(
    course: &Course,
    setup: &ReserveSetup,
    space: &SearchSpace,
    progress: Option<&Progress>,
) -> Result<Vec<SearchRow>, JsError> {
    let avoid = avoided(&setup.lap.bike);
    let all: Vec<(Drivetrain, GearSet)> = space.setups().map(|it| (it, avoid(&it))).collect();
    let to_plan = all.len().min(ReserveSearch::PLANNED);
    let told = |done: usize| said(progress, done.saturating_sub(to_plan), all.len());
    let search = ReserveSearch::new(course, setup, space.derailleur, &all);
    let mut found = Vec::with_capacity(all.len());
    for batch in all.chunks(BATCH) {
        found.extend(batch.iter().map(|it| search.look(it)));
        if !told(found.len())? {
            return Ok(rows(&found, &[]));
        }
    }
    let mut planned: Vec<Drivetrain> = Vec::new();
    for best in ranked(&found, &Weighting::USUAL).iter().take(to_plan) {
        let drivetrain = best.candidate.drivetrain;
        planned.push(drivetrain);
        if let Some(it) = found.iter_mut().find(|it| it.drivetrain == drivetrain) {
            *it = search.plan(&(drivetrain, avoid(&drivetrain)));
        }
        if !told(all.len() + planned.len())? {
            break;
        }
    }
    Ok(rows(&found, &planned))
}

fn rows(found: &[Candidate], planned: &[Drivetrain]) -> Vec<SearchRow> {
    let row = |it: &Ranked| SearchRow::of(it, planned.contains(&it.candidate.drivetrain));
    ranked(found, &Weighting::USUAL).iter().map(row).collect()
}

/// What a search finds until its callback stops it.
fn run(mut search: Search, progress: Option<&Progress>) -> Result<Vec<Candidate>, JsError> {
    let mut found = Vec::new();
    while !search.is_done() {
        found.extend(search.advance(BATCH));
        if !said(progress, search.done(), search.total())? {
            break;
        }
    }
    Ok(found)
}

impl SearchInput {
    /// What would make a search of nothing.
    fn checked(&self) -> Result<&Self, JsError> {
        let fault = if self.smallest_ring > self.largest_ring {
            "smallestRing is larger than largestRing"
        } else if self.pair_differences.is_some_and(|[least, most]| least > most) {
            "pairDifferences begin with the larger one"
        } else if self.cassettes.as_ref().is_some_and(Vec::is_empty) {
            "cassettes has none; leave it out to try those in common use"
        } else if self.rings.as_ref().is_some_and(Vec::is_empty) {
            "rings has none; leave it out to try every number of teeth"
        } else if self.sprocket_counts.as_ref().is_some_and(Vec::is_empty) {
            "sprocketCounts has none; leave it out to try any number"
        } else {
            return Ok(self);
        };
        Err(JsError::new(fault))
    }

    fn space(&self) -> Result<SearchSpace, JsError> {
        let (chainsets, cassettes) = (self.chainsets()?, self.cassettes()?);
        if chainsets.is_empty() || cassettes.is_empty() {
            return Err(JsError::new("rings or sprocketCounts leave nothing to try"));
        }
        let derailleur = derailleur(
            self.total_capacity_teeth,
            [self.largest_sprocket_teeth, self.smallest_sprocket_teeth],
            self.chainring_difference_teeth,
        )?;
        Ok(SearchSpace { chainsets, cassettes, derailleur, largest_ring: None, with_gears_to_avoid: false })
    }

    fn chainsets(&self) -> Result<Vec<Chainset>, JsError> {
        let wanted = |teeth: &u16| self.rings.as_ref().is_none_or(|rings| rings.contains(teeth));
        let rings = (self.smallest_ring..=self.largest_ring).filter(wanted).map(Chainring::new);
        let rings: Vec<Chainring> = rings.collect::<Result<_, _>>().map_err(thrown)?;
        Ok(match self.pair_differences {
            Some([least, most]) => Chainset::of_rings(&rings, least..=most),
            None => rings.iter().filter_map(|ring| Chainset::new([ring.teeth()]).ok()).collect(),
        })
    }

    fn cassettes(&self) -> Result<Vec<Cassette>, JsError> {
        let mut cassettes: Vec<Cassette> = match &self.cassettes {
            Some(typed) => {
                let cassettes = typed.iter().map(|sprockets| Cassette::new(sprockets.iter().copied()));
                cassettes.collect::<Result<_, _>>().map_err(thrown)?
            }
            None => Cassette::common().collect(),
        };
        if let Some(counts) = &self.sprocket_counts {
            cassettes.retain(|cassette| counts.contains(&(cassette.sprockets().len() as u16)));
        }
        Ok(cassettes)
    }
}

impl SearchRow {
    fn of(ranked: &Ranked, planned: bool) -> Self {
        let it = &ranked.candidate;
        Self {
            rings: it.drivetrain.chainset.rings().iter().map(|ring| ring.teeth()).collect(),
            sprockets: it.drivetrain.cassette.sprockets().iter().map(|sprocket| sprocket.teeth()).collect(),
            time_s: it.time_s,
            planned,
            shifts_rear: it.shifts_rear,
            shifts_front: it.shifts_front,
            largest_step_percent: it.largest_step_percent,
            lowest_development_m: it.lowest_development_m,
            spare_capacity_teeth: it.spare_capacity,
            score_s: ranked.score_s,
            unbeaten: ranked.unbeaten,
            not_checked: Vec::new(),
        }
    }
}
