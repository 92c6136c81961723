//! The board.

use crate::layout::decision::Standing;
use crate::side::Side;

/// What was said before.
pub(crate) fn was(before: &str) -> String {
    format!("was {before}")
}

/// A verdict on one bike.
pub(crate) fn of_bike(side: Side, verdict: &str) -> String {
    format!("{side} {verdict}")
}

/// What a question's answer has become: of each bike that it changed for, or of both.
pub(crate) fn changed(question: &str, told: &[String]) -> String {
    format!("{question}: {}.", told.join("; "))
}

/// What the sign is read out as where all is well, but on the demo's values.
pub(crate) const NOT_YOURS: &str = "not yours yet";

/// What a sign stands for.
pub(crate) const fn meaning(standing: Standing) -> &'static str {
    match standing {
        Standing::Well => "well",
        Standing::Care => "take care",
        Standing::Stop => "no",
        Standing::Open => "open",
        Standing::Even => "no difference",
        Standing::Told => "",
    }
}

/// The column of what lies between the bikes.
pub(crate) const BETWEEN: &str = "B against A";
#[cfg(not(target_arch = "wasm32"))]
/// The board as a table.
pub(crate) const DECISIONS: &str = "Every decision for A and B";
#[cfg(not(target_arch = "wasm32"))]
/// What stands hatched, in the key.
pub(crate) const HATCHED: &str = "hatched:";
#[cfg(not(target_arch = "wasm32"))]
/// Why it does.
pub(crate) const HATCHED_IS: &str = "the demo’s or not known";
