//! “Round the lap”: what its even power leaves out beside “Ride or run?”, where a rider would force a gear.

use crate::lap::report::LapReport;
use crate::lap::settled::Settled;
use crate::lap::words::forcing as words;
use crate::layout::line::Line;
use crate::side::Side;
use gear_math::course::ForcedPlace;
use gear_math::order::ascending;
use maud::{Markup, html};

/// That the laps are ridden at an even power, where forcing would be quicker, and what that makes of who is ahead.
#[must_use]
pub(crate) fn forcing(laps: &LapReport, settled: &Settled) -> Markup {
    let power_w = laps.question.setups[0].rider.power.watts();
    let [a, b] = settled.forced.each_ref().map(|places| !places.is_empty());
    if laps.is_of_one_bike() {
        return html! {
            (words::one_lap(power_w, a))
            @if a { " " (places(None, &settled.forced[0])) " " }
        };
    }
    html! {
        (words::both_laps(power_w, a || b))
        @for side in Side::BOTH {
            @let forced = &settled.forced[side as usize];
            @if !forced.is_empty() { " " (places(Some(side), forced)) }
        }
        @if a || b { " " (words::outcome(settled)) }
    }
}

/// Places told one by one; of more than these only the number is.
const TOLD: usize = 3;

/// The places on foot where forcing is quicker: those that pay best, in the order they come.
fn places(side: Option<Side>, places: &[ForcedPlace]) -> Line {
    let mut told: Vec<&ForcedPlace> = places.iter().collect();
    ascending(&mut told, |place| -place.saved_s());
    told.truncate(TOLD);
    ascending(&mut told, |place| place.part.from_m);
    words::places(side, &told, places)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::field::Field;
    use crate::lap::view::answer::tests::{filled, plain_text, ridden, settled};
    use gear_math::course::{Quicker, TimeBand};

    fn said(link: &str) -> (String, String) {
        let desk = ridden(link);
        let report = desk.report();
        let laps = report.lap.laps.as_ref().unwrap();
        let words = plain_text(&forcing(laps, laps.settled.as_ref().unwrap()));
        (words, plain_text(&crate::lap::view::answer::tests::in_full(&report.lap_section())))
    }

    /// On the demo the climb's advice is to force it with A, where the lap goes on foot.
    #[test]
    fn the_demo_names_the_place_where_forcing_would_turn_it() {
        let (words, answer) = said("ly=steady");
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
        let flat = filled(&[
            (Field::LapModel, "steady"),
            (Field::Course, "sketch"),
            (Field::Sketch, "1200; 0; tarmac"),
        ]);
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
        let desk = ridden("ly=steady");
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
        assert!(
            plain_text(&html! { (words::outcome(&turned)) })
                .contains("With that A may be as quick or quicker: it gains")
        );
        let firm = with(1.5 * saved, 3.0 * saved, 4.0 * saved);
        assert_eq!(firm.quicker(), Quicker::Second);
        assert!(
            plain_text(&html! { (words::outcome(&firm)) })
                .ends_with("by the best guess, and stays the quicker.")
        );
        let other_way = with(-4.0 * saved, -3.0 * saved, -1.5 * saved);
        assert_eq!(other_way.quicker(), Quicker::First);
        assert!((other_way.with_forcing().time_s + 4.0 * saved).abs() < 1e-9);
    }
}
