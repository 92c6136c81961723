//! “Round the lap”: what a search found.

use crate::lap::found::{Found, Standing, TESTED_S};
use crate::lap::search::LeftOut;
use crate::lap::section::LapSection;
use crate::layout::pieces::{name, table};
use crate::number::{clock, counted, listed, percent, plain, seconds_in, signed, with_unit};
use crate::side::Side;
use gear_math::cage::CageFinding;
use gear_math::course::{Precision, TimeBand};
use gear_math::{CageCheck, Cassette, Chainring};
use maud::{Markup, html};

/// How far a search is, and what it found.
#[must_use]
pub(crate) fn found(report: &LapSection) -> Markup {
    let Some(found) = &report.lap.found else { return html! {} };
    html! {
        @if found.done && found.is_stale {
            p.care { "Searched for " (found.course) " as it was, with the rider, bike and derailleur of then: search again." }
        }
        p { (said(found)) @if found.done { (ties(found)) (of_bench(found)) } }
        @if found.done { (not_tried(found)) }
        @if !found.order.is_empty() { (tables(found)) }
    }
}

/// The first, A and B and the front in one table; the order of the first forty folded away.
fn tables(found: &Found) -> Markup {
    let listed: Vec<usize> = found.listed().map(|(place, _)| place).collect();
    html! {
        div.stale[found.is_stale] {
            (rows("What was found", "The best, A and B, and ●: no other is both quicker and lower geared.", found, &found.shown()))
            details {
                summary { "The best in order: " (listed.len()) " of " (found.count()) }
                (rows("The best in order", "The first forty, and of the next sixty those that no other beats on every count.", found, &listed))
            }
        }
        p.quiet {
            "Put in order by time and what the rest is worth, for rider, course and derailleur as they were when the search began. Times are in steps of 1\u{a0}m: they may be a second or so off those above."
        }
    }
}

fn rows(title: &str, remark: &str, found: &Found, places: &[usize]) -> Markup {
    table(
        title,
        remark,
        &html! { tr {
            @for head in ["Rings and cassette", "Put on the bench", "Lap", "Behind the best", "Shifts, rear + front", "Lowest gear", "Largest step", "Spare teeth"] { th scope="col" { (head) } }
        } },
        &html! { @for &place in places { (row(found, place)) } },
    )
}

/// Why A or B was not tried, and what else was left out.
fn not_tried(found: &Found) -> Markup {
    html! {
        @for side in Side::BOTH { @if let Some((check, frame)) = &found.untried[side as usize] {
            p { (name(side)) ", as it was then, was not tried: " (untried(check, *frame)) "." }
        } }
        @if !found.unchecked.is_empty() {
            p.care { "Not checked, since not given: " (listed(&found.unchecked)) ". A set-up may need other parts: put it on the bench to see." }
        }
        @if !found.unfit.is_empty() {
            p { "Not tried, since no rings tried go with them by derailleur, frame and chain: " (listed(&found.unfit)) "." }
        }
        p.quiet { (left_out(&found.left_out)) }
    }
}

/// What was left out, counted by reason.
fn left_out(left: &LeftOut) -> String {
    let set_ups = [
        (left.derailleur, "the derailleur does not take"),
        (left.avoid, "it takes only with gears to avoid"),
        (left.frame, "the frame does not clear"),
        (left.chain, "no chain suits"),
    ];
    let mut reasons: Vec<String> = Vec::new();
    if left.cassettes > 0 {
        let cassettes = counted(left.cassettes, "usual cassette", "usual cassettes");
        reasons.push(format!("{cassettes} with another number of sprockets"));
    }
    let counted_ones = set_ups.iter().filter(|(count, _)| *count > 0);
    reasons.extend(
        counted_ones.map(|(count, why)| format!("{} that {why}", counted(*count, "set-up", "set-ups"))),
    );
    if reasons.is_empty() { String::new() } else { format!("Left out: {}.", listed(&reasons)) }
}

/// What derailleur, frame or chain say against a set-up of the bench.
fn untried(check: &CageCheck, frame: Option<Chainring>) -> String {
    let reason = |finding: &CageFinding| match finding {
        CageFinding::SprocketTooLarge { sprocket, limit } => {
            format!("its largest sprocket has {sprocket} teeth, the derailleur takes {limit}")
        }
        CageFinding::SprocketTooSmall { sprocket, limit } => {
            format!("its smallest sprocket has {sprocket} teeth, the derailleur takes no less than {limit}")
        }
        CageFinding::RingDifferenceTooLarge { difference, limit } => {
            format!("its rings differ by {difference} teeth, the front derailleur spans {}", limit.teeth())
        }
        CageFinding::AvoidGears { short_by, .. } | CageFinding::LongerCage { short_by, .. } => {
            format!("it asks for {} teeth, the derailleur takes {}", check.needed, check.needed - short_by)
        }
    };
    let mut reasons: Vec<String> = check.findings.iter().map(reason).collect();
    reasons.extend(
        frame.map(|most| format!("its largest ring is larger than the frame clears, {most}\u{a0}teeth")),
    );
    if reasons.is_empty() {
        reasons.push("its chain does not suit, see “Will the cage take it?”".to_owned());
    }
    listed(&reasons)
}

/// What came of the search in a sentence.
fn said(found: &Found) -> String {
    let (count, all) = (found.count(), found.all.len());
    let Some(best) = found.order.first() else {
        return match (all, found.done) {
            (0, _) => "No set-up of these rings and cassettes fits frame, derailleur and chain.".to_owned(),
            (_, true) => "Cancelled before any was tried.".to_owned(),
            (_, false) => "Searching.".to_owned(),
        };
    };
    let drivetrain = &best.candidate.drivetrain;
    let first = format!("{} with {}", drivetrain.chainset, cassette_name(&drivetrain.cassette));
    if !found.done {
        return format!("Ahead so far: {first}.");
    }
    let stopped = if count < all { format!(" Stopped after {count} of {all}.") } else { String::new() };
    let time = clock(best.candidate.time_s, Precision::WITHOUT_BAND);
    format!("First of {count}: {first}, {time} a lap.{stopped}")
}

/// How many tie with the first by time, in one line; those too far off by the best guess were not tested.
fn ties(found: &Found) -> String {
    let tested = found.finals.len().saturating_sub(1);
    if tested == 0 {
        return String::new();
    }
    let rest = if tested + 1 < found.count() { " The rest were not tested." } else { "" };
    let all = format!("of {tested} listed within {TESTED_S:.0}\u{a0}s of it or on the bench");
    match found.ties() {
        0 => format!(" None ties with it, {all}.{rest}"),
        ties => {
            let (tie, them) = if ties == 1 { ("ties", "it") } else { ("tie", "them") };
            format!(
                " {ties} more {tie} with it by time, {all}: what tells {them} apart is within the uncertainty.{rest}"
            )
        }
    }
}

/// How A and B stand in it, and whether there is anything to buy.
fn of_bench(found: &Found) -> Markup {
    let standings = Side::BOTH.map(|side| found.standing(side));
    let good = |standing: &Standing| matches!(standing, Standing::First | Standing::Tie(_));
    html! {
        @for (side, standing) in Side::BOTH.iter().zip(&standings) {
            @match standing {
                Standing::NotTried => {}
                Standing::First => { " Your " (name(*side)) " is the first." }
                Standing::Tie(band) => { " Your " (name(*side)) " is one of the ties, " (lag(band)) "." }
                Standing::Apart(band) => { " Your " (name(*side)) " is " (lag(band)) "." }
            }
        }
        @if standings.iter().any(good) { b { " Nothing to buy for this lap." } }
    }
}

/// How far one is behind the first, by the best guess and likely.
fn lag(band: &TimeBand) -> String {
    let precision = band.precision();
    let (low, high) = (-band.high_s, -band.low_s);
    let seconds = |s: f64| seconds_in(s, precision);
    let best = -band.time_s;
    let which = if best < 0.0 { "ahead by the best guess" } else { "behind by the best guess" };
    format!(
        "{}\u{a0}s {which} (likely {} to {}\u{a0}s behind)",
        seconds(best.abs()),
        seconds(low),
        seconds(high)
    )
}

/// A cassette by its ends: “11-32, 11 sprockets”.
#[must_use]
pub(crate) fn cassette_name(cassette: &Cassette) -> String {
    let count = counted(cassette.sprockets().len(), "sprocket", "sprockets");
    format!("{}-{}, {count}", cassette.smallest(), cassette.largest())
}

/// The set-ups of the bench that stand at a place, as “A: ”, empty for none.
#[must_use]
pub(crate) fn marks(found: &Found, place: usize) -> String {
    let sides: Vec<Side> = found.sides_at(place).collect();
    if sides.is_empty() { String::new() } else { format!("{}: ", listed(&sides)) }
}

/// How much slower than the best, and whether that is known to be.
#[must_use]
pub(crate) fn behind(found: &Found, place: usize) -> String {
    let candidate = &found.order[place].candidate;
    let best = found.order[0].candidate.time_s;
    let against = match found.gain(&candidate.drivetrain) {
        _ if place == 0 => return "the best".to_owned(),
        Some(band) if band.is_tie() => ", a tie",
        None if !found.finals.is_empty() => ", not tested",
        _ => "",
    };
    format!("{}\u{a0}s{against}", signed(candidate.time_s - best, 1))
}

fn row(found: &Found, place: usize) -> Markup {
    let it = &found.order[place];
    let candidate = &it.candidate;
    let number = found.number(&candidate.drivetrain).unwrap_or(0);
    let (chainset, cassette) = (&candidate.drivetrain.chainset, &candidate.drivetrain.cassette);
    let which = format!("{chainset} with {}-{}", cassette.smallest(), cassette.largest());
    let of_bench: Vec<Side> = found.sides_at(place).collect();
    html! {
        tr.own[!of_bench.is_empty()] {
            th scope="row" {
                @for side in &of_bench { (name(*side)) " " }
                (chainset) " with " (cassette_name(cassette))
                @if found.front.contains(&place) { " ●" span.unseen { " on the front" } }
                small { (cassette) }
            }
            td {
                button type="button" data-act={ "bench-a:" (number) } aria-label={ "Put " (which) " on the bench as A" } { "as A" }
                " "
                button type="button" data-act={ "bench-b:" (number) } aria-label={ "Put " (which) " on the bench as B" } { "as B" }
            }
            td { (clock(candidate.time_s, Precision::WITHOUT_BAND)) }
            td { (behind(found, place)) }
            td { (candidate.shifts_rear) " + " (candidate.shifts_front) }
            td { (with_unit(candidate.lowest_development_m, 2, "m")) }
            td { (percent(candidate.largest_step_percent, 0)) }
            td { @match candidate.spare_capacity { Some(spare) => (plain(f64::from(spare), 0)), None => "–" } }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lap::found::row as sent;
    use crate::page::desk::Desk;

    /// A few set-ups searched, and the best of them ridden once more.
    fn searched(edits: &[(&str, &str)], count: usize) -> Desk {
        let mut desk = Desk::default();
        let edits: Vec<_> = edits.iter().map(|&(key, text)| (key.to_owned(), text.to_owned())).collect();
        desk.edit(&edits);
        desk.search();
        let mut hunt = desk.hunt(&desk.course().unwrap().1, 0, 1).unwrap();
        desk.take_found(&hunt.advance(count).iter().flat_map(sent).collect::<Vec<_>>());
        let finals = hunt.finals(&desk.leading());
        desk.end_search(finals);
        desk
    }

    fn words(desk: &Desk) -> String {
        found(&desk.report().lap_section()).into_string()
    }

    #[test]
    fn what_was_not_tested_is_no_loser() {
        let desk = searched(&[], 60);
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
