//! The gears on the board.

use crate::number::{percent, shows_nothing};
use crate::rings::setup::SetupReport;
use crate::words::counted;

/// From the lowest to the highest speed.
pub(crate) fn from_to(low: &str, high: &str) -> String {
    format!("{low} to {high}")
}

/// How many gears are worth having, and how far apart they lie.
pub(crate) fn gears(setup: &SetupReport) -> String {
    let useful = counted(setup.summary.useful(), "useful gear", "useful gears");
    match setup.steps {
        Some(steps) => format!("{useful}, steps {}", percent(steps.mean.percent(), 0)),
        None => useful,
    }
}

/// How far B's lowest and highest gear lie from A's, in per cent.
pub(crate) fn ends([lowest, highest]: [f64; 2]) -> String {
    match (shows_nothing(lowest, 0), shows_nothing(highest, 0)) {
        (true, true) => "the same ends".to_owned(),
        (true, false) => format!("B tops out {}", apart(highest)),
        (false, true) => format!("B starts {}", apart(lowest)),
        (false, false) => format!("B starts {}, tops out {}", apart(lowest), apart(highest)),
    }
}

fn apart(by_percent: f64) -> String {
    let higher = if by_percent > 0.0 { "higher" } else { "lower" };
    format!("{} {higher}", percent(by_percent.abs(), 0))
}
