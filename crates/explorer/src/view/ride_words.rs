//! What riding and running, their limits and their doubts are called.

use crate::number::{duration, listed, percent, plain, span_of_time, with_unit};
use crate::report::Report;
use gear_math::{
    Answer, Basis, ClimbPlan, Gait, LimitsHeld, MarkKind, Reason, Slope, Time, Uncertain, Verdict,
};

/// A time as its length asks for: tenths below ten seconds, minutes when there are many.
#[must_use]
pub(crate) fn seconds(time: Time) -> String {
    duration(time.s(), usize::from(time.s() < 9.95))
}

/// The likely times on foot, best and worst.
#[must_use]
pub(crate) fn foot_span(plan: &ClimbPlan) -> String {
    let (best, worst) = (plan.foot_at_best.s(), plan.foot_at_worst.s());
    span_of_time(best, worst, usize::from(worst < 9.95))
}

/// Likely speeds on foot if riding is as fast as reckoned, in the page's unit.
#[must_use]
pub(crate) fn foot_band(report: &Report, answer: &Answer) -> (f64, f64) {
    let ride = report.unit.value(answer.ride);
    (ride * answer.ratio.low, ride * answer.ratio.high)
}

/// Going on foot on one slope, and the gears of A and of B.
#[must_use]
pub(crate) fn feet_and_gears(report: &Report, a: &Answer, b: &Answer) -> String {
    let (low, high) = foot_band(report, a);
    let turned = |it: &Answer| {
        let rpm = with_unit(it.riding.cadence.rpm(), 0, "rpm");
        let rpm = if it.spins_out() { cadence(it) } else { format!("at {rpm}") };
        format!("{} {rpm}, {}", it.riding.gear, judged(it.verdict, it.limits))
    };
    format!(
        "{} {}, likely {} to {}. A: {}. B: {}.",
        gait(a.gait),
        report.unit.print(a.foot),
        plain(low, 1),
        plain(high, 1),
        turned(a),
        turned(b)
    )
}

/// A gradient, to a tenth of a per cent.
#[must_use]
pub(crate) fn grade(slope: Slope) -> String {
    percent(slope.percent(), 1)
}

/// A gradient that may not be met up to 45 %.
#[must_use]
pub(crate) fn grade_or_never(slope: Option<Slope>) -> String {
    slope.map_or("not up to 45\u{a0}%".to_owned(), grade)
}

/// What ends riding, in a word.
#[must_use]
pub(crate) const fn reason(reason: Reason) -> &'static str {
    match reason {
        Reason::Gear => "gear",
        Reason::Force => "strength",
        Reason::Balance => "balance",
        Reason::Grip => "grip",
        Reason::Energy => "energy",
    }
}

/// The verdict in a word or two.
#[must_use]
pub(crate) const fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Ride => "ride",
        Verdict::Foot => "on foot",
        Verdict::FootForced => "on foot, forced",
        Verdict::TooClose => "too close to call",
    }
}

/// The verdict with the limits behind it.
#[must_use]
pub(crate) fn judged(judgement: Verdict, limits: LimitsHeld) -> String {
    if !limits.any() {
        return verdict(judgement).to_owned();
    }
    let words: Vec<&str> = limits.reasons().map(reason).collect();
    format!("on foot: {}", words.join(", "))
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
        MarkKind::Ends(Reason::Gear) => "lowest gear runs out",
        MarkKind::Ends(Reason::Force) => "strength gives out",
        MarkKind::Ends(Reason::Balance) => "too slow to balance",
        MarkKind::Ends(Reason::Grip) => "rear wheel slips",
        MarkKind::Ends(Reason::Energy) => "feet as quick",
        MarkKind::TooCloseFrom => "too close to call",
        MarkKind::FootFrom => "feet surely quicker",
        MarkKind::BodyWeight => "over body weight",
        MarkKind::SlipsInJerks => "rear slips in jerks",
        MarkKind::FrontLifts => "front lifts in jerks",
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
        Uncertain::GrossEfficiency => ("efficiency on the bike", "", 2),
        Uncertain::Rolling => ("rolling resistance", "", 3),
        Uncertain::Load => ("burden of the bike", "", 1),
        Uncertain::FootGround => ("cost of the ground on foot", "", 2),
        Uncertain::SlopeShare => ("that cost on slopes", "", 0),
        Uncertain::FootCost => ("your cost on foot", "", 2),
        Uncertain::Standing => ("burnt standing still", "W/kg", 1),
        Uncertain::Drivetrain => ("share the drivetrain passes on", "", 3),
        Uncertain::Power => ("power", "W", 0),
        Uncertain::BikeMass => ("bike mass", "kg", 1),
        Uncertain::LowestCadence => ("lowest cadence", "rpm", 0),
        Uncertain::Balance => ("slowest speed in balance", "m/s", 1),
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
pub(super) fn limits_in_words(limits: LimitsHeld) -> String {
    let words: Vec<&str> = limits
        .reasons()
        .map(|reason| match reason {
            Reason::Gear => "the lowest gear is too tall",
            Reason::Force => "your strength does not last",
            Reason::Balance => "it is too slow to balance",
            Reason::Grip => "the rear wheel slips",
            Reason::Energy => "your feet are quicker",
        })
        .collect();
    listed(&words)
}
