//! The lap on the board.

use crate::lap::section::NoLap;
use crate::lap::settled::{Settled, Verdict};
use crate::number::{clock, seconds_in};
use crate::words::{about_clock, counted};
use gear_math::Lap;
use gear_math::course::Precision;

/// Why there is none.
pub(crate) const fn no_lap(why: NoLap) -> &'static str {
    match why {
        NoLap::NotOnThisTrack => "not on this track",
        NoLap::LacksFile => "its file is missing",
        NoLap::Awaited => "being ridden …",
    }
}

/// How long the lap takes.
pub(crate) fn time(lap: &Lap, precision: Option<Precision>) -> String {
    match precision {
        Some(precision) => about_clock(lap.time_s, precision),
        None => clock(lap.time_s, Precision::WITHOUT_BAND),
    }
}

/// How often to dismount.
pub(crate) fn dismounts(lap: &Lap) -> String {
    match lap.dismounts().len() {
        _ if lap.is_all_on_foot() => "on foot all the way".to_owned(),
        0 => "no dismount".to_owned(),
        often => counted(often, "dismount", "dismounts"),
    }
}

/// Who is ahead, by how much, and how sure that is.
pub(crate) fn difference(settled: &Settled) -> String {
    let (lead, precision, ahead) = (settled.lead(), settled.gained.precision(), settled.ahead());
    let seconds = |s: f64| seconds_in(s, precision);
    let span = format!("{} to {}\u{a0}s", seconds(lead.low_s), seconds(lead.high_s));
    match settled.verdict() {
        _ if !settled.is_final => {
            format!("being worked out: {ahead} by {}\u{a0}s so far", seconds(lead.time_s))
        }
        Verdict::Alike => "no difference".to_owned(),
        Verdict::Level => format!("too close to call: {span} for {ahead}"),
        Verdict::Quicker => format!("{ahead} quicker by {}\u{a0}s, likely {span}", seconds(lead.time_s)),
        Verdict::OnlyJust => {
            format!("{ahead} only just quicker, by {}\u{a0}s, likely {span}", seconds(lead.time_s))
        }
        Verdict::HardlyApart => {
            format!("hardly a difference: {ahead} by {}\u{a0}s, {span}", seconds(lead.time_s))
        }
        Verdict::TooClose | Verdict::OpenToForcing => {
            format!("too close to call: {ahead} by {}\u{a0}s, {span}", seconds(lead.time_s))
        }
    }
}
