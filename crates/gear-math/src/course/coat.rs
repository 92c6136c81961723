//! What a stretch may get in place of what it has.

use crate::course::quantity::{CornerSpeed, ObstacleTime};
use crate::course::segment::{Obstacle, Segment};
use crate::rider::{Compass, Surface};

/// Something that a stretch gets in place of what it has.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Coat {
    /// Another ground.
    Ground(Surface),
    /// An obstacle, with its time over the whole of the patch.
    Obstacle(ObstacleTime),
    /// A corner.
    Corner(CornerSpeed),
    /// Which way it leads.
    Heading(Compass),
}

impl Coat {
    /// Lays it over a stretch that makes up `share` of the patch.
    pub(super) fn lay(self, segment: &mut Segment, share: f64) {
        match self {
            Self::Ground(surface) => segment.surface = surface,
            Self::Corner(speed) => segment.corner = Some(speed),
            Self::Heading(heading) => segment.heading = Some(heading),
            Self::Obstacle(time) => {
                let time = ObstacleTime::new(time.s() * share).unwrap_or(time);
                segment.obstacle = Some(Obstacle { time });
            }
        }
    }
}
