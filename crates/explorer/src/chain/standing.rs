//! How a bike stands with its cage.

use crate::layout::decision::Standing;
use gear_math::chain::{CageAnswer, CageOutcome};

/// How a bike stands with its cage and its chain: it cannot be ridden where they stop it.
pub(crate) fn standing(cage: &CageAnswer) -> Standing {
    match &cage.outcome {
        CageOutcome::Fits => Standing::Well,
        CageOutcome::FitsOnPaper | CageOutcome::FitsAvoidingGears => Standing::Care,
        CageOutcome::OtherChain { .. } if cage.too_short.is_empty() => Standing::Care,
        CageOutcome::NotKnown(_) => Standing::Open,
        CageOutcome::OtherChain { .. } | CageOutcome::DoesNotFit(_) => Standing::Stop,
    }
}
