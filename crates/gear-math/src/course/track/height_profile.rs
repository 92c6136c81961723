//! The heights along a recorded way, smoothed, and the course they make.

use crate::course::course::Course;
use crate::course::quantity::SmoothingLength;
use crate::course::segment::Segment;
use crate::course::track::elevation::{climb_m, interpolated, smoothed};
use crate::course::track::gpx::GpxError;
use crate::course::track::headings::headings;
use crate::course::track::way::Way;
use crate::rider::{Gradient, Surface};

/// Farthest apart that the points of the smoothed profile lie, in metres.
const WIDEST_SPACING_M: f64 = 5.0;

/// A gap in height up to this is spread along the loop, a larger one is none of a drifting barometer, m. Estimate.
const DRIFT_M: f64 = 30.0;

/// Elevations of a track, and what was done about them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TrackElevation {
    /// Points kept that have none; the neighbours are used instead.
    pub missing: usize,
    /// Points kept whose elevation is absurd; the neighbours are used instead.
    pub absurd: usize,
    /// How much higher the end of a loop is recorded than its start, in metres; zero when it is no loop.
    pub mismatch_m: f64,
    /// Whether that was spread evenly along the loop.
    pub levelled: bool,
    /// Height climbed by every elevation in the file, those left out included, in metres.
    pub climb_written_m: f64,
    /// Height climbed by the elevations as recorded, without the points and elevations that were left out, in metres.
    pub climb_recorded_m: f64,
    /// Height climbed after smoothing, and after the ends of a loop were made to meet where [`Self::levelled`] says so, in
    /// metres.
    pub climb_smoothed_m: f64,
    /// Wavelength at which smoothing leaves half the height, in metres.
    pub smoothing_m: f64,
    /// Distance between the points of the smoothed profile, in metres.
    pub spacing_m: f64,
    /// Stretches steeper than ±45 %, taken as 45 %.
    pub clipped_gradients: usize,
    /// Share of the way that is steeper than ±45 %.
    pub clipped_share: f64,
}

impl TrackElevation {
    /// A loop whose ends differ in height by more than this does not close, in metres; a barometer drifts by a few. Estimate.
    pub const CLOSED_M: f64 = 3.0;

    pub(in crate::course) fn of(way: &Way, profile: &HeightProfile, course: &Course) -> Self {
        let clipped_gradients = profile.clipped_gradients();
        Self {
            missing: way.missing_elevations,
            absurd: way.absurd_elevations,
            mismatch_m: profile.mismatch_m,
            levelled: is_drift(profile.mismatch_m),
            climb_written_m: way.climb_written_m(),
            climb_recorded_m: way.climb_kept_m(),
            climb_smoothed_m: climb_m(profile.heights.iter().copied()),
            smoothing_m: profile.smoothing.m(),
            spacing_m: profile.spacing_m,
            clipped_gradients,
            clipped_share: clipped_gradients as f64 / course.segments().len() as f64,
        }
    }
}

/// Whether the ends of a loop differ in height as those of a drifting barometer do.
fn is_drift(mismatch_m: f64) -> bool {
    (TrackElevation::CLOSED_M..=DRIFT_M).contains(&mismatch_m.abs())
}

/// Evenly spaced elevations along the way, smoothed.
pub(in crate::course) struct HeightProfile {
    heights: Vec<f64>,
    spacing_m: f64,
    smoothing: SmoothingLength,
    /// How much higher the end of a loop was than its start, m.
    mismatch_m: f64,
}

impl HeightProfile {
    pub(in crate::course) fn of(way: &Way, smoothing: SmoothingLength) -> Result<Self, GpxError> {
        let known: Vec<(f64, f64)> =
            way.points.iter().filter_map(|point| Some((point.at_m, point.elevation?))).collect();
        if known.len() < 2 {
            return Err(GpxError::NoElevation);
        }
        let length = way.length_m();
        let pieces = (length / (smoothing.m() / 4.0).min(WIDEST_SPACING_M)).ceil().max(1.0);
        let spacing_m = length / pieces;
        let even: Vec<f64> =
            (0..=pieces as usize).map(|i| interpolated(&known, i as f64 * spacing_m)).collect();
        let heights = smoothed(&even, spacing_m, smoothing);
        let mut profile = Self { heights, spacing_m, smoothing, mismatch_m: 0.0 };
        if way.is_loop() {
            profile.close();
        }
        Ok(profile)
    }

    /// Takes a small difference in height between both ends of a loop away, evenly along it.
    fn close(&mut self) {
        self.mismatch_m =
            self.heights.last().zip(self.heights.first()).map_or(0.0, |(end, start)| end - start);
        if is_drift(self.mismatch_m) {
            self.level(self.mismatch_m);
        }
    }

    /// Takes a rise away, evenly along the way.
    fn level(&mut self, rise_m: f64) {
        let steps = self.heights.len().saturating_sub(1).max(1) as f64;
        for (index, height) in self.heights.iter_mut().enumerate() {
            *height -= rise_m * index as f64 / steps;
        }
    }

    /// Slopes from point to point, in per cent.
    fn percents(&self) -> impl Iterator<Item = f64> + '_ {
        self.heights.windows(2).map(|pair| 100.0 * ((pair[1] - pair[0]) / self.spacing_m))
    }

    fn clipped_gradients(&self) -> usize {
        self.percents().filter(|percent| percent.abs() > Gradient::LIMITS.max).count()
    }

    /// The course along the way that the heights are of, its gradients clipped.
    pub(in crate::course) fn course(&self, way: &Way, surface: Surface) -> Result<Course, GpxError> {
        let segment = |(percent, heading)| {
            let open = Segment::over(self.spacing_m, Gradient::nearest(percent), surface)?;
            Some(Segment { heading, ..open })
        };
        let headings = headings(way, self.spacing_m);
        let segments: Option<Vec<Segment>> = self.percents().zip(headings).map(segment).collect();
        Course::new(segments.ok_or(GpxError::TooFewPoints)?).map_err(|_| GpxError::TooLong)
    }
}
