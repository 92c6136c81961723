//! “Ride or run?” beside its answer: tables, map, pictures and sheet.

use crate::climb::{SIDES, Side};
use crate::facts::Facts;
use crate::has;
use crate::page::Page;
use explorer::page::pictures::Picture;
use gear_math::rider::{Deficit, Time, Verdict};

pub(crate) fn check(facts: &Facts, page: &Page, sides: &[Side; 2], told: &[String; 2]) {
    for side in [0, 1] {
        check_sheet(facts, page, side, &sides[side], &told[side]);
    }
    check_tables(facts, page, sides);
    check_map(facts, page);
}

/// A time: tenths below ten seconds, minutes from three on.
pub(crate) fn brief(time: Time) -> String {
    let s = time.s();
    let rounded = s.round();
    if s < 9.95 {
        format!("{s:.1} s")
    } else if s < 180.0 {
        format!("{s:.0} s")
    } else {
        format!("{:.0}:{:02.0} min", (rounded / 60.0).floor(), rounded % 60.0)
    }
}

/// A printed time in seconds.
fn read_time(text: &str) -> f64 {
    let number = text.split(' ').next().unwrap();
    match number.split_once(':') {
        Some((minutes, seconds)) => 60.0 * minutes.parse::<f64>().unwrap() + seconds.parse::<f64>().unwrap(),
        None => number.parse().unwrap(),
    }
}

fn check_sheet(facts: &Facts, page: &Page, side: usize, of: &Side, told: &str) {
    let unit = format!("{} {:.1} %, {:.0} m", SIDES[side], facts.climb.percent(), facts.length.m());
    let row = page.sheet(&unit).or_else(|| page.sheet(&format!("{} The climb", SIDES[side]))).unwrap();
    if row.starts_with("not known ___") {
        assert!(!facts.is_riders);
        return;
    }
    assert!(told.starts_with(&row), "“{row}” is not “{told}”");
    assert!(row.starts_with(&format!("{}: ", of.verb())), "{row}");
    let lowest = page.sheet(&format!("{} Lowest gear", SIDES[side])).unwrap();
    let gear = facts.cages[side].avoid.lowest(&facts.bikes[side]);
    let needs = format!("{gear}, needs at least {};", facts.speed(facts.lowest_speed(side)));
    assert!(lowest.starts_with(&needs), "{lowest} not {needs}");
}

fn check_tables(facts: &Facts, page: &Page, sides: &[Side; 2]) {
    let row = |head: &str| page.row("ride-climb", head);
    let both = |value: &dyn Fn(&Side) -> String| vec![value(&sides[0]), value(&sides[1])];
    let or_none = |time: Option<Time>| time.map_or("–".to_owned(), brief);
    assert_eq!(row("Advice"), both(&|it| it.verb().to_owned()));
    assert_eq!(row("Better of these"), both(&|it| brief(it.ascent.better())));
    let kilojoules = |it: Deficit| format!("{:.1} kJ", it.j().max(0.0) / 1000.0);
    let ridden = |it: &Side| it.paced.ride.map_or("–".to_owned(), |ride| kilojoules(ride.drawn));
    assert_eq!(row("Of your reserve, riding"), both(&ridden));
    assert_eq!(row("Of your reserve, running"), both(&|it| kilojoules(it.paced.foot.drawn)));
    assert_eq!(row("Riding"), both(&|it| or_none(it.paced.ride.map(|ride| ride.time))));
    assert_eq!(row("Riding at your power alone"), both(&|it| or_none(it.plan.ride)));
    assert_eq!(row("With the speed into it"), both(&|it| or_none(it.plan.carried(&it.carry))));
    assert_eq!(row("Running"), both(&|it| brief(it.ascent.foot)));
    for (side, said) in sides.iter().zip(row("Better of these")) {
        let running = read_time(&brief(side.ascent.foot));
        assert!(read_time(&said) <= running + 0.6 || side.ascent.dearer.s() < 0.0);
    }
    let here: Vec<Vec<String>> = page
        .rows("ride-speeds")
        .into_iter()
        .filter(|it| it.last().unwrap().starts_with("this climb"))
        .collect();
    assert_eq!(here.len(), 1);
    assert_eq!(here[0][here[0].len() - 2..], both(&|it| format!("this climb: {}", it.verb())));
    assert_eq!(
        page.row("ride-ends", "No gear low enough below"),
        [0, 1].map(|side| facts.speed(facts.lowest_speed(side)))
    );
    let verbs = [sides[0].verb(), sides[1].verb()];
    let short = if verbs[0] == verbs[1] {
        format!("A and B: {}", verbs[0])
    } else {
        format!("A: {}, B: {}", verbs[0], verbs[1])
    };
    for picture in ["slopes", "verdicts"].map(|name| Picture::by_name(name).unwrap()) {
        has(&picture.label(&page.report), &format!(": {short}."));
    }
}

/// The map's stretch of this slope on this ground.
fn check_map(facts: &Facts, page: &Page) {
    let here = facts.climb.percent();
    for (side, question) in facts.questions.iter().enumerate() {
        let ground = facts.surface as usize;
        let rows = page.rows("ride-map");
        // A ground with values of the rider's own is the last one; the head is the first.
        let row = rows.iter().find(|it| it[0] == "your own ground").unwrap_or(&rows[1 + ground]);
        let stretch = row[1 + side].split("; ").find_map(|it| {
            let (words, to) = it.rsplit_once(" to ").unwrap();
            let to: f64 = to.trim_end_matches(" %").parse().unwrap();
            ((to - here).abs() < 0.51 || here < to).then_some((words.to_owned(), to))
        });
        let Some((words, to)) = stretch else { continue };
        let starts = row[1 + side].split(&words).next().unwrap().trim_end_matches("; ");
        let from: f64 =
            starts.rsplit_once(" to ").map_or(0.0, |it| it.1.trim_end_matches(" %").parse().unwrap());
        if here - from < 0.51 && from > 0.0 || to - here < 0.51 && to < 45.0 {
            continue;
        }
        let answer = question.answer(&facts.grounds[side], facts.climb);
        let verdict = match answer.verdict {
            Verdict::Ride => "ride",
            Verdict::TooClose => "too close to call",
            Verdict::Foot | Verdict::FootForced => "run",
        };
        assert!(words.starts_with(verdict), "{verdict} at {here} %: {row:?}");
    }
}
