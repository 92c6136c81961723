//! The sentence over all decisions.

use crate::layout::line::{Line, name, strong};
use crate::number::{is_level, seconds_in};
use crate::side::Side;
use gear_math::course::{Precision, TimeBand};

/// Both bikes are one.
pub(crate) fn one_bike() -> Line {
    let (a, b) = (name(Side::A), name(Side::B));
    format!("{a} and {b} are alike: change a part of one to compare.").into()
}

/// Neither can be ridden.
pub(crate) fn neither() -> Line {
    let (a, b) = (name(Side::A), name(Side::B));
    format!("Neither {a} nor {b} can be ridden as it stands.").into()
}

/// One can be ridden, the other cannot.
pub(crate) fn only(side: Side) -> Line {
    let (it, other) = (name(side), name(side.other()));
    format!("{it} is the one to ride: {other} cannot be ridden as it stands.").into()
}

/// The course allows no lap.
pub(crate) const NO_LAP: &str = "Which is quicker is not known without a course to ride.";
/// The lap is on its way.
pub(crate) const SOON: &str = "Which is quicker is being worked out.";

/// The lap makes no difference.
pub(crate) fn alike() -> Line {
    let (a, b) = (name(Side::A), name(Side::B));
    format!("Between {a} and {b} this lap makes no difference.").into()
}

/// By more than the doubt.
pub(crate) fn suits(side: Side, lead: &TimeBand, precision: Precision) -> Line {
    let (it, by, likely) = (name(side), by(lead, precision), likely(side, lead, precision));
    format!("{it} suits this rider and course, by {by} a lap ({likely}): more than the doubt.").into()
}

/// By hardly more than the doubt.
pub(crate) fn only_just(side: Side, lead: &TimeBand, precision: Precision) -> Line {
    let (it, by, likely) = (name(side), by(lead, precision), likely(side, lead, precision));
    format!("{it} suits this rider and course, by {by} a lap ({likely}): only just more than the doubt.")
        .into()
}

/// Neither by the best guess.
pub(crate) fn level() -> Line {
    format!("{} between {} and {} on this course.", strong("Too close to call"), name(Side::A), name(Side::B))
        .into()
}

/// They hardly differ.
pub(crate) fn hardly(side: Side, lead: &TimeBand, precision: Precision) -> Line {
    let (by, likely) = (by(lead, precision), likely(side, lead, precision));
    format!("{} on this course: {} by {by} a lap ({likely}).", strong("Hardly a difference"), name(side))
        .into()
}

/// By less than the doubt.
pub(crate) fn too_close(side: Side, lead: &TimeBand, precision: Precision) -> Line {
    let (by, likely) = (by(lead, precision), likely(side, lead, precision));
    format!(
        "{} on this course: {} by {by} a lap at best guess ({likely}).",
        strong("Too close to call"),
        name(side)
    )
    .into()
}

fn by(lead: &TimeBand, precision: Precision) -> String {
    strong(&format!("{}\u{a0}s", seconds_in(lead.time_s, precision)))
}

/// “from 1.2 s behind A to 3 s ahead”
fn likely(side: Side, lead: &TimeBand, precision: Precision) -> String {
    let seconds = |s: f64| format!("{}\u{a0}s", seconds_in(s, precision));
    let high = seconds(lead.high_s);
    if is_level(lead.low_s, precision) {
        return format!("from level to {high}");
    }
    if lead.low_s > 0.0 {
        return format!("likely {} to {high}", seconds_in(lead.low_s, precision));
    }
    format!("from {} behind {} to {high} ahead", seconds(-lead.low_s), side.other())
}

/// Draws that could turn it are to come.
pub(crate) fn so_far(side: Side, lead: &TimeBand, precision: Precision) -> Line {
    let by = by(lead, precision);
    format!("{} is ahead by {by} a lap; how sure that is, is being worked out.", name(side)).into()
}

/// What the cages ask for before riding.
pub(crate) fn in_the_way(told: &[(Side, String)], stops: bool) -> Line {
    let one = |(side, verdict): &(Side, String)| format!("{} {verdict}", name(*side));
    let head = if stops { "In the way is the cage" } else { "Mind the cage" };
    format!("{head}: {}.", told.iter().map(one).collect::<Vec<_>>().join("; ")).into()
}
