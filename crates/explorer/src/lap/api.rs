//! A lap of a course, courses from GPX, and the search for what would be quickest.

use crate::api::objects::{RingAndSprocket, derailleur, input, output, thrown};
use crate::ride::api::{AirInput, BikeInput, LimitsInput, ReasonName, RiderInput, given, surface};
use gear_math::cage::DerailleurFigure;
use gear_math::course::{
    BandedLap, Braking, Candidate, CornerSpeed, Mode, MountTime, Obstacle, ObstacleTime, PlanPart,
    SearchSpace, Segment, ShiftTime, ShiftWindow, SmoothingLength, StretchLength, TrackOptions, TrackPlace,
    Weighting, WhyOnFoot, ranked,
};
use gear_math::gears::GearSet;
use gear_math::{Bike, Cadence, Cassette, Chainring, Chainset, Course, Gradient, LapSetup, Search, Surface};
use serde::{Deserialize, Serialize};
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// Set-ups between two calls of a progress callback.
const BATCH: usize = 50;
/// Smoothing length where none is given, m. Estimate.
const SMOOTHING_M: f64 = 40.0;
/// Kilometres per hour in a metre per second.
const KM_PER_H: f64 = 3.6;

/// What `lap` takes. What is left out has the model's default.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct LapInput {
    rider: RiderInput,
    bike: BikeInput,
    course: CourseInput,
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

/// A course: its stretches in the order they are ridden.
#[derive(Debug, Deserialize, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct CourseInput {
    stretches: Vec<StretchInput>,
}

/// One stretch.
#[derive(Debug, Deserialize, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct StretchInput {
    /// Along the ground.
    length_m: f64,
    gradient_percent: f64,
    /// tarmac, packed gravel, firm grass, wet soft grass, mud, deep mud, wet packed sand or loose sand.
    ground: String,
    /// An obstacle to be taken on foot: what it costs on top of its length; none when left out.
    #[tsify(optional)]
    obstacle_s: Option<f64>,
    /// The fastest it can be ridden; no limit when left out.
    #[tsify(optional)]
    corner_kmh: Option<f64>,
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
    fn setup(&self) -> Result<LapSetup, JsError> {
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

impl CourseInput {
    fn course(&self) -> Result<Course, JsError> {
        let stretches = self.stretches.iter().map(StretchInput::segment).collect::<Result<_, _>>()?;
        Course::new(stretches).map_err(thrown)
    }

    fn of(course: &Course) -> Self {
        Self { stretches: course.segments().iter().map(StretchInput::of).collect() }
    }
}

impl StretchInput {
    fn segment(&self) -> Result<Segment, JsError> {
        let obstacle = |seconds| ObstacleTime::new(seconds).map(|time| Obstacle { time }).map_err(thrown);
        let limits = CornerSpeed::LIMITS;
        let corner = |kmh: f64| {
            CornerSpeed::new(kmh / KM_PER_H).map_err(|_| {
                let (least, most) = (limits.min * KM_PER_H, limits.max * KM_PER_H);
                thrown(format!("corner speed must be {least:.2} to {most:.0} km/h"))
            })
        };
        Ok(Segment {
            length: StretchLength::new(self.length_m).map_err(thrown)?,
            gradient: Gradient::new(self.gradient_percent).map_err(thrown)?,
            surface: surface(&self.ground)?,
            obstacle: self.obstacle_s.map(obstacle).transpose()?,
            corner: self.corner_kmh.map(corner).transpose()?,
        })
    }

    fn of(segment: &Segment) -> Self {
        Self {
            length_m: segment.length.m(),
            gradient_percent: segment.gradient.percent(),
            ground: segment.surface.name().to_owned(),
            obstacle_s: segment.obstacle.map(|obstacle| obstacle.time.s()),
            corner_kmh: segment.corner.map(|corner| corner.m_per_s() * KM_PER_H),
        }
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

/// How `courseFromGpx` reads a track.
#[derive(Debug, Default, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct GpxOptions {
    /// Waves of elevation this long keep half their height; 40 when left out.
    #[tsify(optional)]
    smoothing_m: Option<f64>,
    /// The ground everywhere; firm grass when left out.
    #[tsify(optional)]
    ground: Option<String>,
    /// Use the track from here to there, in metres from its start; all of it when left out.
    #[tsify(optional)]
    from_m: Option<f64>,
    #[tsify(optional)]
    to_m: Option<f64>,
    /// Whether only the first complete lap is taken when the track holds several; the whole track when left out.
    #[tsify(optional)]
    first_lap: Option<bool>,
}

/// What `courseFromGpx` gives: a course as `lap` takes it, and what was found in the file.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct GpxCourse {
    course: CourseInput,
    report: GpxReport,
    /// Whether a lap of it may be timed. A track that is mostly steeper than a course can be, or has too few points, is read
    /// and given all the same, but its times would mean nothing: look here before you hand it to `lap`.
    usable: bool,
    /// Why it may not; null when it may.
    not_usable_because: Option<String>,
}

/// What was found in a file and what was done about it.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct GpxReport {
    points: usize,
    segments: usize,
    unusable_points: usize,
    duplicate_points: usize,
    stray_points: usize,
    close_points: usize,
    missing_elevations: usize,
    absurd_elevations: usize,
    /// Stretches steeper than 45 %, which are taken as 45 %, and their share of the way.
    clipped_gradients: usize,
    clipped_share: f64,
    paused_s: f64,
    longest_gap_m: f64,
    /// Along the slope.
    length_m: f64,
    /// Height climbed by every elevation in the file.
    climb_written_m: f64,
    /// The same without the points and elevations that were left out.
    climb_recorded_m: f64,
    /// After smoothing, and after a loop was closed where `levelled` says so.
    climb_smoothed_m: f64,
    /// Over the course, with what is steeper than 45 % taken as 45 %.
    climb_m: f64,
    smoothing_m: f64,
    is_loop: bool,
    out_and_back: bool,
    /// Laps in the track, where the first begins, and their median length; zero when it comes by no place again.
    laps: usize,
    laps_from_m: f64,
    lap_m: f64,
    /// Whether the course is the first of them.
    first_lap: bool,
    /// Median way between points; the wandering of positions lengthens the way where it is below 3.
    usual_spacing_m: f64,
    /// How much higher a loop was recorded to end than it starts, and whether that was spread along it.
    mismatch_m: f64,
    levelled: bool,
}

/// A course from the text of a GPX file. Lengths lie along the slope: positions give horizontal distances, which the slope
/// lengthens. See `usable` for tracks that are no course.
///
/// # Errors
/// When the text is no usable GPX, or an option is outside its limits.
#[wasm_bindgen(js_name = courseFromGpx, unchecked_return_type = "GpxCourse")]
pub fn course_from_gpx(
    text: &str,
    #[wasm_bindgen(unchecked_optional_param_type = "GpxOptions")] options: JsValue,
) -> Result<JsValue, JsError> {
    let options: GpxOptions =
        if options.is_undefined() || options.is_null() { GpxOptions::default() } else { input(options)? };
    let smoothing = SmoothingLength::new(options.smoothing_m.unwrap_or(SMOOTHING_M)).map_err(thrown)?;
    let surface = options.ground.as_deref().map_or(Ok(Surface::FirmGrass), surface)?;
    let place = |m: Option<f64>| m.map(TrackPlace::new).transpose().map_err(thrown);
    let read = Course::from_gpx(
        text,
        &TrackOptions {
            smoothing,
            surface,
            from: place(options.from_m)?,
            to: place(options.to_m)?,
            first_lap: options.first_lap == Some(true),
        },
    )
    .map_err(thrown)?;
    let found = read.report;
    let fault = found.track_use.fault();
    output(&GpxCourse {
        course: CourseInput::of(&read.course),
        usable: fault.is_none(),
        not_usable_because: fault.map(|fault| fault.to_string()),
        report: GpxReport {
            points: found.cleaning.points,
            segments: found.cleaning.segments,
            unusable_points: found.cleaning.unusable_points,
            duplicate_points: found.cleaning.duplicate_points,
            stray_points: found.cleaning.stray_points,
            close_points: found.cleaning.close_points,
            missing_elevations: found.elevation.missing,
            absurd_elevations: found.elevation.absurd,
            clipped_gradients: found.elevation.clipped_gradients,
            clipped_share: found.elevation.clipped_share,
            paused_s: found.pauses.total_s,
            longest_gap_m: found.cleaning.longest_gap_m,
            length_m: found.length_m,
            climb_written_m: found.elevation.climb_written_m,
            climb_recorded_m: found.elevation.climb_recorded_m,
            climb_smoothed_m: found.elevation.climb_smoothed_m,
            climb_m: found.climb_m,
            smoothing_m: found.elevation.smoothing_m,
            is_loop: found.is_loop,
            out_and_back: found.out_and_back,
            laps: found.laps.count,
            laps_from_m: found.laps.from_m,
            lap_m: found.laps.median_m,
            first_lap: found.laps.is_first_alone,
            usual_spacing_m: found.cleaning.usual_spacing_m,
            mismatch_m: found.elevation.mismatch_m,
            levelled: found.elevation.levelled,
        },
    })
}

/// What `search` takes: a lap whose bike's rings and sprockets are replaced, what to try, and what the derailleurs take. A
/// limit that is left out is not checked. Set-ups that have one of the bike's `gearsToAvoid` are ridden without it.
#[derive(Debug, Deserialize, Tsify)]
#[serde(rename_all = "camelCase")]
pub struct SearchInput {
    #[serde(flatten)]
    lap: LapInput,
    /// Teeth of the smallest and the largest ring to be tried.
    smallest_ring: u16,
    largest_ring: u16,
    /// Pairs that differ by at least and at most so many teeth; single rings only when left out.
    #[tsify(optional)]
    pair_differences: Option<[u16; 2]>,
    /// Only these rings, of those from the smallest to the largest; every number of teeth when left out.
    #[tsify(optional)]
    rings: Option<Vec<u16>>,
    /// Cassettes to be tried, each by its sprockets; those in common use when left out.
    #[tsify(optional)]
    cassettes: Option<Vec<Vec<u16>>>,
    /// Only cassettes with one of these numbers of sprockets; any number when left out.
    #[tsify(optional)]
    sprocket_counts: Option<Vec<u16>>,
    #[tsify(optional)]
    total_capacity_teeth: Option<u16>,
    #[tsify(optional)]
    largest_sprocket_teeth: Option<u16>,
    #[tsify(optional)]
    smallest_sprocket_teeth: Option<u16>,
    #[tsify(optional)]
    chainring_difference_teeth: Option<u16>,
}

/// One set-up that was tried.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct SearchRow {
    rings: Vec<u16>,
    sprockets: Vec<u16>,
    /// In steps of 1 m.
    time_s: f64,
    shifts_rear: u32,
    shifts_front: u32,
    largest_step_percent: f64,
    lowest_development_m: f64,
    spare_capacity_teeth: Option<i32>,
    /// What it is ranked by: the time, and what the rest is worth.
    score_s: f64,
    /// No other is as good on every count and better on one.
    unbeaten: bool,
    /// Limits that were not checked, because they were left out of what was asked; the same in every row. The length of
    /// the cage is known only by its total capacity.
    not_checked: Vec<NotChecked>,
}

/// A limit of the derailleurs.
#[derive(Debug, Clone, Copy, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum NotChecked {
    /// Total capacity, and with it whether any chain suits every gear.
    TotalCapacity,
    /// Largest sprocket.
    LargestSprocket,
    /// Smallest sprocket.
    SmallestSprocket,
    /// Chainring difference.
    ChainringDifference,
}

impl From<DerailleurFigure> for NotChecked {
    fn from(figure: DerailleurFigure) -> Self {
        match figure {
            DerailleurFigure::TotalCapacity => Self::TotalCapacity,
            DerailleurFigure::LargestSprocket => Self::LargestSprocket,
            DerailleurFigure::SmallestSprocket => Self::SmallestSprocket,
            DerailleurFigure::RingDifference => Self::ChainringDifference,
        }
    }
}

#[wasm_bindgen]
extern "C" {
    /// A progress callback.
    type Progress;

    #[wasm_bindgen(method, catch)]
    fn call(this: &Progress, object: &JsValue, done: usize, total: usize) -> Result<JsValue, JsValue>;
}

/// Every set-up that keeps the limits given, best first; what was not given is not checked, and each row names it in
/// `notChecked`. Whether frame, hanger and chain length suit is not checked either. `progress` is called with how many are
/// done and how many there are; when it
/// returns `false` the search stops there.
///
/// # Errors
/// When anything is outside its limits, when rings, differences or cassettes leave nothing to try, or when the power is
/// hardly more than standing takes.
#[wasm_bindgen(unchecked_return_type = "SearchRow[]")]
pub fn search(
    #[wasm_bindgen(unchecked_param_type = "SearchInput")] asked: JsValue,
    #[wasm_bindgen(unchecked_optional_param_type = "(done: number, total: number) => boolean | void")]
    progress: JsValue,
) -> Result<JsValue, JsError> {
    let asked: SearchInput = input(asked)?;
    let progress = progress.is_function().then(|| progress.unchecked_into::<Progress>());
    let space = asked.checked()?.space()?;
    let set_ups = space.setups().collect();
    let setup = asked.lap.setup()?;
    let Bike { drivetrain, avoid, .. } = setup.bike;
    let search =
        Search::new(&asked.lap.course.course()?, &setup, space.derailleur, set_ups).map_err(thrown)?;
    let mut search = search.avoiding(|it| GearSet::of(it, |gear| avoid.holds(&drivetrain, gear)));
    let mut found: Vec<Candidate> = Vec::new();
    while !search.is_done() {
        found.extend(search.advance(BATCH));
        let said = progress.as_ref().map(|it| it.call(&JsValue::UNDEFINED, search.done(), search.total()));
        match said {
            Some(Err(_)) => return Err(JsError::new("the progress callback threw an error")),
            Some(Ok(answer)) if answer == JsValue::FALSE => break,
            _ => {}
        }
    }
    let not_checked: Vec<NotChecked> = space.derailleur.unknown().map(NotChecked::from).collect();
    let row = |ranked| SearchRow { not_checked: not_checked.clone(), ..SearchRow::from(ranked) };
    let rows: Vec<SearchRow> = ranked(&found, &Weighting::USUAL).iter().map(row).collect();
    output(&rows)
}

impl SearchInput {
    /// What would make a search of nothing.
    fn checked(&self) -> Result<&Self, JsError> {
        let fault = if self.smallest_ring > self.largest_ring {
            "smallestRing is larger than largestRing"
        } else if self.pair_differences.is_some_and(|[least, most]| least > most) {
            "pairDifferences begin with the larger one"
        } else if self.cassettes.as_ref().is_some_and(Vec::is_empty) {
            "cassettes has none; leave it out to try those in common use"
        } else if self.rings.as_ref().is_some_and(Vec::is_empty) {
            "rings has none; leave it out to try every number of teeth"
        } else if self.sprocket_counts.as_ref().is_some_and(Vec::is_empty) {
            "sprocketCounts has none; leave it out to try any number"
        } else {
            return Ok(self);
        };
        Err(JsError::new(fault))
    }

    fn space(&self) -> Result<SearchSpace, JsError> {
        let wanted = |teeth: &u16| self.rings.as_ref().is_none_or(|rings| rings.contains(teeth));
        let rings = (self.smallest_ring..=self.largest_ring).filter(wanted).map(Chainring::new);
        let rings: Vec<Chainring> = rings.collect::<Result<_, _>>().map_err(thrown)?;
        let chainsets = match self.pair_differences {
            Some([least, most]) => Chainset::of_rings(&rings, least..=most),
            None => rings.iter().filter_map(|ring| Chainset::new([ring.teeth()]).ok()).collect(),
        };
        let mut cassettes: Vec<Cassette> = match &self.cassettes {
            Some(typed) => {
                let cassettes = typed.iter().map(|sprockets| Cassette::new(sprockets.iter().copied()));
                cassettes.collect::<Result<_, _>>().map_err(thrown)?
            }
            None => Cassette::common().collect(),
        };
        if let Some(counts) = &self.sprocket_counts {
            cassettes.retain(|cassette| counts.contains(&(cassette.sprockets().len() as u16)));
        }
        if chainsets.is_empty() || cassettes.is_empty() {
            return Err(JsError::new("rings or sprocketCounts leave nothing to try"));
        }
        Ok(SearchSpace {
            chainsets,
            cassettes,
            derailleur: derailleur(
                self.total_capacity_teeth,
                [self.largest_sprocket_teeth, self.smallest_sprocket_teeth],
                self.chainring_difference_teeth,
            )?,
            largest_ring: None,
            with_gears_to_avoid: false,
        })
    }
}

impl From<&gear_math::course::Ranked> for SearchRow {
    fn from(ranked: &gear_math::course::Ranked) -> Self {
        let it = &ranked.candidate;
        Self {
            rings: it.drivetrain.chainset.rings().iter().map(|ring| ring.teeth()).collect(),
            sprockets: it.drivetrain.cassette.sprockets().iter().map(|sprocket| sprocket.teeth()).collect(),
            time_s: it.time_s,
            shifts_rear: it.shifts_rear,
            shifts_front: it.shifts_front,
            largest_step_percent: it.largest_step_percent,
            lowest_development_m: it.lowest_development_m,
            spare_capacity_teeth: it.spare_capacity,
            score_s: ranked.score_s,
            unbeaten: ranked.unbeaten,
            not_checked: Vec::new(),
        }
    }
}
