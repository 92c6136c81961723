//! “Will the cage take it?” on the board.

use crate::chain::section::ChainSection;
use crate::chain::words::decision as words;
use crate::chain::words::verdict::said;
use crate::layout::decision::{Decision, Standing, Verdict};
use crate::side::Side;
use gear_math::chain::CageOutcome;

/// Whether each cage takes it, what to do next, and how much longer B's chain is.
pub(crate) fn decision(report: &ChainSection) -> Decision {
    let bike = |side| {
        let said = said(report, side);
        Verdict {
            standing: standing(report, side),
            words: said.verdict().to_owned(),
            detail: said.step().to_owned(),
        }
    };
    let [a, b] = Side::BOTH.map(|side| report.rings.setup(side).cage.links);
    let longer = a.zip(b).map(|(a, b)| i32::from(b.count()) - i32::from(a.count()));
    Decision::of(bike, longer.map_or_else(String::new, words::longer))
}

/// How a bike stands with its cage.
pub(crate) fn standing(report: &ChainSection, side: Side) -> Standing {
    let cage = &report.rings.setup(side).cage;
    match &cage.outcome {
        CageOutcome::Fits => Standing::Well,
        CageOutcome::FitsOnPaper | CageOutcome::FitsAvoidingGears => Standing::Care,
        CageOutcome::OtherChain { .. } if cage.too_short.is_empty() => Standing::Care,
        CageOutcome::NotKnown(_) => Standing::Open,
        CageOutcome::OtherChain { .. } | CageOutcome::DoesNotFit(_) => Standing::Stop,
    }
}
