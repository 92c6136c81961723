//! What is best of a box of parts.

use crate::api::objects::{input, output, thrown};
use crate::lap::api::box_input::{BoxInput, MountInput};
use crate::lap::api::course::CourseInput;
use crate::lap::api::effort::{EffortInput, WindInput};
use crate::lap::api::lap::{CostsInput, LapInput};
use crate::lap::api::progress::{Progress, said};
use crate::ride::api::bike::BikeInput;
use crate::ride::api::rider::RiderInput;
use crate::ride::api::surroundings::{AirInput, LimitsInput};
use gear_math::course::TimeBand;
use gear_math::parts::{BoxRider, Combination, Combined, Combining, FitVerdict, Lack};
use serde::{Deserialize, Serialize};
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// Pieces of work between two calls of a progress callback.
const BATCH: usize = 20;

/// What `combine` takes: a box of parts, and the lap of a bike whose gears they replace. Set-ups that have one of the bike's
/// `gearsToAvoid` are ridden without it.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct CombineInput {
    #[serde(rename = "box")]
    parts: BoxInput,
    rider: RiderInput,
    bike: BikeInput,
    course: CourseInput,
    /// What the bike asks of parts that go on it; a usual frame that clears everything when left out.
    #[serde(default)]
    #[tsify(optional)]
    mount: MountInput,
    #[serde(default)]
    #[tsify(optional)]
    air: AirInput,
    #[serde(default)]
    #[tsify(optional)]
    limits: LimitsInput,
    #[serde(default)]
    #[tsify(optional)]
    costs: CostsInput,
    #[serde(default)]
    #[tsify(optional)]
    effort: EffortInput,
    /// No wind when left out. It is not used at a steady power.
    #[tsify(optional)]
    wind: Option<WindInput>,
}

/// What `combine` gives. Chainset, cassette and derailleur are places in the box, counted from 0; the derailleur is null where the
/// box has none.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct CombineResult {
    /// What goes together, the quickest first.
    fitting: Vec<FittingRow>,
    /// What does not.
    not_fitting: Vec<NotFittingRow>,
    /// What the first of `fitting` gains over the next that rides another lap; null where there is none.
    lead: Option<GainRow>,
    /// What it gains over the bike as it stands, whether that is in the box or not.
    over_bike: Option<GainRow>,
}

/// Parts that go together, with their lap.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct FittingRow {
    chainset: usize,
    cassette: usize,
    derailleur: Option<usize>,
    verdict: FitName,
    /// Capacity left over; null when the derailleur's is not given.
    spare_teeth: Option<i32>,
    /// The chain that goes on.
    links: u16,
    /// Which of the box's chains it is, or is cut from; null where none is long enough.
    chain: Option<usize>,
    /// Gears never to be used, each as its ring and its sprocket: the lap is ridden without them.
    gears_to_avoid: Vec<[u16; 2]>,
    lap_s: f64,
    /// Whether the lap was worked out in full, as `lap` does. On a reserve all get a first look by the plans of a few, which is
    /// mostly within half a second, and the best 60 are then planned in full.
    planned: bool,
    shifts_rear: u32,
    shifts_front: u32,
    lowest_development_m: f64,
}

/// How sure it is that parts go together.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum FitName {
    /// They do.
    Fits,
    /// By the makers' figures; the smallest gears have to be tried by hand.
    OnPaper,
    /// As long as `gearsToAvoid` are never used.
    AvoidingGears,
    /// Something that was not given could turn it.
    NotKnown,
}

/// Parts that do not go together.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct NotFittingRow {
    chainset: usize,
    cassette: usize,
    derailleur: Option<usize>,
    why: LackName,
}

/// The first thing that keeps parts from going together, in this order.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum LackName {
    /// The largest ring does not clear the frame.
    Frame,
    /// The shifter is made for another number of sprockets.
    SprocketCount,
    /// No front derailleur shifts these rings.
    Rings,
    /// The largest sprocket is too large for the derailleur.
    LargestSprocket,
    /// The smallest sprocket is too small for it.
    SmallestSprocket,
    /// The cage is too short.
    Cage,
    /// Wheels would run into each other.
    Wheels,
}

/// What one lap gains over another, with its likely edges: a tie where they lie on either side of zero.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct GainRow {
    gain_s: f64,
    gain_low_s: f64,
    gain_high_s: f64,
}

/// What of a box of parts goes together, how quick that is round a course, and what does not go together and why. Makers' figures
/// come first, then cage and chain by geometry, as in `cageCheck` and `chain`; whatever teeth and millimetres do not tell is not
/// checked. `progress` is called with how many pieces of work are done and how many there are; when it returns `false` it stops
/// there, and `fitting` holds what was ridden until then.
///
/// # Errors
/// When anything is outside its limits, the box has no chainset or no cassette, or the power is hardly more than standing takes.
#[wasm_bindgen(unchecked_return_type = "CombineResult")]
pub fn combine(
    #[wasm_bindgen(unchecked_param_type = "CombineInput")] asked: JsValue,
    #[wasm_bindgen(unchecked_optional_param_type = "(done: number, total: number) => boolean | void")]
    progress: JsValue,
) -> Result<JsValue, JsError> {
    let asked: CombineInput = input(asked)?;
    let progress = Progress::of(progress);
    let mut combining = asked.combining()?;
    let is_done = run(&mut combining, progress.as_ref())?;
    output(&CombineResult::of(&combining, is_done))
}

/// Goes on until all is done, or until the callback stops it; whether all is done.
fn run(combining: &mut Combining, progress: Option<&Progress>) -> Result<bool, JsError> {
    let mut is_more = true;
    while is_more {
        is_more = combining.advance(BATCH).map_err(thrown)?;
        if !said(progress, combining.done(), combining.total())? {
            return Ok(!is_more);
        }
    }
    Ok(true)
}

impl CombineInput {
    fn combining(self) -> Result<Combining, JsError> {
        let Self { rider, bike, course, air, limits, costs, effort, wind, .. } = self;
        let lap = LapInput::alone(rider, bike, course, air, limits, costs, effort, wind);
        let setup = lap.setup()?;
        let parts = self.parts.parts(&setup.bike)?;
        if parts.count() == 0 {
            return Err(JsError::new("chainsets or cassettes has none; leave it out to take the bike's"));
        }
        let bare = self.mount.bare(&setup.bike)?;
        let rider = lap.on_reserve()?.map_or(BoxRider::Steady(setup), BoxRider::Reserve);
        Ok(Combining::new(&lap.course.course()?, &rider, bare, parts))
    }
}

impl CombineResult {
    fn of(combining: &Combining, is_done: bool) -> Self {
        let order = combining.quickest();
        let not_fitting =
            combining.sorted().not_fitting.iter().map(|(parts, lack)| NotFittingRow::of(*parts, *lack));
        let [lead, over_bike] = if is_done { leads(combining, &order) } else { [None, None] };
        Self {
            fitting: order.iter().map(FittingRow::of).collect(),
            not_fitting: not_fitting.collect(),
            lead,
            over_bike,
        }
    }
}

/// What the first gains over the next that rides another lap, and over the bike as it stands.
fn leads(combining: &Combining, order: &[Combined]) -> [Option<GainRow>; 2] {
    let Some(first) = order.first() else { return [None, None] };
    let next = order.iter().find(|it| it.fit.ridden() != first.fit.ridden()).map(Combined::ridden);
    let others: Vec<_> = combining.as_it_stands().into_iter().chain(next).collect();
    let gains = combining.gains(&first.ridden(), &others).unwrap_or_default();
    [gains.get(1), gains.first()].map(|it| it.map(GainRow::turned))
}

impl FittingRow {
    fn of(row: &Combined) -> Self {
        let Combined { combination, fit, time_s, planned, lap } = row;
        let avoided = fit.avoid.gears(&fit.drivetrain);
        Self {
            chainset: combination.chainset,
            cassette: combination.cassette,
            derailleur: combination.derailleur,
            verdict: fit.verdict.into(),
            spare_teeth: fit.spare,
            links: fit.links.count(),
            chain: fit.chain,
            gears_to_avoid: avoided.map(|gear| [gear.ring.teeth(), gear.sprocket.teeth()]).collect(),
            lap_s: *time_s,
            planned: *planned,
            shifts_rear: lap.shifts_rear,
            shifts_front: lap.shifts_front,
            lowest_development_m: lap.lowest_development_m,
        }
    }
}

impl NotFittingRow {
    fn of(Combination { chainset, cassette, derailleur }: Combination, lack: Lack) -> Self {
        Self { chainset, cassette, derailleur, why: lack.into() }
    }
}

impl GainRow {
    /// What the other loses.
    fn turned(lost: &TimeBand) -> Self {
        Self { gain_s: -lost.time_s, gain_low_s: -lost.high_s, gain_high_s: -lost.low_s }
    }
}

impl From<FitVerdict> for FitName {
    fn from(verdict: FitVerdict) -> Self {
        match verdict {
            FitVerdict::Fits => Self::Fits,
            FitVerdict::OnPaper => Self::OnPaper,
            FitVerdict::AvoidingGears => Self::AvoidingGears,
            FitVerdict::NotKnown => Self::NotKnown,
        }
    }
}

impl From<Lack> for LackName {
    fn from(lack: Lack) -> Self {
        match lack {
            Lack::Frame => Self::Frame,
            Lack::SprocketCount => Self::SprocketCount,
            Lack::Rings => Self::Rings,
            Lack::LargestSprocket => Self::LargestSprocket,
            Lack::SmallestSprocket => Self::SmallestSprocket,
            Lack::Cage => Self::Cage,
            Lack::Wheels => Self::Wheels,
        }
    }
}
