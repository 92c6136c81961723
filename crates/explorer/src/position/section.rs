//! What the section is written and drawn from.

use crate::bench::owners::Owners;
use crate::position::report::PositionReport;
use std::rc::Rc;

/// The section on the position, before it is put in words.
#[derive(Debug)]
pub struct PositionSection {
    /// The position.
    pub position: Rc<PositionReport>,
    /// Whose value every field holds.
    pub owners: Rc<Owners>,
}
