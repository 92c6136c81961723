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

/// A table of plain texts, its first column the rows' headings.
pub(super) struct Grid<'a> {
    pub(super) title: &'a str,
    pub(super) remark: &'a str,
    /// Headings of the columns; one that begins with a bar stands over words, which may run over several lines.
    pub(super) head: &'a [&'a str],
    pub(super) rows: Vec<Vec<String>>,
    /// The row that is the bench's own, to stand out.
    pub(super) own: Option<usize>,
}

impl Grid<'_> {
    pub(super) fn html(&self) -> Markup {
        let words = |column: usize| self.head.get(column).is_some_and(|head| head.starts_with('|'));
        let head = html! {
            tr { @for (column, head) in self.head.iter().enumerate() {
                @if head.is_empty() { td {} } @else { th.words[words(column)] scope="col" { (head.trim_start_matches('|')) } }
            } }
        };
        let body = html! {
            @for (index, row) in self.rows.iter().enumerate() {
                tr.own[self.own == Some(index)] { @for (column, cell) in row.iter().enumerate() {
                    @if column == 0 { th scope="row" { (cell) } } @else { td.words[words(column)] { (cell) } }
                } }
            }
        };
        table(self.title, self.remark, &head, &body)
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
