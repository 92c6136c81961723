//! The workshop sheet: what every section decided, on one page. `www/sheet.js` makes the text to send from the same page.
//!
//! Each section gives one [`Block`]; a further section plugs in with one line in [`blocks`].

use super::sheet_checks::{Check, Concern, checks};
use super::words::name;
use super::{cage, lap_sheet, position, ride, rings, tyre_sheet};
use crate::field::{Field, Group};
use crate::owner::{Owner, Owners, Section};
use crate::report::{Report, Side};
use crate::scenario::CourseChoice;
use maud::{Markup, html};

/// What one section decided.
#[derive(Debug)]
pub(super) struct Block {
    title: &'static str,
    /// What there is to know, in order.
    pub(super) parts: Vec<Part>,
    /// What to check by hand. The same check from two sections is printed once.
    checks: Vec<Check>,
}

/// One thing on the sheet: of set-up A or B alone, or of both.
#[derive(Debug)]
pub(super) struct Part {
    side: Option<Side>,
    what: String,
    body: Body,
    /// The fields it rests on, where it is not all of the section's.
    rests_on: Option<&'static [Field]>,
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
        Self { title, parts: Vec::new(), checks: Vec::new() }
    }

    /// Adds something to check by hand, or how to measure it.
    pub(super) fn check(&mut self, concern: Concern, words: impl Into<String>) {
        self.checks.push(Check::new(concern, words));
    }

    /// Adds a value that holds for both set-ups.
    pub(super) fn row(&mut self, what: &str, value: String) {
        self.parts.push(Part::new(None, what, Body::Words(value)));
    }

    /// Adds a value of one set-up.
    pub(super) fn row_of(&mut self, side: Side, what: &str, value: String) {
        self.parts.push(Part::new(Some(side), what, Body::Words(value)));
    }

    /// Adds a small table of one set-up; its first row is the head.
    pub(super) fn grid_of(&mut self, side: Side, what: &str, rows: Vec<Vec<String>>) {
        self.parts.push(Part::new(Some(side), what, Body::Grid(rows)));
    }

    /// Says that the last part rests on nothing but these fields; without that it is all that the section's answer rests on.
    pub(super) fn on(&mut self, fields: &'static [Field]) {
        if let Some(part) = self.parts.last_mut() {
            part.rests_on = Some(fields);
        }
    }

    /// Leaves open what rests on values that are not the rider's, and calls usual what rests on those.
    fn leave_open(&mut self, owners: &Owners, section: Section) {
        for part in &mut self.parts {
            match part.owner(owners, section) {
                Owner::Rider => {}
                Owner::Usual if part.is_usual() => part.call_usual(),
                Owner::Usual => {}
                Owner::Demo | Owner::Unknown => part.body = Body::Words(OPEN.to_owned()),
            }
        }
    }
}

/// What stands on the sheet in place of a value that is not the rider's.
const OPEN: &str = "not known ________";

impl Part {
    fn new(side: Option<Side>, what: &str, body: Body) -> Self {
        Self { side, what: what.to_owned(), body, rests_on: None }
    }

    /// Whose values it rests on; by default it is either the rider's or not, whatever is usual beside that.
    fn owner(&self, owners: &Owners, section: Section) -> Owner {
        if let Some(fields) = self.rests_on {
            return owners.least(fields);
        }
        let others = self.side.map(|side| [Group::SetupB, Group::SetupA][side as usize]);
        let counts = |field: Field| section.rests_on(field) && Some(field.spec().group) != others;
        owners.lacking(counts).map(|field| owners.get(field)).max().unwrap_or(Owner::Rider)
    }

    /// Whether nothing but usual values are behind it.
    fn is_usual(&self) -> bool {
        self.rests_on.is_some_and(|fields| fields.iter().all(|field| field.start_owner() == Owner::Usual))
    }

    fn call_usual(&mut self) {
        if let Body::Words(words) = &mut self.body {
            words.push_str(" (usual)");
        }
    }

    /// Room to write something in by hand.
    pub(super) fn blank(what: &str) -> Self {
        Self { rests_on: Some(&[]), ..Self::new(None, what, Body::Blank) }
    }

    fn is_for(&self, chosen: Option<Side>) -> bool {
        self.side.is_none() || chosen.is_none() || self.side == chosen
    }
}

/// The blocks of all sections, in the order of the page, with what the chosen set-up needs.
fn blocks(report: &Report) -> Vec<Block> {
    let blocks = [
        (Section::Rings, Some(rings::block(report))),
        (Section::Cage, Some(cage::block(report))),
        (Section::Ride, Some(ride::block(report))),
        (Section::Lap, lap_sheet::block(report)),
        (Section::Tyre, Some(tyre_sheet::block(report))),
        (Section::Position, Some(position::block(report))),
    ];
    let ready = |(section, block): (Section, Option<Block>)| {
        let mut block = block?;
        block.parts.retain(|part| part.is_for(report.sheet_for));
        if !report.owners.is_example {
            block.leave_open(&report.owners, section);
        }
        Some(block)
    };
    blocks.into_iter().filter_map(ready).collect()
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
    let to_check: Vec<&Check> = blocks.iter().flat_map(|block| &block.checks).collect();
    html! {
        header {
            p.title { "Workshop sheet" }
            p { (title(report)) }
            @if report.owners.is_example { p.example { "EXAMPLE: the demo’s bike and rider, not yours" } }
            p.blanks { span { "Bike" } span { "Rider" } span { "Date" } }
        }
        (doubts)
        div.columns {
            @for block in &blocks { (block_of(block)) }
            div.checks {
                h3 { "Before riding" }
                (checks(&to_check))
            }
        }
        footer {
            p { "Makers’ limits, your organiser’s rules and a mechanic’s look at the real bike come before any number here." }
            p.link { "This set-up again: " span data-base {} "#" (link) }
            @if report.lap_inputs.choice == CourseChoice::Own { p { "The recorded course is not in that link: keep its file." } }
        }
    }
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
            @for (index, row) in rows.iter().enumerate() {
                tr { @for (place, cell) in row.iter().enumerate() {
                    @if index == 0 && place == 0 { th scope="col" { (heading(part)) } } @else if cell.is_empty() { td {} } @else if index == 0 { th scope="col" { (cell) } } @else if place == 0 { th scope="row" { (cell) } } @else { td { (cell) } }
                } }
            }
        }
    }
}
