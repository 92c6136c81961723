//! What the section is written and drawn from.

use crate::bench::owners::Owners;
use crate::rings::report::RingsReport;
use std::rc::Rc;

/// “Which rings?”, before it is put in words.
#[derive(Debug)]
pub struct RingsSection {
    /// Gears, and the units that everything is told in.
    pub rings: Rc<RingsReport>,
    /// Whose value every field holds.
    pub owners: Rc<Owners>,
}
