//! What is best of a box of parts.

use crate::api::objects::{input, output, thrown};
use crate::lap::api::box_input::{BoxInput, MountInput};
use crate::lap::api::combine_result::CombineResult;
use crate::lap::api::course::CourseInput;
use crate::lap::api::effort::{EffortInput, WindInput};
use crate::lap::api::lap::{CostsInput, LapInput};
use crate::lap::api::progress::{Progress, said};
use crate::lap::api::purchase_row::PurchaseRow;
use crate::lap::api::robust_result::RobustResult;
use crate::ride::api::bike::BikeInput;
use crate::ride::api::given::given;
use crate::ride::api::rider::RiderInput;
use crate::ride::api::surroundings::{AirInput, LimitsInput};
use gear_math::Course;
use gear_math::parts::{
    BoxLaps, BoxRider, Buying, Combined, Combining, CourseWeight, Outing, PartsBox, Robust,
};
use gear_math::rider::PowerBelowStanding;
use serde::Deserialize;
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

    fn outing(self) -> Result<(Outing, PartsBox), JsError> {
        let Self { rider, bike, course, air, limits, costs, effort, wind, .. } = self;
        let lap = LapInput::alone(rider, bike, course, air, limits, costs, effort, wind);
        let setup = lap.setup()?;
        let parts = self.parts.parts(&setup.bike)?;
        if parts.count() == 0 {
            return Err(JsError::new("chainsets or cassettes has none; leave it out to take the bike's"));
        }
        let bike = self.mount.bare(&setup.bike)?;
        let rider = lap.on_reserve()?.map_or(BoxRider::Steady(setup), BoxRider::Reserve);
        Ok((Outing { course: lap.course.course()?, rider, bike }, parts))
    }
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
    let (outing, parts) = asked.outing()?;
    let mut work = Work { progress, before: 0 };
    let mut combining = Combining::new(&outing, parts.clone());
    let mut goes_on = work.run(|| Ok((combining.advance(BATCH)?, [combining.done(), combining.total()])))?;
    let mut result = CombineResult::of(&combining, outing.rider.bike().wheel, goes_on);
    let order = combining.quickest();
    if goes_on && budget > 0 {
        let mut buying = Buying::new(&outing, &parts, order.first().map(Combined::timed), budget);
        goes_on = work.run(|| Ok((buying.advance(BATCH)?, [buying.done(), buying.total()])))?;
        result.purchases = buying.purchases().iter().map(PurchaseRow::of).collect();
    }
    if goes_on && is_robust {
        let best = combining.laps().map(BoxLaps::best).unwrap_or_default();
        let mut robust = Robust::new(&outing, best, courses);
        work.run(|| Ok((robust.advance()?, [robust.done(), robust.total()])))?;
        result.robust = RobustResult::of(&order, &robust);
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
