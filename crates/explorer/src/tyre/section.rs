//! What the section is written and drawn from.

use crate::bench::owners::Owners;
use crate::rings::report::RingsReport;
use crate::tyre::report::TyreReport;
use std::rc::Rc;

/// The section on tyre and pressure, before it is put in words.
#[derive(Debug)]
pub struct TyreSection {
    /// Gears, and the units that everything is told in.
    pub rings: Rc<RingsReport>,
    /// Tyre, rim and pressure.
    pub tyre: Rc<TyreReport>,
    /// Whose value every field holds.
    pub owners: Rc<Owners>,
}
