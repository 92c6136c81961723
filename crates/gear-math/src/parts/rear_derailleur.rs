//! A rear derailleur out of a box.

use crate::cage::Derailleur;
use crate::chain::PulleyCentres;

/// A rear derailleur out of a box: what its maker states and what a tape measures.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct RearDerailleur {
    /// The maker's figures, as far as they are known.
    pub figures: Derailleur,
    /// The length of the cage, where it was measured. Without it the cage is as long as its capacity asks for.
    pub pulley_centres: Option<PulleyCentres>,
}
