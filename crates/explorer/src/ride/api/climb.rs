//! One climb at an even pace on a budget of effort.

use crate::api::objects::{input, output, thrown};
use crate::ride::api::bike::BikeInput;
use crate::ride::api::given::given;
use crate::ride::api::names::RideVerdict;
use crate::ride::api::rider::RiderInput;
use crate::ride::api::surroundings::{AirInput, GroundInput, LimitsInput};
use gear_math::RideOrRun;
use gear_math::rider::{
    Climb, ClimbLength, EffortAccount, EffortBudget, EffortPrice, PacedClimb, PacedFoot, PacedRide,
    ReserveShare, RidingLimits, Spending,
};
use serde::{Deserialize, Serialize};
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// What `climb` takes. What is left out has the model's default: firm grass, still air. Of the rider, `lowestCadenceRpm` does
/// not count here: strength and preference do.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct PacedClimbInput {
    rider: RiderInput,
    bike: BikeInput,
    #[serde(default)]
    #[tsify(optional)]
    ground: GroundInput,
    #[serde(default)]
    #[tsify(optional)]
    air: AirInput,
    /// 0 to 45.
    gradient_percent: f64,
    /// Along the slope.
    length_m: f64,
    /// What the climb may take from the reserve; a fifth of it when left out, 0 for what can be repeated for ever.
    #[tsify(optional)]
    budget_j: Option<f64>,
    /// What a joule of it is worth; nothing when left out, so that all of the budget is spent. A lap's own is its `priceSPerJ`.
    #[tsify(optional)]
    price_s_per_j: Option<f64>,
    /// When left out grip counts and balance does not. Strength counts whatever `force` says.
    #[tsify(optional)]
    limits: Option<LimitsInput>,
}

/// What `climb` gives. Getting off and on are not counted.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct PacedClimbResult {
    /// Null where strength, grip or balance allow no riding.
    ride: Option<RidePace>,
    foot: FootPace,
    verdict: RideVerdict,
}

/// Riding it.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct RidePace {
    time_s: f64,
    speed_m_per_s: f64,
    /// At the crank.
    power_w: f64,
    cadence_rpm: f64,
    /// The quickest gear.
    ring: u16,
    sprocket: u16,
}

/// Going up on foot.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct FootPace {
    time_s: f64,
    speed_m_per_s: f64,
    /// Crank power that costs the same metabolic power.
    power_w: f64,
}

/// How fast one climb goes on a budget of effort: on the bike in the quickest gear, and on foot.
///
/// # Errors
/// When anything is outside its limits, the power is hardly more than standing takes, or the peak is not above it.
#[wasm_bindgen(unchecked_return_type = "PacedClimbResult")]
pub fn climb(
    #[wasm_bindgen(unchecked_param_type = "PacedClimbInput")] asked: JsValue,
) -> Result<JsValue, JsError> {
    let asked: PacedClimbInput = input(asked)?;
    output(&PacedClimbResult::from(asked.paced()?))
}

impl PacedClimbInput {
    fn paced(&self) -> Result<PacedClimb, JsError> {
        let bike = self.bike.bike()?;
        let effort = self.rider.effort()?;
        let usual = EffortBudget::share(&effort, ReserveShare::EACH_LAP);
        let question = RideOrRun::new(self.rider.rider()?, bike, self.air.air()?, self.limits()?);
        let spending = Spending {
            price: given(self.price_s_per_j, EffortPrice::new, EffortPrice::NONE)?,
            most: given(self.budget_j, EffortBudget::new, usual)?,
        };
        Ok(question.map_err(thrown)?.paced_at(
            &EffortAccount::new(effort),
            &self.ground.ground(bike.tyre)?,
            Climb::new(self.gradient_percent).map_err(thrown)?,
            ClimbLength::new(self.length_m).map_err(thrown)?,
            &spending,
        ))
    }

    fn limits(&self) -> Result<RidingLimits, JsError> {
        let rider = self.rider.rider()?;
        Ok(match &self.limits {
            Some(limits) => limits.limits(&rider, None),
            None => RidingLimits { balance: None, ..RidingLimits::all(&rider) },
        })
    }
}

impl From<PacedClimb> for PacedClimbResult {
    fn from(paced: PacedClimb) -> Self {
        Self {
            ride: paced.ride.map(RidePace::from),
            foot: FootPace::from(paced.foot),
            verdict: paced.verdict.into(),
        }
    }
}

impl From<PacedRide> for RidePace {
    fn from(ride: PacedRide) -> Self {
        Self {
            time_s: ride.time.s(),
            speed_m_per_s: ride.speed.m_per_s(),
            power_w: ride.power.watts(),
            cadence_rpm: ride.cadence.rpm(),
            ring: ride.gear.ring.teeth(),
            sprocket: ride.gear.sprocket.teeth(),
        }
    }
}

impl From<PacedFoot> for FootPace {
    fn from(foot: PacedFoot) -> Self {
        Self { time_s: foot.time.s(), speed_m_per_s: foot.speed.m_per_s(), power_w: foot.power.watts() }
    }
}
