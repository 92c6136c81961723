//! Steps: in sprocket order, in riding order, at the front change.

use crate::layout::pieces::column;
use crate::layout::pieces::{name, table};
use crate::number::{counted, percent};
use crate::rings::section::RingsSection;
use crate::rings::setup::SetupReport;
use crate::side::Side;
use gear_math::gears::{FrontChange, GearStep};
use maud::{Markup, html};

/// Step sizes of both set-ups.
#[must_use]
pub(crate) fn tables(report: &RingsSection) -> Markup {
    let head = html! { tr { td {} (column(Side::A)) (column(Side::B)) } };
    let spread = |pick: fn(&gear_math::gears::StepSpread) -> GearStep| {
        move |setup: &SetupReport| {
            setup.steps.as_ref().map_or("none".to_owned(), |steps| percent(pick(steps).percent(), 1))
        }
    };
    let body = html! {
        (row(report, "Riding up: mean step", spread(|steps| steps.mean)))
        (row(report, "Riding up: largest step", spread(|steps| steps.largest)))
        (row(report, "Riding up: step if all were equal", spread(|steps| steps.equal)))
        (row(report, "Double shifts on the way", double_shifts))
        (row(report, "Sprockets: largest step", largest_sprocket_step))
        (row(report, "Sprockets: step if all were equal", |setup| optional(setup.drivetrain.cassette.equal_step())))
    };
    html! {
        (table("Steps", "", &head, &body))
        div.prose {
            @for setup in &report.rings.setups { (front_changes(setup)) }
            p.quiet { "Riding order: up through all useful sprockets of the smallest ring, over to the next ring where it first goes on higher, and so on; cross-chained gears and gears you already have are left out. A double shift moves both derailleurs at once." }
        }
        details #all-steps {
            summary { "Every step in numbers" }
            @for setup in &report.rings.setups {
                @if setup.drivetrain.cassette.sprockets().len() > 1 { (sprocket_steps(setup)) }
                @if !setup.riding.is_empty() { (riding_steps(setup)) }
            }
        }
    }
}

fn row(report: &RingsSection, what: &str, value: impl Fn(&SetupReport) -> String) -> Markup {
    html! { tr { th scope="row" { (what) } @for setup in &report.rings.setups { td { (value(setup)) } } } }
}

fn optional(step: Option<GearStep>) -> String {
    step.map_or("none".to_owned(), |step| percent(step.percent(), 1))
}

fn double_shifts(setup: &SetupReport) -> String {
    setup.summary.riding_order.double_shifts().to_string()
}

fn largest_sprocket_step(setup: &SetupReport) -> String {
    setup.drivetrain.cassette.largest_step().map_or("none".to_owned(), |step| {
        format!("{}, {} to {}", percent(step.step.percent(), 1), step.smaller, step.larger)
    })
}

fn front_changes(setup: &SetupReport) -> Markup {
    let changes = &setup.summary.front_changes;
    html! {
        @if changes.is_empty() { p { (name(setup.side)) ": one ring, no front change." } }
        @for change in changes { p { (name(setup.side)) ": " (front_change(change)) } }
    }
}

fn front_change(change: &FrontChange) -> Markup {
    let made_up = match &change.rear_shifts {
        Some(range) if *range.end() == 0 => "less than any rear shift".to_owned(),
        Some(range) if range.start() == range.end() => {
            let make = if *range.end() == 1 { "makes" } else { "make" };
            format!("{} {make} up for it", counted(*range.end(), "rear shift", "rear shifts"))
        }
        Some(range) => format!(
            "{} to {} rear shifts make up for it, depending on the sprocket",
            range.start(),
            range.end()
        ),
        None => "no sprocket makes up for it".to_owned(),
    };
    html! { "from the " (change.smaller) " to the " (change.larger) " ring is a step of " (percent(change.step().percent(), 0)) "; " (made_up) ". " }
}

fn sprocket_steps(setup: &SetupReport) -> Markup {
    let title = format!("{}: steps in sprocket order", setup.side);
    let head = html! { tr { th scope="col" { "Sprockets" } th scope="col" { "Step" } } };
    let body = html! {
        @for step in setup.drivetrain.cassette.steps() {
            tr { th scope="row" { (step.smaller) " to " (step.larger) } td { (percent(step.step.percent(), 1)) } }
        }
    };
    table(&title, "", &head, &body)
}

fn riding_steps(setup: &SetupReport) -> Markup {
    let title = format!("{}: steps in riding order", setup.side);
    let head = html! { tr { th scope="col" { "From" } th scope="col" { "To" } th scope="col" { "Step" } th.words scope="col" { "Shift" } } };
    let body = html! {
        @for step in &setup.riding {
            tr {
                th scope="row" { (setup.gears[step.from].gear) }
                td { (setup.gears[step.to].gear) }
                td { (percent(step.step.percent(), 1)) }
                td.words { (step.kind.in_words()) }
            }
        }
    };
    table(&title, "", &head, &body)
}
