//! A road position on another bike, and the stems that bring the bar there.

use crate::api::objects::{input, output, thrown};
use gear_math::position::{
    BarCloser, BarDrop, BarRaise, BarTolerance, BikePoint, ClampHeight, Footing, FrameReach, FrameStack,
    FrontEnd, HeadAngle, PositionChanges, Saddle, SaddleHeight, SaddleLowering, SeatAngle, Setback,
    SoleStack, Spacers, StemAngle, StemFit, StemLength, StemSearchLimits, StemSetup, TipToBar, TopCap,
};
use gear_math::rider::CrankLength;
use gear_math::{CrossBike, RoadPosition};
use serde::{Deserialize, Serialize};
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// What `carryPosition` takes.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct CarryPositionInput {
    /// Bottom bracket centre to saddle top along the seat tube.
    saddle_height_mm: f64,
    /// Saddle tip behind the bottom bracket.
    setback_mm: f64,
    /// From the horizontal.
    seat_angle_deg: f64,
    crank_mm: f64,
    /// Pedal axle to sole of the foot.
    sole_stack_mm: f64,
    /// Saddle tip to bar centre in a straight line.
    tip_to_bar_mm: f64,
    /// Saddle top down to bar centre.
    bar_drop_mm: f64,
    cross_crank_mm: f64,
    cross_sole_stack_mm: f64,
    cross_seat_angle_deg: f64,
    /// 0 when left out.
    #[serde(default)]
    #[tsify(optional)]
    lower_by_mm: f64,
    /// Against the saddle; 15 when left out.
    #[tsify(optional)]
    bar_up_by_mm: Option<f64>,
    /// Along the straight line from saddle tip to bar; 10 when left out.
    #[tsify(optional)]
    bar_closer_by_mm: Option<f64>,
}

/// What `carryPosition` gives, on the cross bike.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct CarriedPositionFigures {
    /// Along its own seat tube.
    saddle_height_mm: f64,
    /// Saddle top above the bottom bracket.
    saddle_vertical_mm: f64,
    /// How far the same saddle slides on the same seat post; negative is backward.
    rail_shift_forward_mm: f64,
    bar_drop_mm: f64,
    tip_to_bar_mm: f64,
    /// Bar centre ahead of the bottom bracket.
    target_x_mm: f64,
    /// Bar centre above the bottom bracket.
    target_y_mm: f64,
}

/// Where saddle and bar go on the cross bike so that it sits like the road bike.
///
/// # Errors
/// When a measure is outside its limits.
#[wasm_bindgen(js_name = carryPosition, unchecked_return_type = "CarriedPositionFigures")]
pub fn carry_position(
    #[wasm_bindgen(unchecked_param_type = "CarryPositionInput")] position: JsValue,
) -> Result<JsValue, JsError> {
    let position: CarryPositionInput = input(position)?;
    let carried = position.road()?.carried_to(&position.cross()?, &position.changes()?);
    output(&CarriedPositionFigures {
        saddle_height_mm: carried.saddle_height_mm,
        saddle_vertical_mm: carried.saddle_vertical_mm,
        rail_shift_forward_mm: carried.rail_shift_forward_mm,
        bar_drop_mm: carried.bar_drop_mm,
        tip_to_bar_mm: carried.tip_to_bar_mm,
        target_x_mm: carried.target.x_mm,
        target_y_mm: carried.target.y_mm,
    })
}

impl CarryPositionInput {
    fn road(&self) -> Result<RoadPosition, JsError> {
        Ok(RoadPosition {
            saddle: Saddle {
                height: SaddleHeight::new(self.saddle_height_mm).map_err(thrown)?,
                setback: Setback::new(self.setback_mm).map_err(thrown)?,
                seat_angle: SeatAngle::new(self.seat_angle_deg).map_err(thrown)?,
            },
            footing: footing(self.crank_mm, self.sole_stack_mm)?,
            tip_to_bar: TipToBar::new(self.tip_to_bar_mm).map_err(thrown)?,
            bar_drop: BarDrop::new(self.bar_drop_mm).map_err(thrown)?,
        })
    }

    fn cross(&self) -> Result<CrossBike, JsError> {
        Ok(CrossBike {
            seat_angle: SeatAngle::new(self.cross_seat_angle_deg).map_err(thrown)?,
            footing: footing(self.cross_crank_mm, self.cross_sole_stack_mm)?,
        })
    }

    fn changes(&self) -> Result<PositionChanges, JsError> {
        let usual = PositionChanges::default();
        Ok(PositionChanges {
            lower_by: SaddleLowering::new(self.lower_by_mm).map_err(thrown)?,
            bar_up_by: self
                .bar_up_by_mm
                .map_or(Ok(usual.bar_up_by), |mm| BarRaise::new(mm).map_err(thrown))?,
            bar_closer_by: self
                .bar_closer_by_mm
                .map_or(Ok(usual.bar_closer_by), |mm| BarCloser::new(mm).map_err(thrown))?,
            keep_knee_over_pedal: false,
        })
    }
}

fn footing(crank_mm: f64, sole_stack_mm: f64) -> Result<Footing, JsError> {
    Ok(Footing {
        crank: CrankLength::new(crank_mm).map_err(thrown)?,
        sole_stack: SoleStack::new(sole_stack_mm).map_err(thrown)?,
    })
}

/// A frame's front end.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct FrontEndInput {
    /// Bottom bracket up to the top centre of the head tube.
    stack_mm: f64,
    /// Bottom bracket forward to the top centre of the head tube.
    reach_mm: f64,
    /// From the horizontal.
    head_angle_deg: f64,
    /// Headset parts above the head tube.
    top_cap_mm: f64,
    /// Height of the stem's clamp on the steerer.
    clamp_height_mm: f64,
}

impl FrontEndInput {
    fn front(&self) -> Result<FrontEnd, JsError> {
        Ok(FrontEnd {
            stack: FrameStack::new(self.stack_mm).map_err(thrown)?,
            reach: FrameReach::new(self.reach_mm).map_err(thrown)?,
            head_angle: HeadAngle::new(self.head_angle_deg).map_err(thrown)?,
            top_cap: TopCap::new(self.top_cap_mm).map_err(thrown)?,
            clamp_height: ClampHeight::new(self.clamp_height_mm).map_err(thrown)?,
        })
    }
}

/// What `stemPosition` takes.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct StemPositionInput {
    #[serde(flatten)]
    front: FrontEndInput,
    spacers_mm: f64,
    /// Steerer centre to bar centre along the stem.
    stem_length_mm: f64,
    /// 0 is square to the steerer, positive upward.
    stem_angle_deg: f64,
}

/// What `stemPosition` gives.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct BarPosition {
    /// Bar centre ahead of the bottom bracket.
    bar_x_mm: f64,
    /// Bar centre above the bottom bracket.
    bar_y_mm: f64,
}

/// Where a stem and its spacers put the centre of the bar.
///
/// # Errors
/// When a measure is outside its limits.
#[wasm_bindgen(js_name = stemPosition, unchecked_return_type = "BarPosition")]
pub fn stem_position(
    #[wasm_bindgen(unchecked_param_type = "StemPositionInput")] stem: JsValue,
) -> Result<JsValue, JsError> {
    let stem: StemPositionInput = input(stem)?;
    let bar = stem.front.front()?.bar(&StemSetup {
        length: StemLength::new(stem.stem_length_mm).map_err(thrown)?,
        angle: StemAngle::new(stem.stem_angle_deg).map_err(thrown)?,
        spacers: Spacers::new(stem.spacers_mm).map_err(thrown)?,
    });
    output(&BarPosition { bar_x_mm: bar.x_mm, bar_y_mm: bar.y_mm })
}

/// What `stemSearch` takes.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct StemSearchInput {
    /// Where the bar's centre must be, ahead of the bottom bracket.
    target_x_mm: f64,
    /// Where the bar's centre must be, above the bottom bracket.
    target_y_mm: f64,
    #[serde(flatten)]
    front: FrontEndInput,
    /// How far the bar may miss, forward and upward each; 5 when left out.
    #[tsify(optional)]
    tolerance_mm: Option<f64>,
    /// Most spacers under the stem; 30 when left out.
    #[tsify(optional)]
    max_spacers_mm: Option<f64>,
}

/// A stem that is sold, with spacers, and how near it brings the bar.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct FoundStem {
    miss_mm: f64,
    stem_length_mm: f64,
    stem_angle_deg: f64,
    spacers_mm: f64,
}

/// The stems and spacers that bring the bar to its target, nearest first; empty when none does.
///
/// # Errors
/// When a measure is outside its limits, or the target is not a finite place.
#[wasm_bindgen(js_name = stemSearch, unchecked_return_type = "FoundStem[]")]
pub fn stem_search(
    #[wasm_bindgen(unchecked_param_type = "StemSearchInput")] search: JsValue,
) -> Result<JsValue, JsError> {
    let search: StemSearchInput = input(search)?;
    if !(search.target_x_mm.is_finite() && search.target_y_mm.is_finite()) {
        return Err(JsError::new("the target must be two numbers of millimetres"));
    }
    let target = BikePoint { x_mm: search.target_x_mm, y_mm: search.target_y_mm };
    let found: Vec<FoundStem> = match search.front.front()?.search_stems(target, &search.limits()?) {
        gear_math::StemSearch::Found(fits) => fits.iter().map(FoundStem::from).collect(),
        gear_math::StemSearch::NoneFits(_) => Vec::new(),
    };
    output(&found)
}

impl StemSearchInput {
    fn limits(&self) -> Result<StemSearchLimits, JsError> {
        let usual = StemSearchLimits::default();
        Ok(StemSearchLimits {
            tolerance: self
                .tolerance_mm
                .map_or(Ok(usual.tolerance), |mm| BarTolerance::new(mm).map_err(thrown))?,
            max_spacers: self
                .max_spacers_mm
                .map_or(Ok(usual.max_spacers), |mm| Spacers::new(mm).map_err(thrown))?,
        })
    }
}

impl From<&StemFit> for FoundStem {
    fn from(fit: &StemFit) -> Self {
        Self {
            miss_mm: fit.miss_mm,
            stem_length_mm: fit.setup.length.mm(),
            stem_angle_deg: fit.setup.angle.degrees(),
            spacers_mm: fit.setup.spacers.mm(),
        }
    }
}
