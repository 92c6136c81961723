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

/// A table of plain cells: the first of each row heads it, “A” and “B” stand in their colours.
#[must_use]
pub(super) fn plain_table(title: &str, remark: &str, heads: &[&str], rows: &[Vec<String>]) -> Markup {
    let head = html! {
        tr {
            @for head in heads {
                @match *head {
                    "" => td {}
                    "A" => th scope="col" { (name(Side::A)) }
                    "B" => th scope="col" { (name(Side::B)) }
                    head => th scope="col" { (head) }
                }
            }
        }
    };
    let body = html! {
        @for row in rows {
            tr {
                @for (index, cell) in row.iter().enumerate() {
                    @if index == 0 { th scope="row" { (cell) } } @else { td { (cell) } }
                }
            }
        }
    };
    table(title, remark, &head, &body)
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
    if row.is_loose() {
        words.push("loose");
    }
    words.join(", ")
}
