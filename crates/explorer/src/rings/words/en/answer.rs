//! The answer, and what helps to weigh it.

use crate::layout::line::{Line, name, strong};
use crate::number::percent;
use crate::rings::setup::SetupReport;
use crate::rings::step_verdict::{StepVerdict, WholeSteps};
use crate::side::Side;
use crate::words::counted;

/// Nothing is to be compared.
pub(crate) fn same_set_ups() -> Line {
    let (a, b) = (name(Side::A), name(Side::B));
    format!("{a} and {b} have the same rings and sprockets. Change one of them to compare.").into()
}

/// How slow A and B are at the lowest cadence, and who is slower.
pub(crate) fn low_end(slower: Option<Side>, speeds: [&str; 2], cadence: &str) -> Line {
    let speed = speeds.map(strong);
    match slower {
        None => format!("Both turn {cadence} down to {}.", speed[0]),
        Some(slower) => format!(
            "{lower} turns {cadence} down to {low}, {higher} only down to {high}.",
            lower = name(slower),
            low = speed[slower as usize],
            higher = name(slower.other()),
            high = speed[slower.other() as usize],
        ),
    }
    .into()
}

/// How fast A and B are at the highest cadence, and who is faster.
pub(crate) fn high_end(faster: Option<Side>, speeds: [&str; 2], cadence: &str) -> Line {
    match faster {
        None => format!("At the top they are alike: {} at {cadence}.", speeds[0]),
        Some(faster) => format!(
            "At the top {name} reaches {fast} against {slow} at {cadence}.",
            name = name(faster),
            fast = strong(speeds[faster as usize]),
            slow = speeds[faster.other() as usize],
        ),
    }
    .into()
}

/// Whose steps are wider.
pub(crate) fn step_sizes(steps: [WholeSteps; 2], verdict: StepVerdict) -> Line {
    let wider = verdict.wider().unwrap_or(Side::A);
    let (it, other) = (name(wider), name(wider.other()));
    let [[mean, most], [other_mean, other_most]] = [wider, wider.other()]
        .map(|side| [steps[side as usize].mean, steps[side as usize].largest].map(|it| percent(it, 0)));
    let mean = strong(&mean);
    match verdict {
        StepVerdict::Alike => format!("Their steps are alike: {mean} on average, {most} at most."),
        StepVerdict::AtMost(_) => {
            format!("Their steps are alike on average, {mean}; the largest is wider on {it}: {most} against {other_most}.")
        }
        StepVerdict::OnAverage(_) => {
            format!("{it} has the wider steps on average: {mean} against {other_mean}; the largest is {most} on both.")
        }
        StepVerdict::Both(_) => {
            format!("{it} has the wider steps: {mean} on average and {most} at most, {other} {other_mean} and {other_most}.")
        }
        StepVerdict::OnAverageOnly(_) => {
            format!("{it} has the wider steps on average, {mean} against {other_mean}, but the largest step is {other}’s: {other_most} against {most}.")
        }
    }
    .into()
}

/// How many gears are worth having, and how many double shifts the way up through them costs.
pub(crate) fn useful(setup: &SetupReport) -> Line {
    let (summary, order, name) = (&setup.summary, &setup.summary.riding_order, name(setup.side));
    let useful = counted(summary.useful(), "useful gear", "useful gears");
    let (gears, never) = (summary.gears, never_used(setup));
    if setup.drivetrain.chainset.rings().len() == 1 {
        return format!("{name} has {useful} of {gears}{never}.").into();
    }
    let (taken, doubles) =
        (order.gear_count(), counted(order.double_shifts(), "double shift", "double shifts"));
    format!("{name} has {useful} of {gears}{never}; going up ring by ring takes in {taken} with {doubles}.")
        .into()
}

/// “, and 2 never to be used”.
fn never_used(setup: &SetupReport) -> String {
    match setup.avoided().len() {
        0 => String::new(),
        count if count == setup.gears.len() => {
            ", all of them never to be used: these numbers go on as if they ran".to_owned()
        }
        count => format!(", and {count} never to be used"),
    }
}

/// How many gears A and B share.
pub(crate) fn in_common(count: usize, tolerance: &str) -> String {
    match count {
        0 => format!("They have no gear in common within {tolerance}."),
        _ => format!("They have {} in common within {tolerance}.", counted(count, "gear", "gears")),
    }
}

/// How good speeds are without a measured roll-out.
pub(crate) fn speeds_by_size(error: &str) -> String {
    format!("Speeds are good to {error} by tyre size; a measured roll-out is better.")
}

/// What a cassette typed by its name was taken for.
pub(crate) fn taken_for(side: Side, named: &str, cassette: &str, sprockets: usize) -> Line {
    let side = name(side);
    format!("{side}’s {named} is taken as {cassette}, a usual one with {sprockets} sprockets. Makers differ in the middle: count yours.").into()
}
