//! What a search found.

use crate::lap::found::Found;
use crate::lap::words::found::{behind, marks, set_up};
use crate::number::plain;
use crate::side::Side;
use crate::units;
use crate::words::gears_by;

/// Title of the picture.
pub(crate) const TITLE: &str = "Behind the best, against lowest gear";

/// How it is to be read.
pub(crate) const CAPTION: &str = "Low is quick, left climbs easily. On the line: no other is both quicker and lower geared; faint: the others. The cross is the best in order; A and B are ringed if they were tried.";

/// Upward.
pub(crate) const UP: &str = "behind the best";

/// Across.
pub(crate) fn across() -> String {
    format!("{} of the lowest gear", gears_by(units::developments_by()))
}

/// A time behind the best on the axis.
pub(crate) fn tick(behind_s: f64) -> String {
    format!("{}\u{a0}s", plain(behind_s, usize::from(behind_s.fract() != 0.0)))
}

/// What it shows.
pub(crate) fn label(found: &Found) -> String {
    let (front, all, best) = (found.front.len(), found.order.len(), described(found, 0));
    format!(
        "Time behind the best against lowest gear: {front} of {all} set-ups, of which none is both quicker and lower geared, and A and B. The best: {best}."
    )
}

/// The set-up at a place of the order, beside its mark.
pub(crate) fn name(found: &Found, place: usize) -> String {
    let drivetrain = &found.order[place].candidate.drivetrain;
    let (smallest, largest) = (drivetrain.cassette.smallest(), drivetrain.cassette.largest());
    format!("{} with {smallest}-{largest}", drivetrain.chainset)
}

/// The set-up at a place of the order.
pub(crate) fn spot(found: &Found, place: usize) -> String {
    format!("{}.", described(found, place))
}

fn described(found: &Found, place: usize) -> String {
    let sides: Vec<Side> = found.sides_at(place).collect();
    let candidate = &found.order[place].candidate;
    let (set_up, behind) =
        (set_up(&candidate.drivetrain), behind(found.behind_s(place), found.tested(place)));
    let lowest = units::developments().print(candidate.lowest_development_m, 2);
    format!("{}{set_up}: {behind}, lowest gear {lowest}", marks(&sides))
}

/// What is unbeaten on time and lowest gear.
pub(crate) fn says(found: &Found) -> String {
    let all = found.order.len();
    match found.front.as_slice() {
        [] => String::new(),
        [one] => format!("{} is quickest and lowest geared of {all} tried.", name(found, *one)),
        [quickest, .., lowest] => format!(
            "{} is quickest, {} lowest geared; {} of {all} tried are unbeaten on both.",
            name(found, *quickest),
            name(found, *lowest),
            found.front.len()
        ),
    }
}
