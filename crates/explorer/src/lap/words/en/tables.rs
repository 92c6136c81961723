//! The lap in numbers.

use crate::number::{clock, duration, rpm, signed};
use crate::side::Side;
use crate::units;
use crate::words::listed;
use gear_math::Cadence;
use gear_math::course::{GainPart, Precision, TimeBand};

/// Over both laps in numbers, and beneath that.
pub(crate) const NUMBERS: [&str; 2] = [
    "The lap in numbers",
    "A flying lap, begun as it was ended. Time in every gear and time on foot make up the lap.",
];

/// The time of the lap.
pub(crate) const LAP: &str = "Lap";

/// The time of a lap of which the likely ones have another middle.
pub(crate) const AS_ENTERED: &str = "Lap with everything as entered";

/// Its likely edges.
pub(crate) const LIKELY: &str = "Likely";

/// Way and time on foot.
pub(crate) const ON_FOOT: &str = "On foot, dismount and remount included";

/// Shifts at the rear.
pub(crate) const SHIFTS_REAR: &str = "Shifts, rear";

/// Shifts at the front.
pub(crate) const SHIFTS_FRONT: &str = "Shifts, front";

/// The lowest cadence.
pub(crate) const LOWEST_CADENCE: &str = "Lowest cadence";

/// Time below the cadence window.
pub(crate) const BELOW_WINDOW: &str = "Below your cadence window";

/// The highest power, what is drawn from the reserve and what comes back.
pub(crate) const HIGHEST_POWER: &str = "Highest power";

/// What is drawn from the reserve.
pub(crate) const DRAWN: &str = "Drawn from your reserve";

/// What comes back to it.
pub(crate) const BACK: &str = "Back to your reserve";

/// Time without pedalling.
pub(crate) const COASTING: &str = "Riding without pedalling";

/// Work at the crank, and what it goes into.
pub(crate) const WORK: &str = "Work at the crank";

/// Work against rolling resistance.
pub(crate) const ROLLING: &str = "Rolling";

/// Work against the air.
pub(crate) const AIR: &str = "Air resistance";

/// What the brakes take.
pub(crate) const BRAKING: &str = "Braking";

/// What stands for a number that there is none of.
pub(crate) const NONE: &str = "–";

/// The likely edges of a time.
pub(crate) fn likely(band: &TimeBand, precision: Precision) -> String {
    format!("{} to {}", clock(band.low_s, precision), clock(band.high_s, precision))
}

/// Why the lowest cadence may be lower than the lowest the rider turns.
pub(crate) fn slowest_crank(least: Cadence) -> String {
    let least = rpm(least);
    format!(
        "The lowest cadence is below your own of {least} for moments only: while a shift is under way, or while getting going again."
    )
}

/// Over the places where the set-ups differ, and beneath that.
pub(crate) const DIFFERENCES: [&str; 2] =
    ["Where the difference arises", "Plus where B gains, minus where A does; the largest only."];

/// Over its columns.
pub(crate) const DIFFERENCES_HEADS: [&str; 2] = ["From the line", "B gains"];

/// Where such a place is.
pub(crate) fn span(part: &GainPart) -> String {
    format!(
        "{} to {}",
        units::distances().number(part.span.from_m, 0),
        units::distances().print(part.span.to_m, 0)
    )
}

/// What B gains there.
pub(crate) fn gain(part: &GainPart, decimals: usize) -> String {
    format!("{}\u{a0}s", signed(part.gained_s, decimals))
}

/// What is folded away about gears.
pub(crate) const GEARS_FOLDED: &str = "How long in each gear, in numbers";

/// Over time and distance in every gear, and beneath that.
pub(crate) const GEARS: [&str; 2] = [
    "How long in each gear",
    "Lowest first, cross-chained ones in brackets; gears that are not used are left out. Dismount and remount are part of the time on foot.",
];

/// Over its columns.
pub(crate) const GEARS_HEADS: [&str; 3] = ["Gear", "Time", "Distance"];

/// What is in no gear.
pub(crate) const IN_NO_GEAR: &str = "on foot";

/// For how long gears run cross-chained, by side.
pub(crate) fn crossed(times: &[(Side, f64)], is_planned: bool) -> String {
    let times: Vec<String> =
        times.iter().map(|(side, time_s)| format!("{} with {side}", duration(*time_s, 0))).collect();
    let times = listed(&times);
    let choice = if is_planned {
        "The plan takes whichever gear pays and counts no loss in the chain for that"
    } else {
        "The lap takes whichever gear suits the cadence"
    };
    format!(
        "Gears in brackets run cross-chained: they are ridden for {times}. {choice}; shift to the other ring there if you can."
    )
}
