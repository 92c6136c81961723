//! A course: stretches one after another, from the line back to the line.

use crate::course::patch::Patch;
use crate::course::quantity::{ObstacleTime, StretchLength};
use crate::course::segment::{Obstacle, Segment};
use crate::rider::{Compass, Gradient, Surface};
use core::fmt;

/// A lap as a list of stretches in the order they are ridden.
///
/// # Example
/// ```
/// use gear_math::{Course, Gradient, Surface};
/// use gear_math::course::{Segment, StretchLength};
/// let flat = Segment::open(StretchLength::new(300.0)?, Gradient::new(0.0)?, Surface::FirmGrass);
/// let bank = Segment::open(StretchLength::new(20.0)?, Gradient::new(30.0)?, Surface::Mud);
/// let course = Course::new(vec![flat, bank])?;
/// assert_eq!(course.length_m(), 320.0);
/// assert!(Course::new(vec![]).is_err());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Course {
    segments: Vec<Segment>,
}

impl Course {
    /// Most stretches a course may have.
    pub const MOST_SEGMENTS: usize = 20_000;
    /// Longest course, in metres. A lap is a few kilometres; this leaves room for whole rides.
    pub const LONGEST_M: f64 = 50_000.0;
    /// A shorter course is no lap worth working out, in metres: see [`Self::as_lap`]. Estimate.
    pub const SHORTEST_LAP_M: f64 = 50.0;

    /// Takes the stretches in the order they are ridden.
    ///
    /// # Errors
    /// - [`CourseError::Empty`] without any stretch.
    /// - [`CourseError::TooManySegments`] above [`Self::MOST_SEGMENTS`].
    /// - [`CourseError::TooLong`] when together they exceed [`Self::LONGEST_M`].
    pub fn new(segments: Vec<Segment>) -> Result<Self, CourseError> {
        let length: f64 = segments.iter().map(|segment| segment.length.m()).sum();
        match segments.len() {
            0 => Err(CourseError::Empty),
            count if count > Self::MOST_SEGMENTS => Err(CourseError::TooManySegments),
            _ if length > Self::LONGEST_M => Err(CourseError::TooLong),
            _ => Ok(Self { segments }),
        }
    }

    /// The same course when it is long enough to be a lap; a single bank to try things on need not be.
    ///
    /// # Errors
    /// [`CourseError::TooShort`] below [`Self::SHORTEST_LAP_M`].
    pub fn as_lap(self) -> Result<Self, CourseError> {
        if self.length_m() < Self::SHORTEST_LAP_M { Err(CourseError::TooShort) } else { Ok(self) }
    }

    /// A course of this crate, checked by its tests.
    pub(super) fn known(segments: &[Segment]) -> Self {
        Self { segments: segments.to_vec() }
    }

    /// The stretches in the order they are ridden.
    #[must_use]
    pub fn segments(&self) -> &[Segment] {
        &self.segments
    }

    /// Length of the lap along the ground, in metres.
    #[must_use]
    pub fn length_m(&self) -> f64 {
        self.segments.iter().map(|segment| segment.length.m()).sum()
    }

    /// Height climbed over the lap, descents not counted, in metres.
    #[must_use]
    pub fn climb_m(&self) -> f64 {
        self.segments.iter().map(|segment| segment.rise_m().max(0.0)).sum()
    }

    /// The stretches that lie, if only in part, between two places.
    pub(super) fn stretches_between(&self, from_m: f64, to_m: f64) -> impl Iterator<Item = &Segment> {
        self.profile().into_iter().zip(&self.segments).filter_map(move |(start, segment)| {
            let end = start.at_m + segment.length.m();
            (start.at_m < to_m && end > from_m).then_some(segment)
        })
    }

    /// The ground that most of the way between two places has, and how steep that is on average.
    #[must_use]
    pub fn mostly(&self, from_m: f64, to_m: f64) -> (Surface, Gradient) {
        let mut ways = [(0.0, 0.0); Surface::ALL.len()];
        let mut start = 0.0;
        for segment in &self.segments {
            let end = start + segment.length.m();
            let shared = (to_m.min(end) - from_m.max(start)).max(0.0);
            let way = &mut ways[segment.surface as usize];
            way.0 += shared;
            way.1 += shared * segment.gradient.percent();
            start = end;
        }
        let most = |a: &Surface, b: &Surface| ways[*a as usize].0.total_cmp(&ways[*b as usize].0);
        let surface = Surface::ALL.into_iter().max_by(most).unwrap_or(Surface::Tarmac);
        let (way, percent) = ways[surface as usize];
        (surface, Gradient::nearest(percent / f64::max(way, f64::MIN_POSITIVE)))
    }

    /// Where stretches meet: distance from the line and height above it, both in metres.
    #[must_use]
    pub fn profile(&self) -> Vec<ProfilePoint> {
        let line = ProfilePoint { at_m: 0.0, height_m: 0.0 };
        let ends = self.segments.iter().scan(line, |last, segment| {
            last.at_m += segment.length.m();
            last.height_m += segment.rise_m();
            Some(*last)
        });
        core::iter::once(line).chain(ends).collect()
    }

    /// The same course ridden the other way round.
    #[must_use]
    pub fn reversed(&self) -> Self {
        let turned = |segment: &Segment| Segment {
            gradient: segment.gradient.reversed(),
            heading: segment.heading.map(Compass::back),
            ..*segment
        };
        Self { segments: self.segments.iter().rev().map(turned).collect() }
    }

    /// The course with something laid over a part of it. What of that lies outside the course is ignored.
    ///
    /// # Errors
    /// - [`CourseError::NothingThere`] when no stretch of the course, however short one may be, lies under it.
    /// - [`CourseError::TooManySegments`] when its two edges no longer fit.
    pub fn patched(&self, patch: &Patch) -> Result<Self, CourseError> {
        let length_m = (patch.to_m - patch.from_m).max(f64::MIN_POSITIVE);
        let mut segments = Vec::with_capacity(self.segments.len() + 2);
        let (mut start, mut changed) = (0.0, false);
        for segment in &self.segments {
            let end = start + segment.length.m();
            let from = edge_near(patch.from_m, start, end);
            let to = edge_near(patch.to_m, from, end);
            let pieces = [(start, from, false), (from, to, true), (to, end, false)];
            for (piece_start, piece_end, touched) in pieces {
                if let Some(mut piece) = cut(segment, piece_end - piece_start) {
                    if touched {
                        let share = piece.length.m() / length_m;
                        patch.coat.lay(&mut piece, share);
                        changed = true;
                    }
                    segments.push(piece);
                }
            }
            start = end;
        }
        if changed { Self::new(segments) } else { Err(CourseError::NothingThere) }
    }
}

/// `at_m` held between `start` and `end`, and moved onto either when it is nearer than a stretch may be short.
fn edge_near(at_m: f64, start: f64, end: f64) -> f64 {
    let least = StretchLength::LIMITS.min;
    match at_m {
        at if at < start + least => start,
        at if at > end - least => end,
        at => at,
    }
}

/// A piece of `segment`, with its share of the obstacle's time; none when it has no length.
fn cut(segment: &Segment, length_m: f64) -> Option<Segment> {
    let length = StretchLength::new(length_m).ok()?;
    let share = length_m / segment.length.m();
    let obstacle = segment
        .obstacle
        .map(|whole| Obstacle { time: ObstacleTime::new(whole.time.s() * share).unwrap_or(whole.time) });
    Some(Segment { length, obstacle, ..*segment })
}

/// A point of the profile where two stretches meet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ProfilePoint {
    /// Distance from the line along the ground, in metres.
    pub at_m: f64,
    /// Height above the line, in metres.
    pub height_m: f64,
}

/// Why stretches do not make a course.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub enum CourseError {
    /// There is no stretch.
    Empty,
    /// There are more stretches than [`Course::MOST_SEGMENTS`].
    TooManySegments,
    /// Together they are longer than [`Course::LONGEST_M`].
    TooLong,
    /// Together they are shorter than [`Course::SHORTEST_LAP_M`].
    TooShort,
    /// Nothing of the course lies where it was to be changed.
    NothingThere,
}

impl fmt::Display for CourseError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => f.write_str("the course has no stretch; add at least one"),
            Self::TooManySegments => {
                write!(f, "the course has more than {} stretches; join some", Course::MOST_SEGMENTS)
            }
            Self::TooLong => {
                write!(f, "the course is longer than {} km; keep one lap", Course::LONGEST_M / 1e3)
            }
            Self::TooShort => {
                write!(f, "the course is shorter than {} m; add what is missing", Course::SHORTEST_LAP_M)
            }
            Self::NothingThere => write!(
                f,
                "nothing of the course lies there; type metres from the line within it, at least {} m apart",
                StretchLength::LIMITS.min
            ),
        }
    }
}

impl core::error::Error for CourseError {}

#[cfg(test)]
mod tests {
    use super::*;

    use crate::course::Coat;

    /// 40 m up, 10 m of barriers, 50 m down.
    fn course() -> Course {
        "40; 10; firm grass\n10; 0; mud; foot 4\n50; -20; firm grass; corner 18".parse().unwrap()
    }

    fn lengths(course: &Course) -> Vec<f64> {
        course.segments().iter().map(|segment| (segment.length.m() * 1e6).round() / 1e6).collect()
    }

    fn waits(course: &Course) -> Vec<f64> {
        course.segments().iter().map(|it| it.obstacle.map_or(0.0, |obstacle| obstacle.time.s())).collect()
    }

    #[test]
    fn heights_add_up_along_the_profile() {
        let profile = course().profile();
        let (up, down) = (40.0 * 0.1 / 1.01_f64.sqrt(), 50.0 * 0.2 / 1.04_f64.sqrt());
        let expected = [(0.0, 0.0), (40.0, up), (50.0, up), (100.0, up - down)];
        assert_eq!(profile.len(), 4);
        for (point, (at_m, height_m)) in profile.iter().zip(expected) {
            assert!(
                (point.at_m - at_m).abs() < 1e-9 && (point.height_m - height_m).abs() < 1e-9,
                "{point:?}"
            );
        }
    }

    #[test]
    fn the_other_way_round_climbs_become_descents() {
        let (there, back) = (course(), course().reversed());
        let percents: Vec<f64> = back.segments().iter().map(|segment| segment.gradient.percent()).collect();
        assert_eq!((lengths(&back), percents), (vec![50.0, 10.0, 40.0], vec![20.0, 0.0, -10.0]));
        let (height, end) = (there.profile()[3].height_m, back.profile()[3].height_m);
        assert!((height + end).abs() < 1e-9);
        assert_eq!(back.reversed(), there);
    }

    #[test]
    fn a_stretch_that_only_touches_does_not_lie_between() {
        let course = course();
        let found = |from, to| -> Vec<f64> {
            course.stretches_between(from, to).map(|segment| segment.length.m()).collect()
        };
        assert_eq!(found(40.0, 50.0), [10.0]);
        assert_eq!(found(39.0, 50.0), [40.0, 10.0]);
        assert_eq!(found(45.0, 50.5), [10.0, 50.0]);
        assert_eq!(found(60.0, 70.0), [50.0]);
        assert_eq!(found(0.0, 100.0), [40.0, 10.0, 50.0]);
    }

    #[test]
    fn most_of_the_way_decides_ground_and_mean_slope() {
        let (surface, gradient) = course().mostly(30.0, 55.0);
        assert_eq!((surface, gradient.percent()), (Surface::FirmGrass, 0.0));
        let (surface, gradient) = course().mostly(36.0, 51.0);
        assert_eq!((surface, gradient.percent()), (Surface::Mud, 0.0));
        let (_, gradient) = course().mostly(20.0, 70.0);
        assert!((gradient.percent() - -5.0).abs() < 1e-9, "{gradient:?}");
    }

    fn patched(from_m: f64, to_m: f64, coat: Coat) -> Course {
        course().patched(&Patch { from_m, to_m, coat }).unwrap()
    }

    #[test]
    fn an_obstacle_laid_over_several_stretches_takes_its_time_once() {
        let laid = patched(20.0, 70.0, Coat::Obstacle(Some(ObstacleTime::new(10.0).unwrap())));
        assert_eq!(lengths(&laid), [20.0, 20.0, 10.0, 20.0, 30.0]);
        let found = waits(&laid);
        let expected = [0.0, 4.0, 2.0, 4.0, 0.0];
        assert!(found.iter().zip(expected).all(|(a, b)| (a - b).abs() < 1e-9), "{found:?}");
    }

    #[test]
    fn what_is_painted_in_two_keeps_its_time() {
        let painted = patched(44.0, 80.0, Coat::Ground(Surface::DeepMud));
        assert_eq!(lengths(&painted), [40.0, 4.0, 6.0, 30.0, 20.0]);
        let found = waits(&painted);
        assert!((found[1] - 1.6).abs() < 1e-9 && (found[2] - 2.4).abs() < 1e-9, "{found:?}");
        let muddy = |segment: &Segment| segment.surface == Surface::DeepMud;
        assert_eq!(
            painted.segments().iter().map(muddy).collect::<Vec<_>>(),
            [false, false, true, true, false]
        );
    }

    /// Nearer to the end of a stretch than one may be short, the end itself is meant.
    #[test]
    fn an_edge_beside_an_end_is_moved_onto_it() {
        let painted = |from, to| lengths(&patched(from, to, Coat::Ground(Surface::DeepMud)));
        assert_eq!(painted(40.05, 49.95), [40.0, 10.0, 50.0]);
        assert_eq!(painted(39.95, 50.05), [40.0, 10.0, 50.0]);
        assert_eq!(painted(40.25, 49.75), [40.0, 0.25, 9.5, 0.25, 50.0]);
        assert_eq!((edge_near(0.1, 0.0, 5.0), edge_near(4.9, 0.0, 5.0)), (0.1, 4.9));
    }
}
