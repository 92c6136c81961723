//! “Round the lap”: the numbers, what a search found, and how it was worked out.

use super::lap::{clock, duration};
use super::words::{name, plain_table, table, worked};
use crate::number::{counted, listed, percent, plain, signed, with_unit};
use crate::report::{Found, LapReport, Report, Side, TESTED_S};
use gear_math::ascending;
use gear_math::{CageCheck, CageFinding, Chainring, Lap, Ranked, TimeBand, Weighting};
use maud::{Markup, html};

/// Places where the set-ups differ that are listed.
const PARTS: usize = 8;
/// Metres in a kilometre, and joules in a kilojoule.
const KILO: f64 = 1e3;

/// Both laps in numbers, and where they differ.
#[must_use]
pub(super) fn numbers(report: &Report) -> Markup {
    let Some(laps) = &report.lap.laps else { return html! {} };
    let of = |what: &str, value: &dyn Fn(&Lap) -> String| {
        vec![what.to_owned(), value(&laps.laps[0]), value(&laps.laps[1])]
    };
    let mut rows = vec![of("Lap", &|lap| clock(lap.time_s))];
    if let Some(settled) = &laps.settled {
        let likely = |band: &TimeBand| format!("{} to {}", clock(band.low_s), clock(band.high_s));
        rows.push(vec!["Likely".to_owned(), likely(&settled.bands[0]), likely(&settled.bands[1])]);
    }
    rows.extend([
        of("On foot, getting off and on included", &|lap| {
            format!("{}, {}", with_unit(lap.on_foot_m(), 0, "m"), duration(lap.on_foot_s(), 1))
        }),
        of("Shifts, rear", &|lap| lap.shifts_rear.to_string()),
        of("Shifts, front", &|lap| lap.shifts_front.to_string()),
        of("Lowest cadence", &|lap| {
            lap.lowest_cadence_rpm.map_or("–".to_owned(), |rpm| with_unit(rpm, 0, "rpm"))
        }),
        of("Below your cadence window", &|lap| duration(lap.below_window_s, 0)),
        of("Work at the crank", &|lap| with_unit(lap.energy.crank / KILO, 1, "kJ")),
        of("Lost to the ground", &|lap| with_unit(lap.energy.rolling / KILO, 1, "kJ")),
        of("Lost to the air", &|lap| with_unit(lap.energy.air / KILO, 1, "kJ")),
        of("Lost to the brakes", &|lap| with_unit(lap.energy.brakes / KILO, 1, "kJ")),
    ]);
    html! {
        @if let Some(slowest) = slowest_crank(laps) { p { (slowest) } }
        (plain_table("The lap in numbers", "One lap of many: it is begun as it was ended. What is lost includes height won on foot. Time in every gear and time on foot make up the lap.", &["", "A", "B"], &rows))
        (differences(report))
    }
}

/// Why the lowest cadence of a lap may be lower than the lowest the rider turns, where it is.
fn slowest_crank(laps: &LapReport) -> Option<String> {
    let least = laps.question.setups[0].rider.lowest_cadence.rpm();
    let is_below = |lap: &Lap| lap.lowest_cadence_rpm.is_some_and(|rpm| rpm < least - 0.5);
    laps.laps.iter().any(is_below).then(|| {
        format!(
            "The lowest cadence is below your own of {} for moments only: while a shift is under way, or while getting going again.",
            with_unit(least, 0, "rpm")
        )
    })
}

fn differences(report: &Report) -> Markup {
    let Some(settled) = report.lap.laps.as_ref().and_then(|laps| laps.settled.as_ref()) else {
        return html! {};
    };
    let mut parts: Vec<_> = settled.parts.iter().collect();
    ascending(&mut parts, |part| -part.gained_s.abs());
    parts.truncate(PARTS);
    ascending(&mut parts, |part| part.span.from_m);
    let rows: Vec<Vec<String>> = parts
        .iter()
        .map(|part| {
            vec![
                format!("{} to {}", plain(part.span.from_m, 0), with_unit(part.span.to_m, 0, "m")),
                format!("{}\u{a0}s", signed(part.gained_s, 1)),
            ]
        })
        .collect();
    html! {
        @if !rows.is_empty() {
            (plain_table("Where the difference arises", "Plus where B gains, minus where A does; the largest only.", &["From the line", "B gains"], &rows))
        }
    }
}

/// Time and distance in every gear.
#[must_use]
pub(super) fn gears(report: &Report) -> Markup {
    let Some(laps) = &report.lap.laps else { return html! {} };
    let rows: Vec<Vec<String>> = Side::BOTH
        .iter()
        .flat_map(|&side| {
            let lap = &laps.laps[side as usize];
            let of = move |what: &str, time_s: f64, way_m: f64| {
                vec![format!("{side} {what}"), duration(time_s, 1), with_unit(way_m, 0, "m")]
            };
            let gears = lap.gears.iter();
            let gears =
                gears.map(move |used| of(&laps.gear_name(side, used.gear), used.time_s, used.distance_m));
            gears.chain([of("on foot", lap.on_foot_s(), lap.on_foot_m())])
        })
        .collect();
    let crossed: Vec<String> = Side::BOTH
        .into_iter()
        .map(|side| (side, laps.crossed_s(side)))
        .filter(|(_, time_s)| *time_s > 0.0)
        .map(|(side, time_s)| format!("{} with {side}", duration(time_s, 0)))
        .collect();
    html! {
        @if !crossed.is_empty() {
            p { "Gears in brackets are crossed: they are ridden for " (listed(&crossed)) ". The lap takes whichever gear suits the cadence; shift to the other ring there if you can." }
        }
        details {
            summary { "Time in gear in numbers" }
            (plain_table("Time in gear", "Lowest first, crossed ones in brackets; gears that are not used are left out. Getting off and on is part of the time on foot.", &["Gear", "Time", "Way"], &rows))
        }
    }
}

/// How far a search is, and what it found.
#[must_use]
pub(super) fn found(report: &Report) -> Markup {
    let Some(found) = &report.lap.found else { return html! {} };
    let best = found.order.first().map_or(0.0, |best| best.candidate.time_s);
    let unbeaten = found.order.iter().filter(|it| it.unbeaten).count();
    html! {
        @if found.done && found.is_stale {
            p.care { "Searched for " (found.course) " as it was, with the rider, bike and derailleur of then: search again." }
        }
        p { (said(found)) }
        @if found.done { @for side in Side::BOTH { @if let Some((check, frame)) = &found.untried[side as usize] {
            p { (name(side)) ", as it was then, was not tried: " (untried(check, *frame)) "." }
        } } }
        @if found.done && !found.unfit.is_empty() {
            p { "Not tried, since no rings tried go with them by derailleur, frame and chain: " (listed(&found.unfit)) "." }
        }
        @if !found.order.is_empty() {
            div.stale[found.is_stale] { (table(
                "What was found",
                "Best first; ● is unbeaten.",
                &html! { tr {
                    @for head in ["Rings and cassette", "On the bench", "Lap", "To the first", "Shifts, rear + front", "Lowest gear", "Largest step", "Spare teeth"] { th scope="col" { (head) } }
                } },
                &html! { @for (place, it) in found.listed() { (row(found, place, it, best)) } },
            )) }
            p.quiet {
                "Put in order by time and what the rest is worth, for rider, course and derailleur as they were when the search began. Times are in steps of 1\u{a0}m: they may be a second or so off those above. "
                (counted(unbeaten, "set-up is", "set-ups are")) " unbeaten: no other is as good on every count and better on one. The table holds the first forty, and of the next sixty the unbeaten ones."
            }
        }
    }
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

/// What came of the search in a sentence, ties included.
fn said(found: &Found) -> String {
    let (count, all) = (found.count(), found.all.len());
    let Some(best) = found.order.first() else {
        return match (all, found.done) {
            (0, _) => "No set-up of these rings and cassettes fits frame, derailleur and chain.".to_owned(),
            (_, true) => "Cancelled before any was tried.".to_owned(),
            (_, false) => "Searching.".to_owned(),
        };
    };
    let first = format!("{} with {}", best.candidate.drivetrain.chainset, best.candidate.drivetrain.cassette);
    if !found.done {
        return format!("Ahead so far: {first}.");
    }
    let stopped = if count < all { format!(" Stopped after {count} of {all}.") } else { String::new() };
    format!("First of {count}: {first}, {} a lap.{}{stopped}", clock(best.candidate.time_s), tied(found))
}

/// How many of those listed tie with the first; those too far off by the best guess were not tested.
fn tied(found: &Found) -> String {
    let tested = found.finals.len().saturating_sub(1);
    let ties = found.finals.iter().skip(1).filter(|(_, band)| ties(band)).count();
    if tested == 0 {
        return String::new();
    }
    let near = format!("within {TESTED_S:.0}\u{a0}s of it");
    let all = if ties == tested { "at least " } else { "" };
    let rest = if tested + 1 < found.count() { " The rest were not tested." } else { "" };
    let tie = if ties == 1 { "ties" } else { "tie" };
    match ties {
        0 => format!(
            " The {tested} more that are listed {near} differ from it by more than the uncertainty.{rest}"
        ),
        _ => format!(
            " On time alone {all}{ties} more {tie} with it, of {tested} listed {near}: those differences are within the uncertainty.{rest}"
        ),
    }
}

fn ties(band: &TimeBand) -> bool {
    band.low_s <= 0.0 && band.high_s >= 0.0
}

fn row(found: &Found, place: usize, it: &Ranked, best: f64) -> Markup {
    let candidate = &it.candidate;
    let number = found.number(&candidate.drivetrain).unwrap_or(0);
    let against = match found.gain(&candidate.drivetrain) {
        _ if place == 0 || found.finals.is_empty() => "",
        Some(band) if ties(band) => ", a tie",
        Some(_) => "",
        None => ", not tested",
    };
    let cassette = &candidate.drivetrain.cassette;
    let which =
        format!("{} with {}-{}", candidate.drivetrain.chainset, cassette.smallest(), cassette.largest());
    html! {
        tr {
            th scope="row" {
                (candidate.drivetrain.chainset) @if it.unbeaten { " ●" span.unseen { " unbeaten" } }
                small { (cassette) }
            }
            td {
                button type="button" data-act={ "bench-a:" (number) } aria-label={ "Put " (which) " on the bench as A" } { "as A" }
                " "
                button type="button" data-act={ "bench-b:" (number) } aria-label={ "Put " (which) " on the bench as B" } { "as B" }
            }
            td { (clock(candidate.time_s)) }
            td { (signed(candidate.time_s - best, 1)) "\u{a0}s" (against) }
            td { (candidate.shifts_rear) " + " (candidate.shifts_front) }
            td { (with_unit(candidate.lowest_development_m, 2, "m")) }
            td { (percent(candidate.largest_step_percent, 0)) }
            td { @match candidate.spare_capacity { Some(spare) => (plain(f64::from(spare), 0)), None => "–" } }
        }
    }
}

/// How the lap and the order came about.
#[must_use]
pub(super) fn working(report: &Report) -> Markup {
    let Some(laps) = &report.lap.laps else { return html! {} };
    let [a, b] = &laps.laps;
    let setup = &laps.question.setups[0];
    let error = |lap: &Lap| lap.step_error_s.map_or("not yet known".to_owned(), |s| with_unit(s, 1, "s"));
    let weights = Weighting::USUAL;
    html! {
        (worked(
            "From metre to metre",
            "½ m (v₂² − v₁²) = (η P ∕ v̄ − F) Δx, with the wheels’ turning in m; F is rolling, slope, bearings and air",
            &format!("P {}, steps of {} m (A) and {} m (B); finer ones may change the lap by {} and {}", with_unit(setup.rider.power.watts(), 0, "W"), a.step_m, b.step_m, error(a), error(b)),
        ))
        (worked(
            "Gears",
            "A shift comes when the cadence leaves its window, and costs its time without drive",
            &format!("{} ± {}, {} s at the rear, {} s at the front", with_unit(setup.shifting.preferred.rpm(), 0, "rpm"), percent(100.0 * setup.shifting.window.share(), 0), setup.shifting.rear.s(), setup.shifting.front.s()),
        ))
        (worked(
            "Ride or run",
            "Of all ways to change between the two, the quickest (dynamic programming); on foot at obstacles and where riding falls below what gear, balance, grip or legs allow",
            &format!("{} s to get off and on, and the speed above that on foot is lost", report.ride.inputs.lost.s()),
        ))
        (worked(
            "Order of a search",
            "Time, plus what the rest is worth in seconds (matters of taste)",
            &format!("front shift {} s, rear shift {} s, a per cent of the largest step {} s, a tooth of spare capacity −{} s up to {}", weights.front_shift_s, weights.rear_shift_s, weights.step_percent_s, weights.spare_tooth_s, Weighting::ENOUGH_SPARE),
        ))
        p {
            "Rider, bike, air and limits are those of “Ride or run?”, each ground that of its table. Wind is left out: a lap goes round. "
            (name(Side::A)) " and " (name(Side::B)) " share all but rings and sprockets."
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::desk::Desk;
    use crate::report::row as sent;

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
        found(&desk.report()).into_string()
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
            let before = if key == "body-mass" { crate::field::Field::BodyMass.spec().start } else { before };
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
}
