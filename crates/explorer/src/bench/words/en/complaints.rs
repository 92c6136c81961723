//! What to type instead of what cannot be understood.

use crate::words::capital;
use gear_math::Limits;
use gear_math::chain::ChainLinksError;
use gear_math::gears::GearSetError;
use gear_math::wheel::TyreSizeError;

/// What stands in the place of a field in error while nothing good ever stood in it.
pub(crate) const NONE: &str = "none";

/// What a chain is counted in.
pub(crate) const LINKS: &str = "links";

/// A choice that is not offered.
pub(crate) const NONE_OF_THESE: &str = "Choose one of the values offered.";

/// The lowest cadence is not the lowest.
pub(crate) const CADENCE_NOT_LOWEST: &str = "Type a number below the usual and the highest cadence.";
/// The usual cadence is not between the others.
pub(crate) const CADENCE_NOT_BETWEEN: &str = "Type a number between the lowest and the highest cadence.";
/// The highest cadence is not the highest.
pub(crate) const CADENCE_NOT_HIGHEST: &str = "Type a number above the lowest and the usual cadence.";

/// The English words of an error of gear-math, made a sentence.
pub(crate) fn sentence(words: &str) -> String {
    let end = if words.ends_with(['.', '?']) { "" } else { "." };
    capital(words) + end
}

/// No number, with what the field starts with as an example.
pub(crate) fn not_a_number(example: &str) -> String {
    format!("Type a number{}.", such_as(example))
}

/// No whole number of teeth or links.
pub(crate) fn not_whole(unit: &str, example: &str) -> String {
    format!("Type a whole number of {unit}, or leave it empty{}.", such_as(example))
}

fn such_as(example: &str) -> String {
    if example.is_empty() { String::new() } else { format!(", such as {example}") }
}

/// A number that is too small or too large.
pub(crate) fn outside(range: &str) -> String {
    format!("Type {range}.")
}

/// From and to, in a unit.
pub(crate) fn range(min: &str, max: &str, unit: &str) -> String {
    format!("{min} to {max} {unit}")
}

/// A slope on which nobody has compared riding with running.
pub(crate) fn no_climb(limits: &Limits, is_down: bool) -> String {
    let steepest = format!("steeper than {} {}", limits.max, limits.unit);
    let refused = if is_down { "downhill" } else { &steepest };
    format!(
        "Nobody measured riding against running {refused}, so this page does not guess: type {}.",
        limits.range()
    )
}

/// No tyre size.
pub(crate) fn tyre_size(error: &TyreSizeError) -> String {
    sentence(&error.to_string())
}

/// A chain that cannot be closed.
pub(crate) fn chain_links(error: &ChainLinksError) -> String {
    sentence(&error.to_string())
}

/// Gears that the drivetrain does not have.
pub(crate) fn gear_set(error: &GearSetError) -> String {
    sentence(&error.to_string())
}
