//! The workshop sheet: what every section decided, on one page. `www/sheet.js` makes the text to send from the same page.
//!
//! Each section gives one `Block`.

use crate::lap::inputs::CourseChoice;
use crate::layout::pieces::name;
use crate::layout::sheet_block::{Block, Body, Part};
use crate::layout::sheet_checks::{Check, checks};
use crate::layout::words::sheet as layout_words;
use crate::page::questions::{self, Asked};
use crate::page::report::Report;
use crate::page::words::sheet as words;
use maud::{Markup, html};

/// The blocks of all sections, in the order of the page, with what the chosen set-up needs.
pub(crate) fn blocks(report: &Report) -> Vec<Block> {
    let ready = |question: &dyn Asked| {
        let mut block = question.block(report)?;
        block.parts.retain(|part| part.is_for(report.sheet_for));
        if !report.owners.is_example {
            block.leave_open(&report.owners, &|field| question.rests_on(field));
        }
        Some(block)
    };
    questions::all().filter_map(ready).collect()
}

/// The sheet as it is printed. `link` is the part of the address that holds the bench.
#[must_use]
pub(crate) fn page(report: &Report, link: &str, doubts: &Markup) -> Markup {
    let blocks = blocks(report);
    let to_check: Vec<&Check> = blocks.iter().flat_map(|block| &block.checks).collect();
    html! {
        header {
            p.title { (words::PAPER) }
            p { (words::setups(report.sheet_for)) }
            @if report.owners.is_example { p.example { (words::EXAMPLE) } }
            p.blanks { @for blank in words::BLANKS { span { (blank) } } }
        }
        (doubts)
        div.columns {
            @for block in &blocks { (block_of(block)) }
            div.checks {
                h3 { (words::CHECKS) }
                (checks(&to_check))
            }
            div.code data-code {}
        }
        footer {
            p.spares { (words::SPARED) }
            p { (words::LIMITS) }
            p.link { (words::LINK) span data-base=(words::BEHIND_ADDRESS) {} "#" (link) }
            @if report.lap_inputs.choice == CourseChoice::Own { p { (words::NOT_IN_LINK) } }
        }
    }
}

fn block_of(block: &Block) -> Markup {
    html! {
        div.block {
            h3 { (block.title) }
            dl {
                @for part in &block.parts {
                    @match &part.body {
                        Body::Words(value) => div.warns[part.is_warning] { dt { (heading(part)) } dd { (value) } },
                        Body::Blank => div { dt { (heading(part)) } dd.blank {} },
                        Body::Open => div.open { dt { (heading(part)) } dd { (layout_words::OPEN) } },
                        Body::Grid(_) => {}
                    }
                }
            }
            div.grids { @for part in &block.parts { @if let Body::Grid(rows) = &part.body { (grid(part, rows)) } } }
        }
    }
}

fn heading(part: &Part) -> Markup {
    html! { @if let Some(side) = part.side { (name(side)) " " } (part.what) }
}

fn grid(part: &Part, rows: &[Vec<String>]) -> Markup {
    html! {
        table {
            @for (index, row) in rows.iter().enumerate() {
                tr { @for (place, cell) in row.iter().enumerate() {
                    @if index == 0 && place == 0 { th scope="col" { (heading(part)) } } @else if cell.is_empty() { td {} } @else if index == 0 { th scope="col" { (cell) } } @else if place == 0 { th scope="row" { (cell) } } @else { td { (cell) } }
                } }
            }
        }
    }
}
