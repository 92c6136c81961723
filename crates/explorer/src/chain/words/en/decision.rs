//! Cage and chain on the board.

use crate::chain::words::names::links;

/// How many links more B's chain has than A's.
pub(crate) fn longer(more: i32) -> String {
    let by = || links(u16::try_from(more.unsigned_abs()).unwrap_or(u16::MAX));
    match more {
        0 => "chains as long".to_owned(),
        1.. => format!("B’s chain {} longer", by()),
        _ => format!("B’s chain {} shorter", by()),
    }
}
