//! What a stretch may get in place of what it has.

use crate::course::cell::{KM_PER_H, SketchFault, number};
use crate::course::quantity::{CornerSpeed, ObstacleTime};
use crate::course::segment::{Obstacle, Segment};
use crate::rider::{Compass, Surface};
use core::fmt;
use core::mem::discriminant;
use core::str::FromStr;

/// Seconds and speeds are written to a millionth, so that a factor leaves no tail of digits.
const MILLIONTHS: f64 = 1e6;

/// Something that a stretch gets in place of what it has, read and written as a cell of a sketched course.
///
/// # Example
/// ```
/// use gear_math::Surface;
/// use gear_math::course::Coat;
/// assert_eq!("deep mud".parse(), Ok(Coat::Ground(Surface::DeepMud)));
/// assert_eq!("corner 14,4 km/h".parse::<Coat>()?.to_string(), "corner 14.4");
/// # Ok::<(), gear_math::course::SketchFault>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Coat {
    /// Another ground.
    Ground(Surface),
    /// An obstacle, with its time over the whole of the patch, or none in place of the one there.
    Obstacle(Option<ObstacleTime>),
    /// A corner.
    Corner(CornerSpeed),
    /// Which way it leads.
    Heading(Compass),
}

impl Coat {
    /// Whether one takes the place of the other where they lie over one another: grounds do, a ground and an obstacle do not.
    #[must_use]
    pub fn replaces(&self, other: &Self) -> bool {
        discriminant(self) == discriminant(other)
    }

    /// What of it lies over `share` of the way it covered.
    pub(super) fn shared(self, share: f64) -> Self {
        match self {
            Self::Obstacle(Some(time)) => {
                Self::Obstacle(Some(ObstacleTime::new(time.s() * share).unwrap_or(time)))
            }
            whole => whole,
        }
    }

    /// Lays it over a stretch that makes up `share` of the patch.
    pub(super) fn lay(self, segment: &mut Segment, share: f64) {
        match self.shared(share) {
            Self::Ground(surface) => segment.surface = surface,
            Self::Corner(speed) => segment.corner = Some(speed),
            Self::Heading(heading) => segment.heading = Some(heading),
            Self::Obstacle(time) => segment.obstacle = time.map(|time| Obstacle { time }),
        }
    }
}

/// An obstacle, a corner or a heading as it stands in a cell.
pub(super) fn extra(cell: &str) -> Result<Coat, SketchFault> {
    let cell = cell.to_ascii_lowercase();
    if cell.trim_end() == "none" {
        Ok(Coat::Obstacle(None))
    } else if let Some(time) = cell.strip_prefix("foot") {
        let seconds = if time.trim().is_empty() { Some(0.0) } else { number(time, "s") };
        let time = seconds.and_then(|s| ObstacleTime::new(s).ok()).ok_or(SketchFault::Obstacle)?;
        Ok(Coat::Obstacle(Some(time)))
    } else if let Some(speed) = cell.strip_prefix("corner") {
        let speed = number(speed, "km/h").and_then(|speed| CornerSpeed::new(speed / KM_PER_H).ok());
        speed.map(Coat::Corner).ok_or(SketchFault::Corner)
    } else if let Some(degrees) = cell.strip_prefix("heading") {
        let heading = number(degrees, "\u{b0}").and_then(|degrees| Compass::new(degrees).ok());
        heading.map(Coat::Heading).ok_or(SketchFault::Heading)
    } else {
        Err(SketchFault::Extra)
    }
}

impl FromStr for Coat {
    type Err = SketchFault;

    fn from_str(text: &str) -> Result<Self, SketchFault> {
        Surface::named(text).map_or_else(|| extra(text), |surface| Ok(Self::Ground(surface)))
    }
}

impl fmt::Display for Coat {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let rounded = |value: f64| (MILLIONTHS * value).round() / MILLIONTHS;
        match self {
            Self::Ground(surface) => f.write_str(surface.name()),
            Self::Obstacle(None) => f.write_str("none"),
            Self::Obstacle(Some(time)) => write!(f, "foot {}", rounded(time.s())),
            Self::Corner(speed) => write!(f, "corner {}", rounded(speed.m_per_s() * KM_PER_H)),
            Self::Heading(heading) => write!(f, "heading {}", heading.degrees()),
        }
    }
}
