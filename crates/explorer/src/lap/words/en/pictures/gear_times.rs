//! How long in each gear.

use crate::number::{brief, duration, percent, with_unit};
use crate::side::Side;
use gear_math::Lap;

/// Title of the picture.
pub(crate) const TITLE: &str = "How long in each gear";

/// How it is to be read.
pub(crate) const CAPTION: &str = "Over one lap, coasting included; time on foot has dismount and remount in it. Gears in brackets run cross-chained.";

/// What is in no gear.
pub(crate) const ON_FOOT: &str = "on foot";

/// Over the bars of one set-up.
pub(crate) fn head(side: Side) -> String {
    format!("{side}, highest gear on top")
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
    let (time, way, share) = (brief(time_s), with_unit(way_m, 0, "m"), percent(100.0 * time_s / lap_s, 0));
    format!("{side}, {what}: {time} over {way}, {share} of the lap.")
}
