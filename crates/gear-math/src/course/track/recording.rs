//! The recording of a file that is used: its segments, and what was left out on the way to a course.

use crate::course::track::gpx::GpxError;
use crate::course::track::pauses::{Pauses, TrackPauses};
use crate::course::track::points::TrackPoints;
use crate::course::track::way::{Way, usual_spacing_m};

/// Points of a file, and which of them were left out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TrackCleaning {
    /// Tracks in the file; the one with most points is used.
    pub tracks: usize,
    /// Routes in the file; one is used only when there is no track.
    pub routes: usize,
    /// Segments of the track used, joined by straight lines.
    pub segments: usize,
    /// Straight lines that join segments, all together, in metres.
    pub joins_m: f64,
    /// Points of the track used.
    pub points: usize,
    /// Points of the file without a place on the globe, left out.
    pub unusable_points: usize,
    /// Points at the very place of the one before, left out.
    pub duplicate_points: usize,
    /// Points that jump far off and back, left out.
    pub stray_points: usize,
    /// Points nearer than 2 m to the last one kept or within a pause, left out.
    pub close_points: usize,
    /// Median way between two points of the file, in metres.
    pub usual_spacing_m: f64,
    /// Longest way between two points kept, in metres: the course is a straight line there.
    pub longest_gap_m: f64,
}

/// The track or route of a file that is used, with what stands in no course left out.
#[derive(Debug)]
pub struct Recording {
    counts: [usize; 3],
    segments: usize,
    points: usize,
    usual_spacing_m: f64,
    pub(in crate::course) pauses: TrackPauses,
    /// All of it, before a part is asked for.
    pub(in crate::course) way: Way,
}

impl Recording {
    /// The points of a file, followed.
    ///
    /// # Errors
    /// [`GpxError::TooFewPoints`], or [`GpxError::OffTheGlobe`] where that is why.
    pub fn of(points: &TrackPoints) -> Result<Self, GpxError> {
        let (counts, segments) = (points.counts(), points.segments());
        let pauses: Vec<Pauses> = segments.iter().map(|segment| Pauses::of(segment)).collect();
        let usual_spacing_m = usual_spacing_m(&segments);
        let unusable = counts[2];
        let way = Way::along(&segments, &pauses, usual_spacing_m).map_err(|error| match error {
            GpxError::TooFewPoints if unusable > 0 => GpxError::OffTheGlobe { points: unusable },
            error => error,
        })?;
        let (pauses, points) = (TrackPauses::of(&pauses), segments.iter().map(Vec::len).sum());
        Ok(Self { counts, segments: segments.len(), points, usual_spacing_m, pauses, way })
    }

    /// What was left out for a way.
    pub(in crate::course) fn cleaning(&self, way: &Way) -> TrackCleaning {
        let [tracks, routes, unusable_points] = self.counts;
        TrackCleaning {
            tracks,
            routes,
            segments: self.segments,
            joins_m: way.joins_m,
            points: self.points,
            unusable_points,
            duplicate_points: way.duplicates,
            stray_points: way.strays,
            close_points: way.close,
            usual_spacing_m: self.usual_spacing_m,
            longest_gap_m: way.longest_gap_m(),
        }
    }
}
