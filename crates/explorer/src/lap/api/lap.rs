//! A lap of a course.

use crate::api::objects::{RingAndSprocket, input, output, thrown};
use crate::lap::api::against::AgainstResult;
use crate::lap::api::course::CourseInput;
use crate::lap::api::effort::{EffortInput, WindInput};
use crate::ride::api::bike::BikeInput;
use crate::ride::api::given::given;
use crate::ride::api::names::ReasonName;
use crate::ride::api::rider::RiderInput;
use crate::ride::api::surroundings::{AirInput, LimitsInput};
use gear_math::course::{
    BandedLap, Braking, Draw, DrawnBand, Draws, Fineness, LapDraw, Mode, MountTime, PlanPart, ReserveSetup,
    ShiftTime, ShiftWindow, TimeBand, Turner, WhyOnFoot,
};
use gear_math::rider::{EffortAccount, Reason};
use gear_math::{Cadence, Course, Lap, LapSetup};
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
    #[serde(default)]
    #[tsify(optional)]
    effort: EffortInput,
    /// No wind when left out. It is not used at a steady power.
    #[tsify(optional)]
    wind: Option<WindInput>,
    /// By how many draws of what is doubtful the edges of the time are found on a reserve, 8 to 64; 8 when left out, which takes
    /// five times as long as the lap alone.
    #[tsify(optional)]
    draws: Option<usize>,
    /// Another bike of the same rider, to compare the lap with; none when left out. It is not used at a steady power.
    #[tsify(optional)]
    against: Option<BikeInput>,
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
    /// On a reserve the time on the budget: that of the plan, with the price of what it took beyond the budget or left of it.
    time_s: f64,
    /// Edges of the likely time: at a steady power about 3 in 4 cases, on a reserve about 9 in 10, by as many draws as were asked
    /// for.
    time_low_s: f64,
    time_high_s: f64,
    plan: Vec<PlanRow>,
    /// Gears used, lowest first. Their times and `onFootS` make up the lap as ridden.
    gears: Vec<GearTime>,
    /// Parts of the plan on foot that count as places to dismount: all but a step or two where nothing stands. One on both
    /// sides of the line is one, and begins farther from it than it ends.
    dismounts: Vec<PlanRow>,
    /// The same places, with why.
    on_foot: Vec<FootRow>,
    /// Time on foot, dismount and remount included.
    on_foot_s: f64,
    shifts_rear: u32,
    shifts_front: u32,
    /// Null when the whole lap is gone on foot.
    lowest_cadence_rpm: Option<f64>,
    below_window_s: f64,
    /// What is drawn from the reserve above the rider's power; null at a steady power, as what follows.
    charged_j: Option<f64>,
    /// What comes back to it below that power.
    repaid_j: Option<f64>,
    /// What one more joule would gain.
    price_s_per_j: Option<f64>,
    highest_power_w: Option<f64>,
    /// Length of the steps it was worked out in, and how far off the time may be because of them. Plans on a reserve that were looked
    /// for more finely were 0.6 s quicker in the mean of 30 laps, 1.8 s at most.
    step_m: f64,
    step_error_s: Option<f64>,
    /// How the bike in `against` compares; null where there is none and at a steady power.
    against: Option<AgainstResult>,
    /// About every metre, each the end of a step; the last is the line.
    trace: Vec<TraceRow>,
}

/// A part on foot.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct FootRow {
    from_m: f64,
    to_m: f64,
    why: FootWhy,
}

/// Why a part is gone on foot.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum FootWhy {
    /// An obstacle stands there.
    Obstacle,
    /// No gear is low enough.
    Gear,
    /// The legs are too weak.
    Force,
    /// Too slow for balance.
    Balance,
    /// The rear wheel slips.
    Grip,
    /// Being on foot is quicker for the same effort.
    Energy,
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
    /// Power at the crank over the step, or what would cost the muscles as much on foot; null at a steady power.
    power_w: Option<f64>,
    /// What the reserve has been drawn down by since the line; null at a steady power.
    spent_j: Option<f64>,
}

/// The quickest lap: its time with likely edges, where to dismount and remount, and what the gears do. Dismount and remount are
/// counted on foot, in `onFootS` and in the part of the plan that is gone on foot.
///
/// On a reserve (`effort`) the lap draws on it where that pays, as far as one lap may, and cadence is a matter of strength and
/// preference: the lowest cadence, the cadence window and the leg-force limit do not count. At a steady power it does not, the plan
/// goes on foot where forcing a gear would be quicker, and wind is left out.
///
/// # Errors
/// When anything is outside its limits, or the power is hardly more than standing takes or not below the peak power.
#[wasm_bindgen(unchecked_return_type = "LapResult")]
pub fn lap(#[wasm_bindgen(unchecked_param_type = "LapInput")] asked: JsValue) -> Result<JsValue, JsError> {
    let asked: LapInput = input(asked)?;
    let course = asked.course.course()?;
    let Some(setup) = asked.on_reserve()? else {
        let BandedLap { lap, band, .. } = BandedLap::of(&course, &asked.setup()?).map_err(thrown)?;
        return output(&LapResult::of(&lap, band, None));
    };
    let against = asked.against.as_ref().map(|bike| asked.on(setup, bike)).transpose()?;
    output(&on_reserve(&course, &setup, against.as_ref(), asked.draws()?))
}

/// The lap, and its time with the edges of so many draws.
fn on_reserve(
    course: &Course,
    setup: &ReserveSetup,
    against: Option<&ReserveSetup>,
    draws: usize,
) -> LapResult {
    let lap = Lap::on_reserve(course, setup, Fineness::QUICK);
    let other = against.map(|other| Lap::on_reserve(course, other, Fineness::QUICK));
    let all = Draws::usual();
    let pair = [*setup, *against.unwrap_or(setup)];
    let some = all.all().step_by(Draws::COUNT / draws).take(draws);
    let done: Vec<(Draw, LapDraw)> = some.map(|draw| (draw, LapDraw::of(course, &pair, &draw))).collect();
    let of_lap = |lap: &Lap| lap.step_error_s.unwrap_or(0.0);
    let error_s = of_lap(&lap).hypot(other.as_ref().map_or(0.0, of_lap));
    let alone = TimeBand { low_s: lap.time_s, time_s: lap.time_s, high_s: lap.time_s };
    let laps: Vec<LapDraw> = done.iter().map(|it| it.1.clone()).collect();
    let Some(drawn) = DrawnBand::of(&laps, error_s) else { return LapResult::of(&lap, alone, None) };
    let gains: Vec<(Draw, f64)> = done.iter().map(|(draw, done)| (*draw, done.gained_s())).collect();
    let compared = other.map(|other| {
        let turners = Turner::all(setup, &gains, error_s);
        AgainstResult::of(lap.time_s - other.time_s, &drawn, &turners)
    });
    LapResult::of(&lap, drawn.laps[0].with_best(lap.time_s), compared)
}

impl LapResult {
    fn of(lap: &Lap, band: TimeBand, against: Option<AgainstResult>) -> Self {
        let every = (1.0 / lap.step_m).round().max(1.0) as usize;
        let last = lap.trace.len();
        let ends = (0..last).filter(|step| (step + 1) % every == 0 || step + 1 == last);
        let reserve = lap.reserve.as_ref();
        let dismounts = lap.dismounts();
        Self {
            time_s: band.time_s,
            time_low_s: band.low_s,
            time_high_s: band.high_s,
            plan: lap.plan.iter().map(PlanRow::from).collect(),
            gears: lap.gears.iter().map(GearTime::from).collect(),
            dismounts: dismounts.iter().map(PlanRow::from).collect(),
            on_foot: dismounts.iter().map(FootRow::from).collect(),
            on_foot_s: lap.on_foot_s(),
            shifts_rear: lap.shifts_rear,
            shifts_front: lap.shifts_front,
            lowest_cadence_rpm: lap.lowest_cadence_rpm,
            below_window_s: lap.below_window_s,
            charged_j: reserve.map(|it| it.charged_j),
            repaid_j: reserve.map(|it| it.repaid_j),
            price_s_per_j: reserve.map(|it| it.price_s_per_j),
            highest_power_w: reserve.map(|it| it.highest_power_w),
            step_m: lap.step_m,
            step_error_s: lap.step_error_s,
            against,
            trace: ends.map(|step| TraceRow::of(lap, step)).collect(),
        }
    }
}

impl LapInput {
    /// A lap by itself, with everything that decides it.
    #[expect(clippy::too_many_arguments, reason = "they are the fields of an object of the module")]
    pub(super) const fn alone(
        rider: RiderInput,
        bike: BikeInput,
        course: CourseInput,
        air: AirInput,
        limits: LimitsInput,
        costs: CostsInput,
        effort: EffortInput,
        wind: Option<WindInput>,
    ) -> Self {
        Self { rider, bike, course, air, limits, costs, effort, wind, draws: None, against: None }
    }

    pub(super) fn setup(&self) -> Result<LapSetup, JsError> {
        self.setup_on(&self.bike)
    }

    fn setup_on(&self, bike: &BikeInput) -> Result<LapSetup, JsError> {
        let setup = LapSetup::new(self.rider.rider()?, bike.bike()?, self.air.air()?);
        let limits = self.limits.limits(&setup.rider, self.rider.peak()?);
        self.costs.on(LapSetup { limits, ..setup })
    }

    /// The same on another bike.
    fn on(&self, given: ReserveSetup, bike: &BikeInput) -> Result<ReserveSetup, JsError> {
        Ok(ReserveSetup { lap: self.setup_on(bike)?, ..given })
    }

    fn draws(&self) -> Result<usize, JsError> {
        let (least, most) = (DrawnBand::LEAST, Draws::COUNT);
        match self.draws {
            None => Ok(least),
            Some(draws) if (least..=most).contains(&draws) => Ok(draws),
            Some(_) => Err(thrown(format!("draws must be {least} to {most}"))),
        }
    }

    /// The lap on a reserve; none where it is to be ridden at a steady power.
    pub(super) fn on_reserve(&self) -> Result<Option<ReserveSetup>, JsError> {
        if self.effort.is_steady() {
            return Ok(None);
        }
        let repaid = self.effort.repaid()?;
        let account = EffortAccount { repaid, ..EffortAccount::new(self.rider.effort()?) };
        let wind = self.wind.as_ref().map(WindInput::wind).transpose()?;
        let setup = ReserveSetup::new(self.setup()?, account);
        Ok(Some(ReserveSetup { budget: self.effort.budget()?, wind, ..setup }))
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

impl From<&PlanPart> for FootRow {
    fn from(part: &PlanPart) -> Self {
        let why = part.why.unwrap_or(WhyOnFoot::Obstacle);
        Self { from_m: part.from_m, to_m: part.to_m, why: why.into() }
    }
}

impl From<WhyOnFoot> for FootWhy {
    fn from(why: WhyOnFoot) -> Self {
        match why {
            WhyOnFoot::Obstacle => Self::Obstacle,
            WhyOnFoot::Because(Reason::Gear) => Self::Gear,
            WhyOnFoot::Because(Reason::Force) => Self::Force,
            WhyOnFoot::Because(Reason::Balance) => Self::Balance,
            WhyOnFoot::Because(Reason::Grip) => Self::Grip,
            WhyOnFoot::Because(Reason::Energy) => Self::Energy,
        }
    }
}

impl TraceRow {
    fn of(lap: &Lap, step: usize) -> Self {
        let point = &lap.trace[step];
        let reserve = lap.reserve.as_ref().map(|reserve| &reserve.trace[step]);
        Self {
            at_m: point.at_m,
            time_s: point.time_s,
            speed_ms: point.speed_m_per_s,
            gear: point.gear.map(RingAndSprocket::from),
            cadence_rpm: point.cadence_rpm,
            power_w: reserve.map(|it| it.power_w),
            spent_j: reserve.map(|it| it.spent_j),
        }
    }
}

impl From<&gear_math::course::GearUse> for GearTime {
    fn from(used: &gear_math::course::GearUse) -> Self {
        let RingAndSprocket { ring, sprocket } = used.gear.into();
        Self { ring, sprocket, time_s: used.time_s, distance_m: used.distance_m }
    }
}
