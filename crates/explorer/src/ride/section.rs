//! What the section is written and drawn from.

use crate::bench::field::Field;
use crate::bench::owner::Owner;
use crate::bench::owners::Owners;
use crate::ride::report::RideReport;
use crate::rings::report::RingsReport;
use crate::units;
use gear_math::rider::Answer;
use std::rc::Rc;

/// “Ride or run?”, before it is put in words.
#[derive(Debug)]
pub struct RideSection {
    /// Gears, and the units that everything is told in.
    pub rings: Rc<RingsReport>,
    /// Riding against going on foot.
    pub ride: Rc<RideReport>,
    /// Whose value every field holds.
    pub owners: Rc<Owners>,
}

impl RideSection {
    /// Likely speeds on foot if riding is as fast as reckoned, in the page's unit.
    pub(crate) fn foot_band(&self, answer: &Answer) -> (f64, f64) {
        let ride = units::speed_value(answer.ride);
        (ride * answer.ratio.low, ride * answer.ratio.high)
    }

    /// Whether the climb is the demo's, on a bench that is not.
    pub(crate) fn is_climb_demos(&self) -> bool {
        !self.owners.is_example && self.owners.least(&[Field::Slope, Field::ClimbLength]) == Owner::Demo
    }
}
