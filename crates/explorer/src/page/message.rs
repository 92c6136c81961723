//! The sheet in a few lines, short enough for any message: bikes, decisions, then as many of its rows as there is room for.

use crate::layout::decision::Decision;
use crate::layout::sheet_block::{Block, Body, Part};
use crate::page::questions;
use crate::page::report::Report;
use crate::page::sheet::blocks;
use crate::page::words::message as words;
use crate::page::words::sheet as sheet_words;
use crate::side::Side;

/// Letters at most, as a phone counts them (UTF-16).
pub const MOST: usize = 899;
/// A longer address would leave no room for the sheet.
const LONGEST_LINK: usize = 300;

/// The message; `address` is the whole link, empty where there is none that others can open.
#[must_use]
pub fn message(report: &Report, address: &str) -> String {
    let _in_force = report.units.enter();
    let last = if address.is_empty() || length(address) > LONGEST_LINK {
        sheet_words::LIMITS.to_owned()
    } else {
        format!("{}\n{address}", sheet_words::LIMITS)
    };
    let mut message = words::head(report.sheet_for, report.owners.is_example);
    let blocks = blocks(report);
    let (first, others) = blocks.split_at(blocks.len().min(1));
    let bikes = if report.sheet_for.is_some() { 2 } else { 4 };
    let whole = |line: String| [line, String::new()];
    let head = rows(first, false).take(bikes).chain(rows(others, true)).map(whole);
    let rest = rows(first, false).skip(bikes).chain(rows(others, false)).map(whole);
    for forms in head.chain(decisions(report)).chain(rest) {
        let room = MOST.saturating_sub(length(&message) + length(&last) + 2);
        if let Some(line) = forms.iter().find(|line| !line.is_empty() && length(line) <= room) {
            message.push('\n');
            message.push_str(line);
        }
    }
    message + "\n" + &last
}

fn length(text: &str) -> usize {
    text.encode_utf16().count()
}

/// What is decided on the rider's own values, all of it on the sheet of the demo, which says so; each with its figures, and in short.
fn decisions(report: &Report) -> impl Iterator<Item = [String; 2]> {
    let is_told = report.owners.is_example;
    questions::all().filter(move |question| is_told || !question.is_demos(report)).filter_map(|question| {
        let decision = question.decision(report)?;
        let said =
            |detailed: bool| words::decision(question.name(), &told(&decision, report.sheet_for, detailed));
        Some([true, false].map(said))
    })
}

fn told(decision: &Decision, chosen: Option<Side>, detailed: bool) -> Vec<String> {
    let of = |side: Side| {
        let verdict = &decision.bikes[side as usize];
        words::verdict(&verdict.words, if detailed { &verdict.detail } else { "" })
    };
    match chosen {
        Some(side) => vec![of(side)],
        None if decision.is_of_both() => vec![of(Side::A)],
        None => Side::BOTH.map(|side| words::of(Some(side), &of(side))).to_vec(),
    }
}

/// The rows of the sheet that say something, and warn or do not; what stands behind a table explains the table.
fn rows(blocks: &[Block], warn: bool) -> impl Iterator<Item = String> {
    let parts = blocks.iter().flat_map(before_tables);
    parts.filter(move |part| part.is_warning == warn).filter_map(row)
}

fn row(part: &Part) -> Option<String> {
    let Body::Words(value) = &part.body else { return None };
    Some(words::row(&words::of(part.side, &part.what), value))
}

fn before_tables(block: &Block) -> impl Iterator<Item = &Part> {
    block.parts.iter().take_while(|part| !matches!(part.body, Body::Grid(_)))
}
