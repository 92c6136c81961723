//! The tables of makers' figures.

use crate::number::trimmed;
use crate::side::Side;
use gear_math::cage::CageClass;

/// What is needed and what there is.
pub(crate) const NEEDED: &str = "Needed and available";
/// The column of the derailleur's figures.
pub(crate) fn derailleur(side: Option<Side>) -> String {
    side.map_or("Derailleur".to_owned(), |side| format!("{side}’s derailleur"))
}
/// Total capacity, in teeth.
pub(crate) const TOTAL_CAPACITY: &str = "Total capacity, teeth";
/// The largest sprocket.
pub(crate) const LARGEST_SPROCKET: &str = "Largest sprocket";
/// The smallest sprocket.
pub(crate) const SMALLEST_SPROCKET: &str = "Smallest sprocket";
/// Between the largest and the smallest ring.
pub(crate) const RING_DIFFERENCE: &str = "Chainring difference";
/// A maker's figure that is not given.
pub(crate) const NOT_GIVEN: &str = "not given";

/// Gears in which the chain hangs by the makers' sum.
pub(crate) const LOOSE: &str = "Gears beyond the maker’s capacity: the chain hangs";
/// Its heads.
pub(crate) const LOOSE_HEADS: [&str; 3] = ["Gear", "Slack to take up", "Beyond the cage"];

/// What opens the table of usual cages.
pub(crate) const CLASSES_OPEN: &str = "What cages usually take";
/// The usual cages.
pub(crate) const CLASSES: &str = "Usual figures by cage length";
/// Where they are from.
pub(crate) const CLASSES_REMARK: &str = "Common practice, of mixed years; the maker’s own figures decide.";
/// Their heads.
pub(crate) const CLASSES_HEADS: [&str; 4] = ["Cage", "Pulley centres", "Total capacity", "Largest sprocket"];

/// The largest sprocket that a class takes.
pub(crate) fn largest_of(class: &CageClass) -> String {
    match class.largest_sprocket {
        (least, Some(most)) => format!("{least}–{most}"),
        (least, None) => format!("{least} and up"),
    }
}

/// How far apart the pulley centres of a class are.
pub(crate) fn centres_of(class: &CageClass) -> String {
    let (least, most) = class.pulley_centres_mm;
    format!("{}–{} mm", trimmed(least), trimmed(most))
}
