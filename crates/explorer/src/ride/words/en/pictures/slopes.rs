//! Speed against gradient.

use crate::number::percent;
use crate::ride::section::RideSection;
use crate::ride::side::RideSide;
use crate::ride::words::advice::in_short;
use crate::ride::words::figures::{about, end_band, feet_and_gears, mark_at};
use crate::ride::words::terms::{self, ground_name};
use crate::side::Side;
use crate::units;
use gear_math::Speed;
use gear_math::rider::{Answer, MarkKind, OnBike};

/// The first words of its caption.
pub(crate) const TITLE: &str = "Speed against gradient";
/// How it is to be read.
pub(crate) const CAPTION: &str = "Solid as far as A rides, open as far as B does, thin where only a lower gear would. Broken: running; dotted: walking, both with A’s bike and without dismount and remount, their likely speeds in grey. For a slope so long that you hold it at your power; square and cross: this climb’s own times.";
/// Names at the lines.
pub(crate) const RIDING: &str = "riding";
/// Names at the lines.
pub(crate) const RUNNING: &str = "running";
/// Names at the lines.
pub(crate) const WALKING: &str = "walking";

/// What it shows, in a sentence or two.
pub(crate) fn label(report: &RideSection) -> String {
    let ride = &report.ride;
    let (ground, climb) = (ground_name(ride.ground()), percent(ride.inputs.climb.percent(), 1));
    let [a, b] = [&ride.sides[0], &ride.sides[1]].map(end);
    let close = match [&ride.sides[0], &ride.sides[1]].map(close_from) {
        [None, None] => String::new(),
        [a, b] if a == b => {
            format!("; running and riding are too close to call from {}", a.unwrap_or_default())
        }
        [a, b] => {
            let nowhere = || "nowhere".to_owned();
            let [a, b] = [a, b].map(|from| from.map_or_else(nowhere, |from| format!("from {from}")));
            format!("; running and riding are too close to call {a} with A, {b} with B")
        }
    };
    let advice = in_short(report);
    format!("Speed against gradient on {ground}: {a}, {b}{close}. This climb, {climb}: {advice}.")
}

fn close_from(side: &RideSide) -> Option<String> {
    side.running.earliest.map(|from| about(from.percent().floor()))
}

fn end(it: &RideSide) -> String {
    let side = it.side;
    match it.flip() {
        Some(flip) => {
            let (end, speed) = (end_band(&it.end), units::speed(flip.speed));
            format!("{side} rides to {end}, down to {speed}")
        }
        None => format!("{side} rides all the way"),
    }
}

/// The row of cadences of a side.
pub(crate) fn rpm(side: Side) -> String {
    format!("{side} rpm")
}

/// A cadence in that row.
pub(crate) fn cadence(answer: &Answer) -> String {
    if answer.spins_out() { "fast".to_owned() } else { terms::cadence(answer) }
}

/// A mark by name; without a side it stands for both.
pub(crate) fn mark(side: Option<Side>, kind: MarkKind, gradient: f64) -> String {
    let (at, mark) = (mark_at(kind, gradient), terms::mark(kind));
    match side {
        Some(side) => format!("{at} {side} {mark}"),
        None => format!("{at} {mark}"),
    }
}

/// This climb in a way and its time; without a side both take as long.
pub(crate) fn own(side: Option<Side>, way: Option<OnBike>, time: &str) -> String {
    let way = match way {
        Some(OnBike::Ridden) => "ridden",
        Some(OnBike::Carried) => "on speed brought",
        Some(OnBike::Forced(_)) => "forced",
        None => "on foot",
    };
    match side {
        Some(side) => format!("{side} {way} {time}"),
        None => format!("{way} {time}"),
    }
}

/// A mark by its name, to be read out.
pub(crate) fn mark_spot(mark: &str, speed: Speed) -> String {
    format!("{mark}, at {}.", units::speed(speed))
}

/// Everything on one slope.
pub(crate) fn slope_spot(report: &RideSection, a: &Answer, b: &Answer) -> String {
    let (slope, riding) = (percent(a.gradient.percent(), 0), units::speed(a.ride));
    format!("{slope}: riding {riding}, {}", feet_and_gears(report, a, b))
}

/// How far A and B ride.
pub(crate) fn says(report: &RideSection) -> String {
    let [a, b] = [&report.ride.sides[0], &report.ride.sides[1]].map(end);
    format!("{a}; {b}, on slopes that go on.")
}
