//! The heights along a recorded way, smoothed, and the course they make.

use crate::course::course::Course;
use crate::course::quantity::SmoothingLength;
use crate::course::segment::Segment;
use crate::course::track::elevation::{climb_m, interpolated, smoothed};
use crate::course::track::gpx::GpxError;
use crate::course::track::way::Way;
use crate::rider::{Gradient, Surface};

/// Farthest apart that the points of the smoothed profile lie, in metres.
const WIDEST_SPACING_M: f64 = 5.0;

/// Evenly spaced elevations along the way, smoothed.
pub(in crate::course) struct HeightProfile {
    heights: Vec<f64>,
    pub(in crate::course) spacing_m: f64,
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
        Ok(Self { heights: smoothed(&even, spacing_m, smoothing), spacing_m })
    }

    /// How much higher it ends than it starts, m.
    pub(in crate::course) fn mismatch_m(&self) -> f64 {
        self.heights.last().zip(self.heights.first()).map_or(0.0, |(end, start)| end - start)
    }

    /// Takes a rise away, evenly along the way.
    pub(in crate::course) fn level(&mut self, rise_m: f64) {
        let steps = self.heights.len().saturating_sub(1).max(1) as f64;
        for (index, height) in self.heights.iter_mut().enumerate() {
            *height -= rise_m * index as f64 / steps;
        }
    }

    /// Height climbed along the profile, m.
    pub(in crate::course) fn climb_m(&self) -> f64 {
        climb_m(self.heights.iter().copied())
    }

    /// The course, and how many of its gradients had to be clipped.
    pub(in crate::course) fn course(&self, surface: Surface) -> Result<(Course, usize), GpxError> {
        let mut clipped = 0;
        let segment = |pair: &[f64]| {
            let measured = (pair[1] - pair[0]) / self.spacing_m;
            let gradient = Gradient::nearest(100.0 * measured);
            clipped += usize::from(100.0 * measured.abs() > Gradient::LIMITS.max);
            Segment::over(self.spacing_m, gradient, surface)
        };
        let segments: Option<Vec<Segment>> = self.heights.windows(2).map(segment).collect();
        let course = Course::new(segments.ok_or(GpxError::TooFewPoints)?).map_err(|_| GpxError::TooLong)?;
        Ok((course, clipped))
    }
}
