//! “Round the lap”: what its even power leaves out beside “Ride or run?”, where a rider would force a gear.

use crate::lap::report::{LapReport, Settled, saved_s};
use crate::layout::pieces::name;
use crate::number::{brief, counted, plain, seconds_in, with_unit};
use crate::side::Side;
use gear_math::ascending;
use gear_math::course::{ForcedPlace, Quicker};
use maud::{Markup, html};

/// That the laps are ridden at an even power, where forcing would be quicker, and what that makes of who is ahead.
#[must_use]
pub(crate) fn forcing(laps: &LapReport, settled: &Settled) -> Markup {
    let sides: &[Side] = if laps.is_of_one_bike() { &[Side::A] } else { &Side::BOTH };
    let told: Vec<Side> =
        sides.iter().copied().filter(|side| !settled.forced[*side as usize].is_empty()).collect();
    html! {
        @if laps.is_of_one_bike() { "The lap is" } @else { "Both laps are" } " ridden at an even " (with_unit(laps.question.setups[0].rider.power.watts(), 0, "W"))
        @if told.is_empty() { ". Forcing a gear for a few seconds is left out." }
        @else {
            ", which the advice in “Ride or run?” is not. "
            @for side in &told {
                @let whom = if laps.is_of_one_bike() { html! { "you" } } else { name(*side) };
                (places(&whom, &settled.forced[*side as usize])) " "
            }
            @if !laps.is_of_one_bike() { (outcome(settled)) }
        }
    }
}

/// Places told one by one; of more than these only the number is.
const TOLD: usize = 3;

/// The places on foot where forcing is quicker, in the order they come.
fn places(whom: &Markup, places: &[ForcedPlace]) -> Markup {
    let mut told: Vec<&ForcedPlace> = places.iter().collect();
    ascending(&mut told, |place| -place.saved_s());
    told.truncate(TOLD);
    ascending(&mut told, |place| place.part.from_m);
    let others = places.len() - told.len();
    html! {
        "The lap puts " (whom) " on foot "
        @for (index, place) in told.iter().enumerate() {
            @if index > 0 { "; " }
            "at " (plain(place.part.from_m, 0)) " to " (with_unit(place.part.to_m, 0, "m"))
            @if index == 0 { ", where forcing " (place.gear) " at " } @else { " (" }
            (with_unit(place.power.watts(), 0, "W"))
            @if index == 0 { " would take " } @else { ": " }
            (brief(place.time_s)) " instead of " (brief(place.part.time_s))
            @if index > 0 { ")" }
        }
        @if others > 0 { "; and at " (counted(others, "more place", "more places")) }
        @if places.len() > 1 { ", " (brief(saved_s(places))) " in all" }
        ", within what you set aside of your reserve."
    }
}

/// Who would be ahead with it.
fn outcome(settled: &Settled) -> Markup {
    let (even, forced) = (settled.gained.time_s, settled.with_forcing());
    let ahead = if forced.time_s < 0.0 { Side::A } else { Side::B };
    let gained = format!("{}\u{a0}s", seconds_in(forced.time_s.abs(), forced.precision()));
    html! {
        "With that " (name(ahead))
        @if even * forced.time_s < 0.0 { " may be as quick or quicker: it gains " }
        @else { " gains " }
        (gained) " a lap by the best guess"
        @if settled.gained.quicker() != Quicker::TooClose && settled.quicker() != Quicker::TooClose {
            ", and stays the quicker"
        }
        "."
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::field::Field;
    use crate::lap::view::answer::tests::{filled, plain_text, ridden, settled};
    use gear_math::course::TimeBand;

    fn said(link: &str) -> (String, String) {
        let desk = ridden(link);
        let report = desk.report();
        let laps = report.lap.laps.as_ref().unwrap();
        let words = plain_text(&forcing(laps, laps.settled.as_ref().unwrap()));
        (words, plain_text(&crate::lap::view::answer::answer(&report.lap_section())))
    }

    /// On the demo the climb's advice is to force it with A, where the lap goes on foot.
    #[test]
    fn the_demo_names_the_place_where_forcing_would_turn_it() {
        let (words, answer) = said("");
        assert!(
            words.starts_with(
                "Both laps are ridden at an even 220\u{a0}W, which the advice in “Ride or run?” is not."
            ),
            "{words}"
        );
        assert!(words.contains("The lap puts A on foot at 1119 to 1170\u{a0}m, where forcing 34×30 at 236\u{a0}W would take 23\u{a0}s instead of 31\u{a0}s; at 1"), "{words}");
        assert!(words.contains("With that A may be as quick or quicker"), "{words}");
        assert!(answer.starts_with("<p>Too close to call"), "{answer}");
    }

    #[test]
    fn nothing_is_said_of_places_where_there_are_none() {
        let flat = filled(&[(Field::Course, "sketch"), (Field::Sketch, "1200; 0; tarmac")]);
        let report = flat.report();
        let laps = report.lap.laps.as_ref().unwrap();
        let words = plain_text(&forcing(laps, laps.settled.as_ref().unwrap()));
        assert_eq!(
            words,
            "Both laps are ridden at an even 220\u{a0}W. Forcing a gear for a few seconds is left out."
        );
        let (of_seconds, _) = said("lg=5s");
        assert!(of_seconds.ends_with("is left out."), "{of_seconds}");
    }

    /// What forcing could turn is no firm verdict; what it could not, stays one.
    #[test]
    fn a_verdict_that_forcing_could_turn_is_not_firm() {
        let desk = ridden("");
        let report = desk.report();
        let place = report.lap.laps.as_ref().unwrap().settled.as_ref().unwrap().forced[0][0];
        let saved = place.saved_s();
        assert!(saved > 2.0);
        let with = |low_s: f64, time_s: f64, high_s: f64| Settled {
            forced: [vec![place], Vec::new()],
            ..settled(TimeBand { low_s, time_s, high_s })
        };
        let turned = with(0.5 * saved, 0.9 * saved, 2.0 * saved);
        assert_eq!((turned.gained.quicker(), turned.quicker()), (Quicker::Second, Quicker::TooClose));
        assert!(plain_text(&outcome(&turned)).contains("With that A may be as quick or quicker: it gains"));
        let firm = with(1.5 * saved, 3.0 * saved, 4.0 * saved);
        assert_eq!(firm.quicker(), Quicker::Second);
        assert!(plain_text(&outcome(&firm)).ends_with("by the best guess, and stays the quicker."));
        let other_way = with(-4.0 * saved, -3.0 * saved, -1.5 * saved);
        assert_eq!(other_way.quicker(), Quicker::First);
        assert!((other_way.with_forcing().time_s + 4.0 * saved).abs() < 1e-9);
    }
}
