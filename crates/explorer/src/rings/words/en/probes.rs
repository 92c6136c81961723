//! What every gear makes of one cadence and of one speed.

use crate::layout::line::{Line, name, strong};
use crate::side::Side;
use crate::words::listed;

/// What A and B make of a cadence.
pub(crate) fn at_cadence(cadence: &str, a: &Line, b: &Line) -> Line {
    format!("At {}: {a}, {b}.", strong(cadence)).into()
}

/// A single gear at that cadence.
pub(crate) fn makes(side: Side, speed: &str) -> Line {
    format!("{} makes {speed}", name(side)).into()
}

/// Lowest and highest gear at that cadence.
pub(crate) fn goes(side: Side, low: &str, high: &str) -> Line {
    format!("{} goes from {low} to {high}", name(side)).into()
}

/// What A and B make of a speed.
pub(crate) fn at_speed(speed: &str, a: &Line, b: &Line) -> Line {
    format!("At {}: {a} {b} ", strong(speed)).into()
}

/// The gear to be in at that speed, and those next to it.
pub(crate) fn turns(side: Side, best: &str, cadence: &str, also: &[String]) -> Line {
    let (side, best) = (name(side), strong(best));
    match also {
        [] => format!("{side} turns {best} at {cadence}."),
        _ => format!("{side} turns {best} at {cadence}; also {}.", listed(also)),
    }
    .into()
}

/// No gear can be pedalled at that speed.
pub(crate) fn no_gear(side: Side) -> Line {
    format!("{} has no gear within your cadences.", name(side)).into()
}
