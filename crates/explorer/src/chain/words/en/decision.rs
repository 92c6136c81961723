//! Cage and chain on the board.

use crate::chain::words::names::{links, named};
use crate::chain::words::verdict::Said;
use crate::rings::setup::SetupReport;
use gear_math::cage::CageFinding;
use gear_math::chain::CageOutcome;

/// The verdict with what decides it, as short as can be.
pub(crate) fn short(setup: &SetupReport, said: &Said) -> String {
    match (&setup.cage.outcome, setup.cage.check.findings.first()) {
        (CageOutcome::FitsAvoidingGears, _) => format!("never {}", named(setup, setup.cage.avoid_by_cage())),
        (CageOutcome::DoesNotFit(_), Some(CageFinding::SprocketTooLarge { sprocket, limit })) => {
            format!("no: {} > {limit}", sprocket.teeth())
        }
        (
            CageOutcome::DoesNotFit(_),
            Some(CageFinding::AvoidGears { short_by, .. } | CageFinding::LongerCage { short_by, .. }),
        ) => format!("no: {short_by}\u{a0}t short"),
        _ => said.verdict().to_owned(),
    }
}

/// How many links more B's chain has than A's.
pub(crate) fn longer(more: i32) -> String {
    let by = || links(u16::try_from(more.unsigned_abs()).unwrap_or(u16::MAX));
    match more {
        0 => "chains as long".to_owned(),
        1.. => format!("B’s chain {} longer", by()),
        _ => format!("B’s chain {} shorter", by()),
    }
}
