//! Gears, overlap and comparison.

use crate::api::objects::{GearPair, SetUpInput, input, output, thrown};
use gear_math::gears::{DevelopmentSpan, SetupSummary};
use gear_math::{Cadence, Cassette, Comparison, DuplicateTolerance, Speed};
use serde::{Deserialize, Serialize};
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// What `gearTable` takes.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
pub struct GearTableInput {
    #[serde(flatten)]
    set_up: SetUpInput,
    /// Cadences to give speeds for; none when left out.
    #[serde(default)]
    #[tsify(optional)]
    cadences_rpm: Vec<f64>,
}

/// What `gearTable` gives.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct GearTable {
    /// Every gear, ring by ring from the largest, smallest sprocket first.
    gears: Vec<GearTableRow>,
    /// Highest over lowest gear.
    range_percent: f64,
}

/// One gear of a table.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct GearTableRow {
    ring: u16,
    sprocket: u16,
    ratio: f64,
    development_m: f64,
    /// On the wheel given, not the nominal 27 in one.
    gear_inches: f64,
    /// In the order of the cadences asked for.
    speeds_kmh: Vec<f64>,
}

/// Ratio, development, gear inches and speeds of every gear.
///
/// # Errors
/// When a ring, a sprocket, the circumference or a cadence is outside its limits.
#[wasm_bindgen(js_name = gearTable, unchecked_return_type = "GearTable")]
pub fn gear_table(
    #[wasm_bindgen(unchecked_param_type = "GearTableInput")] table: JsValue,
) -> Result<JsValue, JsError> {
    let table: GearTableInput = input(table)?;
    let set_up = table.set_up.set_up()?;
    let cadences: Vec<Cadence> =
        table.cadences_rpm.iter().map(|&rpm| Cadence::new(rpm).map_err(thrown)).collect::<Result<_, _>>()?;
    let gears = set_up.rows().map(|row| GearTableRow {
        ring: row.gear.ring.teeth(),
        sprocket: row.gear.sprocket.teeth(),
        ratio: row.ratio.value(),
        development_m: row.development.m(),
        gear_inches: row.gear_inches.inches(),
        speeds_kmh: cadences.iter().map(|&cadence| row.speed_at(cadence).km_per_h()).collect(),
    });
    let summary = set_up.summary(DuplicateTolerance::default());
    output(&GearTable { gears: gears.collect(), range_percent: summary.range.percent() })
}

/// What `overlap` takes.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct OverlapInput {
    #[serde(flatten)]
    set_up: SetUpInput,
    /// Gears closer than this count as one; 2 when left out.
    #[tsify(optional)]
    duplicate_tolerance_percent: Option<f64>,
}

/// What `overlap` gives.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct Overlap {
    /// Gears inside the stretch that more than one ring can reach.
    inside_count: usize,
    /// Gears outside it.
    outside_count: usize,
    /// Pairs of gears, one on each ring, within the tolerance; ring A is the larger.
    duplicates: Vec<GearPair>,
}

/// The sprockets of the usual cassette that goes by its ends, such as 12-25 with 8 sprockets; for `sprockets` elsewhere.
/// The ends are as asked; what lies between is common practice and differs from maker to maker.
///
/// # Errors
/// When an end or the count is not whole or outside its limits, or no usual cassette has these ends and so many sprockets.
#[wasm_bindgen(js_name = cassetteNamed, unchecked_return_type = "number[]")]
pub fn cassette_named(first: f64, last: f64, count: f64) -> Result<JsValue, JsError> {
    let [first, last, count] = [whole("first", first)?, whole("last", last)?, whole("count", count)?];
    let cassette = Cassette::named(first, last, count.into()).map_err(thrown)?;
    output(&cassette.sprockets().iter().map(|sprocket| sprocket.teeth()).collect::<Vec<u16>>())
}

/// A number of teeth or sprockets.
fn whole(name: &str, number: f64) -> Result<u16, JsError> {
    if number.fract() == 0.0 {
        Ok(number as u16)
    } else {
        Err(thrown(format!("{name} must be a whole number")))
    }
}

/// How far the rings of one set-up repeat each other.
///
/// # Errors
/// When a ring, a sprocket, the circumference or the tolerance is outside its limits.
#[wasm_bindgen(unchecked_return_type = "Overlap")]
pub fn overlap(
    #[wasm_bindgen(unchecked_param_type = "OverlapInput")] rings: JsValue,
) -> Result<JsValue, JsError> {
    let rings: OverlapInput = input(rings)?;
    let found = rings.set_up.set_up()?.drivetrain.overlap(tolerance(rings.duplicate_tolerance_percent)?);
    let pair =
        |pair: &gear_math::gears::DuplicatePair| GearPair::new(pair.on_larger, pair.on_smaller, pair.step);
    output(&Overlap {
        inside_count: found.inside,
        outside_count: found.outside,
        duplicates: found.duplicates.iter().map(pair).collect(),
    })
}

fn tolerance(percent: Option<f64>) -> Result<DuplicateTolerance, JsError> {
    percent
        .map_or(Ok(DuplicateTolerance::default()), |percent| DuplicateTolerance::new(percent).map_err(thrown))
}

/// What `compare` takes.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct CompareInput {
    a: GearTableInput,
    b: GearTableInput,
    /// Gears closer than this count as one; 2 when left out.
    #[tsify(optional)]
    duplicate_tolerance_percent: Option<f64>,
}

/// What `compare` gives.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct SetUpComparison {
    a: SetUpFigures,
    b: SetUpFigures,
    /// Gears that both have within the tolerance, lowest first.
    common: Vec<GearPair>,
    only_a: Reach,
    only_b: Reach,
}

/// One set-up summed up.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct SetUpFigures {
    lowest_development_m: f64,
    highest_development_m: f64,
    range_percent: f64,
    gear_count: usize,
    /// Gears left without cross-chained ones and duplicates.
    useful_gear_count: usize,
    /// Gears where the chain runs at its steepest, by common practice.
    crossed_gear_count: usize,
    /// Shifts that move both derailleurs, riding up ring by ring.
    double_shift_count: usize,
    /// Of the shifts riding up; null with a single gear.
    mean_step_percent: Option<f64>,
    largest_step_percent: Option<f64>,
    equal_step_percent: Option<f64>,
}

/// What one set-up alone reaches.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct Reach {
    below: Option<Stretch>,
    above: Option<Stretch>,
}

/// A stretch of development, with its speeds at each cadence asked for.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct Stretch {
    from_m: f64,
    to_m: f64,
    from_kmh: Vec<f64>,
    to_kmh: Vec<f64>,
}

/// Set-up A against set-up B.
///
/// # Errors
/// When anything in either is outside its limits.
#[wasm_bindgen(unchecked_return_type = "SetUpComparison")]
pub fn compare(
    #[wasm_bindgen(unchecked_param_type = "CompareInput")] both: JsValue,
) -> Result<JsValue, JsError> {
    let both: CompareInput = input(both)?;
    let (a, b) = (both.a.set_up.set_up()?, both.b.set_up.set_up()?);
    let comparison = a.compare(&b, tolerance(both.duplicate_tolerance_percent)?);
    let cadences = |of: &GearTableInput| {
        of.cadences_rpm.iter().map(|&rpm| Cadence::new(rpm).map_err(thrown)).collect::<Result<Vec<_>, _>>()
    };
    output(&figures(&comparison, &cadences(&both.a)?, &cadences(&both.b)?))
}

fn figures(comparison: &Comparison, cadences_a: &[Cadence], cadences_b: &[Cadence]) -> SetUpComparison {
    let reach = |own: &gear_math::gears::OwnReach, cadences: &[Cadence]| Reach {
        below: own.below.map(|span| Stretch::new(span, cadences)),
        above: own.above.map(|span| Stretch::new(span, cadences)),
    };
    SetUpComparison {
        a: SetUpFigures::from(&comparison.a),
        b: SetUpFigures::from(&comparison.b),
        common: comparison.shared.iter().map(|gear| GearPair::new(gear.a, gear.b, gear.step)).collect(),
        only_a: reach(&comparison.only_a, cadences_a),
        only_b: reach(&comparison.only_b, cadences_b),
    }
}

impl Stretch {
    fn new(span: DevelopmentSpan, cadences: &[Cadence]) -> Self {
        let speeds = |pick: fn((Speed, Speed)) -> Speed| {
            cadences.iter().map(|&cadence| pick(span.speeds_at(cadence)).km_per_h()).collect()
        };
        Self {
            from_m: span.from.m(),
            to_m: span.to.m(),
            from_kmh: speeds(|(from, _)| from),
            to_kmh: speeds(|(_, to)| to),
        }
    }
}

impl From<&SetupSummary> for SetUpFigures {
    fn from(summary: &SetupSummary) -> Self {
        let steps = summary.riding_order.step_spread();
        Self {
            lowest_development_m: summary.lowest.development.m(),
            highest_development_m: summary.highest.development.m(),
            range_percent: summary.range.percent(),
            gear_count: summary.gears,
            useful_gear_count: summary.useful(),
            crossed_gear_count: summary.crossed,
            double_shift_count: summary.riding_order.double_shifts(),
            mean_step_percent: steps.map(|steps| steps.mean.percent()),
            largest_step_percent: steps.map(|steps| steps.largest.percent()),
            equal_step_percent: steps.map(|steps| steps.equal.percent()),
        }
    }
}
