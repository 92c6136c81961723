//! Heads of the bench.

/// Set-up A.
pub(crate) const SETUP_A: &str = "A · filled";
/// Set-up B.
pub(crate) const SETUP_B: &str = "B · outlined";
/// What unfolds what B has of its own.
pub(crate) const BIKE_B: &str = "B’s own wheel, derailleur, chain and mass";
/// What unfolds the rest of the bench.
pub(crate) const MORE: &str = "Wheel, derailleur, rider, rules";
/// Part of the bench.
pub(crate) const WHEEL: &str = "Wheel";
/// Part of the bench.
pub(crate) const DERAILLEURS: &str = "Derailleurs";
/// Part of the bench.
pub(crate) const RIDER: &str = "Rider";
/// Part of the bench.
pub(crate) const RECKONING: &str = "Counting, units, race rules";
