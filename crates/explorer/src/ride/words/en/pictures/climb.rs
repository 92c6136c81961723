//! Time against length of the climb.

use crate::ride::section::RideSection;
use crate::ride::side::RideSide;
use crate::ride::words::advice::in_short;
use crate::ride::words::figures::{seconds, steady_span};
use crate::ride::words::terms::{judged, verb};
use crate::side::Side;
use crate::units;
use gear_math::rider::{ClimbPlan, Time};

/// The first words of its caption.
pub(crate) const TITLE: &str = "This slope, by its length";
/// How it is to be read.
pub(crate) const CAPTION: &str = "Running has dismount and remount in it, its likely times in grey; it pays where lines cross. A dot: this climb on what you can spend from your reserve, or on the speed you bring.";
/// At the end of the line of running.
pub(crate) const RUN: &str = "run";
/// At the end of the line of riding, where one does for both.
pub(crate) const RIDE_BOTH: &str = "ride A, B";

/// At the end of a line of riding.
pub(crate) const fn ride(side: Side) -> &'static str {
    match side {
        Side::A => "ride A",
        Side::B => "ride B",
    }
}

/// What it shows, in one sentence.
pub(crate) fn label(report: &RideSection) -> String {
    let length = metres(report.ride.inputs.length.m());
    let [a, b] = [&report.ride.sides[0], &report.ride.sides[1]].map(riding);
    let (running, advice) = (on_foot(&report.ride.sides[0].plan), in_short(report));
    format!(
        "Time against length of the climb at your power alone: over {length}, {a}, {b}, running {running}. This climb on what you can spend: {advice}."
    )
}

fn riding(it: &RideSide) -> String {
    let side = it.side;
    match it.plan.ride {
        Some(time) => format!("{side} rides it in {}", seconds(time)),
        None => format!("{side} does not ride it"),
    }
}

fn advised(side: &RideSide, time: Time) -> String {
    format!("{}, {}", verb(side.ascent.advice), seconds(time))
}

fn on_foot(plan: &ClimbPlan) -> String {
    format!("{}, likely {}", seconds(plan.foot), steady_span(plan))
}

fn metres(length_m: f64) -> String {
    units::distances().print(length_m, 0)
}

/// Of a side that has no steady ride here: what there is to do, or why not.
pub(crate) fn unridden(it: &RideSide) -> String {
    let plan = &it.plan;
    let why =
        it.advised_time().map_or_else(|| judged(plan.verdict, plan.answer.limits), |time| advised(it, time));
    format!("{}: {why}", it.side)
}

/// The climb at its length.
pub(crate) fn this_climb(length_m: f64) -> String {
    format!("this climb, {}", metres(length_m))
}

/// Running for both, or from one side's bike.
const fn running(whose: Option<Side>) -> &'static str {
    match whose {
        None => "running",
        Some(Side::A) => "running with A",
        Some(Side::B) => "running with B",
    }
}

/// The length from which running pays.
pub(crate) fn pays(whose: Option<Side>, from_m: f64) -> String {
    format!("{} pays from {}", running(whose), metres(from_m))
}

/// The same to be read out.
pub(crate) fn pays_spot(whose: Option<Side>, from_m: f64) -> String {
    format!("By the best guess {} pays on climbs longer than {}.", running(whose), metres(from_m))
}

/// The time of a side over a length.
pub(crate) fn ride_spot(side: Side, length_m: f64, time: Time) -> String {
    format!("{side} rides {} in {}.", metres(length_m), seconds(time))
}

/// The time on foot over a length.
pub(crate) fn run_spot(plan: &ClimbPlan, length_m: f64) -> String {
    format!("Running, {} take {}.", metres(length_m), on_foot(plan))
}

/// The advice of a side that is ridden.
pub(crate) fn advice_spot(it: &RideSide, time: Time) -> String {
    format!("{}: {}.", it.side, advised(it, time))
}

/// The times over this climb.
pub(crate) fn says(report: &RideSection) -> String {
    let length = metres(report.ride.inputs.length.m());
    let [a, b] = [&report.ride.sides[0], &report.ride.sides[1]].map(riding);
    let foot = seconds(report.ride.sides[0].plan.foot);
    format!("On foot {length} take {foot}; at your power alone {a}, {b}.")
}
