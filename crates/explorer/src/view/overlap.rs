//! Overlap: of the rings inside one set-up, and of A against B.

use super::gears::column;
use super::words::{name, table};
use crate::number::{percent, with_unit};
use crate::report::{Reach, Report, SetupReport, Side};
use maud::{Markup, html};

/// What each set-up has twice, what both have, what only one reaches.
#[must_use]
pub(super) fn tables(report: &Report) -> Markup {
    html! {
        div.prose { (reaches(report)) }
        (inside(report))
        (shared(report))
    }
}

fn reaches(report: &Report) -> Markup {
    html! {
        @if report.reach.iter().all(Option::is_none) {
            p { (name(Side::A)) " and " (name(Side::B)) " reach equally far at both ends." }
        }
        @for reach in report.reach.iter().flatten() { p { (only(report, reach)) } }
    }
}

fn only(report: &Report, reach: &Reach) -> Markup {
    let (slow, fast) = reach.span.speeds_at(report.window.usual);
    html! {
        "Only " (name(reach.side)) " reaches from " (with_unit(reach.span.from.m(), 2, "m")) " to "
        (with_unit(reach.span.to.m(), 2, "m")) " of development: " (report.unit.print(slow)) " to "
        (report.unit.print(fast)) " at " (with_unit(report.window.usual.rpm(), 0, "rpm")) "."
    }
}

fn inside(report: &Report) -> Markup {
    let [a, b] = &report.setups;
    let head = html! { tr { td {} (column(a)) (column(b)) } };
    let row = |what: &str, value: &dyn Fn(&SetupReport) -> String| {
        html! { tr { th scope="row" { (what) } @for setup in &report.setups { td.words { (value(setup)) } } } }
    };
    let body = html! {
        (row("Gears another ring reaches too", &|setup| overlap_of(report, setup).inside.to_string()))
        (row("Gears of one ring alone", &|setup| overlap_of(report, setup).outside.to_string()))
        (row(&format!("The same within {}", percent(report.tolerance.percent(), 1)), &|setup| duplicates(report, setup)))
    };
    table(
        "Overlap of the rings",
        "A gear counts as overlapping when it lies inside the stretch that both rings can reach.",
        &head,
        &body,
    )
}

fn overlap_of<'r>(report: &'r Report, setup: &SetupReport) -> &'r gear_math::RingOverlap {
    match setup.side {
        Side::A => &report.comparison.a.overlap,
        Side::B => &report.comparison.b.overlap,
    }
}

fn duplicates(report: &Report, setup: &SetupReport) -> String {
    let pairs: Vec<String> = overlap_of(report, setup)
        .duplicates
        .iter()
        .map(|pair| format!("{} and {}", pair.on_larger, pair.on_smaller))
        .collect();
    if pairs.is_empty() { "none".to_owned() } else { pairs.join("; ") }
}

fn shared(report: &Report) -> Markup {
    let head = html! { tr { (column(report.setup(Side::A))) (column(report.setup(Side::B))) th scope="col" { "Apart" } } };
    let body = html! {
        @for tie in &report.common {
            tr {
                th scope="row" { (report.setup(Side::A).gears[tie.a].gear) }
                td { (report.setup(Side::B).gears[tie.b].gear) }
                td { (percent(tie.step.percent(), 2)) }
            }
        }
    };
    let title = format!("Gears that A and B have in common: {}", report.common.len());
    html! { @if !report.common.is_empty() { (table(&title, "", &head, &body)) } }
}
