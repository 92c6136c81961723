//! Small pieces that several sections share.

use crate::layout::head::Head;
use crate::layout::words::table as words;
use crate::side::Side;
use maud::{Markup, html};

/// The name of a set-up in its colour.
#[must_use]
pub(crate) fn name(side: Side) -> Markup {
    html! { b class=(side.to_string()) { (side) } }
}

/// A table that may scroll sideways on a narrow screen, reachable by keyboard. It is saved, copied and printed by `www/tables.js`.
#[must_use]
pub(crate) fn table(title: &str, remark: &str, head: &Markup, body: &Markup) -> Markup {
    html! {
        div.scroll tabindex="0" role="region" aria-label=(title) {
            details.take {
                summary { (words::TAKE) }
                button type="button" data-table="csv" { (words::SAVE) }
                button type="button" data-table="tsv" data-copied=(words::COPIED) data-refused=(words::REFUSED) { (words::COPY) }
                button type="button" data-table="print" { (words::PRINT) }
            }
            table {
                caption { span { (title) } @if !remark.is_empty() { small { (remark) } } }
                thead { (head) }
                tbody { (body) }
            }
        }
    }
}

/// A table that holds for every bike and rider, so that it rests on no value of the demo's.
#[must_use]
pub(crate) fn for_every_bike(table: &Markup) -> Markup {
    html! { div data-for-every-bike { (table) } }
}

/// The row of heads.
#[must_use]
pub(crate) fn heads_row(heads: &[Head<'_>]) -> Markup {
    html! { tr { @for head in heads { (head_cell(*head)) } } }
}

fn head_cell(head: Head<'_>) -> Markup {
    match head {
        Head::Empty => html! { td {} },
        Head::Setup(side) => column(side),
        Head::SetupInWords(side) => html! { th.words scope="col" { (name(side)) } },
        Head::Figures(words) => html! { th scope="col" { (words) } },
        Head::Words(words) => html! { th.words scope="col" { (words) } },
    }
}

/// A table of plain texts; the first of each row heads it.
#[must_use]
pub(crate) fn plain_table(title: &str, remark: &str, heads: &[Head<'_>], rows: &[Vec<String>]) -> Markup {
    marked_table(title, remark, heads, rows, None)
}

/// The same with the bench's own row standing out.
#[must_use]
pub(crate) fn marked_table(
    title: &str,
    remark: &str,
    heads: &[Head<'_>],
    rows: &[Vec<String>],
    own: Option<usize>,
) -> Markup {
    let words = |column: usize| heads.get(column).is_some_and(|head| head.is_over_words());
    let body = html! {
        @for (index, row) in rows.iter().enumerate() {
            tr.own[own == Some(index)] { @for (column, cell) in row.iter().enumerate() {
                @if column == 0 { th scope="row" { (cell) } } @else { td.words[words(column)] { (cell) } }
            } }
        }
    };
    table(title, remark, &heads_row(heads), &body)
}

/// A line of a formula note: the formula, then the same with this scenario's numbers.
#[must_use]
pub(crate) fn worked(what: &str, formula: &str, numbers: &str) -> Markup {
    html! { p { b { (what) } br; (formula) span.sum { (numbers) } } }
}

/// The heading of a set-up's column.
#[must_use]
pub(crate) fn column(side: Side) -> Markup {
    html! { th scope="col" { (name(side)) } }
}
