//! The gear ladder.

use crate::number::plain;
use crate::rings::report::RingsReport;
use crate::rings::setup::{GearLine, SetupReport};
use crate::side::Side;
use crate::words::{counted, listed};

pub(crate) const TITLE: &str = "The gear ladder";
pub(crate) const CAPTION: &str = "Development upward, equal ratios at equal distances; the longest rungs are the largest ring. Rungs tied across the rail are the same gear; gears in brackets are cross-chained, those with “no” are to be avoided.";

/// The picture in one sentence.
pub(crate) fn label(rings: &RingsReport) -> String {
    let [a, b] = rings.setups.each_ref().map(reach);
    let common = counted(rings.common.len(), "gear is", "gears are");
    format!("Gear ladder: {a}; {b}; {common} the same on both.")
}

fn reach(setup: &SetupReport) -> String {
    format!(
        "{side} reaches from {low} to {high} m of development in {gears}",
        side = setup.side,
        low = plain(setup.lowest().development.m(), 2),
        high = plain(setup.highest().development.m(), 2),
        gears = counted(setup.usable(), "gear", "gears"),
    )
}

/// Over what one set-up alone reaches.
pub(crate) fn only(side: Side) -> String {
    format!("only {side} reaches")
}

/// Over the rungs of a single ring.
pub(crate) fn one_ring(ring: &str) -> String {
    format!("{ring} only")
}

/// Which of two lengths is which ring.
pub(crate) fn two_rings(large: &str, small: &str) -> String {
    format!("long {large}, short {small}")
}

/// A gear with its development, inches, speeds, and its twins on the other side.
pub(crate) fn gear(side: Side, line: &GearLine, speeds: &str, twins: &[String]) -> String {
    let (gear, inches) = (line.gear, plain(line.inches.inches(), 1));
    let development = plain(line.development.m(), 3);
    let mut words = format!("{side} {gear}: {development} m, {inches} gear inches; {speeds}.");
    if !twins.is_empty() {
        words += &format!(" Same gear as {}.", listed(twins));
    }
    if line.crossed {
        words += " Cross-chained: the chain runs at its steepest.";
    }
    if line.avoid {
        words += " Never use it.";
    }
    words
}

/// A gear of the other side that counts as the same.
pub(crate) fn twin(side: Side, gear: &str, apart: &str) -> String {
    format!("{side} {gear}, {apart} apart")
}
