//! What the section is written and drawn from.

use crate::bench::owners::Owners;
use crate::chain::report::ChainsReport;
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
