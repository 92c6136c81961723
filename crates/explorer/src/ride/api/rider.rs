//! The rider as a plain object.

use crate::api::objects::thrown;
use crate::ride::api::given::given;
use gear_math::rider::{
    BodyMass, CriticalPower, FootBike, FootCostFactor, GrossEfficiency, KitMass, PeakPower,
    StandingMetabolism, WorkReserve,
};
use gear_math::{Cadence, Power, Rider};
use serde::Deserialize;
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// The rider in one effort.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct RiderInput {
    body_kg: f64,
    kit_kg: f64,
    /// At the crank.
    power_w: f64,
    /// Power at the crank over power burnt; 0.23 when left out.
    #[tsify(optional)]
    gross_efficiency: Option<f64>,
    /// What standing burns; 1.5 when left out.
    #[tsify(optional)]
    standing_w_per_kg: Option<f64>,
    /// 50 when left out.
    #[tsify(optional)]
    lowest_cadence_rpm: Option<f64>,
    /// This person's cost on foot over the published mean; 1 when left out.
    #[tsify(optional)]
    foot_cost_factor: Option<f64>,
    /// How the bike goes along on foot, obstacles aside, where it is carried; carried when left out.
    #[tsify(optional)]
    on_foot_bike: Option<OnFootBike>,
    /// Highest power of one pedal turn. When left out 14 W per kg of body, in `rideOrRun` four times the power where that is
    /// more.
    #[tsify(optional)]
    peak_power_w: Option<f64>,
    /// Work in reserve above the power; an estimate from body and power when left out.
    #[tsify(optional)]
    reserve_kj: Option<f64>,
}

/// How the bike goes along on foot.
#[derive(Debug, Clone, Copy, Deserialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum OnFootBike {
    /// Its mass counts on the legs, times the carried load factor.
    Carried,
    /// The arms overcome its weight along the slope and its rolling resistance.
    Pushed,
    /// Whichever is quicker, on every slope anew.
    Quicker,
}

impl From<OnFootBike> for FootBike {
    fn from(how: OnFootBike) -> Self {
        match how {
            OnFootBike::Carried => Self::Carried,
            OnFootBike::Pushed => Self::Pushed,
            OnFootBike::Quicker => Self::Quicker,
        }
    }
}

impl RiderInput {
    pub(crate) fn rider(&self) -> Result<Rider, JsError> {
        let body = BodyMass::new(self.body_kg).map_err(thrown)?;
        let kit = KitMass::new(self.kit_kg).map_err(thrown)?;
        let rider = Rider::new(body, kit, Power::new(self.power_w).map_err(thrown)?);
        Ok(Rider {
            efficiency: given(self.gross_efficiency, GrossEfficiency::new, rider.efficiency)?,
            standing: given(self.standing_w_per_kg, StandingMetabolism::new, rider.standing)?,
            foot_cost: given(self.foot_cost_factor, FootCostFactor::new, rider.foot_cost)?,
            foot_bike: self.on_foot_bike.map_or(rider.foot_bike, FootBike::from),
            lowest_cadence: given(self.lowest_cadence_rpm, Cadence::new, rider.lowest_cadence)?,
            ..rider
        })
    }

    /// The peak power, where it was given.
    pub(crate) fn peak(&self) -> Result<Option<PeakPower>, JsError> {
        self.peak_power_w.map(PeakPower::new).transpose().map_err(thrown)
    }

    pub(crate) fn reserve(&self) -> Result<WorkReserve, JsError> {
        let Rider { power, body, .. } = self.rider()?;
        given(self.reserve_kj, WorkReserve::new, WorkReserve::estimated(power, body))
    }

    /// Power, reserve and peak for the account of effort.
    pub(crate) fn effort(&self) -> Result<CriticalPower, JsError> {
        let Rider { power, body, .. } = self.rider()?;
        let peak = self.peak()?.unwrap_or(PeakPower::of_body(body));
        CriticalPower::new(power, self.reserve()?, peak).map_err(thrown)
    }
}
