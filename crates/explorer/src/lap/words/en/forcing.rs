//! What the lap's even power leaves out beside “Ride or run?”.

use crate::lap::settled::{Forcing, Settled, saved_s};
use crate::layout::line::{Line, name};
use crate::number::{brief, seconds_in, with_unit};
use crate::side::Side;
use crate::units;
use crate::words::counted;
use gear_math::course::ForcedPlace;

/// That the lap of one bike is ridden at an even power, where it would be forced somewhere or nowhere.
pub(crate) fn one_lap(power_w: f64, is_forced: bool) -> String {
    let power = with_unit(power_w, 0, "W");
    if is_forced {
        format!("The lap is ridden at an even {power}, which the advice in “Ride or run?” is not.")
    } else {
        format!("The lap is ridden at an even {power}. Forcing a gear for a few seconds is left out.")
    }
}

/// The same of two laps.
pub(crate) fn both_laps(power_w: f64, is_forced: bool) -> String {
    let power = with_unit(power_w, 0, "W");
    if is_forced {
        format!("Both laps are ridden at an even {power}, which the advice in “Ride or run?” is not.")
    } else {
        format!("Both laps are ridden at an even {power}. Forcing a gear for a few seconds is left out.")
    }
}

/// Where the lap goes on foot though forcing is quicker: the places that are told, in the order they come, out of all of one
/// side, or of the only bike.
pub(crate) fn places(side: Option<Side>, told: &[&ForcedPlace], all: &[ForcedPlace]) -> Line {
    let whom = side.map_or("you", name);
    let mut list: Vec<String> = told.iter().skip(1).map(|it| further_place(it)).collect();
    list.splice(0..0, told.first().map(|it| first_place(it)));
    if all.len() > told.len() {
        list.push(format!("and at {}", counted(all.len() - told.len(), "more place", "more places")));
    }
    let list = list.join("; ");
    if all.len() > 1 {
        let saved = brief(saved_s(all));
        format!(
            "The lap puts {whom} on foot {list}, {saved} in all, within what you set aside of your reserve."
        )
    } else {
        format!("The lap puts {whom} on foot {list}, within what you set aside of your reserve.")
    }
    .into()
}

fn first_place(place: &ForcedPlace) -> String {
    let (from, to) =
        (units::distances().number(place.part.from_m, 0), units::distances().print(place.part.to_m, 0));
    let (gear, power) = (place.gear, with_unit(place.power.watts(), 0, "W"));
    let (forced, on_foot) = (brief(place.time_s), brief(place.part.time_s));
    format!("at {from} to {to}, where forcing {gear} at {power} would take {forced} instead of {on_foot}")
}

fn further_place(place: &ForcedPlace) -> String {
    let (from, to) =
        (units::distances().number(place.part.from_m, 0), units::distances().print(place.part.to_m, 0));
    let power = with_unit(place.power.watts(), 0, "W");
    let (forced, on_foot) = (brief(place.time_s), brief(place.part.time_s));
    format!("at {from} to {to} ({power}: {forced} instead of {on_foot})")
}

/// Who would be ahead with it.
pub(crate) fn outcome(settled: &Settled) -> Line {
    let (forced, ahead) = (settled.with_forcing(), name(settled.ahead_forced()));
    let gained = seconds_in(forced.time_s.abs(), forced.precision());
    match settled.forcing() {
        Forcing::Level => "With that neither is quicker by the best guess.".to_owned(),
        Forcing::Turns => format!(
            "With that {ahead} may be as quick or quicker: it gains {gained}\u{a0}s a lap by the best guess."
        ),
        Forcing::Gains => format!("With that {ahead} gains {gained}\u{a0}s a lap by the best guess."),
        Forcing::Stays => {
            format!("With that {ahead} gains {gained}\u{a0}s a lap by the best guess, and stays the quicker.")
        }
    }
    .into()
}
