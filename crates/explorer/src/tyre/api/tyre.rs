//! A tyre's width, spring and pressure.

use crate::api::objects::{input, output, thrown};
use gear_math::rider::{BikeMass, BodyMass, KitMass};
use gear_math::wheel::{
    AirSpring, FrontShare, LabelEdition, MountedWidth, NominalWidth, PressureAdvice, PressureMarks,
    RaceLimit, RimInnerWidth, TyreSection, WheelLoad, WheelRadius,
};
use gear_math::{Pressure, PressureCase};
use serde::{Deserialize, Serialize};
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// How a tyre holds its air and its rim.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum Construction {
    /// Casing sewn round its tube and glued to the rim.
    Tubular,
    /// Open tyre with a tube inside.
    Clincher,
    /// Open tyre that seals on the rim without a tube.
    Tubeless,
}

/// The ground of a course, as a tyre meets it.
#[derive(Debug, Clone, Copy, Deserialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum Terrain {
    /// Soft ground or mud.
    Soft,
    /// A bit of everything.
    Mixed,
    /// Rocks, roots, or fast and bumpy.
    Rocky,
}

/// How a rider treats the wheels.
#[derive(Debug, Clone, Copy, Deserialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum Style {
    /// Light on the bike: unweights over edges.
    Smooth,
    /// Like most.
    Normal,
    /// Rough: hits edges.
    Hard,
}

/// What `tyreWidth` takes.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct TyreWidthInput {
    label_mm: f64,
    rim_inner_mm: f64,
    /// The rim on which the label's width holds; by the ETRTO table of 2020 when left out.
    #[tsify(optional)]
    measuring_rim_mm: Option<f64>,
    /// Widest tyre the race allows; no verdict when left out.
    #[tsify(optional)]
    limit_mm: Option<f64>,
    construction: Construction,
}

/// What `tyreWidth` gives.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct TyreWidthFigures {
    /// By the linear rule: the figure to use.
    mounted_mm: f64,
    /// With the casing as an arc that keeps its length: the check on it.
    arc_mm: f64,
    /// Null without a limit.
    verdict: Option<WidthVerdict>,
}

/// What to expect of the gauge.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum WidthVerdict {
    /// The tyre will probably pass.
    LikelyWithin,
    /// Too close to tell from figures.
    Measure,
    /// The tyre will probably fail.
    LikelyOver,
}

/// How wide a labelled tyre comes out on a rim, and what the race's gauge will probably say.
///
/// # Errors
/// When a measure is outside its limits, or a rim is not narrower than the tyre.
#[wasm_bindgen(js_name = tyreWidth, unchecked_return_type = "TyreWidthFigures")]
pub fn tyre_width(
    #[wasm_bindgen(unchecked_param_type = "TyreWidthInput")] tyre: JsValue,
) -> Result<JsValue, JsError> {
    let tyre: TyreWidthInput = input(tyre)?;
    let width = tyre.width()?;
    let limit = tyre.limit_mm.map(RaceLimit::new).transpose().map_err(thrown)?;
    output(&TyreWidthFigures {
        mounted_mm: width.mounted.mm(),
        arc_mm: width.arc.mm(),
        verdict: limit.map(|limit| width.verdict(limit).into()),
    })
}

impl TyreWidthInput {
    fn width(&self) -> Result<gear_math::wheel::TyreWidth, JsError> {
        let label = NominalWidth::new(self.label_mm).map_err(thrown)?;
        let rim = RimInnerWidth::new(self.rim_inner_mm).map_err(thrown)?;
        let given = self.measuring_rim_mm.map(RimInnerWidth::new).transpose().map_err(thrown)?;
        let measuring_rim = given.unwrap_or_else(|| LabelEdition::Etrto2020.measuring_rim(label));
        match self.construction {
            Construction::Tubular => Ok(gear_math::wheel::TyreWidth::tubular(label)),
            _ => gear_math::wheel::TyreWidth::on_rim(label, rim, measuring_rim).map_err(thrown),
        }
    }
}

/// What `airSpring` takes.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct AirSpringInput {
    width_mm: f64,
    rim_inner_mm: f64,
    /// Axle to the outside of the unloaded tyre.
    outer_radius_mm: f64,
    load_n: f64,
    pressure_bar: f64,
}

/// What `airSpring` gives. It ranks set-ups: a real casing is stiffer.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct AirSpringFigures {
    deflection_mm: f64,
    /// Part of the tyre's height above the rim, of 1.
    drop_fraction: f64,
    /// Load that brings the rim close to flat ground over the load carried.
    bottoming_reserve: f64,
    contact_area_cm2: f64,
}

/// How far an inflated tyre gives under its load, on flat ground.
///
/// # Errors
/// When a measure is outside its limits, or the rim is not narrower than the tyre.
#[wasm_bindgen(js_name = airSpring, unchecked_return_type = "AirSpringFigures")]
pub fn air_spring(
    #[wasm_bindgen(unchecked_param_type = "AirSpringInput")] tyre: JsValue,
) -> Result<JsValue, JsError> {
    let tyre: AirSpringInput = input(tyre)?;
    let width = MountedWidth::new(tyre.width_mm).map_err(thrown)?;
    let rim = RimInnerWidth::new(tyre.rim_inner_mm).map_err(thrown)?;
    let spring = AirSpring {
        section: TyreSection::new(width, rim).map_err(thrown)?,
        outer_radius: WheelRadius::new(tyre.outer_radius_mm).map_err(thrown)?,
        pressure: Pressure::new(tyre.pressure_bar).map_err(thrown)?,
    };
    let loaded = spring.under(WheelLoad::new(tyre.load_n).map_err(thrown)?);
    output(&AirSpringFigures {
        deflection_mm: loaded.deflection_mm,
        drop_fraction: loaded.drop,
        bottoming_reserve: loaded.bottoming_reserve,
        contact_area_cm2: loaded.contact_area_cm2,
    })
}

/// What `tyrePressure` takes.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct TyrePressureInput {
    rider_kg: f64,
    /// When left out, bike and kit count as 9 together.
    #[tsify(optional)]
    bike_kg: Option<f64>,
    /// Clothes, shoes, helmet and bottle; 0 when left out.
    #[serde(default)]
    #[tsify(optional)]
    kit_kg: f64,
    /// As mounted; of a tubular, the label.
    width_mm: f64,
    /// Narrow tyres have a lowest pressure by their label; by `widthMm` when left out.
    #[tsify(optional)]
    label_mm: Option<f64>,
    construction: Construction,
    terrain: Terrain,
    style: Style,
    /// Front wheel's part of the weight; 0.45 when left out.
    #[tsify(optional)]
    front_share: Option<f64>,
    /// As marked on the tyre; no limit when left out.
    #[tsify(optional)]
    max_tyre_bar: Option<f64>,
    /// As marked on the rim; no limit when left out.
    #[tsify(optional)]
    max_rim_bar: Option<f64>,
    /// The least that tyre or rim is marked with; no limit when left out.
    #[tsify(optional)]
    min_marked_bar: Option<f64>,
    /// Hooked when left out.
    #[serde(default)]
    #[tsify(optional)]
    hookless: bool,
}

/// What `tyrePressure` gives. All four pressures are null where no number may be given: see the notes.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct TyrePressures {
    front_psi: Option<f64>,
    rear_psi: Option<f64>,
    front_bar: Option<f64>,
    rear_bar: Option<f64>,
    /// What to heed and what to change, in words.
    notes: Vec<String>,
}

/// Pressures to start from, good to 15 % either way.
///
/// # Errors
/// When a mass, width, share or mark is outside its limits.
#[wasm_bindgen(js_name = tyrePressure, unchecked_return_type = "TyrePressures")]
pub fn tyre_pressure(
    #[wasm_bindgen(unchecked_param_type = "TyrePressureInput")] case: JsValue,
) -> Result<JsValue, JsError> {
    let case: TyrePressureInput = input(case)?;
    let advice = case.case()?.advice();
    let start = advice.start.as_ref().ok();
    let front = start.map(|start| start.front.start);
    let rear = start.map(|start| start.rear.start);
    output(&TyrePressures {
        front_psi: front.map(Pressure::psi),
        rear_psi: rear.map(Pressure::psi),
        front_bar: front.map(Pressure::bar),
        rear_bar: rear.map(Pressure::bar),
        notes: notes(&advice),
    })
}

impl TyrePressureInput {
    fn case(&self) -> Result<PressureCase, JsError> {
        let mark = |bar: Option<f64>| bar.map(Pressure::new).transpose().map_err(thrown);
        let kit = KitMass::new(self.kit_kg).map_err(thrown)?;
        let bike = self.bike_kg.map(BikeMass::new).transpose().map_err(thrown)?;
        Ok(PressureCase {
            rider: BodyMass::new(self.rider_kg).map_err(thrown)?,
            kit_and_bike: bike.map(|bike| (kit, bike)),
            width: MountedWidth::new(self.width_mm).map_err(thrown)?,
            label: self.label_mm.map(NominalWidth::new).transpose().map_err(thrown)?,
            construction: self.construction.into(),
            ground: self.terrain.into(),
            style: self.style.into(),
            front_share: self
                .front_share
                .map_or(Ok(FrontShare::USUAL), |share| FrontShare::new(share).map_err(thrown))?,
            marks: PressureMarks {
                tyre: mark(self.max_tyre_bar)?,
                rim: mark(self.max_rim_bar)?,
                least: mark(self.min_marked_bar)?,
                hookless: self.hookless,
            },
        })
    }
}

/// First what moved or forbade the pressures, then what to heed.
fn notes(advice: &PressureAdvice) -> Vec<String> {
    let mut notes = match &advice.start {
        Err(conflict) => vec![conflict.to_string()],
        Ok(_) => advice.limits_told(),
    };
    notes.extend(advice.cautions.iter().map(ToString::to_string));
    notes
}

impl From<gear_math::wheel::WidthVerdict> for WidthVerdict {
    fn from(verdict: gear_math::wheel::WidthVerdict) -> Self {
        match verdict {
            gear_math::wheel::WidthVerdict::LikelyWithin => Self::LikelyWithin,
            gear_math::wheel::WidthVerdict::Measure => Self::Measure,
            gear_math::wheel::WidthVerdict::LikelyOver => Self::LikelyOver,
        }
    }
}

impl From<Construction> for gear_math::wheel::Construction {
    fn from(construction: Construction) -> Self {
        match construction {
            Construction::Tubular => Self::Tubular,
            Construction::Clincher => Self::Clincher,
            Construction::Tubeless => Self::Tubeless,
        }
    }
}

impl From<Terrain> for gear_math::wheel::TyreGround {
    fn from(terrain: Terrain) -> Self {
        match terrain {
            Terrain::Soft => Self::Soft,
            Terrain::Mixed => Self::Mixed,
            Terrain::Rocky => Self::Rocky,
        }
    }
}

impl From<Style> for gear_math::wheel::WheelStyle {
    fn from(style: Style) -> Self {
        match style {
            Style::Smooth => Self::Smooth,
            Style::Normal => Self::Normal,
            Style::Hard => Self::Hard,
        }
    }
}
