//! What the workshop has to know of derailleur and chain.

use crate::chain::section::ChainSection;
use crate::chain::words::answer::{TURNED_BY_HAND, set_and_joined};
use crate::chain::words::sheet as words;
use crate::chain::words::verdict::said;
use crate::layout::concern::Concern;
use crate::layout::sheet_block::{Block, Part};
use crate::side::Side;

/// The section's rows and checks.
#[must_use]
pub(crate) fn block(report: &ChainSection) -> Block {
    let mut block = Block::new(words::TITLE);
    for side in Side::BOTH {
        let said = said(report, side);
        block.row_of(side, words::DERAILLEUR, said.plain_verdict());
        block.row_of(side, words::NEXT, said.step().to_owned());
    }
    links_fitted(report, &mut block);
    block.check(Concern::Drivetrain, TURNED_BY_HAND.join(" "));
    block.check(Concern::Drivetrain, set_and_joined().join(" "));
    let deciding = report.chain.deciding();
    if !deciding.is_empty() {
        block.check(Concern::Drivetrain, words::before_cutting(&deciding));
    }
    block
}

/// The chain now on the bike, or room to write its links in.
fn links_fitted(report: &ChainSection, block: &mut Block) {
    match report.rings.setup(Side::A).cage.fitted {
        Some(fitted) => block.row(words::LINKS_FITTED, fitted.count().to_string()),
        None => block.parts.push(Part::blank(words::LINKS_FITTED)),
    }
}
