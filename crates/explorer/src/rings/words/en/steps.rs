//! Steps: in sprocket order, in riding order, at the front change.

use crate::layout::line::{Line, name};
use crate::number::percent;
use crate::rings::report::RingsReport;
use crate::rings::section::RingsSection;
use crate::rings::setup::{RideStep, SetupReport};
use crate::rings::words::answer::step_sizes;
use crate::side::Side;
use crate::words::counted;
use gear_math::gears::{FrontChange, ShiftKind};

pub(crate) const PICTURE: &str = "The steps, riding up through the gears";
pub(crate) const CAPTION: &str =
    "A column is one shift, as wide and as high as it is large; broken: if all were equal.";
pub(crate) const TITLE: &str = "Steps";
pub(crate) const MEAN: &str = "Riding up: mean step";
pub(crate) const LARGEST: &str = "Riding up: largest step";
pub(crate) const EQUAL: &str = "Riding up: step if all were equal";
pub(crate) const DOUBLES: &str = "Double shifts on the way";
pub(crate) const LARGEST_OF_SPROCKETS: &str = "Sprockets: largest step";
pub(crate) const EQUAL_OF_SPROCKETS: &str = "Sprockets: step if all were equal";
/// Where there is no step.
pub(crate) const NONE: &str = "none";
pub(crate) const RIDING_ORDER: &str = "Riding order: up through all useful sprockets of the smallest ring, over to the next ring where it first goes on higher, and so on; cross-chained gears and gears you already have are left out. A double shift moves both derailleurs at once.";
pub(crate) const EVERY: &str = "Every step in numbers";
pub(crate) const SPROCKETS: &str = "Sprockets";
pub(crate) const STEP: &str = "Step";
pub(crate) const FROM: &str = "From";
pub(crate) const TO: &str = "To";
pub(crate) const SHIFT: &str = "Shift";

/// The picture in one sentence.
pub(crate) fn label(rings: &RingsReport) -> String {
    let [a, b] = rings.setups.each_ref().map(steps_of);
    format!("Step sizes riding up through the gears: {a}; {b}.")
}

fn steps_of(setup: &SetupReport) -> String {
    let (side, steps) = (setup.side, counted(setup.riding.len(), "step", "steps"));
    match &setup.steps {
        Some(spread) => format!("{side} has {steps}, the largest {}", percent(spread.largest.percent(), 0)),
        None => format!("{side} has one gear and no step"),
    }
}

/// Over the steps of one set-up: whether there are double shifts among them.
pub(crate) fn doubles(setup: &SetupReport) -> String {
    match (setup.steps, setup.summary.riding_order.double_shifts()) {
        (None, _) => "one gear, no step".to_owned(),
        (_, 0) => "no double shift".to_owned(),
        (_, doubles) => format!("◆ {}", counted(doubles, "double shift", "double shifts")),
    }
}

/// One step of the picture.
pub(crate) fn step(setup: &SetupReport, step: &RideStep) -> String {
    format!(
        "{side} {from} to {to}: {size} up, {shift}.",
        side = setup.side,
        from = setup.gears[step.from].gear,
        to = setup.gears[step.to].gear,
        size = percent(step.step.percent(), 1),
        shift = shift(step.kind),
    )
}

/// Which derailleurs move.
pub(crate) const fn shift(kind: ShiftKind) -> &'static str {
    kind.in_words()
}

/// A step and the sprockets it lies between.
pub(crate) fn between(size: &str, smaller: &str, larger: &str) -> String {
    format!("{size}, {}", sprockets(smaller, larger))
}

/// From one sprocket to the next.
pub(crate) fn sprockets(smaller: &str, larger: &str) -> String {
    format!("{smaller} to {larger}")
}

/// There is no front change.
pub(crate) fn one_ring(side: Side) -> Line {
    format!("{}: one ring, no front change.", name(side)).into()
}

/// A front change, and what makes up for it behind.
pub(crate) fn front_change(side: Side, change: &FrontChange) -> Line {
    let (side, smaller, larger) = (name(side), change.smaller, change.larger);
    let (step, made_up) = (percent(change.step().percent(), 0), made_up(change));
    format!("{side}: from the {smaller} to the {larger} ring is a step of {step}; {made_up}. ").into()
}

fn made_up(change: &FrontChange) -> String {
    let Some(range) = &change.rear_shifts else { return "no sprocket makes up for it".to_owned() };
    match (*range.start(), *range.end()) {
        (_, 0) => "less than any rear shift".to_owned(),
        (1, 1) => "1\u{a0}rear shift makes up for it".to_owned(),
        (from, to) if from == to => format!("{to}\u{a0}rear shifts make up for it"),
        (from, to) => format!("{from} to {to} rear shifts make up for it, depending on the sprocket"),
    }
}

/// Title of the table of one set-up's sprockets.
pub(crate) fn in_sprocket_order(side: Side) -> String {
    format!("{side}: steps in sprocket order")
}

/// Title of the table of one set-up's shifts.
pub(crate) fn in_riding_order(side: Side) -> String {
    format!("{side}: steps in riding order")
}

/// Whose steps are wider.
pub(crate) fn says(report: &RingsSection) -> String {
    let steps = report.rings.steps();
    steps.map_or_else(|| ONE_GEAR.to_owned(), |(steps, verdict)| step_sizes(steps, verdict).to_string())
}

/// Where a set-up has no step.
const ONE_GEAR: &str = "Nothing to compare: with one gear there is no step.";
