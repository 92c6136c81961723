//! “Round the lap”: who is quicker and by how much, on which gears, and where on foot.

use crate::facts::Facts;
use crate::has;
use crate::page::Page;
use explorer::page::pictures::Picture;
use gear_math::Lap;
use gear_math::course::{LapComparison, Precision, Quicker, Step, TimeBand};

const SIDES: [&str; 2] = ["A", "B"];

pub(crate) fn check(facts: &Facts, page: &Page, settled: bool) -> Option<&'static str> {
    let answer = page.text("lap-answer");
    let mut verdict = None;
    let laps = if settled {
        let compared = LapComparison::of(&facts.course, &facts.laps[0], &facts.laps[1]).unwrap();
        verdict = Some(check_quicker(facts, page, &answer, &compared));
        [compared.first.lap, compared.second.lap]
    } else {
        let step = Step::new(1.0).unwrap();
        let laps = [0, 1].map(|side| Lap::in_steps(&facts.course, &facts.laps[side], step).unwrap());
        let [a, b] = [&laps[0], &laps[1]].map(|lap| clock(lap.time_s, 1.0));
        has(&answer, &format!("at first sight A takes {a} and B {b}."));
        laps
    };
    check_gears(facts, page, &laps);
    check_dismounts(page, &answer, &laps);
    check_cage(facts, &answer);
    verdict
}

/// A lap time in steps of tenths, seconds or tens of seconds.
pub(crate) fn clock(time_s: f64, step_s: f64) -> String {
    let tenths = (time_s / step_s).round() * step_s * 10.0;
    let (minutes, left) = ((tenths / 600.0).floor(), tenths.round() % 600.0 / 10.0);
    if step_s < 1.0 { format!("{minutes:.0}:{left:04.1}") } else { format!("{minutes:.0}:{left:02.0}") }
}

fn seconds(time_s: f64, precision: Precision) -> String {
    let step = precision.step_s();
    let rounded = (time_s / step).round() * step;
    format!("{:.*} s", usize::from(step < 1.0), rounded)
}

/// No gear to avoid has time, and all that have are told.
fn check_gears(facts: &Facts, page: &Page, laps: &[Lap; 2]) {
    let rows = page.rows("lap-gears");
    for side in [0, 1] {
        let (avoid, bike) = (facts.cages[side].avoid, &facts.bikes[side]);
        let name = SIDES[side];
        let mut told: Vec<String> = Vec::new();
        for row in rows.iter().filter(|row| row[0].starts_with(name) && row[0].contains('×')) {
            told.push(row[0][2..].trim_matches(['(', ')']).to_owned());
        }
        let mut used: Vec<String> = laps[side].gears.iter().map(|it| it.gear.to_string()).collect();
        let avoided = facts.named(side, avoid);
        assert!(
            avoid.holds_all(bike) || told.iter().all(|gear| !avoided.contains(gear)),
            "{avoided:?} {told:?}"
        );
        told.sort();
        used.sort();
        assert_eq!(told, used);
    }
}

fn times(count: usize) -> String {
    match count {
        1 => "once".to_owned(),
        2 => "twice".to_owned(),
        _ => format!("{count} times"),
    }
}

fn check_dismounts(page: &Page, answer: &str, laps: &[Lap; 2]) {
    let counts = [0, 1].map(|side| laps[side].dismounts().len());
    let profile = Picture::by_name("profile").unwrap().label(&page.report);
    if laps.iter().any(Lap::is_all_on_foot) {
        has(answer, "on foot all the way");
        return;
    }
    let said = match counts {
        [0, 0] => "You never dismount.".to_owned(),
        [a, b] if a == b => format!("With both you dismount {}.", times(a)),
        [0, b] => format!("With A you never dismount, with B {}.", times(b)),
        [a, 0] => format!("With B you never dismount, with A {}.", times(a)),
        [a, b] => format!("You dismount {} with A, {} with B.", times(a), times(b)),
    };
    has(answer, &said);
    let places = |count: usize| format!("{count}");
    assert!(counts.iter().all(|&it| profile.contains(&places(it))), "{profile}");
}

/// Beside the lap stands what the cage section says of each set-up.
fn check_cage(facts: &Facts, answer: &str) {
    for (name, cage) in SIDES.iter().zip(&facts.cages) {
        let fails = format!("{name} does not fit as it is");
        let open = format!("Whether the cage takes every gear of {name} is not known");
        assert_eq!(answer.contains(&fails), cage.does_not_fit(), "{answer}");
        assert_eq!(answer.contains(&open), cage.is_not_known(), "{answer}");
    }
    for (side, name) in SIDES.iter().enumerate() {
        let without = format!("{name} does not fit as it is: it is ridden here as if it did, without");
        let is_whole = facts.cages[side].avoid.holds_all(&facts.bikes[side]);
        assert!(!is_whole || !answer.contains(&without), "{answer}");
    }
    assert!(!answer.contains("gains 0.0 s"), "{answer}");
    let any = facts.cages.iter().any(|cage| !cage.avoid.is_empty());
    assert_eq!(answer.contains("Gears to avoid, counted as not there"), any, "{answer}");
}

/// Seconds that forcing saves on a side's lap, for the rider's share of the reserve.
fn forced_s(facts: &Facts, side: usize, lap: &Lap) -> f64 {
    let Some(effort) = &facts.effort else { return 0.0 };
    let places = lap.forced(&facts.course, &facts.laps[side], effort, facts.share).unwrap();
    places.iter().map(|it| it.part.time_s - it.time_s).sum()
}

fn check_quicker(facts: &Facts, page: &Page, answer: &str, compared: &LapComparison) -> &'static str {
    let gained = compared.gained;
    let forced = [forced_s(facts, 0, &compared.first.lap), forced_s(facts, 1, &compared.second.lap)];
    let moved = gained.moved(forced[1] - forced[0]);
    let is_firm = gained.quicker() == moved.quicker();
    let ahead = SIDES[usize::from(gained.time_s >= 0.0)];
    let by = seconds(gained.time_s.abs(), gained.precision());
    let sheet = page.sheet("Quicker").filter(|it| !it.starts_with("not known"));
    assert!(sheet.is_some() || !facts.is_riders);
    if facts.laps[0] == facts.laps[1] {
        has(answer, "A and B are the same, so the lap is too.");
    } else if gained.quicker() == Quicker::TooClose {
        assert!(
            answer.contains("Too close to call: ") || answer.contains("this lap makes no difference"),
            "{answer}"
        );
        assert!(!answer.contains("is quicker here"), "{answer}");
    } else if is_firm {
        has(answer, &format!("{ahead} is quicker here: it gains {by} a lap"));
    } else {
        has(
            answer,
            &format!(
                "Too close to call while forcing a gear is left out: at an even power {ahead} gains {by} a lap"
            ),
        );
    }
    let firm = gained.quicker() != Quicker::TooClose && is_firm && facts.laps[0] != facts.laps[1];
    if let Some(sheet) = sheet {
        assert_eq!(!sheet.contains("too close"), firm, "{sheet} {answer}");
        assert!(!firm || sheet == format!("{ahead}, by {by} a lap"), "{sheet}");
    }
    check_times(facts, page, answer, compared);
    if firm { "firm" } else { "open" }
}

/// Both times with their edges, in answer, table and on the sheet.
fn check_times(facts: &Facts, page: &Page, answer: &str, compared: &LapComparison) {
    let bands = [compared.first.band, compared.second.band];
    let step = bands[0].precision().max(bands[1].precision()).step_s();
    let row = [page.row("lap-numbers", "Lap"), page.row("lap-numbers", "Likely")];
    for (side, TimeBand { low_s, time_s, high_s }) in bands.into_iter().enumerate() {
        let [low, time, high] = [low_s, time_s, high_s].map(|it| clock(it, step));
        let about = if step > 1.0 { "about " } else { "" };
        let name = SIDES[side];
        has(answer, &format!("{name} {about}{time} (likely {low} to {high})"));
        assert_eq!(row[0][side], format!("{about}{time}"));
        assert_eq!(row[1][side], format!("{low} to {high}"));
        let sheet = page.sheet(&format!("{name} Lap"));
        let told = sheet.filter(|it| !it.starts_with("not known"));
        assert!(
            told.is_none_or(|it| it == format!("{about}{time}, likely {low} to {high}")) || facts.is_riders
        );
    }
}
