//! The points of a file, kept in place of its text.

use crate::course::track::gpx::{GpxError, RawFile, read};
use crate::course::track::recorded_point::RecordedPoint;

/// Numbers before the points: tracks, routes, points that are off the globe, and segments.
const HEAD: usize = 4;
/// Numbers of a point: latitude, longitude, elevation and time.
const POINT: usize = 4;
/// Stands for an elevation or a time that the file does not give.
const MISSING: f64 = f64::INFINITY;

/// The points of the track or route of a file that a course is made of, as the file gives them: 32 bytes each.
#[derive(Debug, Clone, PartialEq)]
pub struct TrackPoints {
    /// What [`HEAD`] names, how many points each segment has, and the points.
    numbers: Vec<f64>,
}

impl TrackPoints {
    /// Reads the text of a GPX file; the track with most points is used, a route when there is no track.
    ///
    /// # Errors
    /// See [`GpxError`]: text too large, not GPX, damaged, or too many points.
    pub fn from_gpx(text: &str) -> Result<Self, GpxError> {
        Ok(Self::of(read(text)?))
    }

    /// The points that [`Self::numbers`] gave; none where these are others.
    #[must_use]
    pub fn from_numbers(numbers: Vec<f64>) -> Option<Self> {
        let segments = *numbers.get(HEAD - 1)? as usize;
        let sizes = numbers.get(HEAD..)?.get(..segments)?;
        let points: f64 = sizes.iter().sum();
        let is_whole = numbers.len() == HEAD + segments + POINT * points as usize;
        is_whole.then_some(Self { numbers })
    }

    /// All of it as plain numbers.
    #[must_use]
    pub fn numbers(&self) -> &[f64] {
        &self.numbers
    }

    fn of(file: RawFile) -> Self {
        let head = [file.tracks.len(), file.routes.len(), file.unusable];
        let segments = main_track(file);
        let sizes = core::iter::once(segments.len()).chain(segments.iter().map(Vec::len));
        let mut numbers: Vec<f64> = head.into_iter().chain(sizes).map(|it| it as f64).collect();
        for point in segments.iter().flatten() {
            let RecordedPoint { latitude, longitude, elevation, seconds } = *point;
            numbers.extend([latitude, longitude, elevation.unwrap_or(MISSING), seconds.unwrap_or(MISSING)]);
        }
        numbers.shrink_to_fit();
        Self { numbers }
    }

    /// Tracks, routes, and points that are off the globe.
    pub(in crate::course) fn counts(&self) -> [usize; 3] {
        [0, 1, 2].map(|at| self.numbers[at] as usize)
    }

    /// The points of each segment.
    pub(in crate::course) fn segments(&self) -> Vec<Vec<RecordedPoint>> {
        let (sizes, numbers) = self.numbers[HEAD..].split_at(self.numbers[HEAD - 1] as usize);
        let mut points = numbers.chunks_exact(POINT).map(point);
        sizes.iter().map(|size| points.by_ref().take(*size as usize).collect()).collect()
    }
}

fn point(numbers: &[f64]) -> RecordedPoint {
    let given = |at: usize| Some(numbers[at]).filter(|it| it.is_finite());
    RecordedPoint { latitude: numbers[0], longitude: numbers[1], elevation: given(2), seconds: given(3) }
}

/// The track with most points as its non-empty segments, or the longest route as one segment.
fn main_track(file: RawFile) -> Vec<Vec<RecordedPoint>> {
    let size = |segments: &Vec<Vec<RecordedPoint>>| segments.iter().map(Vec::len).sum::<usize>();
    let track = file.tracks.into_iter().max_by_key(size).filter(|track| size(track) > 0);
    let mut segments =
        track.unwrap_or_else(|| file.routes.into_iter().max_by_key(Vec::len).into_iter().collect());
    segments.retain(|segment| !segment.is_empty());
    segments
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "<gpx><rte/><trk><trkseg><trkpt lat='1' lon='2'><ele>3</ele></trkpt><trkpt lat='99' lon='2'/></trkseg>
        <trkseg/><trkseg><trkpt lat='-1.5' lon='4'><time>2026-01-18T10:30:05Z</time></trkpt><trkpt lat='1' lon='2'/></trkseg>
        </trk><trk/></gpx>";

    #[test]
    fn points_are_what_the_file_holds() {
        let points = TrackPoints::from_gpx(TEXT).unwrap();
        assert_eq!(points.counts(), [2, 1, 1]);
        let [first, second] = points.segments().try_into().unwrap();
        assert_eq!((first.len(), second.len()), (1, 2));
        assert_eq!((first[0].elevation, first[0].seconds), (Some(3.0), None));
        assert!(second[0].elevation.is_none() && second[0].seconds.is_some());
        assert!((second[0].latitude + 1.5).abs() + (second[0].longitude - 4.0).abs() < 1e-12);
    }

    #[test]
    fn numbers_are_the_points_again_and_others_are_none() {
        let points = TrackPoints::from_gpx(TEXT).unwrap();
        let numbers = points.numbers();
        assert_eq!(TrackPoints::from_numbers(numbers.to_vec()), Some(points.clone()));
        for wrong in [
            &[][..],
            &numbers[1..],
            &numbers[..3],
            &numbers[..5],
            &numbers[..numbers.len() - 1],
            &[f64::NAN; 9],
            &[1e300; 9],
        ] {
            assert_eq!(TrackPoints::from_numbers(wrong.to_vec()), None, "{wrong:?}");
        }
    }
}
