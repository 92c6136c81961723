//! A course from a recorded track.

use crate::api::objects::{input, output, thrown};
use crate::lap::api::course::CourseInput;
use crate::ride::api::surroundings::surface;
use gear_math::course::{SmoothingLength, TrackOptions, TrackPlace, TrackReport};
use gear_math::{Course, Surface};
use serde::{Deserialize, Serialize};
use tsify::Tsify;
use wasm_bindgen::prelude::*;

/// Smoothing length where none is given, m. Estimate.
const SMOOTHING_M: f64 = 40.0;

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
    let is_left_out = options.is_undefined() || options.is_null();
    let options: GpxOptions = if is_left_out { GpxOptions::default() } else { input(options)? };
    let read = Course::from_gpx(text, &options.options()?).map_err(thrown)?;
    let fault = read.report.track_use.fault();
    output(&GpxCourse {
        course: CourseInput::of(&read.course),
        usable: fault.is_none(),
        not_usable_because: fault.map(|fault| fault.to_string()),
        report: GpxReport::from(&read.report),
    })
}

impl GpxOptions {
    fn options(&self) -> Result<TrackOptions, JsError> {
        let place = |m: Option<f64>| m.map(TrackPlace::new).transpose().map_err(thrown);
        Ok(TrackOptions {
            smoothing: SmoothingLength::new(self.smoothing_m.unwrap_or(SMOOTHING_M)).map_err(thrown)?,
            surface: self.ground.as_deref().map_or(Ok(Surface::FirmGrass), surface)?,
            from: place(self.from_m)?,
            to: place(self.to_m)?,
            first_lap: self.first_lap == Some(true),
        })
    }
}

impl From<&TrackReport> for GpxReport {
    fn from(found: &TrackReport) -> Self {
        let TrackReport { cleaning, elevation, laps, .. } = found;
        Self {
            points: cleaning.points,
            segments: cleaning.segments,
            unusable_points: cleaning.unusable_points,
            duplicate_points: cleaning.duplicate_points,
            stray_points: cleaning.stray_points,
            close_points: cleaning.close_points,
            missing_elevations: elevation.missing,
            absurd_elevations: elevation.absurd,
            clipped_gradients: elevation.clipped_gradients,
            clipped_share: elevation.clipped_share,
            paused_s: found.pauses.total_s,
            longest_gap_m: cleaning.longest_gap_m,
            length_m: found.length_m,
            climb_written_m: elevation.climb_written_m,
            climb_recorded_m: elevation.climb_recorded_m,
            climb_smoothed_m: elevation.climb_smoothed_m,
            climb_m: found.climb_m,
            smoothing_m: elevation.smoothing_m,
            is_loop: found.is_loop,
            out_and_back: found.out_and_back,
            laps: laps.count,
            laps_from_m: laps.from_m,
            lap_m: laps.median_m,
            first_lap: laps.is_first_alone,
            usual_spacing_m: cleaning.usual_spacing_m,
            mismatch_m: elevation.mismatch_m,
            levelled: elevation.levelled,
        }
    }
}
