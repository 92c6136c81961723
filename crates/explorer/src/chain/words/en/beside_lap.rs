//! What has to be said of the cage beside the lap.

use crate::chain::section::ChainSection;
use crate::chain::words::answer::avoided;
use crate::rings::setup::SetupReport;

/// Whether the set-ups fit, and what they are ridden without.
pub(crate) fn notes(report: &ChainSection) -> Vec<String> {
    fits(report).chain(Some(avoided(report)).filter(|it| !it.is_empty())).collect()
}

/// Where a set-up does not fit or may not, so that the lap rides what the bike may not.
pub(crate) fn fits(report: &ChainSection) -> impl Iterator<Item = String> {
    report.rings.setups.iter().filter_map(note)
}

fn note(setup: &SetupReport) -> Option<String> {
    let (side, cage) = (setup.side, &setup.cage);
    if cage.is_not_known() {
        return Some(format!("Whether the cage takes every gear of {side} is not known."));
    }
    if !cage.does_not_fit() {
        return None;
    }
    Some(if cage.avoid.unless_all(&setup.drivetrain).is_empty() {
        format!("{side} does not fit as it is: it is ridden here as if it did.")
    } else {
        format!("{side} does not fit as it is: it is ridden here as if it did, without its gears to avoid.")
    })
}
