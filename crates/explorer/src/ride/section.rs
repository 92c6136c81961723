//! What the section is written and drawn from.

use crate::bench::owners::Owners;
use crate::ride::report::RideReport;
use crate::rings::report::RingsReport;
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
