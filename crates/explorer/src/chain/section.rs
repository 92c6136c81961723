//! What the section is written and drawn from.

use crate::bench::field::{Field, Group};
use crate::bench::owners::Owners;
use crate::bench::rests::is_drivetrain;
use crate::chain::report::ChainsReport;
use crate::layout::line::Look;
use crate::rings::report::RingsReport;
use std::rc::Rc;

/// “Does the cage take it?”, before it is put in words.
#[derive(Debug)]
pub struct ChainSection {
    /// Gears, and the units that everything is told in.
    pub rings: Rc<RingsReport>,
    /// Derailleur and chains.
    pub chain: Rc<ChainsReport>,
    /// Whose value every field holds.
    pub owners: Rc<Owners>,
}

impl ChainSection {
    /// How a verdict that is well stands out.
    pub(crate) fn well(&self) -> Look {
        Look::well(self.owners.rests_on_demo(rests_on))
    }
}

/// Whether the answer rests on a field.
pub(crate) fn rests_on(field: Field) -> bool {
    is_drivetrain(field) || matches!(field.spec().group, Group::Derailleur | Group::Chain)
}
