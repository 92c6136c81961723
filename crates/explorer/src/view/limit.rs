//! The roll-out limit of a race: which sprockets pass.

use super::words::{name, table};
use crate::number::with_unit;
use crate::report::{Report, SetupReport};
use gear_math::{Gear, RingPasses, RollOutLimit, Sprocket};
use maud::{Markup, html};

/// Which gears pass, when a limit is set.
#[must_use]
pub(super) fn table_of(report: &Report) -> Markup {
    let Some(limit) = report.limit else { return html! {} };
    let head = html! {
        tr {
            th scope="col" { "Set-up and ring" }
            th.words scope="col" { "Pass" }
            th.words scope="col" { "Too close to call: measure" }
            th.words scope="col" { "Too long, to be blocked" }
        }
    };
    let body = html! { @for setup in &report.setups { (rows(report, setup, limit)) } };
    let title = format!("Roll-out limit of {}", with_unit(limit.m(), 2, "m"));
    html! { (table(&title, RollOutLimit::MEASURED_DECIDES, &head, &body)) }
}

fn rows(report: &Report, setup: &SetupReport, limit: RollOutLimit) -> Markup {
    html! {
        @for ring in limit.test(&setup.drivetrain, report.wheel.roll_out()) { (row(report, setup, limit, &ring)) }
    }
}

/// Without a measured roll-out, gears that the wheel's uncertainty leaves open stand apart from those that are clear.
fn row(report: &Report, setup: &SetupReport, limit: RollOutLimit, ring: &RingPasses<'_>) -> Markup {
    let estimate = report.wheel.estimate();
    let is_open = |&&sprocket: &&Sprocket| {
        report.wheel.measured.is_none() && limit.is_undecided(Gear { ring: ring.ring, sprocket }, &estimate)
    };
    let clear = |sprockets: &[Sprocket]| teeth(sprockets.iter().filter(|sprocket| !is_open(sprocket)));
    html! {
        tr {
            th scope="row" { (name(setup.side)) " " (ring.ring) }
            td.words { (clear(ring.passes)) }
            td.words { (teeth(ring.too_long.iter().chain(ring.passes).filter(is_open))) }
            td.words { (clear(ring.too_long)) }
        }
    }
}

fn teeth<'s>(sprockets: impl Iterator<Item = &'s Sprocket>) -> String {
    let teeth: Vec<String> = sprockets.map(ToString::to_string).collect();
    if teeth.is_empty() { "none".to_owned() } else { teeth.join(" ") }
}
