//! Riding against going on foot.

pub mod climb;

use crate::api::objects::{drivetrain, input, output, thrown};
use gear_math::gears::GearSet;
use gear_math::rider::{
    Advice, Air, AirDensity, BikeMass, BodyMass, Climb, ClimbLength, ClimbPlan, CriticalPower, Crossover,
    DragArea, DrivetrainEfficiency, FootCostFactor, FootDrag, FootFactor, Friction, Gait, GrossEfficiency,
    KitMass, LoadFactor, OnBike, PeakPower, ReserveShare, RidingLimits, RollingCoefficient, RunningWins,
    SecondsLost, Slope, SlopeBand, SlopeShare, StandingMetabolism, Watched, WheelInertia, WorkReserve,
};
use gear_math::wheel::{MountedWidth, WidthFactor};
use gear_math::{
    Bike, Cadence, Circumference, Ground, LIKELY_SHARE, OutOfLimits, Power, RideOrRun, Rider, Speed, Surface,
};
use serde::{Deserialize, Serialize};
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// Circumference of the model's reference wheel, mm.
const REFERENCE_WHEEL_MM: f64 = 2095.0;

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
    /// Slopes to look at, rise over run, 0 to 0.45: 0.1 is 10 %.
    gradients: Vec<f64>,
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
    /// Highest power of one pedal turn. When left out 14 W per kg of body, in `rideOrRun` four times the power where that is
    /// more.
    #[tsify(optional)]
    peak_power_w: Option<f64>,
    /// Work in reserve above the power; an estimate from body and power when left out.
    #[tsify(optional)]
    reserve_kj: Option<f64>,
}

/// The bike.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct BikeInput {
    mass_kg: f64,
    /// Teeth of one to three chainrings.
    rings: Vec<u16>,
    /// Teeth of one to fourteen sprockets, ascending.
    sprockets: Vec<u16>,
    /// 2095 when left out.
    #[tsify(optional)]
    circumference_mm: Option<f64>,
    /// Width of the tyres as mounted, which counts on mud, deep mud and loose sand; 33 when left out.
    #[tsify(optional)]
    tyre_width_mm: Option<f64>,
    /// Share of the power that reaches the wheel; 0.96 when left out.
    #[tsify(optional)]
    drivetrain_efficiency: Option<f64>,
    /// What a kilogram of carried bike costs over one of body; 1.2 when left out.
    #[tsify(optional)]
    carried_load_factor: Option<f64>,
    /// Gears that are never used, each as its ring and its sprocket; all are used when left out, and when none would be
    /// left.
    #[tsify(optional)]
    gears_to_avoid: Option<Vec<[u16; 2]>>,
}

/// The ground.
#[derive(Debug, Default, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct GroundInput {
    /// What the other values are taken from where they are left out, named as in a course; firm grass when left out.
    #[tsify(optional)]
    surface: Option<String>,
    /// Rolling coefficient of the tyres as they are; the surface's under tyres of that width when left out, 0.03 on firm
    /// grass.
    #[tsify(optional)]
    crr: Option<f64>,
    /// Cost on foot over that of hard ground, on the level; the surface's when left out, 1.1 on firm grass.
    #[tsify(optional)]
    foot_factor: Option<f64>,
    /// How far that extra cost grows with the slope, 0 to 1; 0 when left out.
    #[tsify(optional)]
    slope_share: Option<f64>,
    /// Friction of the rear tyre; the surface's when left out, 0.5 on firm grass.
    #[tsify(optional)]
    friction_mu: Option<f64>,
}

/// Still air and the rider in it.
#[derive(Debug, Default, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct AirInput {
    /// Drag area; 0.4 when left out.
    #[tsify(optional)]
    cda_m2: Option<f64>,
    /// 1.2 when left out.
    #[tsify(optional)]
    density_kg_m3: Option<f64>,
    /// Air drag on foot per kilogram of body, J·s²/(kg·m³); 0.01 when left out.
    #[tsify(optional)]
    foot_drag_per_kg: Option<f64>,
}

/// Which limits count besides the lowest gear; each one does when left out. With all off, gear and energy decide.
#[derive(Debug, Default, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct LimitsInput {
    /// Too slow for balance, below 1.2 m/s.
    #[tsify(optional)]
    balance: Option<bool>,
    /// The rear wheel slips.
    #[tsify(optional)]
    grip: Option<bool>,
    /// The legs are too weak to turn the lowest gear for minutes. Their peak is the rider's; an estimate when left out: 14 W per
    /// kg of body, or four times the power where that is more.
    #[tsify(optional)]
    force: Option<bool>,
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
    /// Rise over run.
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

/// What to do about a climb.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum AdviceName {
    /// Ride it at the power of the effort.
    Ride,
    /// Carry the speed brought to it.
    Carry,
    /// Force a gear that the power does not turn.
    Force,
    /// Riding and running are about as quick.
    TooClose,
    /// Get off and run.
    Run,
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

/// How the rider moves on foot.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum GaitName {
    /// Running.
    Run,
    /// Walking.
    Walk,
}

/// What ends riding.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum ReasonName {
    /// The lowest gear is too tall.
    Gear,
    /// The legs are too weak.
    Force,
    /// Too slow for balance.
    Balance,
    /// The rear wheel slips.
    Grip,
    /// Being on foot is as fast for the same energy.
    Energy,
}

/// Ride or run, as far as can be told.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum RideVerdict {
    /// Riding is faster.
    Ride,
    /// Being on foot is faster.
    Foot,
    /// A limit leaves no choice.
    FootForced,
    /// The uncertainty covers both.
    TooClose,
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
    let gradients: Vec<Climb> = asked
        .gradients
        .iter()
        .map(|rise_over_run| Climb::new(rise_over_run * 100.0).map_err(thrown))
        .collect::<Result<_, _>>()?;
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

impl From<Advice> for AdviceName {
    fn from(advice: Advice) -> Self {
        match advice {
            Advice::Ride => Self::Ride,
            Advice::Carry => Self::Carry,
            Advice::Force => Self::Force,
            Advice::TooClose => Self::TooClose,
            Advice::Run => Self::Run,
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

/// A typed value, or the default where there is none.
pub(crate) fn given<T>(
    value: Option<f64>,
    new: fn(f64) -> Result<T, OutOfLimits>,
    default: T,
) -> Result<T, JsError> {
    value.map_or(Ok(default), |value| new(value).map_err(thrown))
}

impl RideOrRunInput {
    fn question(&self) -> Result<RideOrRun, JsError> {
        let (rider, peak) = (self.rider.rider()?, self.rider.peak()?);
        let limits = self.limits.limits(&rider, peak);
        RideOrRun::new(rider, self.bike.bike()?, self.air.air()?, limits).map_err(thrown)
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
            lowest_cadence: given(self.lowest_cadence_rpm, Cadence::new, rider.lowest_cadence)?,
            ..rider
        })
    }

    /// The peak power, where it was given.
    pub(crate) fn peak(&self) -> Result<Option<PeakPower>, JsError> {
        self.peak_power_w.map(PeakPower::new).transpose().map_err(thrown)
    }

    fn reserve(&self) -> Result<WorkReserve, JsError> {
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

impl BikeInput {
    pub(crate) fn bike(&self) -> Result<Bike, JsError> {
        let wheel =
            Circumference::new(self.circumference_mm.unwrap_or(REFERENCE_WHEEL_MM)).map_err(thrown)?;
        let mass = BikeMass::new(self.mass_kg).map_err(thrown)?;
        let bike = Bike::new(mass, drivetrain(&self.rings, &self.sprockets)?, wheel);
        let mut avoid = self.gears_to_avoid.iter().flatten().copied();
        let avoid = avoid.try_fold(GearSet::NONE, |all, gear| all.with(&bike.drivetrain, gear));
        Ok(Bike {
            avoid: avoid.map_err(thrown)?,
            tyre: given(self.tyre_width_mm, MountedWidth::new, bike.tyre)?,
            efficiency: given(self.drivetrain_efficiency, DrivetrainEfficiency::new, bike.efficiency)?,
            load: given(self.carried_load_factor, LoadFactor::new, bike.load)?,
            ..bike
        })
    }
}

impl GroundInput {
    fn ground(&self, tyre: MountedWidth) -> Result<Ground, JsError> {
        let surface = self.surface.as_deref().map_or(Ok(Surface::FirmGrass), surface)?;
        let typical = surface.ground_under(tyre);
        Ok(Ground {
            width: if self.crr.is_some() { WidthFactor::NONE } else { typical.width },
            rolling: given(self.crr, RollingCoefficient::new, typical.rolling)?,
            foot: given(self.foot_factor, FootFactor::new, typical.foot)?,
            slope_share: given(self.slope_share, SlopeShare::new, typical.slope_share)?,
            friction: given(self.friction_mu, Friction::new, typical.friction)?,
        })
    }
}

impl AirInput {
    pub(crate) fn air(&self) -> Result<Air, JsError> {
        Ok(Air {
            drag_area: given(self.cda_m2, DragArea::new, Air::STILL.drag_area)?,
            density: given(self.density_kg_m3, AirDensity::new, Air::STILL.density)?,
            foot_drag: given(self.foot_drag_per_kg, FootDrag::new, Air::STILL.foot_drag)?,
            ..Air::STILL
        })
    }
}

impl LimitsInput {
    /// With the peak power of the legs, where it is known.
    pub(crate) fn limits(&self, rider: &Rider, peak: Option<PeakPower>) -> RidingLimits {
        let counts = |switch: &Option<bool>| switch.unwrap_or(true);
        let mut all = RidingLimits::all(rider);
        if let (Some(legs), Some(peak)) = (&mut all.force, peak) {
            legs.peak = peak;
        }
        RidingLimits {
            balance: all.balance.filter(|_| counts(&self.balance)),
            grip: all.grip.filter(|_| counts(&self.grip)),
            force: all.force.filter(|_| counts(&self.force)),
        }
    }
}

impl From<&ClimbPlan> for RideOrRunRow {
    fn from(plan: &ClimbPlan) -> Self {
        let (answer, wins) = (&plan.answer, plan.running_wins_below());
        Self {
            crossover_speed_ms: wins.best.m_per_s(),
            crossover_speed_low_ms: wins.low.m_per_s(),
            crossover_speed_high_ms: wins.high.m_per_s(),
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

impl From<gear_math::rider::Reason> for ReasonName {
    fn from(reason: gear_math::rider::Reason) -> Self {
        match reason {
            gear_math::rider::Reason::Gear => Self::Gear,
            gear_math::rider::Reason::Force => Self::Force,
            gear_math::rider::Reason::Balance => Self::Balance,
            gear_math::rider::Reason::Grip => Self::Grip,
            gear_math::rider::Reason::Energy => Self::Energy,
        }
    }
}

impl From<gear_math::rider::Verdict> for RideVerdict {
    fn from(verdict: gear_math::rider::Verdict) -> Self {
        match verdict {
            gear_math::rider::Verdict::Ride => Self::Ride,
            gear_math::rider::Verdict::Foot => Self::Foot,
            gear_math::rider::Verdict::FootForced => Self::FootForced,
            gear_math::rider::Verdict::TooClose => Self::TooClose,
        }
    }
}

/// A ground by its name.
pub(crate) fn surface(name: &str) -> Result<Surface, JsError> {
    let known = || Surface::ALL.map(Surface::name).join(", ");
    Surface::named(name)
        .ok_or_else(|| JsError::new(&format!("there is no ground “{name}”; there are {}", known())))
}
