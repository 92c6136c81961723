//! The rider's cadences.

use gear_math::Cadence;

/// The rider's lowest, usual and highest cadence, ascending.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CadenceWindow {
    /// Slowest still turned on a climb.
    pub low: Cadence,
    /// Turned most of the time.
    pub usual: Cadence,
    /// Fastest still of use.
    pub high: Cadence,
}
