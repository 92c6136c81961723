//! “Ride or run?”: what to do on the very climb that was asked about.

use crate::bench::field::Field;
use crate::layout::pieces::name;
use crate::number::{duration, percent, with_unit};
use crate::ride::report::RideSide;
use crate::ride::section::RideSection;
use crate::ride::view::words::{about, facts, foot_span, seconds, verb};
use crate::side::Side;
use gear_math::rider::{Advice, LowerGear, MarkKind, Reason, Verdict};
use maud::{Markup, html};

/// The climb that was asked about.
#[must_use]
pub(crate) fn answer(report: &RideSection) -> Markup {
    let ride = &report.ride;
    let [a, b] = &ride.sides;
    let length = ride.inputs.length;
    html! {
        "This climb, " (percent(ride.inputs.climb.percent(), 1)) " for " (with_unit(length.m(), 0, "m")) ": "
        @if told(report, a) == told(report, b) {
            "with both " (with(report, a)) ". "
        } @else {
            "with " (name(Side::A)) " " (with(report, a)) "; with " (name(Side::B)) " " (with(report, b)) ". "
        }
        "Running takes " b { (seconds(a.plan.foot)) } " (likely " (foot_span(&a.plan)) "), dismount and remount included."
        (lower_gears(a, b))
        @if length.is_ramp() && ride.sides.iter().any(|side| !side.plan.answer.limits.grip) {
            " A ramp this short is a matter of the speed you bring to it, not of gears."
        }
        (in_jerks(report))
        @if ride.sides.iter().any(|side| side.ascent.advice == Advice::Force) {
            " Force it only as long as you keep control."
        }
        (wind(report))
    }
}

fn told(report: &RideSection, side: &RideSide) -> (&'static str, String) {
    (verb(side.ascent.advice), facts(report, side) + &longer(side))
}

fn with(report: &RideSection, side: &RideSide) -> Markup {
    let (verb, facts) = told(report, side);
    html! { b { (verb) } ": " (facts) }
}

/// What becomes of the choice on a longer climb, where this one can be ridden.
fn longer(side: &RideSide) -> String {
    let (plan, advice) = (&side.plan, side.ascent.advice);
    if plan.ride.is_none() || advice == Advice::Run {
        return String::new();
    }
    match (plan.answer.verdict, plan.break_even) {
        (Verdict::Ride, _) => ", and running does not pay however long it is".to_owned(),
        (_, Some(pays)) => {
            format!(", and by the best guess running pays on more than {}", with_unit(pays.m(), 0, "m"))
        }
        _ if advice == Advice::TooClose => String::new(),
        _ => ", and a longer one may be too close to call".to_owned(),
    }
}

/// What a gear low enough would be worth.
fn lower_gears(a: &RideSide, b: &RideSide) -> String {
    let (of_a, of_b) = (worth(a.ascent.lower_gear), worth(b.ascent.lower_gear));
    if of_a == of_b {
        return of_a.map_or(String::new(), |words| format!(" A lower gear {words}."));
    }
    let said = [(a, of_a), (b, of_b)].into_iter().filter_map(|(side, words)| Some((side.side, words?)));
    said.map(|(side, words)| format!(" With {side} a lower gear {words}.")).collect()
}

fn worth(lower: LowerGear) -> Option<String> {
    Some(match lower {
        LowerGear::Needless => return None,
        LowerGear::Saves(time) => format!("would save about {}", duration(time.s().max(1.0), 0)),
        LowerGear::Spares => "would save effort, but no time".to_owned(),
        LowerGear::Useless(Reason::Grip) => "would not help: the rear wheel slips".to_owned(),
        LowerGear::Useless(Reason::Balance) => "would not help: it is too slow to balance".to_owned(),
        LowerGear::Useless(_) => "would not help: by the best guess running is quicker".to_owned(),
    })
}

/// What a heavy, uneven stroke would do on this climb, where someone rides it.
fn in_jerks(report: &RideSection) -> Markup {
    let Some(side) = report.ride.sides.iter().find(|side| side.stays_on()) else { return html! {} };
    let answer = &side.plan.answer;
    let from = |kind: MarkKind| {
        let mark = side.marks.iter().find(|mark| mark.kind == kind);
        mark.map_or(String::new(), |mark| about(mark.gradient.percent()))
    };
    html! {
        @if answer.slips_in_jerks {
            " Pedal smoothly: under a choppy stroke the rear wheel slips from " (from(MarkKind::SlipsInJerks)) " on, and a lower gear turns more smoothly."
        }
        @if answer.front_lifts {
            " Keep your weight forward: under a choppy stroke the front wheel lifts from " (from(MarkKind::FrontLifts)) " on."
        }
    }
}

/// That a wind typed here is not that of the lap.
fn wind(report: &RideSection) -> String {
    let wind = report.ride.inputs.air.headwind.m_per_s();
    if wind == 0.0 {
        return String::new();
    }
    let unit = Field::Headwind.spec().unit;
    format!(" The wind of {} counts on this slope only: the lap does not know it.", with_unit(wind, 1, unit))
}
