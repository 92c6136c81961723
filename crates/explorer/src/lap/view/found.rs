//! “Round the lap”: what a search found.

use crate::lap::found::{Found, Standing};
use crate::lap::section::LapSection;
use crate::lap::words::found as words;
use crate::layout::head::Head;
use crate::layout::pieces::{heads_row, name, table};
use crate::number::{clock, percent, plain};
use crate::side::Side;
use crate::units;
use gear_math::Drivetrain;
use gear_math::course::Precision;
use maud::{Markup, html};

/// How far a search is, and what it found.
#[must_use]
pub(crate) fn found(report: &LapSection) -> Markup {
    let Some(found) = &report.lap.found else { return html! {} };
    html! {
        @if found.done && found.is_stale { p.care { (words::stale(&found.course)) } }
        p { (words::said(found)) @if found.done { (ties(found)) (of_bench(found)) } }
        @if found.is_b_its_own { p { (words::with_parts_of_a()) } }
        @if found.done { (not_tried(found)) }
        @if !found.order.is_empty() { (tables(found)) }
    }
}

/// The first, A and B and the front in one table; the order of the first forty folded away.
fn tables(found: &Found) -> Markup {
    let listed: Vec<usize> = found.listed().map(|(place, _)| place).collect();
    html! {
        div.stale[found.is_stale] {
            (rows(words::SHOWN, found, &found.shown()))
            details {
                summary { (words::in_order(listed.len(), found.count())) }
                (rows(words::LISTED, found, &listed))
            }
        }
        p.quiet { (words::order()) }
    }
}

fn rows([title, remark]: [&str; 2], found: &Found, places: &[usize]) -> Markup {
    table(
        title,
        remark,
        &heads_row(&words::HEADS.map(Head::Figures)),
        &html! { @for &place in places { (row(found, place)) } },
    )
}

/// Why A or B was not tried, and what else was left out.
fn not_tried(found: &Found) -> Markup {
    html! {
        @for side in Side::BOTH { @if let Some(why) = &found.untried[side as usize] {
            p { (words::not_tried(side, why)) }
        } }
        @if !found.unchecked.is_empty() { p.care { (words::unchecked(&found.unchecked)) } }
        @if !found.unfit.is_empty() { p { (words::unfit(&found.unfit)) } }
        p.quiet { (words::left_out(&found.left_out)) }
    }
}

/// How many tie with the first by time; those too far off by the best guess were not tested.
fn ties(found: &Found) -> Markup {
    let tested = found.finals.len().saturating_sub(1);
    html! {
        @if tested > 0 {
            " " (words::ties(found.ties(), tested))
            @if tested + 1 < found.count() { " " (words::REST_NOT_TESTED) }
        }
    }
}

/// How A and B stand in it, and whether there is anything to buy.
fn of_bench(found: &Found) -> Markup {
    let standings = Side::BOTH.map(|side| (side, found.standing(side)));
    let good = |(_, standing): &(Side, Standing)| matches!(standing, Standing::First | Standing::Tie(_));
    html! {
        @for (side, standing) in &standings {
            @if let Some(said) = words::standing(*side, standing) { " " (said) }
        }
        @if standings.iter().any(good) { b { " " (words::NOTHING_TO_BUY) } }
    }
}

fn row(found: &Found, place: usize) -> Markup {
    let candidate = &found.order[place].candidate;
    let of_bench: Vec<Side> = found.sides_at(place).collect();
    html! {
        tr.own[!of_bench.is_empty()] {
            th scope="row" {
                @for side in &of_bench { (name(*side)) " " }
                (words::set_up(&candidate.drivetrain))
                @if found.front.contains(&place) { " ●" span.unseen { " " (words::ON_FRONT) } }
                small { (candidate.drivetrain.cassette) }
            }
            td { (put_on_bench(found, &candidate.drivetrain)) }
            td { (clock(candidate.time_s, Precision::WITHOUT_BAND)) }
            td { (words::behind(found.behind_s(place), found.tested(place))) }
            td { (candidate.shifts_rear) " + " (candidate.shifts_front) }
            td { (units::developments().print(candidate.lowest_development_m, 2)) }
            td { (percent(candidate.largest_step_percent, 0)) }
            td { @match candidate.spare_capacity { Some(spare) => (plain(f64::from(spare), 0)), None => (words::NOT_KNOWN) } }
        }
    }
}

fn put_on_bench(found: &Found, drivetrain: &Drivetrain) -> Markup {
    let number = found.number(drivetrain).unwrap_or(0);
    let button = |act: &str, side: Side| {
        html! {
            button type="button" data-act={ (act) (number) } aria-label=(words::put_on_bench(drivetrain, side)) { (words::as_side(side)) }
        }
    };
    html! { (button("bench-a:", Side::A)) " " (button("bench-b:", Side::B)) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lap::found::{TESTED_S, row as sent};
    use crate::page::desk::Desk;

    /// A few set-ups searched, and the best of them ridden once more.
    fn searched(edits: &[(&str, &str)], count: usize) -> Desk {
        let mut desk = Desk::default();
        let edits: Vec<_> = edits.iter().map(|&(key, text)| (key.to_owned(), text.to_owned())).collect();
        desk.edit(&edits);
        desk.search();
        let mut hunt = desk.hunt(&desk.course().unwrap().1, 0, 1).unwrap();
        desk.take_found(&hunt.advance(count).iter().flat_map(sent).collect::<Vec<_>>());
        let finals = {
            let leading = desk.leading();
            hunt.finals(&leading, &desk.found_times_s(&leading))
        };
        desk.end_search(finals);
        desk
    }

    fn words(desk: &Desk) -> String {
        found(&desk.report().lap_section()).into_string()
    }

    #[test]
    fn what_was_not_tested_is_no_loser() {
        let desk = searched(&[("lap-model", "steady")], 60);
        let said = words(&desk);
        assert!(said.contains("The rest were not tested."), "{said}");
        let report = desk.report();
        let known = report.lap.found.as_ref().unwrap();
        let first = known.order[0].candidate.time_s;
        for (place, it) in known.listed() {
            let close = (it.candidate.time_s - first).abs() <= TESTED_S;
            assert_eq!(known.gain(&it.candidate.drivetrain).is_some(), close, "place {place}");
        }
        assert!(said.contains(", not tested") && said.contains(", a tie"), "{said}");
    }

    #[test]
    fn results_for_another_rider_or_course_are_said_to_be() {
        let mut desk = searched(&[], 20);
        assert!(!words(&desk).contains("search again"));
        desk.edit(&[("at-cadence".into(), "85".into()), ("rings-a".into(), "42".into())]);
        assert!(!words(&desk).contains("search again"), "A's rings were only among those tried");
        for (key, other, before) in [("body-mass", "81", "62"), ("course", "sand-pit", "meadow")] {
            let before =
                if key == "body-mass" { crate::bench::field::Field::BodyMass.spec().start } else { before };
            desk.edit(&[(key.into(), other.into())]);
            let said = words(&desk);
            assert!(said.starts_with("<p class=\"care\">Searched for Autumn meadow as it was"), "{said}");
            assert!(said.contains("class=\"stale\""));
            desk.edit(&[(key.into(), before.into())]);
            assert!(!words(&desk).contains("search again"));
        }
    }

    #[test]
    fn why_a_set_up_of_the_bench_was_not_tried_is_said() {
        let desk = searched(
            &[("rings-a", "44/30"), ("cassette-a", "11-13-15-18-21-25-30-34"), ("capacity", "33")],
            10,
        );
        let said = words(&desk);
        assert!(said.contains("was not tried: it asks for 37 teeth, the derailleur takes 33."), "{said}");
    }

    /// The search knows one derailleur, wheel and mass.
    #[test]
    fn where_b_is_a_bike_of_its_own_whose_parts_are_searched_with_is_said() {
        let sentence = "is tried with A</b>’s derailleur, chain, wheel and mass";
        let is_said = |desk: &Desk| words(desk).replace("<b class=\"A\">", "").contains(sentence);
        assert!(!is_said(&searched(&[], 5)));
        for own in [("capacity-b", "47"), ("bike-mass-b", "12"), ("tyre-b", "40-622"), ("links-b", "116")] {
            assert!(is_said(&searched(&[own], 5)), "{own:?}");
        }
        let long_cage_on_b = [
            ("rings-b", "44/30"),
            ("cassette-b", "11-13-15-18-21-25-30-34"),
            ("capacity", "33"),
            ("capacity-b", "47"),
        ];
        let said = words(&searched(&long_cage_on_b, 10));
        assert!(said.contains("was not tried: it asks for 37 teeth, the derailleur takes 33."), "{said}");
    }

    #[test]
    fn what_frame_and_chain_say_against_a_set_up_is_said() {
        let said = words(&searched(&[("frame-ring", "44"), ("links", "112")], 2));
        assert!(
            said.contains("takes 33 and its largest ring is larger than the frame clears, 44\u{a0}teeth."),
            "{said}"
        );
        assert!(
            said.contains("was not tried: its chain does not suit, see “Will the cage take it?”."),
            "{said}"
        );
    }

    #[test]
    fn a_search_cancelled_at_once_found_nothing_out() {
        let mut desk = Desk::default();
        desk.search();
        assert_eq!(words(&desk).matches("Searching.").count(), 1);
        desk.end_search(Vec::new());
        assert!(words(&desk).contains("Cancelled before any was tried."));
    }

    /// A search of few set-ups with A and B among them.
    fn with_bench(edits: &[(&str, &str)]) -> Desk {
        let few = [("search-small", "44"), ("search-large", "44"), ("capacity", "45")];
        searched(&[&few[..], edits].concat(), 400)
    }

    #[test]
    fn a_set_up_of_the_bench_that_ties_leaves_nothing_to_buy() {
        let desk = with_bench(&[]);
        let said = words(&desk);
        let report = desk.report();
        let found = report.lap.found.as_ref().unwrap();
        for side in Side::BOTH {
            let number = found.number(&found.bench[side as usize]).unwrap();
            let place = found.place(side).unwrap();
            let band = found.gain(&found.all[number]);
            match found.standing(side) {
                Standing::First => assert_eq!(place, 0),
                Standing::Tie(band) => assert!(band.low_s <= 0.0 && band.high_s >= 0.0),
                Standing::Apart(band) => assert!(band.high_s < 0.0 || band.low_s > 0.0),
                Standing::NotTried => panic!("{side} was tried"),
            }
            assert!(place == 0 || band.is_some(), "A and B are ridden once more however far off");
            assert!(found.shown().contains(&place));
        }
        let ties = Side::BOTH.map(|side| !matches!(found.standing(side), Standing::Apart(_)));
        assert_eq!(said.contains("Nothing to buy for this lap."), ties.contains(&true), "{said}");
        assert!(said.contains("<tr class=\"own\"><th scope=\"row\"><b class=\"B\">B</b>"), "{said}");
    }

    #[test]
    fn a_bench_far_behind_is_told_how_far() {
        let desk = with_bench(&[("rings-b", "52"), ("cassette-b", "11-12-13-14-15-16-17-18-19-21-23")]);
        let said = words(&desk).replace("<b class=\"B\">B</b>", "B");
        let report = desk.report();
        let found = report.lap.found.as_ref().unwrap();
        let Standing::Apart(band) = found.standing(Side::B) else { panic!("{:?}", found.standing(Side::B)) };
        assert!(
            band.high_s < 0.0
                && said.contains("Your B is ")
                && said.contains("\u{a0}s behind by the best guess"),
            "{said}"
        );
    }

    #[test]
    fn ties_are_one_line_and_rows_name_the_cassette() {
        let desk = searched(&[], 300);
        let said = words(&desk);
        let (table, folded) = said.split_once("<details>").unwrap();
        let report = desk.report();
        let found = report.lap.found.as_ref().unwrap();
        assert!(
            table.matches("<tr").count() == 1 + found.shown().len() && found.shown().len() < 20,
            "{table}"
        );
        assert!(folded.matches("<tr").count() > 20);
        assert!(
            table.contains(", 11\u{a0}sprockets") && table.contains("more tie with it by time, of "),
            "{table}"
        );
        assert!(
            said.contains("Left out: ") && said.contains("usual cassettes with another number of sprockets"),
            "{said}"
        );
    }
}
