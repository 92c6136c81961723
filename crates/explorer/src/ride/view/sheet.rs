//! Ride or run: what to take along to the course.

use crate::layout::concern::Concern;
use crate::layout::sheet_block::Block;
use crate::ride::section::RideSection;
use crate::ride::words::{advice, sheet as words};

/// Where each lowest gear gives up, where running wins, and this climb.
#[must_use]
pub(crate) fn block(report: &RideSection) -> Block {
    let sides = &report.ride.sides;
    let mut block = Block::new(words::TITLE);
    block.row(words::FOR, words::whom(report));
    for side in sides {
        block.row_of(side.side, words::LOWEST_GEAR, words::lowest_gear(side));
    }
    block.row(words::RUNNING_WINS, words::running_wins(report));
    let climb = if report.is_climb_demos() { words::THE_CLIMB.to_owned() } else { words::climb(report) };
    for side in sides {
        block.row_of(side.side, &climb, advice::advised(report, side));
    }
    block.check(Concern::Course, words::ON_STEEP_GROUND);
    block
}
