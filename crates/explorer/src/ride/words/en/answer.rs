//! The answer by speeds and by slopes.

use super::{A, B};
use crate::layout::line::{Line, name, strong};
use crate::number::{percent, plain, rpm, with_unit};
use crate::ride::report::{Difference, LowerGearHelps, RunningFrom};
use crate::ride::section::RideSection;
use crate::ride::side::RideSide;
use crate::ride::spun_out::SpunOut;
use crate::ride::words::figures::{about, end_band, running_from, speeds_from_to, steepest};
use crate::ride::words::terms::{doubtful, ground_name};
use crate::side::Side;
use crate::units;
use crate::words::likely_share;
use gear_math::rider::{Climb, Reason};

/// The speed of each lowest gear at the lowest cadence: a matter of the bike and of how slowly a rider turns the crank.
pub(crate) fn gear_limit(report: &RideSection) -> Line {
    let ground = ground_name(report.ride.ground());
    let [of_a, of_b] = [&report.ride.sides[0], &report.ride.sides[1]]
        .map(|side| strong(&units::speed(side.crossover.lowest_gear_speed)));
    if of_a == of_b {
        format!("On {ground} with {A} and {B} alike no gear is low enough below {of_a}.").into()
    } else {
        format!("On {ground} with {A} no gear is low enough below {of_a}, with {B} below {of_b}.").into()
    }
}

/// The speed below which running this climb is quicker whatever the gears.
pub(crate) fn running_limit(report: &RideSection) -> Line {
    let wins = if report.ride.running_wins_below_the_gears() { "only wins" } else { "wins" };
    let below = report
        .ride
        .running_wins_below()
        .map(|below| (strong(&units::speed(below.best)), speeds_from_to(&below)));
    match below {
        [a, b] if a == b => {
            let (best, likely) = a;
            format!("Running itself {wins} below {best} on this bank (likely {likely}).").into()
        }
        [(of_a, likely_a), (of_b, likely_b)] => format!(
            "Running itself {wins} below {of_a} on this bank (likely {likely_a}) with {A}, below {of_b} (likely {likely_b}) with {B}."
        )
        .into(),
    }
}

/// Where riding ends, and why, at the sustained power.
pub(crate) fn ends(report: &RideSection) -> Line {
    let power = with_unit(report.ride.inputs.rider.power.watts(), 0, "W");
    let [a, b] = [&report.ride.sides[0], &report.ride.sides[1]].map(|side| end(report, side));
    if report.ride.ends_alike() {
        format!("On a slope so long that you hold it at {power}, with {A} and {B} {a}").into()
    } else {
        format!("On a slope so long that you hold it at {power}, with {A} {a} With {B} {b}").into()
    }
}

/// Where a side's riding ends, behind “with A”.
fn end(report: &RideSection, side: &RideSide) -> String {
    let Some(flip) = side.flip() else { return format!("nothing ends riding up to {}.", steepest()) };
    if flip.reason == Reason::Energy {
        return "nothing ends riding before running wins.".to_owned();
    }
    let why = why(report, side, flip.reason);
    if side.fails_on_the_level() {
        format!("riding ends {}: {why}.", strong("on the level already"))
    } else {
        format!("riding ends from {}: {why}.", strong(&end_band(&side.end)))
    }
}

fn why(report: &RideSection, side: &RideSide, reason: Reason) -> String {
    let gear = lowest_gear(report, side);
    match reason {
        Reason::Gear => format!("{gear} at {} is too tall", rpm(report.rings.window.low)),
        Reason::Force => format!("{gear} asks for more strength than lasts"),
        Reason::Balance => "slower than that the bike does not stay upright, whatever the gear".to_owned(),
        Reason::Grip => "the rear wheel slips, whatever the gear".to_owned(),
        Reason::Energy => "running is as quick".to_owned(),
    }
}

/// The lowest gear, or both where one sentence stands for both set-ups.
fn lowest_gear(report: &RideSection, side: &RideSide) -> String {
    let [a, b] = [report.ride.sides[0].lowest, report.ride.sides[1].lowest];
    if report.ride.ends_alike() && a != b { format!("{a} or {b}") } else { side.lowest.to_string() }
}

/// A speed that the legs cannot ride faster than, though running may.
pub(crate) fn spun_out(spun: &SpunOut) -> Line {
    let (gear, speed) = (spun.gear, strong(&units::speed(spun.speed)));
    if spun.up_to == Climb::LEVEL {
        format!("The {gear} spins out at {speed}, which running may better on the level.").into()
    } else {
        let slope = about(spun.up_to.percent());
        format!("The {gear} spins out at {speed}, which running may better on slopes up to {slope}.").into()
    }
}

/// Up to where a lower gear would be quicker than running.
pub(crate) fn lower_gear(helps: &LowerGearHelps) -> Line {
    let gear = match helps.sides.as_slice() {
        [side] => format!("With {side} a lower gear"),
        _ => "A lower gear".to_owned(),
    };
    let until = helps.until;
    let far = if until < Climb::LIMITS.max { about(until.floor()) } else { percent(until, 0) };
    match helps.then {
        Some(Reason::Grip) => format!(
            "{gear} would be quicker than running up to {far}, where the rear wheel slips in any gear."
        ),
        Some(_) => format!(
            "{gear} would be quicker than running up to {far}, where it is too slow to balance in any gear."
        ),
        None => format!("{gear} would be quicker than running up to {far}."),
    }
    .into()
}

/// Where running wins, whatever the gear.
pub(crate) fn running([a, b]: [RunningFrom; 2]) -> String {
    let [a, b] = [a, b].map(running_of);
    if a == b { a } else { format!("With {A}: {a} With {B}: {b}") }
}

fn running_of(running: RunningFrom) -> String {
    let from = running_from(running);
    match running {
        RunningFrom::Nowhere => {
            format!("In a gear low enough riding stays quicker than running up to {}.", steepest())
        }
        RunningFrom::TooClose { .. } => {
            format!("Between running and a gear low enough it is {from}: let grip and balance decide.")
        }
        RunningFrom::Slope { .. } => format!("Running wins from {from}, whatever the gear."),
        RunningFrom::TheLevel => "Running is quicker from the level on, whatever the gear.".to_owned(),
    }
}

/// What changing the rings changes; nothing to say where only the climb tells.
pub(crate) fn difference(difference: Difference) -> Line {
    match difference {
        Difference::Nothing => "Between A and B that makes no difference.".into(),
        Difference::SameEnd => "Riding ends at the same slope with both.".into(),
        Difference::Elsewhere => Line::default(),
        Difference::Further { lower, points } => {
            let points = strong(&format!("{} points", plain(points, 1)));
            keeps_riding(lower, &format!("on slopes up to {points} steeper"))
        }
        Difference::UntilRunning(lower) => keeps_riding(lower, "until running wins"),
        Difference::AllTheWay(lower) => {
            keeps_riding(lower, &strong(&format!("all the way to {}", steepest())))
        }
    }
}

fn keeps_riding(lower: Side, how_far: &str) -> Line {
    let (lower, other) = (name(lower), name(lower.other()));
    format!("{lower} instead of {other} keeps you riding {how_far}.").into()
}

/// Which input makes most of the doubt.
pub(crate) fn doubt(report: &RideSection) -> String {
    let share = likely_share();
    match report.ride.most_in_doubt() {
        Some(input) => {
            format!("What moves the end of riding most is {}. Likely means {share} cases.", doubtful(input))
        }
        None => format!("Likely means {share} cases."),
    }
}
