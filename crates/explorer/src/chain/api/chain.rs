//! The chain's way round the drivetrain: its length, and how every gear runs with it.

use crate::api::objects::{drivetrain, input, output, thrown};
use gear_math::chain::{
    BottomBracketDrop, Cage, CageAngle, CageMeasures, ChainDefaults, ChainPath, ChainstayLength, ForeStop,
    FrameMeasures, GearFit, GearState, GuideAngle, PulleyCentres, PulleyGap, RearStop,
};
use gear_math::gears::Pulley;
use gear_math::{ChainLinks, ChainSetup, Gear};
use serde::{Deserialize, Serialize};
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// The cage of a rear derailleur. Angles are seen from the drive side and counted from straight down, positive forward.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct CageInput {
    /// Guide pulley axle to tension pulley axle.
    pulley_centres_mm: f64,
    /// Teeth of the upper pulley.
    guide_teeth: u16,
    /// Teeth of the lower pulley.
    tension_teeth: u16,
    /// Pitch circle of the guide pulley to that of the sprocket; 12.5 is usual.
    gap_mm: f64,
    /// From rear axle to guide pulley; 10 is usual.
    guide_angle_deg: f64,
    /// Where the cage takes up no more; -75 is usual.
    rear_stop_deg: f64,
    /// How far forward the cage may be pulled; 65 is usual.
    fore_stop_deg: f64,
}

impl CageInput {
    fn cage(&self) -> Result<Cage, JsError> {
        Cage::new(CageMeasures {
            pulley_centres: PulleyCentres::new(self.pulley_centres_mm).map_err(thrown)?,
            guide: Pulley::new(self.guide_teeth).map_err(thrown)?,
            tension: Pulley::new(self.tension_teeth).map_err(thrown)?,
            gap: PulleyGap::new(self.gap_mm).map_err(thrown)?,
            guide_angle: GuideAngle::new(self.guide_angle_deg).map_err(thrown)?,
            rear_stop: RearStop::new(self.rear_stop_deg).map_err(thrown)?,
            fore_stop: ForeStop::new(self.fore_stop_deg).map_err(thrown)?,
        })
        .map_err(thrown)
    }
}

fn frame(chainstay_mm: f64, bottom_bracket_drop_mm: f64) -> Result<FrameMeasures, JsError> {
    Ok(FrameMeasures {
        chainstay: ChainstayLength::new(chainstay_mm).map_err(thrown)?,
        bottom_bracket_drop: BottomBracketDrop::new(bottom_bracket_drop_mm).map_err(thrown)?,
    })
}

/// What `chain` takes.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ChainInput {
    /// Teeth of one to three chainrings, in any order.
    rings: Vec<u16>,
    /// Teeth of one to fourteen sprockets, ascending.
    sprockets: Vec<u16>,
    /// Bottom bracket to rear axle.
    chainstay_mm: f64,
    /// Bottom bracket below the rear axle.
    bottom_bracket_drop_mm: f64,
    cage: CageInput,
    /// An even number of links, inner and outer counted alike; the gears are solved for the recommended number when
    /// it is left out.
    #[tsify(optional)]
    links: Option<u16>,
}

/// What `chain` gives. Links are of one pitch, 12.7 mm, inner and outer counted alike.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ChainResult {
    /// Shortest chain that every gear accepts, rounded up to even.
    shortest_links: u16,
    /// Longest chain that every gear takes up, rounded down to even. Below `shortestLinks` no chain suits every gear.
    longest_links: u16,
    shortest_exact_links: f64,
    longest_exact_links: f64,
    /// The shortest, but never less than the workshop rule: what is too long hangs, what is too short breaks.
    recommended_links: u16,
    /// The workshop rule: round largest ring and largest sprocket, up to even, plus two.
    big_big_plus_two_links: u16,
    /// Capacity by geometry. Its level is fitted through the rest position: the maker's figure comes first.
    capacity_teeth: f64,
    /// Every gear, ring by ring from the largest, smallest sprocket first.
    gears: Vec<ChainGear>,
}

/// One gear with its chain.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct ChainGear {
    ring: u16,
    sprocket: u16,
    /// Forward of straight down; null where the chain does not hold the cage between the stops given. That is so
    /// beyond the forward limit even where the state says `tight-but-usual`.
    cage_angle_deg: Option<f64>,
    /// 0 where the cage stands between its stops; else links too many (positive, at the rest position) or too few
    /// (negative, at the forward limit). Negative beyond the forward limit even where the state says `tight-but-usual`.
    links_over: f64,
    state: ChainState,
    /// Sideways, with usual chainlines: 43.5 mm front and rear, rings 7.5 mm apart, sprockets as usual for their
    /// number.
    chain_angle_deg: f64,
}

/// How a gear runs.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum ChainState {
    /// The cage stands between its stops and no further than 65 degrees forward.
    Comfortable,
    /// The cage stands further forward than that or than its forward limit, but no further than 78 degrees.
    TightButUsual,
    /// The chain is too short: forcing it breaks the derailleur or its hanger.
    TooTight,
    /// The cage is at its rest position and the chain hangs.
    Slack,
}

/// Chain length, capacity and every gear of a drivetrain, from the geometry of the chain's path.
///
/// # Errors
/// When a measure or the number of links is outside its limits, the number is odd, or two wheels run into each other.
#[wasm_bindgen(unchecked_return_type = "ChainResult")]
pub fn chain(
    #[wasm_bindgen(unchecked_param_type = "ChainInput")] asked: JsValue,
) -> Result<JsValue, JsError> {
    let asked: ChainInput = input(asked)?;
    let drivetrain = drivetrain(&asked.rings, &asked.sprockets)?;
    let setup = ChainSetup {
        chainline: ChainDefaults::chainline(&drivetrain),
        drivetrain,
        frame: frame(asked.chainstay_mm, asked.bottom_bracket_drop_mm)?,
        cage: asked.cage.cage()?,
    };
    let fit = setup.fit(asked.links.map(ChainLinks::new).transpose().map_err(thrown)?).map_err(thrown)?;
    output(&ChainResult {
        shortest_links: fit.window.shortest.count(),
        longest_links: fit.window.longest.count(),
        shortest_exact_links: fit.window.shortest_exact,
        longest_exact_links: fit.window.longest_exact,
        recommended_links: fit.recommended.count(),
        big_big_plus_two_links: fit.big_big_plus_two.count(),
        capacity_teeth: fit.capacity_teeth,
        gears: fit.gears.iter().map(ChainGear::from).collect(),
    })
}

impl From<&GearFit> for ChainGear {
    fn from(fit: &GearFit) -> Self {
        Self {
            ring: fit.gear.ring.teeth(),
            sprocket: fit.gear.sprocket.teeth(),
            cage_angle_deg: fit.cage_angle.map(CageAngle::degrees),
            links_over: fit.links_over,
            state: match fit.state {
                GearState::Comfortable => ChainState::Comfortable,
                GearState::TightButUsual => ChainState::TightButUsual,
                GearState::TooTight => ChainState::TooTight,
                GearState::Slack => ChainState::Slack,
            },
            chain_angle_deg: fit.chain_angle.degrees(),
        }
    }
}

/// What `chainLength` takes.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ChainLengthInput {
    ring: u16,
    sprocket: u16,
    /// Bottom bracket to rear axle.
    chainstay_mm: f64,
    /// Bottom bracket below the rear axle.
    bottom_bracket_drop_mm: f64,
    cage: CageInput,
    /// Where the cage is held, forward of straight down; its stops do not matter.
    cage_angle_deg: f64,
}

/// What `chainLength` gives.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ChainLengthResult {
    length_mm: f64,
    /// In links of 12.7 mm, unrounded.
    length_links: f64,
}

/// Length of the chain's path in one gear with the cage held at an angle.
///
/// # Errors
/// When a measure is outside its limits or two wheels run into each other.
#[wasm_bindgen(js_name = chainLength, unchecked_return_type = "ChainLengthResult")]
pub fn chain_length(
    #[wasm_bindgen(unchecked_param_type = "ChainLengthInput")] asked: JsValue,
) -> Result<JsValue, JsError> {
    let asked: ChainLengthInput = input(asked)?;
    let gear = Gear::new(asked.ring, asked.sprocket).map_err(thrown)?;
    let frame = frame(asked.chainstay_mm, asked.bottom_bracket_drop_mm)?;
    let angle = CageAngle::new(asked.cage_angle_deg).map_err(thrown)?;
    let path = ChainPath::trace(gear, &frame, &asked.cage.cage()?, angle).map_err(thrown)?;
    output(&ChainLengthResult { length_mm: path.length_mm, length_links: path.links() })
}
