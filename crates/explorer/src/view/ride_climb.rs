//! “Ride or run?”: what to do on the very climb that was asked about.

use super::ride_words::{foot_span, grade, limits_in_words, seconds};
use super::words::name;
use crate::number::{percent, with_unit};
use crate::report::{Ascent, Report, RideSide, Side};
use gear_math::{ClimbPlan, LimitsHeld, MarkKind, Time, Verdict};
use maud::{Markup, html};

/// The climb that was asked about.
#[must_use]
pub(super) fn answer(report: &Report) -> Markup {
    let ride = &report.ride;
    let [a, b] = &ride.sides;
    let length = ride.inputs.length;
    let same = a.ascent(length) == b.ascent(length)
        && (a.plan.verdict, a.plan.break_even, a.plan.answer.limits)
            == (b.plan.verdict, b.plan.break_even, b.plan.answer.limits);
    html! {
        "This climb, " (percent(ride.inputs.climb.percent(), 1)) " for "
        (with_unit(length.m(), 0, "m")) ": "
        @if same {
            "with both " (climb_with(report, a)) ". "
        } @else {
            "with " (name(Side::A)) " " (climb_with(report, a)) "; with " (name(Side::B)) " " (climb_with(report, b)) ". "
        }
        "On foot it takes " b { (seconds(a.plan.foot)) } " (" (foot_span(&a.plan)) "), getting off and on included."
        @if length.is_ramp() && ride.sides.iter().any(|side| !side.plan.answer.limits.grip) {
            " A ramp this short is a matter of the speed you bring to it, not of gears."
        }
        (in_jerks(report))
    }
}

/// What a heavy, uneven stroke would do on this climb, where someone rides it.
fn in_jerks(report: &Report) -> Markup {
    let ridden = |side: &RideSide| {
        matches!(side.ascent(report.ride.inputs.length), Ascent::Ridden(_) | Ascent::Forced(..))
    };
    let Some(side) = report.ride.sides.iter().find(|side| ridden(side)) else { return html! {} };
    let answer = &side.plan.answer;
    let from = |kind: MarkKind| {
        side.crossover
            .marks
            .iter()
            .find(|mark| mark.kind == kind)
            .map_or(String::new(), |mark| grade(mark.gradient))
    };
    html! {
        @if answer.slips_in_jerks {
            " Pedal smoothly: under jerky strokes the rear wheel slips from " (from(MarkKind::SlipsInJerks)) " on, and a lower gear turns more smoothly."
        }
        @if answer.front_lifts {
            " Keep your weight forward: under jerky strokes the front wheel lifts from " (from(MarkKind::FrontLifts)) " on."
        }
    }
}

/// Advice and riding time of one set-up.
fn climb_with(report: &Report, side: &RideSide) -> Markup {
    let plan = &side.plan;
    html! {
        @match side.ascent(report.ride.inputs.length) {
            Ascent::Ridden(time) => {
                b { (advice(plan.verdict)) } ", riding takes " b { (seconds(time)) }
                (brought(side, time))
                @if plan.answer.spins_out() { ", spun out in " (plan.answer.riding.gear) }
                (pays(plan))
            }
            Ascent::Carried(time) => {
                b { "carry your speed" } ": coming in at " (report.unit.print(report.ride.inputs.entry))
                " you are over it in " b { (seconds(time)) } ", before " (limits_in_words(plan.answer.limits))
            }
            Ascent::Forced(power, time) => {
                @let watts = with_unit(power.watts(), 0, "W");
                // The legs that do not last for minutes were found to last for this.
                @let limits = limits_in_words(LimitsHeld { force: false, ..plan.answer.limits });
                @if plan.judged(time) == Verdict::Ride {
                    b { "force it" } " at " b { (watts) } ", which you have in reserve for this length, in "
                    b { (seconds(time)) } ", or get off, because " (limits)
                } @else {
                    b { "force it or get off as you like, it is too close to call" } ": at " b { (watts) }
                    ", which you have in reserve for this length, it takes " b { (seconds(time)) } "; with less, " (limits)
                }
            }
            Ascent::OnFoot => {
                b { "get off" } ", because " (limits_in_words(plan.answer.limits))
            }
        }
    }
}

/// What the speed into the climb saves of a steady time, where it is much of it.
fn brought(side: &RideSide, steady: Time) -> String {
    let time = side.carried.filter(|time| time.s() < MUCH * steady.s());
    time.map_or(String::new(), |time| format!(", or {} with the speed you bring", seconds(time)))
}

/// A time of less than this share of another is told beside it.
const MUCH: f64 = 0.8;

/// From which length getting off pays.
fn pays(plan: &ClimbPlan) -> String {
    let guess = if plan.verdict == Verdict::TooClose { " by the best guess" } else { "" };
    match plan.break_even {
        Some(length) => {
            format!(", and{guess} getting off pays on more than {}", with_unit(length.m(), 0, "m"))
        }
        None => format!(", and{guess} getting off never pays, however long the climb"),
    }
}

const fn advice(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Ride => "ride",
        Verdict::Foot | Verdict::FootForced => "go on foot",
        Verdict::TooClose => "ride or run as you like, it is too close to call",
    }
}
