//! The workshop sheet: what every section decided, on one page. `www/page.js` makes the text to send from the same page.
//!
//! Each section gives one [`Block`]; a further section plugs in with one line in [`blocks`].

use super::words::name;
use super::{cage, lap_sheet, position, ride, rings, tyre};
use crate::report::{Report, Side};
use maud::{Markup, html};

/// What one section decided.
#[derive(Debug)]
pub(super) struct Block {
    title: &'static str,
    /// What there is to know, in order.
    pub(super) parts: Vec<Part>,
    /// What to check by hand. The same caution from two sections is printed once.
    pub(super) cautions: Vec<String>,
}

/// One thing on the sheet: of set-up A or B alone, or of both.
#[derive(Debug)]
pub(super) struct Part {
    side: Option<Side>,
    what: String,
    body: Body,
}

#[derive(Debug)]
enum Body {
    /// A value in words.
    Words(String),
    /// A small table; the first row is its head.
    Grid(Vec<Vec<String>>),
    /// Room to write in.
    Blank,
}

impl Block {
    /// An empty block.
    pub(super) const fn new(title: &'static str) -> Self {
        Self { title, parts: Vec::new(), cautions: Vec::new() }
    }

    /// Adds a value that holds for both set-ups.
    pub(super) fn row(&mut self, what: &str, value: String) {
        self.parts.push(Part { side: None, what: what.to_owned(), body: Body::Words(value) });
    }

    /// Adds a value of one set-up.
    pub(super) fn row_of(&mut self, side: Side, what: &str, value: String) {
        self.parts.push(Part { side: Some(side), what: what.to_owned(), body: Body::Words(value) });
    }

    /// Adds a small table of one set-up; its first row is the head.
    pub(super) fn grid_of(&mut self, side: Side, what: &str, rows: Vec<Vec<String>>) {
        self.parts.push(Part { side: Some(side), what: what.to_owned(), body: Body::Grid(rows) });
    }
}

impl Part {
    /// Room to write something in by hand.
    pub(super) fn blank(what: &str) -> Self {
        Self { side: None, what: what.to_owned(), body: Body::Blank }
    }

    fn is_for(&self, chosen: Option<Side>) -> bool {
        self.side.is_none() || chosen.is_none() || self.side == chosen
    }
}

/// The blocks of all sections, in the order of the page, with what the chosen set-up needs.
fn blocks(report: &Report) -> Vec<Block> {
    let mut blocks = vec![rings::block(report), cage::block(report), ride::block(report)];
    blocks.extend(lap_sheet::block(report));
    blocks.extend([tyre::block(report), position::block(report)]);
    for block in &mut blocks {
        block.parts.retain(|part| part.is_for(report.sheet_for));
    }
    blocks
}

/// Every caution once, in the order of the sections.
fn cautions(blocks: &[Block]) -> Vec<&str> {
    let mut once: Vec<&str> = Vec::new();
    for caution in blocks.iter().flat_map(|block| &block.cautions) {
        if !once.contains(&caution.as_str()) {
            once.push(caution);
        }
    }
    once
}

fn title(report: &Report) -> &'static str {
    match report.sheet_for {
        None => "Set-ups A and B",
        Some(Side::A) => "Set-up A",
        Some(Side::B) => "Set-up B",
    }
}

/// The sheet as it is printed. `link` is the part of the address that holds the bench.
#[must_use]
pub(super) fn page(report: &Report, link: &str, doubts: &Markup) -> Markup {
    let blocks = blocks(report);
    html! {
        header {
            p.title { "Workshop sheet" }
            p { (title(report)) }
            p.blanks { span { "Bike" } span { "Rider" } span { "Date" } }
        }
        (doubts)
        div.columns.(density(&blocks, doubts)) {
            @for block in &blocks { (block_of(block)) }
            div.checks {
                h3 { "Before riding" }
                ul { @for caution in cautions(&blocks) { li { (caution) } } }
            }
        }
        footer {
            p { "Makers’ limits, your organiser’s rules and a mechanic’s look at the real bike come before any number here." }
            p.link { "This set-up again: " span data-base {} "#" (link) }
        }
    }
}

/// How small the type must be for the sheet to stay on one page, from an estimate of its lines in two columns.
fn density(blocks: &[Block], doubts: &Markup) -> &'static str {
    let checks: usize =
        wrapped(&doubts.0, 110) + cautions(blocks).iter().map(|caution| wrapped(caution, 56)).sum::<usize>();
    let parts = blocks.iter().flat_map(|block| &block.parts);
    let lines: usize = parts.map(lines_of).sum::<usize>() + checks + 3 * blocks.len();
    match lines {
        0..=140 => "roomy",
        141..=172 => "dense",
        173..=188 => "denser",
        189..=206 => "densest",
        _ => "fullest",
    }
}

/// Lines that a part fills; the tables of A and B stand side by side.
fn lines_of(part: &Part) -> usize {
    match &part.body {
        Body::Words(words) => wrapped(words, 36),
        Body::Blank => 1,
        Body::Grid(rows) => (rows.len() + 1).div_ceil(2),
    }
}

fn wrapped(words: &str, width: usize) -> usize {
    words.len().div_ceil(width)
}

fn block_of(block: &Block) -> Markup {
    html! {
        div.block {
            h3 { (block.title) }
            dl {
                @for part in &block.parts {
                    @if let Body::Words(_) | Body::Blank = part.body {
                        div { dt { (heading(part)) } dd.blank[matches!(part.body, Body::Blank)] { @if let Body::Words(words) = &part.body { (words) } } }
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
            caption { (heading(part)) }
            @for (index, row) in rows.iter().enumerate() {
                tr { @for (place, cell) in row.iter().enumerate() {
                    @if cell.is_empty() { td {} } @else if index == 0 { th scope="col" { (cell) } } @else if place == 0 { th scope="row" { (cell) } } @else { td { (cell) } }
                } }
            }
        }
    }
}
