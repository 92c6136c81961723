//! Overlap: of the rings inside one set-up, and of A against B.

use crate::layout::line::Line;
use crate::layout::pieces::column;
use crate::layout::pieces::{name, table};
use crate::number::{percent, rpm};
use crate::rings::report::Reach;
use crate::rings::section::RingsSection;
use crate::rings::setup::{GearLine, SetupReport};
use crate::rings::words::overlap as words;
use crate::side::Side;
use crate::units;
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
    let rings = &report.rings;
    html! {
        @if rings.reach.iter().all(Option::is_none) { p { (words::equally_far(&percent(rings.tolerance.percent(), 1))) } }
        @for reach in rings.reach.iter().flatten() { p { (only(report, reach)) } }
        @if rings.setups.iter().any(|setup| !setup.avoided().is_empty()) { p.quiet { (words::AVOIDED) } }
    }
}

fn only(report: &RingsSection, reach: &Reach) -> Line {
    let usual = report.rings.window.usual;
    let (slow, fast) = reach.span.speeds_at(usual);
    let developments = [reach.span.from, reach.span.to].map(|it| report.rings.gear(reach.side, it, 2));
    words::only(reach.side, developments, [slow, fast].map(units::speed), &rpm(usual))
}

fn inside(report: &RingsSection) -> Markup {
    let head = html! { tr { td {} @for side in Side::BOTH { th.words scope="col" { (name(side)) } } } };
    let row = |what: &str, value: &dyn Fn(&SetupReport) -> String| {
        html! { tr { th scope="row" { (what) } @for setup in &report.rings.setups { td.words { (value(setup)) } } } }
    };
    let body = html! {
        (row(words::INSIDE, &|setup| setup.summary.overlap.inside.to_string()))
        (row(words::OUTSIDE, &|setup| setup.summary.overlap.outside.to_string()))
        (row(&words::same_within(&percent(report.rings.tolerance.percent(), 1)), &|setup| duplicates(setup)))
    };
    table(words::OF_RINGS, words::WHAT_COUNTS, &head, &body)
}

fn duplicates(setup: &SetupReport) -> String {
    let pairs: Vec<String> = setup
        .summary
        .overlap
        .duplicates
        .iter()
        .map(|pair| words::same(&pair.on_larger.to_string(), &pair.on_smaller.to_string()))
        .collect();
    if pairs.is_empty() { words::NONE.to_owned() } else { pairs.join("; ") }
}

fn shared(report: &RingsSection) -> Markup {
    let head = html! { tr { (column(Side::A)) (column(Side::B)) th scope="col" { (words::APART) } } };
    let (a, b) = (report.rings.setup(Side::A), report.rings.setup(Side::B));
    let pair = |a: &GearLine, b: &GearLine, step: GearStep| {
        html! { tr { th scope="row" { (a.gear) } td { (b.gear) } td { (percent(step.percent(), 2)) } } }
    };
    let common =
        html! { @for tie in &report.rings.common { (pair(&a.gears[tie.a], &b.gears[tie.b], tie.step)) } };
    let near =
        html! { @for near in &report.rings.near { (pair(&a.gears[near.a], &b.gears[near.b], near.step)) } };
    let title = words::in_common(report.rings.common.len());
    html! {
        @if !report.rings.common.is_empty() {
            (table(&title, words::COUNTED_ONCE, &head, &common))
        }
        @if !report.rings.near.is_empty() {
            details #near-pairs {
                summary { (words::NEAR_PAIRS) }
                (table(words::NEAR, "", &head, &near))
            }
        }
    }
}
