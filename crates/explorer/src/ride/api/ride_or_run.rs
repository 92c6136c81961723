//! Riding against going on foot.

use crate::api::misfit;
use crate::api::objects::{input, output, thrown};
use crate::ride::api::bike::BikeInput;
use crate::ride::api::given::given;
use crate::ride::api::names::{AdviceName, GaitName, ReasonName, RideVerdict};
use crate::ride::api::rider::RiderInput;
use crate::ride::api::surroundings::{AirInput, GroundInput, LimitsInput};
use gear_math::rider::{
    Climb, ClimbLength, ClimbPlan, CriticalPower, Crossover, Gait, OnBike, PeakPower, ReserveShare,
    RunningWins, SecondsLost, Slope, SlopeBand, Watched, WheelInertia, WorkReserve,
};
use gear_math::{Ground, LIKELY_SHARE, RideOrRun, Rider, Speed};
use serde::{Deserialize, Serialize};
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// What `rideOrRun` takes. What is left out has the model's default: firm grass, still air, every limit counting.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct RideOrRunInput {
    rider: RiderInput,
    bike: BikeInput,
    #[serde(default)]
    #[tsify(optional)]
    ground: GroundInput,
    #[serde(default)]
    #[tsify(optional)]
    air: AirInput,
    #[serde(default)]
    #[tsify(optional)]
    limits: LimitsInput,
    /// Slopes to look at, in percent, 0 to 45.
    #[serde(default)]
    #[tsify(optional)]
    gradients_percent: Option<Vec<f64>>,
    /// The same as rise over run, 0 to 0.45: 0.1 is 10 %. One of the two is given.
    #[serde(default)]
    #[tsify(optional)]
    gradients: Option<Vec<f64>>,
    /// The climb that running is timed over; when left out, one so long that dismount and remount do not count.
    #[serde(default)]
    #[tsify(optional)]
    climb: Option<ClimbInput>,
}

/// How long a climb is, and what running it costs besides.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct ClimbInput {
    /// Along the slope.
    length_m: f64,
    /// Dismount and remount together; 3 when left out.
    #[tsify(optional)]
    dismount_remount_s: Option<f64>,
    /// Speed into the climb; when left out none is brought that would help.
    #[tsify(optional)]
    entry_speed_ms: Option<f64>,
    /// Work in reserve above the power; the rider's when left out.
    #[tsify(optional)]
    reserve_kj: Option<f64>,
    /// Share of it for this climb, 0 to 1; 0.2 when left out.
    #[tsify(optional)]
    reserve_share: Option<f64>,
}

/// What `rideOrRun` gives.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct RideOrRunResult {
    /// One for each gradient asked for.
    rows: Vec<RideOrRunRow>,
    crossover: CrossoverFigures,
    gear_limit: GearLimit,
    running: RunningFigures,
    /// What "likely" means: the share of cases between the edges of a band.
    likely_share: f64,
}

/// Below which speed no gear is low enough: a matter of the bike and of the lowest cadence.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct GearLimit {
    speed_ms: f64,
    /// From where the power does not hold that speed, rise over run; null for not up to 0.45.
    gradient: Option<f64>,
    /// Likely edges of `flipGradient`, all doubts taken together.
    flip_low: f64,
    /// Null for not up to 0.45.
    flip_high: Option<f64>,
}

/// Where running the climb itself wins, whatever the gears, rise over run; null for not up to 0.45.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct RunningFigures {
    /// By the best guess. It means little where `gradientHigh` is null: the two are then about as quick.
    gradient: Option<f64>,
    /// Riding in a gear low enough is likely quicker on every slope below.
    gradient_low: Option<f64>,
    /// Running is likely quicker on every slope from here to 0.45.
    gradient_high: Option<f64>,
}

/// Riding against going on foot on one slope.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct RideOrRunRow {
    /// In percent.
    gradient_percent: f64,
    /// The same as rise over run.
    gradient: f64,
    /// Speed of the full power in an ideal gear, also where no gear is low enough.
    ride_ms: f64,
    /// What is kept up of that in the gears: less where the legs cannot spin fast enough, null where no gear is low
    /// enough.
    held_ms: Option<f64>,
    foot_ms: f64,
    gait: GaitName,
    /// The gear to take: the lowest where none can be turned.
    ring: u16,
    sprocket: u16,
    /// What `rideMs` asks for in that gear.
    cadence_rpm: f64,
    /// `footMs` over `rideMs`. The verdict is on `footMs` over `heldMs`, with edges as far off.
    ratio: f64,
    /// Edge of the band in favour of riding.
    ratio_low: f64,
    /// Edge of the band in favour of going on foot.
    ratio_high: f64,
    /// Speed over the climb below which running it is quicker, dismount and remount included.
    crossover_speed_ms: f64,
    /// Its likely edges.
    crossover_speed_low_ms: f64,
    crossover_speed_high_ms: f64,
    /// Limits that hold: gear, force, balance, grip.
    limits: Vec<ReasonName>,
    verdict: RideVerdict,
    /// What to do on the climb that was given; null without one.
    advice: Option<ClimbAdvice>,
}

/// The quickest way up one climb that can be done.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct ClimbAdvice {
    advice: AdviceName,
    /// Time of the quickest way on the bike; null where there is none.
    bike_s: Option<f64>,
    /// Power that it takes where a gear is forced, else null.
    forced_w: Option<f64>,
    /// Time on foot, dismount and remount included.
    foot_s: f64,
}

/// Where riding ends, uphill; null where it does not up to a gradient of 0.45. Spinning out, which can make riding the
/// slower way on flatter ground, is left aside here: the verdicts of the rows tell.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct CrossoverFigures {
    /// From where the lowest gear is too tall for the power.
    gear_gradient: Option<f64>,
    /// Where being on foot becomes as fast for the same energy.
    energy_gradient: Option<f64>,
    /// The first of everything that ends riding.
    flip_gradient: Option<f64>,
    /// Why it ends there.
    reason: Option<ReasonName>,
    /// Riding speed there. Where a gear or another limit ends riding, running is not yet quicker below it: for that see
    /// `crossoverSpeedMs`. Always finite.
    speed_ms: Option<f64>,
}

/// Whether riding or going on foot is faster, slope by slope, and where and why riding ends.
///
/// # Errors
/// When anything is outside its limits, or the power is hardly more than standing takes.
#[wasm_bindgen(js_name = rideOrRun, unchecked_return_type = "RideOrRunResult")]
pub fn ride_or_run(
    #[wasm_bindgen(unchecked_param_type = "RideOrRunInput")] asked: JsValue,
) -> Result<JsValue, JsError> {
    let asked: RideOrRunInput = input(asked)?;
    let (question, ground) = (asked.question()?, asked.ground.ground(asked.bike.bike()?.tyre)?);
    let gradients = asked.climbs()?;
    let crossover = question.crossover(&ground);
    let flip = crossover.flip;
    let (length, lost) = asked.climb.as_ref().map_or(Ok(LONG), ClimbInput::climb)?;
    let means = asked.climb.as_ref().map(|climb| climb.means(&asked.rider)).transpose()?;
    let row = |&gradient: &Climb| {
        let plan = question.climb(&ground, gradient, length, lost);
        let advice = means.as_ref().map(|means| means.advice(&question, &ground, &plan));
        RideOrRunRow { advice, ..RideOrRunRow::from(&plan) }
    };
    output(&RideOrRunResult {
        rows: gradients.iter().map(row).collect(),
        gear_limit: GearLimit::of(&question, &ground, &crossover),
        running: RunningFigures::from(question.running_wins(&ground, length, lost)),
        likely_share: LIKELY_SHARE,
        crossover: CrossoverFigures {
            gear_gradient: crossover.gear.map(Slope::rise_over_run),
            energy_gradient: crossover.energy.map(Slope::rise_over_run),
            flip_gradient: flip.map(|flip| flip.gradient.rise_over_run()),
            reason: flip.map(|flip| flip.reason.into()),
            speed_ms: flip.map(|flip| flip.speed.m_per_s()),
        },
    })
}

/// So long that dismount and remount do not count.
const LONG: (ClimbLength, SecondsLost) = (ClimbLength::LONGEST, SecondsLost::NONE);

impl RideOrRunInput {
    /// The slopes to look at.
    fn climbs(&self) -> Result<Vec<Climb>, JsError> {
        let (name, percent) = match (&self.gradients_percent, &self.gradients) {
            (Some(percent), None) => ("gradientsPercent", percent.clone()),
            (None, Some(fractions)) => ("gradients", fractions.iter().map(|it| it * 100.0).collect()),
            _ => return Err(thrown("either gradientsPercent or gradients must be given")),
        };
        let climb = |(index, &percent): (usize, &f64)| {
            Climb::new(percent)
                .map_err(|error| thrown(misfit::placed(&format!("{name}[{index}]"), &error.to_string())))
        };
        percent.iter().enumerate().map(climb).collect()
    }
}

impl ClimbInput {
    fn climb(&self) -> Result<(ClimbLength, SecondsLost), JsError> {
        let lost = given(self.dismount_remount_s, SecondsLost::new, SecondsLost::PRACTISED)?;
        Ok((ClimbLength::new(self.length_m).map_err(thrown)?, lost))
    }
}

/// What the rider has for one climb beside the power of the effort.
struct Means {
    entry: Speed,
    effort: Option<CriticalPower>,
    share: ReserveShare,
}

impl ClimbInput {
    fn means(&self, rider: &RiderInput) -> Result<Means, JsError> {
        let Rider { power, body, .. } = rider.rider()?;
        let reserve = given(self.reserve_kj, WorkReserve::new, rider.reserve()?)?;
        let peak = rider.peak()?.unwrap_or(PeakPower::estimated(power, body));
        Ok(Means {
            entry: Speed::from_km_per_h(3.6 * self.entry_speed_ms.unwrap_or(0.0)).map_err(thrown)?,
            effort: CriticalPower::new(power, reserve, peak).ok(),
            share: given(self.reserve_share, ReserveShare::new, ReserveShare::EACH_LAP)?,
        })
    }
}

impl Means {
    fn advice(&self, question: &RideOrRun, ground: &Ground, plan: &ClimbPlan) -> ClimbAdvice {
        let slope = plan.answer.gradient;
        let over = self.effort.as_ref().map(|effort| question.over_gear(ground, slope, effort, self.share));
        let carry = question.carry(ground, slope, self.entry, WheelInertia::USUAL);
        let ascent = plan.ascent(&carry, over.as_ref());
        ClimbAdvice {
            advice: ascent.advice.into(),
            bike_s: ascent.bike.map(|(_, time)| time.s()),
            forced_w: ascent.bike.and_then(|(how, _)| match how {
                OnBike::Forced(power) => Some(power.watts()),
                _ => None,
            }),
            foot_s: ascent.foot.s(),
        }
    }
}

impl GearLimit {
    fn of(question: &RideOrRun, ground: &Ground, crossover: &Crossover) -> Self {
        let flip = crossover.flip.as_ref();
        let bars = question.tornado(ground, Watched::behind(flip));
        let band = SlopeBand::of(flip.map(|flip| flip.gradient), &bars);
        Self {
            speed_ms: crossover.lowest_gear_speed.m_per_s(),
            gradient: crossover.gear.map(Slope::rise_over_run),
            flip_low: band.low.rise_over_run(),
            flip_high: band.high.map(Slope::rise_over_run),
        }
    }
}

impl From<RunningWins> for RunningFigures {
    fn from(wins: RunningWins) -> Self {
        let [gradient, gradient_low, gradient_high] =
            [wins.gradient, wins.earliest, wins.latest].map(|slope| slope.map(Slope::rise_over_run));
        Self { gradient, gradient_low, gradient_high }
    }
}

impl RideOrRunInput {
    fn question(&self) -> Result<RideOrRun, JsError> {
        let (rider, peak) = (self.rider.rider()?, self.rider.peak()?);
        let limits = self.limits.limits(&rider, peak);
        RideOrRun::new(rider, self.bike.bike()?, self.air.air()?, limits).map_err(thrown)
    }
}

impl From<&ClimbPlan> for RideOrRunRow {
    fn from(plan: &ClimbPlan) -> Self {
        let (answer, wins) = (&plan.answer, plan.running_wins_below());
        Self {
            crossover_speed_ms: wins.best.m_per_s(),
            crossover_speed_low_ms: wins.low.m_per_s(),
            crossover_speed_high_ms: wins.high.m_per_s(),
            gradient_percent: answer.gradient.percent(),
            gradient: answer.gradient.rise_over_run(),
            ride_ms: answer.ride.m_per_s(),
            held_ms: answer.riding.held.map(Speed::m_per_s),
            foot_ms: answer.foot.m_per_s(),
            gait: match answer.gait {
                Gait::Run => GaitName::Run,
                Gait::Walk => GaitName::Walk,
            },
            ring: answer.riding.gear.ring.teeth(),
            sprocket: answer.riding.gear.sprocket.teeth(),
            cadence_rpm: answer.riding.cadence.rpm(),
            ratio: answer.ratio.reference,
            ratio_low: answer.ratio.low,
            ratio_high: answer.ratio.high,
            limits: answer.limits.reasons().map(ReasonName::from).collect(),
            verdict: answer.verdict.into(),
            advice: None,
        }
    }
}
