//! What the rings of a set-up share, and what A and B do.

use crate::layout::line::{Line, name};
use crate::number::percent;
use crate::rings::section::RingsSection;
use crate::rings::words::answer::in_common as in_common_within;
use crate::side::Side;
use crate::units::{GearScale, Units};
use crate::words::counted;

pub(crate) const TITLE: &str = "Where A and B have the same gear";
pub(crate) const CAPTION: &str = "Full: within your tolerance; open: within twice that.";
pub(crate) const AVOIDED: &str = "Gears to avoid are left out here.";
pub(crate) const OF_RINGS: &str = "Overlap of the rings";
pub(crate) const WHAT_COUNTS: &str =
    "A gear counts as overlapping when it lies inside the stretch that both rings can reach.";
pub(crate) const INSIDE: &str = "Gears another ring reaches too";
pub(crate) const OUTSIDE: &str = "Gears of one ring alone";
/// Where no gear is there twice.
pub(crate) const NONE: &str = "none";
pub(crate) const COUNTED_ONCE: &str =
    "Each gear is counted once, so neighbours that both lie within the tolerance of one gear make one pair.";
pub(crate) const APART: &str = "Apart";
pub(crate) const NEAR_PAIRS: &str = "Every near pair in numbers";
pub(crate) const NEAR: &str = "Pairs within twice the tolerance";

/// The picture in one sentence.
pub(crate) fn label([a, b]: [usize; 2], same: usize, tolerance: &str) -> String {
    let same = counted(same, "pair is", "pairs are");
    format!("Grid of A’s gears against B’s, {a} by {b}: {same} the same gear within {tolerance}.")
}

/// A pair, and whether it counts as one gear.
pub(crate) fn pair(a: &str, b: &str, is_same: bool, apart: &str) -> String {
    let verdict = if is_same { "the same gear" } else { "not quite the same" };
    format!("A {a} and B {b}: {verdict}, {apart} apart.")
}

/// Neither reaches farther.
pub(crate) fn equally_far(tolerance: &str) -> Line {
    let (a, b) = (name(Side::A), name(Side::B));
    format!("Within {tolerance} {a} and {b} reach equally far at both ends.").into()
}

/// What one set-up alone reaches.
pub(crate) fn only(side: Side, developments: [String; 2], speeds: [String; 2], cadence: &str) -> Line {
    let (side, developments, speeds) = (name(side), from_to(developments), from_to(speeds));
    let of = if Units::now().gears == GearScale::Development { " of development" } else { "" };
    format!("Only {side} reaches {developments}{of}: {speeds} at {cadence}.").into()
}

fn from_to([from, to]: [String; 2]) -> String {
    if from == to { from } else { format!("{from} to {to}") }
}

/// Two gears that count as one.
pub(crate) fn same(larger: &str, smaller: &str) -> String {
    format!("{larger} and {smaller}")
}

/// Head of the gears that count as one.
pub(crate) fn same_within(tolerance: &str) -> String {
    format!("The same within {tolerance}")
}

/// Title of the table of shared gears.
pub(crate) fn in_common(count: usize) -> String {
    format!("Gears that A and B have in common: {count}")
}

/// How many gears A and B share.
pub(crate) fn says(report: &RingsSection) -> String {
    let tolerance = percent(report.rings.tolerance.percent(), 1);
    in_common_within(report.rings.common.len(), &tolerance)
}
