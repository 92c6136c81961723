//! A course in fewer stretches, so that a recorded one can be read, edited and sent.

use crate::course::course::{Course, ProfilePoint};
use crate::course::quantity::StretchLength;
use crate::course::segment::Segment;
use crate::rider::{Compass, Gradient};

/// Heights as near as this need no further stretch, m: a smoothed track is no surer. Estimate.
const NEAR_ENOUGH_M: f64 = 0.05;
/// By so much more is tried where there are still too many stretches.
const WIDER: f64 = 1.25;
/// No course needs more than this, m: it is higher than any.
const WIDEST_M: f64 = 1e5;
/// Lengths are whole tenths of a metre, and gradients whole hundredths of a per cent.
const TENTHS: f64 = 10.0;
const HUNDREDTHS: f64 = 100.0;
/// From end to end a row of stretches is at least this share of its way, or it has no one heading. Estimate: at half of it the
/// wind would be off by as much as it is.
const STRAIGHT: f64 = 0.5;
/// What moving a place by half a tenth of a metre does on the steepest slope, m.
const MOVED_M: f64 = 0.03;

/// A course in fewer stretches, and what that changed.
#[derive(Debug, Clone, PartialEq)]
pub struct JoinedCourse {
    /// The course.
    pub course: Course,
    /// No height is off by more than this, in metres.
    pub height_error_m: f64,
}

impl Course {
    /// The course with neighbouring stretches joined that only their gradients tell apart: heights are kept as closely as
    /// `most` stretches can, or fewer if those do. Grounds, corners and obstacles stay, and may make it more.
    ///
    /// # Example
    /// ```
    /// use gear_math::Course;
    /// let course: Course = "50; 4; mud\n50; 4.1; mud\n50; -6; mud\n1; 0; mud; foot 1".parse()?;
    /// let joined = course.joined(3);
    /// assert_eq!(joined.course.segments().len(), 3);
    /// assert!(joined.height_error_m < 0.1);
    /// # Ok::<(), gear_math::course::SketchError>(())
    /// ```
    #[must_use]
    pub fn joined(&self, most: usize) -> JoinedCourse {
        let profile = self.profile();
        let mut within_m = NEAR_ENOUGH_M;
        let mut ends = self.ends(&profile, within_m);
        while ends.len() > most && within_m < WIDEST_M {
            within_m *= WIDER;
            ends = self.ends(&profile, within_m);
        }
        self.between(&profile, &ends)
    }

    /// Where to cut so that no height between two cuts is farther than `within_m` from the straight slope from one to the
    /// other: slopes that leave every place so near lie in a cone, and a run ends where the next slope would not.
    fn ends(&self, profile: &[ProfilePoint], within_m: f64) -> Vec<usize> {
        const ANY: (f64, f64) = (f64::NEG_INFINITY, f64::INFINITY);
        let segments = self.segments();
        let (mut ends, mut from, mut cone) = (Vec::new(), 0, ANY);
        for (place, here) in profile[1..].iter().enumerate() {
            let slope = (here.height_m - profile[from].height_m) / (here.at_m - profile[from].at_m);
            let is_near = cone.0 <= slope && slope <= cone.1;
            let is_short = here.at_m - profile[from].at_m <= StretchLength::LIMITS.max;
            if place > from && !(is_near && is_short && alike(&segments[from], &segments[place])) {
                ends.push(place);
                (from, cone) = (place, ANY);
            }
            let start = profile[from];
            let (run, rise) = (here.at_m - start.at_m, here.height_m - start.height_m);
            cone = (cone.0.max((rise - within_m) / run), cone.1.min((rise + within_m) / run));
        }
        ends.push(segments.len());
        ends
    }

    /// One stretch up to each cut. What rounding takes from the height of one is given to the next.
    fn between(&self, profile: &[ProfilePoint], ends: &[usize]) -> JoinedCourse {
        let (mut height, mut from, mut error) = (0.0, 0, 0.0);
        let mut segments = Vec::with_capacity(ends.len());
        for &end in ends {
            let tenths = |place: usize| (TENTHS * profile[place].at_m).round();
            let first = self.segments()[from];
            let length = (tenths(end) - tenths(from)) / TENTHS;
            let length = length.clamp(StretchLength::LIMITS.min, StretchLength::LIMITS.max);
            let gradient = gradient(profile[end].height_m - height, length);
            let length = StretchLength::new(length).unwrap_or(first.length);
            let heading = heading(&self.segments()[from..end]);
            let segment = Segment { length, gradient, heading, ..first };
            for place in &profile[from..=end] {
                let off = height + gradient.sine() * (place.at_m - profile[from].at_m) - place.height_m;
                error = f64::max(error, off.abs());
            }
            height += segment.rise_m();
            segments.push(segment);
            from = end;
        }
        JoinedCourse { course: Self::known(&segments), height_error_m: error + MOVED_M }
    }
}

fn alike(one: &Segment, other: &Segment) -> bool {
    let bare = |it: &Segment| (it.surface, it.corner);
    bare(one) == bare(other) && one.obstacle.is_none() && other.obstacle.is_none()
}

/// Which way a row of stretches leads from end to end, to a degree; none where that of one is not known, or where it turns so
/// much that it leads nowhere in particular.
fn heading(segments: &[Segment]) -> Option<Compass> {
    let (mut east, mut north, mut length) = (0.0, 0.0, 0.0);
    for segment in segments {
        let (sin, cos) = segment.heading?.degrees().to_radians().sin_cos();
        east += segment.length.m() * sin;
        north += segment.length.m() * cos;
        length += segment.length.m();
    }
    Compass::towards(east, north).filter(|_| east.hypot(north) > STRAIGHT * length)
}

/// The gradient, to a hundredth of a per cent, that rises so far over a length along the ground.
fn gradient(rise_m: f64, length_m: f64) -> Gradient {
    let run =
        (length_m * length_m - rise_m * rise_m).max(0.0).sqrt().max(rise_m.abs()).max(f64::MIN_POSITIVE);
    Gradient::nearest((HUNDREDTHS * 100.0 * rise_m / run).round() / HUNDREDTHS)
}

#[cfg(test)]
mod tests {
    use super::*;

    use crate::Surface;

    fn ramps(percents: &[f64], pieces: usize, length_m: f64) -> Course {
        let segment = |percent: &f64| {
            let length = StretchLength::new(length_m).unwrap();
            Segment::open(length, Gradient::new(*percent).unwrap(), Surface::Mud)
        };
        Course::new(percents.iter().flat_map(|percent| vec![segment(percent); pieces]).collect()).unwrap()
    }

    fn gradients(course: &Course) -> Vec<f64> {
        course.segments().iter().map(|segment| segment.gradient.percent()).collect()
    }

    #[test]
    fn straight_slopes_come_back_whole() {
        for percents in [vec![4.0, -6.0, 2.0], vec![-3.0, 9.0, 0.0, -9.0]] {
            let joined = ramps(&percents, 10, 5.0).joined(100);
            assert_eq!(gradients(&joined.course), percents);
            assert!(joined.course.segments().iter().all(|segment| (segment.length.m() - 50.0).abs() < 1e-9));
            assert!(joined.height_error_m < MOVED_M + 0.01, "{}", joined.height_error_m);
        }
    }

    /// Teeth 0.04 and 0.4 m high: the one is less than a smoothed track is sure of.
    #[test]
    fn only_what_is_near_enough_is_evened_out() {
        let teeth = |percent: f64| ramps(&[percent, -percent].repeat(8), 1, 4.0);
        assert_eq!(teeth(1.0).joined(100).course.segments().len(), 1);
        assert_eq!(teeth(10.0).joined(100).course.segments().len(), 16);
        assert_eq!(teeth(10.0).joined(16).course.segments().len(), 16, "as many as were asked for");
        let few = teeth(10.0).joined(4);
        assert!(few.course.segments().len() <= 4 && few.height_error_m > 0.1, "{few:?}");
    }

    /// From the sides of a triangle: 1 up and 10 along, √101 on the slope.
    #[test]
    fn a_gradient_is_rise_over_run_to_a_hundredth_of_a_per_cent() {
        let close = |rise, length, percent: f64| (gradient(rise, length).percent() - percent).abs() < 1e-9;
        assert!(close(1.0, f64::sqrt(101.0), 10.0) && close(-3.0, f64::sqrt(409.0), -15.0));
        assert!(close(1.0, 7.0, 14.43) && close(0.0, 7.0, 0.0));
        assert!(close(4.0, 5.0, 45.0), "no steeper than a gradient may be");
    }

    /// A joined stretch is no longer than a stretch may be.
    #[test]
    fn a_long_straight_slope_is_cut_where_a_stretch_must_end() {
        let joined = ramps(&[1.0], 5, 9000.0).joined(1);
        assert_eq!(joined.course.segments().len(), 3);
    }
}
