//! What the section is written and drawn from.

use crate::bench::owners::Owners;
use crate::rings::report::RingsReport;
use gear_math::Development;
use std::rc::Rc;

/// “Which rings?”, before it is put in words.
#[derive(Debug)]
pub struct RingsSection {
    /// Gears, and the units that everything is told in.
    pub rings: Rc<RingsReport>,
    /// Developments of the lowest gears that the rider's climb asks of A and of B; none where no gear would do.
    pub asked: [Option<Development>; 2],
    /// Whose value every field holds.
    pub owners: Rc<Owners>,
}
