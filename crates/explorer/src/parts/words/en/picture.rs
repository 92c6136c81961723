//! The picture of what was ridden.

use crate::lap::words::found::{behind, marks, set_up};
use crate::parts::found::BoxFound;
use crate::parts::offer::Offer;
use crate::parts::words::named::{combination, lack};
use crate::side::Side;
use crate::units;
use crate::words::listed;
use gear_math::Drivetrain;
use gear_math::parts::Lack;

/// Title of the picture.
pub(crate) const TITLE: &str = "The box: behind the best, against lowest gear";
/// How it is to be read.
pub(crate) const CAPTION: &str = "Low is quick, left climbs easily. On the line: no other of the box is both quicker and lower geared. The cross is the quickest; A and B are ringed in colour; a ring of ink is the best part to buy; rings on the upper edge do not fit.";
/// Beside the best part to buy.
pub(crate) const BOUGHT: &str = "best to buy";

/// Beside the mark of a set-up.
pub(crate) fn name(found: &BoxFound, place: usize) -> String {
    let Drivetrain { chainset, cassette } = found.order[place].parts.fit.drivetrain;
    format!("{chainset} with {}-{}", cassette.smallest(), cassette.largest())
}

/// What is said of one that is looked at.
pub(crate) fn spot(found: &BoxFound, place: usize) -> String {
    let sides: Vec<Side> = found.sides_at(place).collect();
    let choice = &found.order[place];
    let parts = combination(&choice.parts, &found.asked.parts);
    let behind = behind(found.behind_s(place), found.tested(place));
    format!(
        "{}{parts}: {behind}, lowest gear {}.",
        marks(&sides),
        units::developments().print(choice.lowest_m, 2)
    )
}

/// What is said of the best part to buy.
pub(crate) fn bought(offer: &Offer) -> String {
    format!("To buy: {}, lowest gear {}.", offer.said, units::developments().print(offer.lowest_m, 2))
}

/// What is said of rings and cassette that do not fit.
pub(crate) fn not_fitting(drivetrain: &Drivetrain, why: &[Lack]) -> String {
    let why: Vec<&str> = why.iter().map(|it| lack(*it)).collect();
    format!("{} does not fit: {}.", set_up(drivetrain), listed(&why))
}

/// What it shows.
pub(crate) fn label(found: &BoxFound) -> String {
    let (front, all) = (found.front.len(), found.order.len());
    format!(
        "Time behind the best against lowest gear: {front} of {all} laps of the box, of which none is both quicker and lower geared, and A and B."
    )
}

/// What is unbeaten on time and lowest gear.
pub(crate) fn says(found: &BoxFound) -> String {
    match found.front.as_slice() {
        [] => String::new(),
        [one] => format!("{} is quickest and lowest geared of the box.", name(found, *one)),
        [quickest, .., lowest] => format!(
            "Of the box {} are unbeaten on time and lowest gear, from {}, the quickest, to {}, the lowest geared.",
            found.front.len(),
            name(found, *quickest),
            name(found, *lowest)
        ),
    }
}
