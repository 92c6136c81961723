//! What a search found.

use crate::lap::found::Found;
use crate::lap::words::found::{behind, marks, set_up};
use crate::number::{plain, with_unit};
use crate::side::Side;

/// Title of the picture.
pub(crate) const TITLE: &str = "Behind the best, against lowest gear";

/// How it is to be read.
pub(crate) const CAPTION: &str = "Low is quick, left climbs easily. Full marks on the line: no other set-up is both quicker and lower geared. The cross is the best in order; A and B are ringed if they were tried.";

/// Where nothing has been found yet, for who does not see it.
pub(crate) const NOTHING_YET: &str = "Nothing has been searched yet.";

/// In its place on the page.
pub(crate) const DRAWN_HERE: &str = "What a search finds is drawn here.";

/// Upward.
pub(crate) const UP: &str = "behind the best";

/// Across.
pub(crate) const ACROSS: &str = "across: development, lowest gear";

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

/// The set-up at a place of the order.
pub(crate) fn spot(found: &Found, place: usize) -> String {
    format!("{}.", described(found, place))
}

fn described(found: &Found, place: usize) -> String {
    let sides: Vec<Side> = found.sides_at(place).collect();
    let candidate = &found.order[place].candidate;
    let (set_up, behind) =
        (set_up(&candidate.drivetrain), behind(found.behind_s(place), found.tested(place)));
    let lowest = with_unit(candidate.lowest_development_m, 2, "m");
    format!("{}{set_up}: {behind}, lowest gear {lowest}", marks(&sides))
}
