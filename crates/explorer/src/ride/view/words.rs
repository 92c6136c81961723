//! What riding and running, their limits and their doubts are called.

use crate::number::{brief, listed, percent, plain, span_of_time, with_unit};
use crate::ride::report::{RideSide, RunningFrom};
use crate::ride::section::RideSection;
use gear_math::rider::{
    Advice, Answer, Basis, ClimbPlan, Gait, LimitsHeld, MarkKind, OnBike, Reason, Slope, SlopeBand,
    SpeedBand, Time, Uncertain, Verdict,
};

/// A time as its length asks for: tenths below ten seconds, minutes when there are many.
#[must_use]
pub(crate) fn seconds(time: Time) -> String {
    brief(time.s())
}

/// The likely times on foot, best and worst.
#[must_use]
pub(crate) fn foot_span(plan: &ClimbPlan) -> String {
    let (best, worst) = (plan.foot_at_best.s(), plan.foot_at_worst.s());
    span_of_time(best, worst, usize::from(worst < 9.95))
}

/// Likely speeds on foot if riding is as fast as reckoned, in the page's unit.
#[must_use]
pub(crate) fn foot_band(report: &RideSection, answer: &Answer) -> (f64, f64) {
    let ride = report.rings.unit.value(answer.ride);
    (ride * answer.ratio.low, ride * answer.ratio.high)
}

/// Going on foot on one slope, and the gears of A and of B.
#[must_use]
pub(crate) fn feet_and_gears(report: &RideSection, a: &Answer, b: &Answer) -> String {
    let (low, high) = foot_band(report, a);
    let turned = |it: &Answer| {
        let rpm = with_unit(it.riding.cadence.rpm(), 0, "rpm");
        let rpm = if it.spins_out() { cadence(it) } else { format!("at {rpm}") };
        format!("{} {rpm}, {}", it.riding.gear, judged(it.verdict, it.limits))
    };
    format!(
        "{} {}, likely {} to {}. A: {}. B: {}.",
        gait(a.gait),
        report.rings.unit.print(a.foot),
        plain(low, 1),
        plain(high, 1),
        turned(a),
        turned(b)
    )
}

/// A gradient that is no surer than a whole per cent.
#[must_use]
pub(crate) fn whole(gradient: f64) -> String {
    percent(gradient, 0)
}

/// The same in a sentence.
#[must_use]
pub(crate) fn about(gradient: f64) -> String {
    format!("about {}", whole(gradient))
}

/// An end of riding with its likely edges: “about 8 % up (likely 6 to 10)”.
#[must_use]
pub(crate) fn end_band(end: &SlopeBand) -> String {
    let Some(best) = end.best else { return "nowhere up to 45\u{a0}%".to_owned() };
    let high = end.high.map(Slope::percent);
    format!("{} up{}", about(best.percent()), likely(end.low.percent(), high))
}

/// Likely edges in brackets, where they are more than a per cent apart.
fn likely(low: f64, high: Option<f64>) -> String {
    let (low, high) = (plain(low, 0), high.map(|high| plain(high, 0)));
    match high {
        Some(high) if high == low => String::new(),
        Some(high) => format!(" (likely {low} to {high})"),
        None => format!(" (likely {low} or more)"),
    }
}

/// Where running this climb wins, in words that stand behind “from” or by themselves where it is too close to call.
/// Edges are rounded outwards, so that they hold of every slope beyond.
#[must_use]
pub(crate) fn running_from(report: &RideSection) -> String {
    match report.ride.running_from() {
        RunningFrom::Nowhere => "nowhere up to 45\u{a0}%".to_owned(),
        RunningFrom::TheLevel => "the level on".to_owned(),
        RunningFrom::TooClose { from } if from < 1.0 => "too close to call from the level on".to_owned(),
        RunningFrom::TooClose { from } => format!("too close to call from {} up", about(from.floor())),
        RunningFrom::Slope { low, best, high } => {
            format!("{} up{}", about(best), likely(low.floor(), Some(high.ceil())))
        }
    }
}

/// A mark's gradient in whole per cent: edges of what is likely are rounded outwards, as in [`running_from`].
#[must_use]
pub(crate) fn mark_at(kind: MarkKind, gradient: f64) -> String {
    whole(match kind {
        MarkKind::TooCloseFrom => gradient.floor(),
        MarkKind::FootFrom => gradient.ceil(),
        _ => gradient,
    })
}

/// The likely edges of a speed.
#[must_use]
pub(crate) fn speeds_from_to(report: &RideSection, band: &SpeedBand) -> String {
    let [low, high] = [band.low, band.high].map(|edge| plain(report.rings.unit.value(edge), 1));
    format!("{low} to {high}")
}

/// The advice on a climb, as a verb.
#[must_use]
pub(crate) const fn verb(advice: Advice) -> &'static str {
    match advice {
        Advice::Ride => "ride",
        Advice::Carry => "carry your speed",
        Advice::Force => "force it",
        Advice::TooClose => "too close to call",
        Advice::Run => "run",
    }
}

/// The advice with its times: the quicker way first, the slower one as what is left.
#[must_use]
pub(crate) fn advised(report: &RideSection, side: &RideSide) -> String {
    format!("{}: {}", verb(side.ascent.advice), facts(report, side))
}

/// What stands behind the verb.
#[must_use]
pub(crate) fn facts(report: &RideSection, side: &RideSide) -> String {
    let ascent = &side.ascent;
    let run = seconds(ascent.foot);
    match (ascent.advice, ascent.bike) {
        (Advice::Run, Some((how, time))) => {
            format!("{run} ({} takes {})", how_ridden(report, how), seconds(time))
        }
        (_, None) => format!("{run}, because {}", limits_in_words(side.plan.answer.limits) + too_much(side)),
        (Advice::TooClose, Some((how, time))) => {
            let mut ways =
                [format!("{} {}", how_ridden(report, how), seconds(time)), format!("running {run}")];
            if ascent.foot < time {
                ways.swap(0, 1);
            }
            ways.join(", ")
        }
        (_, Some((OnBike::Forced(power), time))) => {
            let watts = with_unit(power.watts(), 0, "W");
            format!("{watts} for {}{}, or run: {run}", seconds(time), allowed(side))
        }
        (_, Some((OnBike::Carried, time))) => {
            format!(
                "{} from {}, or run: {run}",
                seconds(time),
                report.rings.unit.print(report.ride.inputs.entry)
            )
        }
        (_, Some((OnBike::Ridden, time))) => format!("{}{}, or run: {run}", seconds(time), remarks(side)),
    }
}

/// That forcing a gear is more than this rider has, where that alone is in the way.
fn too_much(side: &RideSide) -> &'static str {
    if side.forcing().is_some() { ", and forcing one asks too much of legs or reserve" } else { "" }
}

fn how_ridden(report: &RideSection, how: OnBike) -> String {
    match how {
        OnBike::Ridden => "riding".to_owned(),
        OnBike::Carried => format!("riding in at {}", report.rings.unit.print(report.ride.inputs.entry)),
        OnBike::Forced(power) => format!("forcing it at {}", with_unit(power.watts(), 0, "W")),
    }
}

/// How long a forced gear lasts.
fn allowed(side: &RideSide) -> String {
    let longest = side.over_gear.and_then(|over| over.longest());
    longest.map_or(String::new(), |(time, _)| format!(" (legs and reserve last {})", seconds(time)))
}

/// What else there is to know of a climb that is ridden.
fn remarks(side: &RideSide) -> String {
    let answer = &side.plan.answer;
    let spun = answer.spins_out().then(|| format!("spun out in {}", answer.riding.gear));
    let brought = side.ascent.brought.map(|time| format!("{} with the speed you bring", seconds(time)));
    let said: Vec<String> = [spun, brought].into_iter().flatten().collect();
    if said.is_empty() { String::new() } else { format!(" ({})", said.join(", ")) }
}

/// The advice of both set-ups in a few words, for pictures.
#[must_use]
pub(crate) fn advice_in_short(report: &RideSection) -> String {
    let [a, b] = [&report.ride.sides[0], &report.ride.sides[1]].map(|side| verb(side.ascent.advice));
    if a == b { format!("A and B: {a}") } else { format!("A: {a}, B: {b}") }
}

/// The limit that ends riding.
#[must_use]
pub(crate) const fn limit(reason: Reason) -> &'static str {
    match reason {
        Reason::Gear => "no gear low enough",
        Reason::Force => "too little strength",
        Reason::Balance => "too slow to balance",
        Reason::Grip => "too little grip",
        Reason::Energy => "running is as quick",
    }
}

/// The verdict in a word or two.
#[must_use]
pub(crate) const fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Ride => "ride",
        Verdict::Foot | Verdict::FootForced => "run",
        Verdict::TooClose => "too close to call",
    }
}

/// The verdict with the limits behind it.
#[must_use]
pub(crate) fn judged(judgement: Verdict, limits: LimitsHeld) -> String {
    if !limits.any() {
        return verdict(judgement).to_owned();
    }
    let words: Vec<&str> = limits.reasons().map(limit).collect();
    format!("run: {}", words.join(", "))
}

/// The cadence that the full power asks for: in brackets where it is too slow to be turned, a word where it is too fast.
#[must_use]
pub(crate) fn cadence(answer: &Answer) -> String {
    let rpm = plain(answer.riding.cadence.rpm(), 0);
    match answer.riding.held {
        None => format!("({rpm})"),
        Some(_) if answer.spins_out() => "spun out".to_owned(),
        Some(_) => rpm,
    }
}

/// How the rider moves on foot.
#[must_use]
pub(crate) const fn gait(gait: Gait) -> &'static str {
    match gait {
        Gait::Run => "run",
        Gait::Walk => "walk",
    }
}

/// A mark on the axis of gradients, short enough to stand beside it on a phone.
#[must_use]
pub(crate) const fn mark(kind: MarkKind) -> &'static str {
    match kind {
        MarkKind::Ends(Reason::Gear) => "lowest gear too tall",
        MarkKind::Ends(Reason::Force) => "too little strength",
        MarkKind::Ends(Reason::Balance) => "too slow to balance",
        MarkKind::Ends(Reason::Grip) => "rear wheel slips",
        MarkKind::Ends(Reason::Energy) => "running as fast",
        MarkKind::TooCloseFrom => "too close to call",
        MarkKind::FootFrom => "running likely faster",
        MarkKind::BodyWeight => "over body weight on the pedal",
        MarkKind::SlipsInJerks => "choppy stroke: rear slips",
        MarkKind::FrontLifts => "choppy stroke: front lifts",
    }
}

/// What a value rests on.
#[must_use]
pub(crate) const fn basis(basis: Basis) -> &'static str {
    match basis {
        Basis::Published => "published",
        Basis::Bracketed => "between published values",
        Basis::Estimate => "estimate",
    }
}

/// An uncertain input, its unit, and how many decimals its values need.
const fn uncertain(input: Uncertain) -> (&'static str, &'static str, usize) {
    match input {
        Uncertain::GrossEfficiency => ("gross efficiency", "", 2),
        Uncertain::Rolling => ("rolling resistance", "", 3),
        Uncertain::Load => ("cost of carrying the bike", "", 1),
        Uncertain::FootGround => ("cost of the ground on foot", "", 2),
        Uncertain::SlopeShare => ("cost of the ground on slopes", "", 0),
        Uncertain::FootCost => ("your cost on foot", "", 2),
        Uncertain::Standing => ("standing metabolic rate", "W/kg", 1),
        Uncertain::Drivetrain => ("drivetrain efficiency", "", 3),
        Uncertain::Power => ("power", "W", 0),
        Uncertain::BikeMass => ("bike mass", "kg", 1),
        Uncertain::LowestCadence => ("lowest cadence", "rpm", 0),
        Uncertain::Balance => ("slowest speed you can balance", "m/s", 1),
        Uncertain::Friction => ("friction of the tyre", "", 2),
    }
}

/// The name of an uncertain input.
#[must_use]
pub(crate) const fn doubtful(input: Uncertain) -> &'static str {
    uncertain(input).0
}

/// One value of an uncertain input, with its unit.
#[must_use]
pub(crate) fn valued(input: Uncertain, value: f64) -> String {
    let (_, unit, decimals) = uncertain(input);
    with_unit(value, decimals, unit).trim_end().to_owned()
}

/// The two values an input is moved between.
#[must_use]
pub(crate) fn moved(input: Uncertain, (low, high): (f64, f64)) -> String {
    format!("{} to {}", plain(low, uncertain(input).2), valued(input, high))
}

/// The limits that hold, as reasons.
#[must_use]
fn limits_in_words(limits: LimitsHeld) -> String {
    let words: Vec<&str> = limits
        .reasons()
        .map(|reason| match reason {
            Reason::Gear => "no gear is low enough",
            Reason::Force => "your strength does not last",
            Reason::Balance => "it is too slow to balance",
            Reason::Grip => "the rear wheel slips",
            Reason::Energy => "running is quicker",
        })
        .collect();
    listed(&words)
}
