//! “Will the cage take it?” on the board.

use crate::chain::section::ChainSection;
use crate::chain::standing::standing;
use crate::chain::words::decision as words;
use crate::chain::words::verdict::said;
use crate::layout::decision::{Decision, Verdict};
use crate::side::Side;

/// Whether each cage takes it, what to do next, and how much longer B's chain is.
pub(crate) fn decision(report: &ChainSection) -> Decision {
    let bike = |side| {
        let said = said(report, side);
        Verdict {
            standing: standing(&report.rings.setup(side).cage),
            words: said.verdict().to_owned(),
            detail: said.step().to_owned(),
        }
    };
    let [a, b] = Side::BOTH.map(|side| report.rings.setup(side).cage.links);
    let longer = a.zip(b).map(|(a, b)| i32::from(b.count()) - i32::from(a.count()));
    let short = Side::BOTH.map(|side| words::short(report.rings.setup(side), &said(report, side)));
    Decision { short, ..Decision::of(bike, longer.map_or_else(String::new, words::longer)) }
}
