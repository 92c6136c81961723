//! Rows and checks of the workshop sheet.

use crate::chain::words::names::measures;
use crate::words::listed;
use gear_math::chain::ChainMeasure;

/// Over the section's rows.
pub(crate) const TITLE: &str = "Derailleur, cage and chain";
/// The verdict.
pub(crate) const DERAILLEUR: &str = "Derailleur";
/// The next step.
pub(crate) const NEXT: &str = "Next";
/// The chain now on the bike.
pub(crate) const LINKS_FITTED: &str = "Links fitted";

/// What to measure before cutting the chain.
pub(crate) fn before_cutting(deciding: &[ChainMeasure]) -> String {
    format!(
        "Measure before you cut the chain: {}. Usual values were taken; they can change the link count.",
        listed(&measures(deciding))
    )
}
