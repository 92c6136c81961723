//! The search for what would be quickest.

use crate::api::objects::{derailleur, input, output, thrown};
use crate::lap::api::lap::LapInput;
use gear_math::cage::DerailleurFigure;
use gear_math::course::{Candidate, SearchSpace, Weighting, ranked};
use gear_math::gears::GearSet;
use gear_math::{Bike, Cassette, Chainring, Chainset, Search};
use serde::{Deserialize, Serialize};
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// Set-ups between two calls of a progress callback.
const BATCH: usize = 50;

/// What `search` takes: a lap whose bike's rings and sprockets are replaced, what to try, and what the derailleurs take. A
/// limit that is left out is not checked. Set-ups that have one of the bike's `gearsToAvoid` are ridden without it.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
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
    /// In steps of 1 m.
    time_s: f64,
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

#[wasm_bindgen]
extern "C" {
    /// A progress callback.
    type Progress;

    #[wasm_bindgen(method, catch)]
    fn call(this: &Progress, object: &JsValue, done: usize, total: usize) -> Result<JsValue, JsValue>;
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
    let progress = progress.is_function().then(|| progress.unchecked_into::<Progress>());
    let space = asked.checked()?.space()?;
    let set_ups = space.setups().collect();
    let setup = asked.lap.setup()?;
    let Bike { drivetrain, avoid, .. } = setup.bike;
    let search =
        Search::new(&asked.lap.course.course()?, &setup, space.derailleur, set_ups).map_err(thrown)?;
    let search = search.avoiding(|it| GearSet::of(it, |gear| avoid.holds(&drivetrain, gear)));
    let found = run(search, progress.as_ref())?;
    let not_checked: Vec<NotChecked> = space.derailleur.unknown().map(NotChecked::from).collect();
    let row = |ranked| SearchRow { not_checked: not_checked.clone(), ..SearchRow::from(ranked) };
    let rows: Vec<SearchRow> = ranked(&found, &Weighting::USUAL).iter().map(row).collect();
    output(&rows)
}

/// What a search finds until its callback stops it.
fn run(mut search: Search, progress: Option<&Progress>) -> Result<Vec<Candidate>, JsError> {
    let mut found = Vec::new();
    while !search.is_done() {
        found.extend(search.advance(BATCH));
        let said = progress.map(|it| it.call(&JsValue::UNDEFINED, search.done(), search.total()));
        match said {
            Some(Err(_)) => return Err(JsError::new("the progress callback threw an error")),
            Some(Ok(answer)) if answer == JsValue::FALSE => break,
            _ => {}
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

impl From<&gear_math::course::Ranked> for SearchRow {
    fn from(ranked: &gear_math::course::Ranked) -> Self {
        let it = &ranked.candidate;
        Self {
            rings: it.drivetrain.chainset.rings().iter().map(|ring| ring.teeth()).collect(),
            sprockets: it.drivetrain.cassette.sprockets().iter().map(|sprocket| sprocket.teeth()).collect(),
            time_s: it.time_s,
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
