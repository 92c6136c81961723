//! The sheet as a short message.

use crate::page::words::sheet;
use crate::side::Side;

/// The first line: what it is, of which bikes, and whether it is the demo's.
pub(crate) fn head(chosen: Option<Side>, is_example: bool) -> String {
    let setups = sheet::setups(chosen);
    let head = format!("{}, {setups}", sheet::PAPER);
    if is_example { format!("{head}\n{}", sheet::EXAMPLE) } else { head }
}

/// A decision: what is said of each bike, or of both.
pub(crate) fn decision(question: &str, told: &[String]) -> String {
    format!("{question}: {}", told.join("; "))
}

/// A verdict with the number that carries it.
pub(crate) fn verdict(words: &str, detail: &str) -> String {
    if detail.is_empty() { words.to_owned() } else { format!("{words} ({detail})") }
}

/// What is one bike's or both's.
pub(crate) fn of(side: Option<Side>, what: &str) -> String {
    side.map_or_else(|| what.to_owned(), |side| format!("{side} {what}"))
}

/// A row.
pub(crate) fn row(what: &str, value: &str) -> String {
    format!("{what}: {value}")
}
