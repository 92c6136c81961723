//! How effort is spread over a lap, as plain objects.

use crate::api::objects::thrown;
use crate::ride::api::given::given;
use gear_math::rider::{Compass, EffortBudget, RepaidShare, Wind, WindSpeed};
use serde::{Deserialize, Serialize};
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// How effort is spread over a lap.
#[derive(Debug, Clone, Copy, Default, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct EffortInput {
    /// `"reserve"` when left out.
    #[serde(default)]
    #[tsify(optional)]
    model: EffortModel,
    /// What one lap may take from the reserve in the end; 0 when left out, for a lap that can be repeated for ever. Not used at a
    /// steady power.
    #[tsify(optional)]
    budget_j: Option<f64>,
    /// What of the power left unused below the rider's comes back, 0 to 1; 0.5 when left out. Not used at a steady power.
    #[tsify(optional)]
    repaid_share: Option<f64>,
}

/// A model of effort.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Deserialize, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum EffortModel {
    /// Above the rider's power a reserve is drawn on, below it some comes back; the lap spends where it pays.
    #[default]
    Reserve,
    /// The rider's power all the way round.
    Steady,
}

/// Wind over the ground, at the rider's height.
#[derive(Debug, Clone, Copy, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct WindInput {
    speed_m_per_s: f64,
    /// Where it comes from, clockwise from north, 0 to 360.
    from_deg: f64,
}

impl EffortInput {
    pub(super) fn is_steady(&self) -> bool {
        self.model == EffortModel::Steady
    }

    pub(super) fn budget(&self) -> Result<EffortBudget, JsError> {
        given(self.budget_j, EffortBudget::new, EffortBudget::NONE)
    }

    pub(super) fn repaid(&self) -> Result<RepaidShare, JsError> {
        given(self.repaid_share, RepaidShare::new, RepaidShare::USUAL)
    }
}

impl WindInput {
    pub(super) fn wind(&self) -> Result<Wind, JsError> {
        Ok(Wind {
            speed: WindSpeed::new(self.speed_m_per_s).map_err(thrown)?,
            from: Compass::new(self.from_deg).map_err(thrown)?,
        })
    }
}
