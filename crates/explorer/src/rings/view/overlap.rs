//! Overlap: of the rings inside one set-up, and of A against B.

use crate::layout::pieces::column;
use crate::layout::pieces::{name, table};
use crate::number::{percent, rpm, with_unit};
use crate::rings::report::Reach;
use crate::rings::section::RingsSection;
use crate::rings::setup::{GearLine, SetupReport};
use crate::side::Side;
use gear_math::gears::GearStep;
use maud::{Markup, html};

/// What each set-up has twice, what both have, what only one reaches.
#[must_use]
pub(crate) fn tables(report: &RingsSection) -> Markup {
    html! {
        div.prose { (reaches(report)) }
        (inside(report))
        (shared(report))
    }
}

fn reaches(report: &RingsSection) -> Markup {
    html! {
        @if report.rings.reach.iter().all(Option::is_none) {
            p { "Within " (percent(report.rings.tolerance.percent(), 1)) " " (name(Side::A)) " and " (name(Side::B)) " reach equally far at both ends." }
        }
        @for reach in report.rings.reach.iter().flatten() { p { (only(report, reach)) } }
        @if report.rings.setups.iter().any(|setup| !setup.avoided().is_empty()) { p.quiet { "Gears to avoid are left out here." } }
    }
}

fn only(report: &RingsSection, reach: &Reach) -> Markup {
    let (slow, fast) = reach.span.speeds_at(report.rings.window.usual);
    let from_to = |from: String, to: String| if from == to { from } else { format!("{from} to {to}") };
    let [from, to] = [reach.span.from, reach.span.to].map(|development| with_unit(development.m(), 2, "m"));
    html! {
        "Only " (name(reach.side)) " reaches " (from_to(from, to)) " of development: "
        (from_to(report.rings.unit.print(slow), report.rings.unit.print(fast))) " at " (rpm(report.rings.window.usual)) "."
    }
}

fn inside(report: &RingsSection) -> Markup {
    let head = html! { tr { td {} @for side in Side::BOTH { th.words scope="col" { (name(side)) } } } };
    let row = |what: &str, value: &dyn Fn(&SetupReport) -> String| {
        html! { tr { th scope="row" { (what) } @for setup in &report.rings.setups { td.words { (value(setup)) } } } }
    };
    let body = html! {
        (row("Gears another ring reaches too", &|setup| setup.summary.overlap.inside.to_string()))
        (row("Gears of one ring alone", &|setup| setup.summary.overlap.outside.to_string()))
        (row(&format!("The same within {}", percent(report.rings.tolerance.percent(), 1)), &|setup| duplicates(setup)))
    };
    table(
        "Overlap of the rings",
        "A gear counts as overlapping when it lies inside the stretch that both rings can reach.",
        &head,
        &body,
    )
}

fn duplicates(setup: &SetupReport) -> String {
    let pairs: Vec<String> = setup
        .summary
        .overlap
        .duplicates
        .iter()
        .map(|pair| format!("{} and {}", pair.on_larger, pair.on_smaller))
        .collect();
    if pairs.is_empty() { "none".to_owned() } else { pairs.join("; ") }
}

fn shared(report: &RingsSection) -> Markup {
    let head = html! { tr { (column(Side::A)) (column(Side::B)) th scope="col" { "Apart" } } };
    let (a, b) = (report.rings.setup(Side::A), report.rings.setup(Side::B));
    let pair = |a: &GearLine, b: &GearLine, step: GearStep| {
        html! { tr { th scope="row" { (a.gear) } td { (b.gear) } td { (percent(step.percent(), 2)) } } }
    };
    let common =
        html! { @for tie in &report.rings.common { (pair(&a.gears[tie.a], &b.gears[tie.b], tie.step)) } };
    let near =
        html! { @for near in &report.rings.near { (pair(&a.gears[near.a], &b.gears[near.b], near.step)) } };
    let title = format!("Gears that A and B have in common: {}", report.rings.common.len());
    html! {
        @if !report.rings.common.is_empty() {
            (table(&title, "Each gear is counted once, so neighbours that both lie within the tolerance of one gear make one pair.", &head, &common))
        }
        @if !report.rings.near.is_empty() {
            details #near-pairs {
                summary { "Every near pair in numbers" }
                (table("Pairs within twice the tolerance", "", &head, &near))
            }
        }
    }
}
