//! The answer on the very climb that was asked about.

use super::{A, B};
use crate::bench::field::Field;
use crate::layout::line::{Line, name, strong};
use crate::number::{duration, percent, with_unit};
use crate::ride::on_climb::{Enough, ForcedFor};
use crate::ride::section::RideSection;
use crate::ride::side::RideSide;
use crate::ride::words::advice::facts;
use crate::ride::words::figures::{about, foot_span, seconds};
use crate::ride::words::terms::verb;
use crate::side::Side;
use gear_math::rider::{Advice, CarryReach, ClimbPlan, LowerGear, OverGear, Reason, Time, Verdict};

/// The climb, and what to do there.
pub(crate) fn advised(report: &RideSection) -> Line {
    let inputs = &report.ride.inputs;
    let (slope, length) = (percent(inputs.climb.percent(), 1), with_unit(inputs.length.m(), 0, "m"));
    let [a, b] = [&report.ride.sides[0], &report.ride.sides[1]].map(|side| told(report, side));
    if a == b {
        format!("This climb, {slope} for {length}: with both {a}.").into()
    } else {
        format!("This climb, {slope} for {length}: with {A} {a}; with {B} {b}.").into()
    }
}

fn told(report: &RideSection, side: &RideSide) -> String {
    let (verb, facts, longer) = (strong(verb(side.ascent.advice)), facts(report, side), longer(side));
    format!("{verb}: {facts}{longer}")
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

/// The time on foot.
pub(crate) fn running(plan: &ClimbPlan) -> Line {
    let (time, likely) = (strong(&seconds(plan.foot)), foot_span(plan));
    format!("Running takes {time} (likely {likely}), dismount and remount included.").into()
}

/// That the set-up that has to be forced is ahead by its rider's power, not by its gears.
pub(crate) fn more_power(forced: Side) -> Line {
    let (forced, other) = (name(forced), name(forced.other()));
    format!(
        "{forced} is ahead by more power alone: at the same, {other} would be as quick, in an easier gear."
    )
    .into()
}

/// What a gear low enough would be worth: a sentence for both, or one for each.
pub(crate) fn lower_gears(sides: &[RideSide; 2]) -> Vec<String> {
    let [a, b] = [&sides[0], &sides[1]].map(|side| worth(side.ascent.lower_gear));
    if a == b {
        return a.map(|worth| format!("A lower gear {worth}.")).into_iter().collect();
    }
    let of_a = a.map(|worth| format!("With A a lower gear {worth}."));
    let of_b = b.map(|worth| format!("With B a lower gear {worth}."));
    of_a.into_iter().chain(of_b).collect()
}

fn worth(lower: LowerGear) -> Option<String> {
    Some(match lower {
        LowerGear::Needless => return None,
        LowerGear::Saves(time) => format!("would save about {}", saved(time)),
        LowerGear::Spares => "would save effort, but no time".to_owned(),
        LowerGear::Useless(Reason::Grip) => "would not help: the rear wheel slips".to_owned(),
        LowerGear::Useless(Reason::Balance) => "would not help: it is too slow to balance".to_owned(),
        LowerGear::Useless(_) => "would not help: by the best guess running is quicker".to_owned(),
    })
}

/// Time that a lower gear saves, at least a second.
pub(crate) fn saved(time: Time) -> String {
    duration(time.s().max(1.0), 0)
}

/// Of a climb so short that gears hardly count.
pub(crate) const RAMP: &str = "A ramp this short is a matter of the speed you bring to it, not of gears.";

/// Of a climb that is forced.
pub(crate) const FORCED: &str = "Force it only as long as you keep control.";

/// From which slope the rear wheel slips under a heavy, uneven stroke, per cent.
pub(crate) fn slips_in_jerks(from: f64) -> String {
    let slope = about(from);
    format!(
        "Pedal smoothly: under a choppy stroke the rear wheel slips from {slope} on, and a lower gear turns more smoothly."
    )
}

/// From which slope the front wheel lifts under a heavy, uneven stroke, per cent.
pub(crate) fn lifts_in_jerks(from: f64) -> String {
    let slope = about(from);
    format!("Keep your weight forward: under a choppy stroke the front wheel lifts from {slope} on.")
}

/// That a wind typed here is not that of the lap.
pub(crate) fn wind(wind_m_s: f64) -> String {
    let wind = with_unit(wind_m_s, 1, Field::Headwind.spec().unit);
    format!("The wind of {wind} counts on this slope only: the lap does not know it.")
}

/// Whose climb a sentence is about: both sides' where they do it in the same gears.
pub(crate) const fn whose(side: Option<Side>) -> &'static str {
    match side {
        Some(side) => name(side),
        None => "A and B",
    }
}

/// What it takes to force it.
pub(crate) fn forced(whose: &str, over: &OverGear, lasts: ForcedFor) -> Line {
    let gear = over.gear;
    let (rpm, power) = (with_unit(over.cadence.rpm(), 0, "rpm"), with_unit(over.power.watts(), 0, "W"));
    match lasts {
        ForcedFor::Ever => format!("{whose}: turning {gear} at {rpm} all the same takes {power}."),
        ForcedFor::TooLittle => format!(
            "{whose}: turning {gear} at {rpm} all the same takes {power}, more than you give at that cadence for so long."
        ),
        ForcedFor::Lasts { time, far, enough } => {
            let (time, far, enough) = (seconds(time), with_unit(far.m(), 0, "m"), is_enough(enough));
            format!(
                "{whose}: turning {gear} at {rpm} all the same takes {power}, which the share of your reserve set aside lasts for {time} or {far}: {enough}."
            )
        }
    }
    .into()
}

fn is_enough(enough: Enough) -> String {
    match enough {
        Enough::No => strong("not enough for this climb"),
        Enough::Yes => strong("enough for this climb"),
        Enough::ButSlower => format!("{}, but running is quicker", strong("enough for this climb")),
    }
}

/// How far speed carries up it.
pub(crate) fn carried(report: &RideSection, whose: &str, side: &RideSide, reach: &CarryReach) -> Line {
    let unit = report.rings.unit;
    let (entry, exit) = (unit.print(report.ride.inputs.entry), unit.print(side.carry.exit));
    let (way, height) = (strong(&with_unit(reach.way.m(), 0, "m")), with_unit(reach.height.m(), 1, "m"));
    let time = seconds(reach.time);
    format!(
        "{whose}: coming in at {entry} you get {way} along and {height} up in {time} before you are down to {exit}, too slow to ride on; a ramp shorter than that is a matter of momentum, not of gears."
    )
    .into()
}
