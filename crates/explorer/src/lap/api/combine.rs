//! What is best of a box of parts.

use crate::api::objects::{input, output, thrown};
use crate::lap::api::box_input::{BoxInput, MountInput};
use crate::lap::api::course::CourseInput;
use crate::lap::api::effort::{EffortInput, WindInput};
use crate::lap::api::lap::{CostsInput, LapInput};
use crate::lap::api::progress::{Progress, said};
use crate::ride::api::bike::BikeInput;
use crate::ride::api::given::given;
use crate::ride::api::rider::RiderInput;
use crate::ride::api::surroundings::{AirInput, LimitsInput};
use gear_math::course::TimeBand;
use gear_math::parts::{
    BoxRider, Buying, Combination, Combined, Combining, Condition, CourseWeight, Fit, FitVerdict, Lack,
    Purchase, RearDerailleur, Regret, Robust, UsualPart,
};
use gear_math::rider::PowerBelowStanding;
use gear_math::{Cassette, Chainring, Chainset, Course, Sprocket, TotalCapacity};
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
    /// Whether to look for what is worth buying among usual parts; not when left out.
    #[serde(default)]
    #[tsify(optional)]
    usual_parts: bool,
    /// How many parts may be bought together, 1 to 3; 1 when left out.
    #[tsify(optional)]
    budget_parts: Option<usize>,
    /// Whether to say how the best stand up to another day; not when left out.
    #[serde(default)]
    #[tsify(optional)]
    robust: bool,
    /// Other courses that count for that beside `course`, which has a weight of 1; none when left out.
    #[serde(default)]
    #[tsify(optional)]
    courses: Vec<OtherCourse>,
}

/// Another course that is ridden as well.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct OtherCourse {
    course: CourseInput,
    /// How much it counts, 0.01 to 100; 1 when left out.
    #[tsify(optional)]
    weight: Option<f64>,
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
    /// What is worth buying, the quickest first: up to three that gain anything over the first of `fitting`. None where that was
    /// not asked for. Where no `gainLowS` is above zero, nothing is worth more than the doubt.
    purchases: Vec<PurchaseRow>,
    /// How the best stand up to another day; null where that was not asked for, or nothing fits.
    robust: Option<RobustResult>,
}

/// How the best stand up to another day and to other courses, by a first look at each lap.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct RobustResult {
    /// What is otherwise, in the order of every `behindS`.
    conditions: Vec<ConditionName>,
    /// Up to 60 set-ups with different laps, in the order of `fitting`.
    choices: Vec<RegretRow>,
    /// The place in `fitting` of the choice that is least regretted.
    least_regret: usize,
}

/// Something that is otherwise than entered.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum ConditionName {
    /// Nothing.
    AsEntered,
    /// The ground is one step wetter all round.
    WetterGround,
    /// A tenth less power.
    LessPower,
    /// A tenth more.
    MorePower,
    /// The lowest usable cadence, or on a reserve the one that is liked, is 5 rpm lower.
    LowerCadence,
    /// 5 rpm higher.
    HigherCadence,
}

/// By what a choice is regretted.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct RegretRow {
    /// Its place in `fitting`.
    fitting: usize,
    /// What it is behind the quickest choice under each condition, in the mean over the courses.
    behind_s: Vec<f64>,
    /// The largest of these.
    regret_s: f64,
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

/// Parts to buy together.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct PurchaseRow {
    parts: Vec<PartRow>,
    /// The set-up that they make with what is in the box.
    rings: Vec<u16>,
    sprockets: Vec<u16>,
    /// The rear derailleur of the box that shifts it; null where that is bought, or the box has none.
    derailleur: Option<usize>,
    verdict: FitName,
    links: u16,
    chain: Option<usize>,
    gears_to_avoid: Vec<[u16; 2]>,
    lap_s: f64,
    /// What it gains over the first of `fitting`, with its edges in about 9 in 10 cases; null where nothing fits.
    gain_s: Option<f64>,
    gain_low_s: Option<f64>,
    gain_high_s: Option<f64>,
}

/// A usual part, by its teeth: either `chainset`, `cassette` or `derailleur`.
#[derive(Debug, Default, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct PartRow {
    /// Its rings.
    chainset: Option<Vec<u16>>,
    /// The one ring of these to buy, where a chainset of the box has the others; a single goes on any of them.
    ring: Option<u16>,
    /// Its sprockets.
    cassette: Option<Vec<u16>>,
    /// The least that a rear derailleur has to take.
    derailleur: Option<TakenRow>,
}

/// What a rear derailleur takes.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct TakenRow {
    total_capacity_teeth: Option<u16>,
    largest_sprocket_teeth: Option<u16>,
}

/// What of a box of parts goes together, how quick that is round a course, and what does not go together and why. Makers' figures
/// come first, then cage and chain by geometry, as in `cageCheck` and `chain`; whatever teeth and millimetres do not tell is not
/// checked. `progress` is called with how many pieces of work are done and how many there are at most, which changes as it gets
/// known; when it returns `false` it stops there, and `fitting` holds what was ridden until then.
///
/// With `usualParts` it also says which part is most worth buying of those in common use, or which few together. By a first look
/// at every lap nothing better is left out; the best by that look are then planned in full.
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
    let (budget, courses) = (asked.budget()?, asked.other_courses()?);
    let is_robust = asked.robust || !courses.is_empty();
    let mut combining = asked.combining()?;
    let mut work = Work { progress, before: 0 };
    let mut goes_on = work.run(|| Ok((combining.advance(BATCH)?, [combining.done(), combining.total()])))?;
    let mut result = CombineResult::of(&combining, goes_on);
    if goes_on && budget > 0 {
        let mut buying = Buying::new(&combining, budget);
        goes_on = work.run(|| Ok((buying.advance(BATCH)?, [buying.done(), buying.total()])))?;
        result.purchases = buying.purchases().iter().map(PurchaseRow::of).collect();
    }
    if goes_on && is_robust {
        let mut robust = Robust::new(&combining, courses);
        work.run(|| Ok((robust.advance()?, [robust.done(), robust.total()])))?;
        result.robust = RobustResult::of(&combining.quickest(), &robust);
    }
    output(&result)
}

/// Work of several kinds, one after another.
struct Work {
    progress: Option<Progress>,
    /// Pieces done before what is going on.
    before: usize,
}

impl Work {
    /// Goes on until all is done, or until the callback stops it; whether all is done.
    fn run(
        &mut self,
        mut advance: impl FnMut() -> Result<(bool, [usize; 2]), PowerBelowStanding>,
    ) -> Result<bool, JsError> {
        loop {
            let (is_more, [done, total]) = advance().map_err(thrown)?;
            let goes_on = said(self.progress.as_ref(), self.before + done, self.before + total)?;
            if !(is_more && goes_on) {
                self.before += done;
                return Ok(!is_more);
            }
        }
    }
}

impl CombineInput {
    /// How many parts may be bought; none where that was not asked for.
    fn budget(&self) -> Result<usize, JsError> {
        match self.budget_parts {
            Some(parts) if !(1..=Buying::MOST).contains(&parts) => {
                Err(thrown(format!("budgetParts must be 1 to {}", Buying::MOST)))
            }
            _ if !self.usual_parts => Ok(0),
            parts => Ok(parts.unwrap_or(1)),
        }
    }

    fn other_courses(&self) -> Result<Vec<(Course, CourseWeight)>, JsError> {
        let other = |it: &OtherCourse| {
            Ok((it.course.course()?, given(it.weight, CourseWeight::new, CourseWeight::ONE)?))
        };
        self.courses.iter().map(other).collect()
    }

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
            purchases: Vec::new(),
            robust: None,
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
        Self {
            chainset: combination.chainset,
            cassette: combination.cassette,
            derailleur: combination.derailleur,
            verdict: fit.verdict.into(),
            spare_teeth: fit.spare,
            links: fit.links.count(),
            chain: fit.chain,
            gears_to_avoid: avoided(fit),
            lap_s: *time_s,
            planned: *planned,
            shifts_rear: lap.shifts_rear,
            shifts_front: lap.shifts_front,
            lowest_development_m: lap.lowest_development_m,
        }
    }
}

fn avoided(fit: &Fit) -> Vec<[u16; 2]> {
    fit.avoid.gears(&fit.drivetrain).map(|gear| [gear.ring.teeth(), gear.sprocket.teeth()]).collect()
}

fn rings(chainset: &Chainset) -> Vec<u16> {
    chainset.rings().iter().map(|ring| ring.teeth()).collect()
}

fn sprockets(cassette: &Cassette) -> Vec<u16> {
    cassette.sprockets().iter().map(|sprocket| sprocket.teeth()).collect()
}

impl PurchaseRow {
    fn of(purchase: &Purchase) -> Self {
        let Purchase { parts, fit, own_derailleur, time_s, gained } = purchase;
        Self {
            parts: parts.iter().map(PartRow::of).collect(),
            rings: rings(&fit.drivetrain.chainset),
            sprockets: sprockets(&fit.drivetrain.cassette),
            derailleur: *own_derailleur,
            verdict: fit.verdict.into(),
            links: fit.links.count(),
            chain: fit.chain,
            gears_to_avoid: avoided(fit),
            lap_s: *time_s,
            gain_s: gained.map(|it| it.time_s),
            gain_low_s: gained.map(|it| it.low_s),
            gain_high_s: gained.map(|it| it.high_s),
        }
    }
}

impl PartRow {
    fn of(part: &UsualPart) -> Self {
        match part {
            UsualPart::Chainset { chainset, ring } => {
                Self { chainset: Some(rings(chainset)), ring: ring.map(Chainring::teeth), ..Self::default() }
            }
            UsualPart::Cassette(cassette) => Self { cassette: Some(sprockets(cassette)), ..Self::default() },
            UsualPart::Derailleur(RearDerailleur { figures, .. }) => {
                let total_capacity_teeth = figures.total_capacity.map(TotalCapacity::teeth);
                let largest_sprocket_teeth = figures.largest_sprocket.map(Sprocket::teeth);
                let taken = TakenRow { total_capacity_teeth, largest_sprocket_teeth };
                Self { derailleur: Some(taken), ..Self::default() }
            }
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

impl RobustResult {
    fn of(order: &[Combined], robust: &Robust) -> Option<Self> {
        let place = |it: &Regret| order.iter().position(|row| row.fit.ridden() == it.lap);
        let choice = |it: &Regret| {
            Some(RegretRow { fitting: place(it)?, behind_s: it.behind_s.to_vec(), regret_s: it.worst_s })
        };
        Some(Self {
            conditions: Condition::ALL.map(ConditionName::from).into(),
            least_regret: place(&robust.least()?)?,
            choices: robust.regrets().iter().filter_map(choice).collect(),
        })
    }
}

impl From<Condition> for ConditionName {
    fn from(condition: Condition) -> Self {
        match condition {
            Condition::AsEntered => Self::AsEntered,
            Condition::WetterGround => Self::WetterGround,
            Condition::LessPower => Self::LessPower,
            Condition::MorePower => Self::MorePower,
            Condition::LowerCadence => Self::LowerCadence,
            Condition::HigherCadence => Self::HigherCadence,
        }
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
