//! A lap of a course.

use crate::api::objects::{RingAndSprocket, input, output, thrown};
use crate::lap::api::course::CourseInput;
use crate::ride::api::bike::BikeInput;
use crate::ride::api::given::given;
use crate::ride::api::names::ReasonName;
use crate::ride::api::rider::RiderInput;
use crate::ride::api::surroundings::{AirInput, LimitsInput};
use gear_math::course::{BandedLap, Braking, Mode, MountTime, PlanPart, ShiftTime, ShiftWindow, WhyOnFoot};
use gear_math::{Cadence, LapSetup};
use serde::{Deserialize, Serialize};
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// What `lap` takes. What is left out has the model's default.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct LapInput {
    rider: RiderInput,
    bike: BikeInput,
    pub(super) course: CourseInput,
    #[serde(default)]
    #[tsify(optional)]
    air: AirInput,
    #[serde(default)]
    #[tsify(optional)]
    limits: LimitsInput,
    #[serde(default)]
    #[tsify(optional)]
    costs: CostsInput,
}

/// What shifting, dismount and remount cost.
#[derive(Debug, Default, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct CostsInput {
    /// 80 when left out.
    #[tsify(optional)]
    preferred_cadence_rpm: Option<f64>,
    /// Share of the preferred cadence at which the rider shifts; 0.15 when left out.
    #[tsify(optional)]
    cadence_window: Option<f64>,
    /// Time without drive; 0.2 when left out.
    #[tsify(optional)]
    rear_shift_s: Option<f64>,
    /// Time without drive; 0.6 when left out.
    #[tsify(optional)]
    front_shift_s: Option<f64>,
    /// 1.5 when left out.
    #[tsify(optional)]
    getting_off_s: Option<f64>,
    /// 1.5 when left out.
    #[tsify(optional)]
    getting_on_s: Option<f64>,
    /// 3 when left out.
    #[tsify(optional)]
    braking_m_per_s2: Option<f64>,
}

/// What `lap` gives.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct LapResult {
    time_s: f64,
    /// Edges of the likely time.
    time_low_s: f64,
    time_high_s: f64,
    plan: Vec<PlanRow>,
    /// Gears used, lowest first. Their times and `onFootS` make up the lap.
    gears: Vec<GearTime>,
    /// Parts of the plan on foot that count as places to dismount: all but a step or two where nothing stands. One on both
    /// sides of the line is one, and begins farther from it than it ends.
    dismounts: Vec<PlanRow>,
    /// Time on foot, dismount and remount included.
    on_foot_s: f64,
    shifts_rear: u32,
    shifts_front: u32,
    /// Null when the whole lap is gone on foot.
    lowest_cadence_rpm: Option<f64>,
    below_window_s: f64,
    /// Length of the steps it was worked out in, and how far off the time may be because of them.
    step_m: f64,
    step_error_s: Option<f64>,
    /// About every metre, each the end of a step; the last is the line.
    trace: Vec<TraceRow>,
}

/// A part of the plan.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct PlanRow {
    from_m: f64,
    to_m: f64,
    mode: ModeName,
    /// Why on foot; null when riding and at an obstacle.
    reason: Option<ReasonName>,
    /// Dismount and remount count with the part on foot.
    time_s: f64,
}

/// Riding or on foot.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum ModeName {
    /// On the bike.
    Ride,
    /// Beside it.
    Foot,
}

/// Time in one gear.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct GearTime {
    ring: u16,
    sprocket: u16,
    time_s: f64,
    distance_m: f64,
}

/// The lap at one place.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct TraceRow {
    at_m: f64,
    time_s: f64,
    speed_ms: f64,
    /// Null on foot.
    gear: Option<RingAndSprocket>,
    cadence_rpm: Option<f64>,
}

/// A lap by the quickest plan at an even power: its time with likely edges, where to dismount and remount, and what the gears
/// do. Dismount and remount are counted on foot, in `onFootS` and in the part of the plan that is gone on foot. Where forcing
/// a gear above that power would be quicker, the plan goes on foot. A headwind is left out: a lap goes round.
///
/// # Errors
/// When anything is outside its limits, or the power is hardly more than standing takes.
#[wasm_bindgen(unchecked_return_type = "LapResult")]
pub fn lap(#[wasm_bindgen(unchecked_param_type = "LapInput")] asked: JsValue) -> Result<JsValue, JsError> {
    let asked: LapInput = input(asked)?;
    let BandedLap { lap, band, .. } =
        BandedLap::of(&asked.course.course()?, &asked.setup()?).map_err(thrown)?;
    let every = (1.0 / lap.step_m).round().max(1.0) as usize;
    let last = lap.trace.len();
    let ends = (1..).zip(&lap.trace).filter(|(number, _)| number % every == 0 || *number == last);
    let trace = ends.map(|(_, point)| TraceRow::from(point));
    output(&LapResult {
        time_s: band.time_s,
        time_low_s: band.low_s,
        time_high_s: band.high_s,
        plan: lap.plan.iter().map(PlanRow::from).collect(),
        gears: lap.gears.iter().map(GearTime::from).collect(),
        dismounts: lap.dismounts().iter().map(PlanRow::from).collect(),
        on_foot_s: lap.on_foot_s(),
        shifts_rear: lap.shifts_rear,
        shifts_front: lap.shifts_front,
        lowest_cadence_rpm: lap.lowest_cadence_rpm,
        below_window_s: lap.below_window_s,
        step_m: lap.step_m,
        step_error_s: lap.step_error_s,
        trace: trace.collect(),
    })
}

impl LapInput {
    pub(super) fn setup(&self) -> Result<LapSetup, JsError> {
        let setup = LapSetup::new(self.rider.rider()?, self.bike.bike()?, self.air.air()?);
        let limits = self.limits.limits(&setup.rider, self.rider.peak()?);
        self.costs.on(LapSetup { limits, ..setup })
    }
}

impl CostsInput {
    fn on(&self, mut setup: LapSetup) -> Result<LapSetup, JsError> {
        let (shifting, mounting) = (&mut setup.shifting, &mut setup.mounting);
        shifting.preferred = given(self.preferred_cadence_rpm, Cadence::new, shifting.preferred)?;
        shifting.window = given(self.cadence_window, ShiftWindow::new, shifting.window)?;
        shifting.rear = given(self.rear_shift_s, ShiftTime::new, shifting.rear)?;
        shifting.front = given(self.front_shift_s, ShiftTime::new, shifting.front)?;
        mounting.off = given(self.getting_off_s, MountTime::new, mounting.off)?;
        mounting.on = given(self.getting_on_s, MountTime::new, mounting.on)?;
        mounting.braking = given(self.braking_m_per_s2, Braking::new, mounting.braking)?;
        Ok(setup)
    }
}

impl From<&PlanPart> for PlanRow {
    fn from(part: &PlanPart) -> Self {
        let reason = match part.why {
            Some(WhyOnFoot::Because(reason)) => Some(reason.into()),
            _ => None,
        };
        let mode = if part.mode == Mode::Ride { ModeName::Ride } else { ModeName::Foot };
        Self { from_m: part.from_m, to_m: part.to_m, mode, reason, time_s: part.time_s }
    }
}

impl From<&gear_math::course::TracePoint> for TraceRow {
    fn from(point: &gear_math::course::TracePoint) -> Self {
        Self {
            at_m: point.at_m,
            time_s: point.time_s,
            speed_ms: point.speed_m_per_s,
            gear: point.gear.map(RingAndSprocket::from),
            cadence_rpm: point.cadence_rpm,
        }
    }
}

impl From<&gear_math::course::GearUse> for GearTime {
    fn from(used: &gear_math::course::GearUse) -> Self {
        let RingAndSprocket { ring, sprocket } = used.gear.into();
        Self { ring, sprocket, time_s: used.time_s, distance_m: used.distance_m }
    }
}
