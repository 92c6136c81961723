//! The answer on the very climb that was asked about.

use super::{A, B};
use crate::layout::line::{Line, name, strong};
use crate::number::{duration, percent, rpm};
use crate::ride::inputs::LapPrice;
use crate::ride::on_climb::Otherwise;
use crate::ride::section::RideSection;
use crate::ride::side::{LEVEL, RideSide};
use crate::ride::words::advice::facts;
use crate::ride::words::figures::{about, foot_span, seconds, steepest};
use crate::ride::words::terms::{verb, verdict};
use crate::side::Side;
use crate::units;
use gear_math::rider::{CarryReach, EffortBudget, LowerGear, Reason, Slope, Time};

/// The climb, and what to do there.
pub(crate) fn advised(report: &RideSection) -> Line {
    let inputs = &report.ride.inputs;
    let (slope, length) =
        (percent(inputs.climb.percent(), 1), units::distances().print(inputs.length.m(), 0));
    let [a, b] = [&report.ride.sides[0], &report.ride.sides[1]].map(|side| told(report, side));
    if a == b {
        format!("This climb, {slope} for {length}: with both {a}.").into()
    } else {
        format!("This climb, {slope} for {length}: with {A} {a}; with {B} {b}.").into()
    }
}

fn told(report: &RideSection, side: &RideSide) -> String {
    format!("{}: {}", strong(verb(side.ascent.advice)), facts(report, side))
}

/// The time on foot.
pub(crate) fn running(report: &RideSection) -> Line {
    let time = |side: &RideSide| {
        format!("{} (likely {})", strong(&seconds(side.ascent.foot)), foot_span(&side.ascent))
    };
    let times = match [&report.ride.sides[0], &report.ride.sides[1]].map(time) {
        [a, b] if a == b => a,
        [a, b] => format!("{a} with {A} and {b} with {B}"),
    };
    let told = format!("Running takes {times}, dismount and remount included");
    let inputs = &report.ride.inputs;
    if inputs.budget() == EffortBudget::NONE {
        format!("{told}.").into()
    } else if matches!(inputs.lap_price, LapPrice::Found(_)) {
        format!("{told}, as hard as pays on your lap.").into()
    } else if inputs.is_repeated {
        format!("{told}, as hard as pays on every lap.").into()
    } else {
        format!("{told}, on the same share of your reserve.").into()
    }
}

/// Up to which slope riding pays on a climb as long.
pub(crate) fn pays_up_to(report: &RideSection) -> Line {
    let length = units::distances().print(report.ride.inputs.length.m(), 0);
    let [a, b] = Side::BOTH.map(|side| up_to(report.ride.pays_up_to(side)));
    let told = format!("Riding a climb of {length} pays, by the best guess, {a}");
    if a == b {
        format!("{told} with {A} and {B}.").into()
    } else {
        format!("{told} with {A}, {b} with {B}.").into()
    }
}

fn up_to(slope: Option<Slope>) -> String {
    match slope.map(Slope::percent) {
        None => format!("all the way to {}", strong(&steepest())),
        Some(percent) if percent < LEVEL => strong("not even on the level"),
        Some(percent) => format!("up to {}", strong(&about(percent))),
    }
}

/// Why the advice is not that of the map for the same slope: a sentence for both, or one for each.
pub(crate) fn otherwise(report: &RideSection) -> Vec<String> {
    let told = |side: &RideSide| {
        let why = side.otherwise(report.ride.inputs.rider.lowest_cadence)?;
        Some((verdict(side.plan.answer.verdict), why))
    };
    let [a, b] = [&report.ride.sides[0], &report.ride.sides[1]].map(told);
    let sentence = |whose: &str, (verdict, why): (&str, Otherwise)| {
        let why = because_of(report, why);
        format!("If this slope went on and on, the answer {whose} would be “{verdict}”; {why}.")
    };
    if a == b {
        return a.map(|told| sentence("with both", told)).into_iter().collect();
    }
    let (of_a, of_b) = (a.map(|told| sentence("with A", told)), b.map(|told| sentence("with B", told)));
    of_a.into_iter().chain(of_b).collect()
}

/// Where the two ways are near.
pub(crate) const LAP_MAY_DIFFER: &str = "Riding and running are within a good second here: a lap, which comes in with speed, may do the other, and its own plan goes first there.";

fn because_of(report: &RideSection, why: Otherwise) -> String {
    match why {
        Otherwise::Reserve => "this climb is short enough for what you can spend on it".to_owned(),
        Otherwise::Lost => "on this climb getting off and on decides".to_owned(),
        Otherwise::Slower => {
            format!("this climb may be turned more slowly than {}", rpm(report.rings.window.low))
        }
        Otherwise::Cadence => "on this climb it counts what a cadence off the one you like costs".to_owned(),
    }
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
    let wind = units::winds().print(wind_m_s, 1);
    format!("The wind of {wind} counts on this slope only: the lap does not know it.")
}

/// Whose climb a sentence is about: both sides' where they do it in the same gears.
pub(crate) const fn whose(side: Option<Side>) -> &'static str {
    match side {
        Some(side) => name(side),
        None => "A and B",
    }
}

/// How far speed carries up it.
pub(crate) fn carried(report: &RideSection, whose: &str, side: &RideSide, reach: &CarryReach) -> Line {
    let (entry, exit) = (units::speed(report.ride.inputs.entry), units::speed(side.carry.exit));
    let (way, height) =
        (strong(&units::distances().print(reach.way.m(), 0)), units::distances().print(reach.height.m(), 1));
    let time = seconds(reach.time);
    format!(
        "{whose}: coming in at {entry} you get {way} along and {height} up in {time} before you are down to {exit}, too slow to ride on; a ramp shorter than that is a matter of momentum, not of gears."
    )
    .into()
}
