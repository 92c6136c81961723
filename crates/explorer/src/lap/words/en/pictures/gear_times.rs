//! How long in each gear.

use crate::number::{brief, duration, percent, plain};
use crate::side::Side;
use crate::units;
use crate::words::counted;
use gear_math::Lap;

/// Title of the picture.
pub(crate) const TITLE: &str = "How long in each gear";

/// How it is to be read.
pub(crate) const CAPTION: &str = "A to the left, B to the right, by development; coasting included, on foot with dismount and remount. In brackets: cross-chained.";

/// What is in no gear.
pub(crate) const ON_FOOT: &str = "on foot";

/// A development on the axis.
pub(crate) fn development(m: f64) -> String {
    let unit = units::developments();
    plain(unit.value(m), 1)
}

/// Gears that have no bar: how many of a set-up, and how long all of them are in use.
pub(crate) fn left_out(side: Side, count: usize, time_s: f64) -> String {
    let gears = counted(count, "gear", "gears");
    format!("{side} touches {gears} more, {} in all", time(time_s))
}

/// At the end of a bar.
pub(crate) fn time(time_s: f64) -> String {
    if time_s < 0.5 { "under 1\u{a0}s".to_owned() } else { duration(time_s, 0) }
}

/// What it shows.
pub(crate) fn label(laps: &[Lap; 2]) -> String {
    let [a, b] = Side::BOTH.map(|side| longest(side, &laps[side as usize]));
    format!("How long in each gear: {a}; {b}.")
}

fn longest(side: Side, lap: &Lap) -> String {
    let Some(most) = lap.gears.iter().max_by(|one, other| one.time_s.total_cmp(&other.time_s)) else {
        return format!("{side} never rides");
    };
    let (longest, on_foot) = (duration(most.time_s, 0), duration(lap.on_foot_s(), 0));
    format!("{side} is longest in {}, {longest}, and on foot for {on_foot}", most.gear)
}

/// A bar: a gear, how long and how far in it, and the time of the whole lap.
pub(crate) fn spot(side: Side, what: &str, time_s: f64, way_m: f64, lap_s: f64) -> String {
    let (time, way, share) =
        (brief(time_s), units::distances().print(way_m, 0), percent(100.0 * time_s / lap_s, 0));
    format!("{side}, {what}: {time} over {way}, {share} of the lap.")
}

/// Where most of the time goes.
pub(crate) fn says(laps: &[Lap; 2]) -> String {
    let [a, b] = Side::BOTH.map(|side| longest(side, &laps[side as usize]));
    format!("{a}; {b}.")
}
