//! Every gear of both set-ups, with every number of the pictures.

use crate::layout::pieces::table;
use crate::number::{plain, rpm};
use crate::rings::section::RingsSection;
use crate::rings::setup::{GearLine, SetupReport};
use crate::rings::words;
use crate::units;
use maud::{Markup, html};

/// One table for each set-up, folded away until wanted.
#[must_use]
pub(crate) fn tables(report: &RingsSection) -> Markup {
    html! {
        details #all-gears {
            summary { (words::gears::ALL) }
            @for setup in &report.rings.setups { (gear_table(report, setup)) }
            p.quiet { (words::gears::LEGEND) }
        }
    }
}

fn gear_table(report: &RingsSection, setup: &SetupReport) -> Markup {
    let (low, usual, high) = (report.rings.window.low, report.rings.window.usual, report.rings.window.high);
    let head = html! {
        tr {
            th scope="col" { (words::gears::GEAR) }
            th scope="col" { (words::gears::RATIO) }
            th scope="col" { (words::gears::DEVELOPMENT) }
            th scope="col" { (words::gears::GEAR_INCHES) }
            @for cadence in [low, usual, high] {
                th scope="col" { (words::gears::speed_at(units::speeds().symbol(), &rpm(cadence))) }
            }
            th scope="col" { (words::gears::SLACK) }
            th.words scope="col" { (words::gears::REMARK) }
        }
    };
    let body = html! { @for row in setup.gears.iter().rev() { (gear_row(row)) } };
    table(&words::gears::title(setup), "", &head, &body)
}

fn gear_row(row: &GearLine) -> Markup {
    html! {
        tr {
            th scope="row" { (row.gear) }
            td { (plain(row.gear.ratio().value(), 3)) }
            td { (units::distances().print(row.development.m(), 3)) }
            td { (plain(row.inches.inches(), 1)) }
            @for speed in [row.speed_low, row.speed_usual, row.speed_high] { td { (units::speed_number(speed)) } }
            td { (row.slack) }
            td.words { (words::gears::flags(row)) }
        }
    }
}
