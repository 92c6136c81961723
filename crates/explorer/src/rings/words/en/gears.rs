//! One gear, and the table of all.

use crate::number::{rpm, trimmed};
use crate::rings::report::RingsReport;
use crate::rings::setup::{GearLine, SetupReport};
use crate::units;

pub(crate) const ALL: &str = "All gears in numbers";
pub(crate) const LEGEND: &str = "Cross-chained: by common practice, where the chain runs at its steepest. Twice: another gear of the same set-up within your tolerance is counted instead. Slack: chain the cage has to take up, counted from the largest ring with the largest sprocket. Never use: the chain hangs there or is too short, or you switched the gear off; such gears count as neither useful, lowest nor highest. Where a table is wider than the screen it goes on to the right: scroll it sideways.";
pub(crate) const GEAR: &str = "Gear";
pub(crate) const RATIO: &str = "Ratio";
pub(crate) const DEVELOPMENT: &str = "Development";
pub(crate) const GEAR_INCHES: &str = "Gear inches";
pub(crate) const SLACK: &str = "Slack, teeth";
pub(crate) const REMARK: &str = "Remark";

/// Head of a column of speeds.
pub(crate) fn speed_at(unit: &str, cadence: &str) -> String {
    format!("{unit} at {cadence}")
}

/// Title of the table of one set-up's gears.
pub(crate) fn title(setup: &SetupReport) -> String {
    format!("{}: {} with {}", setup.side, setup.drivetrain.chainset, setup.drivetrain.cassette)
}

/// What is special about a gear; empty when there is nothing to say.
pub(crate) fn flags(line: &GearLine) -> String {
    let flags = [(line.crossed, "cross-chained"), (line.duplicate, "twice"), (line.avoid, "never use")];
    let words: Vec<&str> = flags.into_iter().filter(|(is_so, _)| *is_so).map(|(_, words)| words).collect();
    words.join(", ")
}

/// A gear with what is special about it.
pub(crate) fn with_flags(line: &GearLine) -> String {
    let flags = flags(line);
    if flags.is_empty() { line.gear.to_string() } else { format!("{} ({flags})", line.gear) }
}

/// A gear in a picture: a crossed one in brackets, one to avoid with “no” before it.
pub(crate) fn label(line: &GearLine) -> String {
    match (line.avoid, line.crossed) {
        (true, _) => format!("no {}", line.gear),
        (false, true) => format!("({})", line.gear),
        (false, false) => line.gear.to_string(),
    }
}

/// A gear's speeds at the three cadences.
pub(crate) fn speeds(rings: &RingsReport, line: &GearLine) -> String {
    let number = units::speed_number;
    format!(
        "{low} at {lowest}, {mid} at {usual} and {high} at {highest}",
        low = units::speed(line.speed_low),
        lowest = rpm(rings.window.low),
        mid = number(line.speed_usual),
        usual = trimmed(rings.window.usual.rpm()),
        high = number(line.speed_high),
        highest = trimmed(rings.window.high.rpm()),
    )
}
