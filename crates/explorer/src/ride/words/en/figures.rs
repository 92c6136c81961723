//! How this section tells times, slopes and speeds.

use crate::number::{brief, percent, plain, shows_nothing, with_unit};
use crate::ride::report::RunningFrom;
use crate::ride::section::RideSection;
use crate::ride::words::terms::{cadence, gait, judged};
use crate::units;
use crate::words::span_of_time;
use gear_math::Speed;
use gear_math::rider::{
    Answer, Ascent, Climb, ClimbPlan, Deficit, MarkKind, Slope, SlopeBand, SpeedBand, Time,
};

/// A time as its length asks for: tenths below ten seconds, minutes when there are many.
pub(crate) fn seconds(time: Time) -> String {
    brief(time.s())
}

/// What is drawn from the reserve; nothing where some is repaid.
pub(crate) fn kilojoules(drawn: Deficit) -> String {
    with_unit(drawn.j().max(0.0) / 1000.0, 1, "kJ")
}

/// The likely times on foot, best and worst.
pub(crate) fn foot_span(ascent: &Ascent) -> String {
    times(ascent.foot_at_best, ascent.foot_at_worst)
}

/// The same at a steady power.
pub(crate) fn steady_span(plan: &ClimbPlan) -> String {
    times(plan.foot_at_best, plan.foot_at_worst)
}

fn times(best: Time, worst: Time) -> String {
    let (best, worst) = (best.s(), worst.s());
    span_of_time(best, worst, usize::from(worst < 9.95))
}

/// Going on foot on one slope, and the gears of A and of B.
pub(crate) fn feet_and_gears(report: &RideSection, a: &Answer, b: &Answer) -> String {
    let (low, high) = report.foot_band(a);
    let (low, high) = (plain(low, 1), plain(high, 1));
    let (gait, foot) = (gait(a.gait), units::speed(a.foot));
    let [a, b] = [a, b].map(geared);
    format!("{gait} {foot}, likely {low} to {high}. A: {a}. B: {b}.")
}

/// The gear of an answer, its cadence and its verdict.
fn geared(answer: &Answer) -> String {
    let (gear, verdict) = (answer.riding.gear, judged(answer.verdict, answer.limits));
    if answer.spins_out() {
        format!("{gear} {}, {verdict}", cadence(answer))
    } else {
        format!("{gear} at {}, {verdict}", with_unit(answer.riding.cadence.rpm(), 0, "rpm"))
    }
}

/// The gear and its cadence, in brackets where it cannot be turned.
pub(crate) fn turned(answer: &Answer) -> String {
    format!("{} {}", answer.riding.gear, cadence(answer))
}

/// A gradient that is no surer than a whole per cent.
pub(crate) fn whole(gradient: f64) -> String {
    percent(gradient, 0)
}

/// The steepest climb that anything is told of.
pub(crate) fn steepest() -> String {
    whole(Climb::LIMITS.max)
}

/// A gradient that may not be met up to that, in whole per cent.
pub(crate) fn whole_or_never(slope: Option<Slope>) -> String {
    slope.map_or_else(|| format!("not up to {}", steepest()), |slope| whole(slope.percent()))
}

/// The same in a sentence.
pub(crate) fn about(gradient: f64) -> String {
    if shows_nothing(gradient, 0) { "the level".to_owned() } else { format!("about {}", whole(gradient)) }
}

/// An end of riding with its likely edges: “about 8 % up (likely 6 to 10)”.
pub(crate) fn end_band(end: &SlopeBand) -> String {
    let Some(best) = end.best else { return format!("nowhere up to {}", steepest()) };
    banded(best.percent(), end.low.percent(), end.high.map(Slope::percent))
}

/// A slope with its likely edges, where they are more than a per cent apart.
fn banded(best: f64, low: f64, high: Option<f64>) -> String {
    let (best, low, high) = (about(best), plain(low, 0), high.map(|high| plain(high, 0)));
    match high {
        Some(high) if high == low => format!("{best} up"),
        Some(high) => format!("{best} up (likely {low} to {high})"),
        None => format!("{best} up (likely {low} or more)"),
    }
}

/// Where running wins, in words that stand behind “from” or by themselves where it is too close to call.
/// Edges are rounded outwards, so that they hold of every slope beyond.
pub(crate) fn running_from(running: RunningFrom) -> String {
    match running {
        RunningFrom::Nowhere => format!("nowhere up to {}", steepest()),
        RunningFrom::TheLevel => "the level on".to_owned(),
        RunningFrom::TooClose { from } if shows_nothing(from.floor(), 0) => {
            "too close to call from the level on".to_owned()
        }
        RunningFrom::TooClose { from } => format!("too close to call from {} up", about(from.floor())),
        RunningFrom::Slope { low, best, high } => banded(best, low.floor(), Some(high.ceil())),
    }
}

/// A mark's gradient in whole per cent: edges of what is likely are rounded outwards, as in [`running_from`].
pub(crate) fn mark_at(kind: MarkKind, gradient: f64) -> String {
    whole(match kind {
        MarkKind::TooCloseFrom => gradient.floor(),
        MarkKind::FootFrom => gradient.ceil(),
        _ => gradient,
    })
}

/// The likely edges of a speed.
pub(crate) fn speeds_from_to(band: &SpeedBand) -> String {
    let edge = |speed: Speed| units::speed_number(speed);
    let (low, high) = (edge(band.low), edge(band.high));
    format!("{low} to {high}")
}
