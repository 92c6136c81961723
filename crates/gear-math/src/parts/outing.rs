//! What a box is combined for.

use crate::course::Course;
use crate::parts::bare_bike::BareBike;
use crate::parts::rides::BoxRider;

/// What a box is combined for: a bike, and a rider on a course.
#[derive(Debug, Clone, PartialEq)]
pub struct Outing {
    /// Round what.
    pub course: Course,
    /// Who, on what but the gears.
    pub rider: BoxRider,
    /// What the parts go on.
    pub bike: BareBike,
}
