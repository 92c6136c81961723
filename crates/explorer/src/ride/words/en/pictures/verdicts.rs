//! The map of gradient and ground.

use crate::number::percent;
use crate::ride::ground_row::{GroundRow, Part};
use crate::ride::section::RideSection;
use crate::ride::words::advice::in_short;
use crate::ride::words::figures::{steepest, whole};
use crate::ride::words::terms::{ground_name, limit, verb, verdict};
use crate::side::Side;
use gear_math::rider::{Advice, Verdict};

/// The first words of its caption.
pub(crate) const TITLE: &str = "Every ground, every slope";
/// How it is to be read.
pub(crate) const CAPTION: &str = "For a slope so long that you hold it at your power. Full: ride. Hatched: too close to call. Grey: run, likely quicker. Ruled: run, though by the best estimate riding is the quicker in a lower gear. Open: run, with what forces it where no gear would help. Broken line: this climb, which may be short enough to draw on your reserve.";

/// What it shows, in a sentence or two.
pub(crate) fn label(report: &RideSection, here: &GroundRow) -> String {
    let (count, ground) = (report.ride.map().len(), ground_name(here.surface));
    let [a, b] = Side::BOTH.map(|side| first(side, here));
    let (advice, steepest) = (in_short(report), steepest());
    format!(
        "Verdict on {count} grounds from the level to {steepest}, for power kept up. On {ground}, {a}; {b}. This climb: {advice}."
    )
}

fn first(side: Side, row: &GroundRow) -> String {
    row.parts(side).first().map_or(String::new(), |it| format!("{side}: {}", described(it)))
}

const LOWER_GEAR: &str = "a lower gear rides";

/// What stands inside a part, if there is room.
pub(crate) const fn short(part: &Part) -> &'static str {
    if part.lower_gear_rides {
        return LOWER_GEAR;
    }
    match (part.stretch.verdict, part.stretch.reason) {
        (Verdict::FootForced, Some(why)) => limit(why),
        (Verdict::TooClose, _) => "too close",
        (other, _) => verdict(other),
    }
}

fn described(part: &Part) -> String {
    let stretch = &part.stretch;
    let (verdict, from, to) = (verdict(stretch.verdict), whole(stretch.from), whole(stretch.to));
    match (stretch.verdict, stretch.reason) {
        _ if part.lower_gear_rides => format!("{verdict}, where {LOWER_GEAR}, from {from} to {to}"),
        (Verdict::FootForced, Some(why)) => format!("{verdict}, {}, from {from} to {to}", limit(why)),
        _ => format!("{verdict} from {from} to {to}"),
    }
}

/// A part to be read out, with the advice on the climb where that is within it.
pub(crate) fn part_spot(side: Side, row: &GroundRow, part: &Part, advice: Option<Advice>) -> String {
    let (ground, stretch) = (ground_name(row.surface), described(part));
    match advice {
        Some(advice) => format!("{side} on {ground}: {stretch}. This climb: {}.", verb(advice)),
        None => format!("{side} on {ground}: {stretch}."),
    }
}

/// The advice on this climb.
pub(crate) fn says(report: &RideSection) -> String {
    let (climb, ground) = (percent(report.ride.inputs.climb.percent(), 1), ground_name(report.ride.ground()));
    format!("{} on this climb, {climb} of {ground}.", in_short(report))
}
