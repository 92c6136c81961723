//! Steps: in sprocket order, in riding order, at the front change.

use crate::layout::pieces::column;
use crate::layout::pieces::table;
use crate::number::percent;
use crate::rings::section::RingsSection;
use crate::rings::setup::SetupReport;
use crate::rings::words::steps as words;
use crate::side::Side;
use gear_math::gears::GearStep;
use maud::{Markup, html};

/// Step sizes of both set-ups.
#[must_use]
pub(crate) fn tables(report: &RingsSection) -> Markup {
    let head = html! { tr { td {} (column(Side::A)) (column(Side::B)) } };
    let spread = |pick: fn(&gear_math::gears::StepSpread) -> GearStep| {
        move |setup: &SetupReport| {
            setup.steps.as_ref().map_or(words::NONE.to_owned(), |steps| percent(pick(steps).percent(), 1))
        }
    };
    let body = html! {
        (row(report, words::MEAN, spread(|steps| steps.mean)))
        (row(report, words::LARGEST, spread(|steps| steps.largest)))
        (row(report, words::EQUAL, spread(|steps| steps.equal)))
        (row(report, words::DOUBLES, double_shifts))
        (row(report, words::LARGEST_OF_SPROCKETS, largest_sprocket_step))
        (row(report, words::EQUAL_OF_SPROCKETS, |setup| optional(setup.drivetrain.cassette.equal_step())))
    };
    html! {
        (table(words::TITLE, "", &head, &body))
        div.prose {
            @for setup in &report.rings.setups { (front_changes(setup)) }
            p.quiet { (words::RIDING_ORDER) }
        }
        details #all-steps {
            summary { (words::EVERY) }
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
    step.map_or(words::NONE.to_owned(), |step| percent(step.percent(), 1))
}

fn double_shifts(setup: &SetupReport) -> String {
    setup.summary.riding_order.double_shifts().to_string()
}

fn largest_sprocket_step(setup: &SetupReport) -> String {
    setup.drivetrain.cassette.largest_step().map_or(words::NONE.to_owned(), |step| {
        words::between(&percent(step.step.percent(), 1), &step.smaller.to_string(), &step.larger.to_string())
    })
}

fn front_changes(setup: &SetupReport) -> Markup {
    let changes = &setup.summary.front_changes;
    html! {
        @if changes.is_empty() { p { (words::one_ring(setup.side)) } }
        @for change in changes { p { (words::front_change(setup.side, change)) } }
    }
}

fn sprocket_steps(setup: &SetupReport) -> Markup {
    let head = html! { tr { th scope="col" { (words::SPROCKETS) } th scope="col" { (words::STEP) } } };
    let body = html! {
        @for step in setup.drivetrain.cassette.steps() {
            tr { th scope="row" { (words::sprockets(&step.smaller.to_string(), &step.larger.to_string())) } td { (percent(step.step.percent(), 1)) } }
        }
    };
    table(&words::in_sprocket_order(setup.side), "", &head, &body)
}

fn riding_steps(setup: &SetupReport) -> Markup {
    let head = html! { tr { th scope="col" { (words::FROM) } th scope="col" { (words::TO) } th scope="col" { (words::STEP) } th.words scope="col" { (words::SHIFT) } } };
    let body = html! {
        @for step in &setup.riding {
            tr {
                th scope="row" { (setup.gears[step.from].gear) }
                td { (setup.gears[step.to].gear) }
                td { (percent(step.step.percent(), 1)) }
                td.words { (words::shift(step.kind)) }
            }
        }
    };
    table(&words::in_riding_order(setup.side), "", &head, &body)
}
