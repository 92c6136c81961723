//! Every gear of both set-ups, with every number of the pictures.

use crate::layout::pieces::table;
use crate::number::{plain, rpm, with_unit};
use crate::rings::section::RingsSection;
use crate::rings::setup::{GearLine, SetupReport};
use maud::{Markup, html};

/// One table for each set-up, folded away until wanted.
#[must_use]
pub(crate) fn tables(report: &RingsSection) -> Markup {
    html! {
        details #all-gears {
            summary { "All gears in numbers" }
            @for setup in &report.rings.setups { (gear_table(report, setup)) }
            p.quiet { "Cross-chained: by common practice, where the chain runs at its steepest. Twice: another gear of the same set-up within your tolerance is counted instead. Slack: chain the cage has to take up, counted from the largest ring with the largest sprocket. Never use: the chain hangs there or is too short, or you switched the gear off; such gears count as neither useful, lowest nor highest. Where a table is wider than the screen it goes on to the right: scroll it sideways." }
        }
    }
}

fn gear_table(report: &RingsSection, setup: &SetupReport) -> Markup {
    let (low, usual, high) = (report.rings.window.low, report.rings.window.usual, report.rings.window.high);
    let head = html! {
        tr {
            th scope="col" { "Gear" }
            th scope="col" { "Ratio" }
            th scope="col" { "Development" }
            th scope="col" { "Gear inches" }
            @for cadence in [low, usual, high] {
                th scope="col" { (report.rings.unit.symbol()) " at " (rpm(cadence)) }
            }
            th scope="col" { "Slack, teeth" }
            th.words scope="col" { "Remark" }
        }
    };
    let body = html! { @for row in setup.gears.iter().rev() { (gear_row(report, row)) } };
    let title = format!("{}: {} with {}", setup.side, setup.drivetrain.chainset, setup.drivetrain.cassette);
    html! { (table(&title, "", &head, &body)) }
}

fn gear_row(report: &RingsSection, row: &GearLine) -> Markup {
    html! {
        tr {
            th scope="row" { (row.gear) }
            td { (plain(row.gear.ratio().value(), 3)) }
            td { (with_unit(row.development.m(), 3, "m")) }
            td { (plain(row.inches.inches(), 1)) }
            @for speed in [row.speed_low, row.speed_usual, row.speed_high] { td { (plain(report.rings.unit.value(speed), 1)) } }
            td { (row.slack) }
            td.words { (flags(row)) }
        }
    }
}

/// Flags of a gear in words; empty when there is nothing to say.
#[must_use]
pub(crate) fn flags(row: &GearLine) -> String {
    let mut words = Vec::new();
    if row.crossed {
        words.push("cross-chained");
    }
    if row.duplicate {
        words.push("twice");
    }
    if row.avoid {
        words.push("never use");
    }
    words.join(", ")
}
