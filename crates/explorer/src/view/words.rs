//! Small pieces that several sections share.

use crate::report::{GearLine, Side};
use maud::{Markup, html};

/// The name of a set-up in its colour.
#[must_use]
pub(super) fn name(side: Side) -> Markup {
    html! { b class=(side.to_string()) { (side) } }
}

/// A table that may scroll sideways on a narrow screen, reachable by keyboard.
#[must_use]
pub(super) fn table(title: &str, remark: &str, head: &Markup, body: &Markup) -> Markup {
    html! {
        div.scroll tabindex="0" role="region" aria-label=(title) {
            table {
                caption { (title) @if !remark.is_empty() { small { (remark) } } }
                thead { (head) }
                tbody { (body) }
            }
        }
    }
}

/// A line of a formula note: the formula, then the same with this scenario's numbers.
#[must_use]
pub(super) fn worked(what: &str, formula: &str, numbers: &str) -> Markup {
    html! { p { b { (what) } br; (formula) span.sum { (numbers) } } }
}

/// Flags of a gear in words; empty when there is nothing to say.
#[must_use]
pub(super) fn flags(row: &GearLine) -> String {
    let mut words = Vec::new();
    if row.crossed {
        words.push("crossed");
    }
    if row.duplicate {
        words.push("twice");
    }
    if row.loose {
        words.push("loose");
    }
    words.join(", ")
}
