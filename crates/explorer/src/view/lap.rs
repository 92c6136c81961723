//! “Round the lap”: the answer in sentences, and where to get off and on.

use super::ride_words::reason;
use super::sheet::Block;
use super::sheet_checks::Concern;
use super::tyre;
use super::words::name;
use crate::number::{counted, percent, plain, with_unit};
use crate::report::{LapReport, Report, Settled, Side};
use crate::scenario::CourseChoice;
use gear_math::{GainPart, Lap, PlanPart, Quicker, TimeBand, WhyOnFoot};
use maud::{Markup, html};

/// Differences below this are none, s.
const NOTHING_S: f64 = 0.05;

/// Longer than this share of the lap is no place that matters.
const PLACE_SHARE: f64 = 0.25;

/// What is gone on foot for less than this is no place to get off, m.
const LEAST_M: f64 = 1.0;

/// From this long on a time is told in minutes, s.
const LONG_S: f64 = 180.0;

/// Seconds, or minutes and seconds when there are many.
#[must_use]
pub(crate) fn duration(time_s: f64, decimals: usize) -> String {
    if time_s < LONG_S {
        return with_unit(time_s, decimals, "s");
    }
    let seconds = time_s.round();
    let minutes = (seconds / 60.0).floor();
    format!("{minutes:.0}:{:02.0}\u{a0}min", seconds - 60.0 * minutes)
}

/// Which set-up is quicker, by how much, and whether that is more than the uncertainty.
#[must_use]
pub(super) fn answer(report: &Report) -> Markup {
    let Some(laps) = &report.lap.laps else {
        return html! { p { "The lap is worked out as soon as you come here." } };
    };
    let [a, b] = &laps.laps;
    html! {
        p {
            @match &laps.settled {
                _ if lacks_file(report) => {
                    "This is about a course from a file, which a link does not carry: choose it below. Until then this is the Autumn meadow."
                }
                Some(_) if laps.is_of_one_bike() => { (name(Side::A)) " and " (name(Side::B)) " are the same, so the lap is too." }
                Some(settled) => (verdict(settled, laps.length_m())),
                None => { "Looking closer: at first sight " (name(Side::A)) " takes " (clock(a.time_s)) " and " (name(Side::B)) " " (clock(b.time_s)) "." }
            }
        }
        p {
            (course_name(report)) ", " (with_unit(laps.length_m() / 1e3, 2, "km")) " with "
            (with_unit(laps.question.course.climb_m(), 0, "m")) " of climbing: "
            @if let Some(settled) = &laps.settled {
                (banded(Side::A, &settled.bands[0])) ", " (banded(Side::B, &settled.bands[1])) ". "
            }
            (dismounts(a, b))
        }
        @if let Some(settled) = &laps.settled { p.quiet { (doubt(settled)) } }
        (tyre::width_counts(report))
    }
}

fn verdict(settled: &Settled, length_m: f64) -> Markup {
    let TimeBand { low_s, time_s, high_s } = settled.gained;
    let (sign, ahead) = if time_s < 0.0 { (-1.0, Side::A) } else { (1.0, Side::B) };
    let (low, high) = if time_s < 0.0 { (-high_s, -low_s) } else { (low_s, high_s) };
    let best = with_unit(sign * time_s, 1, "s");
    html! {
        @match settled.quicker {
            Quicker::TooClose if time_s.abs() < NOTHING_S && high_s - low_s < 2.0 * NOTHING_S => {
                "Between " (name(Side::A)) " and " (name(Side::B)) " this lap makes no difference."
            }
            Quicker::TooClose => {
                "Too close to call: "
                @if time_s.abs() < NOTHING_S { "by the best guess neither is quicker" }
                @else { "by the best guess " (name(ahead)) " gains " b { (best) } " a lap" }
                ", but it may be anything from " (with_unit(-low, 1, "s")) " slower to "
                (with_unit(high, 1, "s")) " quicker."
            }
            _ => {
                (name(ahead)) " is quicker here: it gains " b { (best) } " a lap, likely "
                (plain(low, 1)) " to " (with_unit(high, 1, "s")) ", which is "
                @if settled.only_just { "only just " } "more than the uncertainty."
            }
        }
        (mainly(settled, length_m))
    }
}

/// Where the difference arises, when it is one place.
fn mainly(settled: &Settled, length_m: f64) -> String {
    let is_place = |main: &&GainPart| main.span.to_m - main.span.from_m <= PLACE_SHARE * length_m;
    let Some(main) = settled.main.as_ref().filter(is_place) else { return String::new() };
    let (from, to) = (plain(main.span.from_m, 0), with_unit(main.span.to_m, 0, "m"));
    let whose = if main.gained_s < 0.0 { Side::A } else { Side::B };
    format!(" Nearly all of what {whose} gains, it gains at {from} to {to}.")
}

fn banded(side: Side, band: &TimeBand) -> Markup {
    html! { (name(side)) " " b { (clock(band.time_s)) } " (likely " (clock(band.low_s)) " to " (clock(band.high_s)) ")" }
}

fn doubt(settled: &Settled) -> String {
    let close: usize = settled.too_close.iter().map(Vec::len).max().unwrap_or(0);
    let places = if close == 0 {
        String::new()
    } else {
        format!(
            " At {} the choice between riding and running turns within that.",
            counted(close, "place", "places")
        )
    };
    format!(
        "The likely times hold if the rider, the ground and the cost of running are off as far as published averages \
         usually are, the lowest cadence by 5\u{a0}rpm, and getting off and on by 1\u{a0}s. They move both laps alike, so \
         the difference is surer than either time. The power you hold is taken as given.{places}"
    )
}

/// How often to get off.
fn dismounts(a: &Lap, b: &Lap) -> Markup {
    let [of_a, of_b] = [a, b].map(|lap| on_foot(lap).len());
    html! {
        @match (of_a, of_b) {
            _ if a.is_all_on_foot() && b.is_all_on_foot() => "You are on foot all the way.",
            _ if a.is_all_on_foot() || b.is_all_on_foot() => { "With " (name(Side::A)) " you " (often(a)) ", with " (name(Side::B)) " you " (often(b)) "." }
            (0, 0) => "You never get off.",
            (0, often) => { "With " (name(Side::A)) " you never get off, with " (name(Side::B)) " " b { (times(often)) } "." }
            (often, 0) => { "With " (name(Side::B)) " you never get off, with " (name(Side::A)) " " b { (times(often)) } "." }
            (of_a, of_b) if of_a == of_b => { "With both you get off " b { (times(of_a)) } "." }
            (of_a, of_b) => {
                "You get off " b { (times(of_a)) } " with " (name(Side::A)) ", "
                b { (times(of_b)) } " with " (name(Side::B)) "."
            }
        }
    }
}

fn often(lap: &Lap) -> String {
    match on_foot(lap).len() {
        _ if lap.is_all_on_foot() => "are on foot all the way".to_owned(),
        0 => "never get off".to_owned(),
        often => format!("get off {}", times(often)),
    }
}

fn times(count: usize) -> String {
    match count {
        1 => "once".to_owned(),
        2 => "twice".to_owned(),
        count => format!("{count} times"),
    }
}

/// Minutes, seconds and tenths.
#[must_use]
pub(crate) fn clock(time_s: f64) -> String {
    let tenths = (time_s * 10.0).round();
    let minutes = (tenths / 600.0).floor();
    format!("{minutes:.0}:{:04.1}", (tenths - minutes * 600.0) / 10.0)
}

/// Whether the course is to come from a file that is not at hand.
fn lacks_file(report: &Report) -> bool {
    report.lap_inputs.choice == CourseChoice::Own && report.lap.own.is_none()
}

fn course_name(report: &Report) -> String {
    report.lap_inputs.course_name(report.lap.own.as_deref())
}

/// Where to get off and on, fit to be written on a hand or a stem.
#[must_use]
pub(super) fn places(report: &Report) -> Markup {
    let Some(laps) = &report.lap.laps else { return html! {} };
    let [a, b] = &laps.laps;
    let same = stem(a) == stem(b);
    html! {
        h3 { "For your hand or stem" }
        div.pair {
            @if same {
                (list(laps, a, &html! { (name(Side::A)) " and " (name(Side::B)) }))
            } @else {
                (list(laps, a, &name(Side::A)))
                (list(laps, b, &name(Side::B)))
            }
        }
    }
}

fn stem(lap: &Lap) -> Vec<(i64, i64)> {
    on_foot(lap).iter().map(|part| (part.from_m.round() as i64, part.to_m.round() as i64)).collect()
}

/// Parts on foot that are places: a step or two where nothing stands are none.
pub(crate) fn on_foot(lap: &Lap) -> Vec<PlanPart> {
    let is_place = |part: &PlanPart| {
        let is_step = (0.0..LEAST_M).contains(&(part.to_m - part.from_m));
        !is_step || part.why == Some(WhyOnFoot::Obstacle)
    };
    let mut parts = lap.on_foot_round();
    parts.retain(is_place);
    parts
}

fn list(laps: &LapReport, lap: &Lap, whose: &Markup) -> Markup {
    let metre = |at: f64| plain(at, 0);
    let (end, parts) = (laps.length_m(), on_foot(lap));
    html! {
        div {
            p { (whose) ", metres from the line" }
            @if parts.is_empty() { p.stem { "ride it all" } }
            @if lap.is_all_on_foot() { p.stem { "on foot all the way" } } @else {
                ol.stem {
                    @for part in &parts {
                        li {
                            @if metre(part.from_m) == metre(part.to_m) { "on foot at " b { (metre(part.from_m)) } }
                            @else if part.from_m <= 0.0 { "on foot over the line on " b { (metre(part.to_m)) } }
                            @else if part.to_m > end - 0.01 { "off " b { (metre(part.from_m)) } " on foot to the line" }
                            @else { "off " b { (metre(part.from_m)) } " on " b { (metre(part.to_m)) } @if part.to_m < part.from_m { " beyond the line" } }
                            " " small { (why(part)) ", " (place(laps, part)) ", " (duration(part.time_s, 1)) }
                        }
                    }
                }
            }
        }
    }
}

/// What a place looks like, so that it is found again: the ground of most of it, and its gradient. Of one on both sides of
/// the line that is the longer side.
fn place(laps: &LapReport, part: &PlanPart) -> String {
    let (from, to) = match (part.from_m, part.to_m) {
        (from, to) if from <= to => (from, to),
        (from, to) if to > laps.length_m() - from => (0.0, to),
        (from, _) => (from, laps.length_m()),
    };
    let (surface, gradient) = laps.question.course.mostly(from, to);
    format!("{}, {}", percent(gradient.percent(), 0), surface.name())
}

/// The lap in short; nothing until it has been worked out.
#[must_use]
pub(super) fn block(report: &Report) -> Option<Block> {
    let laps = report.lap.laps.as_ref().filter(|_| !lacks_file(report))?;
    let settled = laps.settled.as_ref()?;
    let mut block = Block::new("Round the lap");
    let length = with_unit(laps.length_m() / 1e3, 2, "km");
    let climb = with_unit(laps.question.course.climb_m(), 0, "m");
    block.row("Course", format!("{}, {length}, {climb} up", course_name(report)));
    for (side, (lap, band)) in Side::BOTH.into_iter().zip(laps.laps.iter().zip(&settled.bands)) {
        let [low, time, high] = [band.low_s, band.time_s, band.high_s].map(clock);
        block.row_of(side, "Lap", format!("{time}, likely {low} to {high}"));
        block.row_of(side, "On foot, m from the line", spans_on_foot(lap));
    }
    if report.sheet_for.is_none() {
        block.row("Quicker", quicker(settled));
    }
    block.check(Concern::Course, WALK_IT_FIRST);
    Some(block)
}

const WALK_IT_FIRST: &str =
    "Walk the course before you ride it: the plan knows neither ruts and lines nor other riders.";

fn spans_on_foot(lap: &Lap) -> String {
    let span = |part: &PlanPart| format!("{} to {}", plain(part.from_m, 0), plain(part.to_m, 0));
    let spans: Vec<String> = on_foot(lap).iter().map(span).collect();
    match spans.len() {
        _ if lap.is_all_on_foot() => "all the way".to_owned(),
        0 => "nowhere".to_owned(),
        _ => spans.join("; "),
    }
}

fn quicker(settled: &Settled) -> String {
    let gained = settled.gained.time_s;
    let ahead = if gained < 0.0 { Side::A } else { Side::B };
    match settled.quicker {
        Quicker::TooClose => "too close to call".to_owned(),
        _ => format!("{ahead}, by {} a lap", with_unit(gained.abs(), 1, "s")),
    }
}

/// Why a part is gone on foot.
#[must_use]
pub(crate) fn why(part: &PlanPart) -> &'static str {
    match part.why {
        Some(WhyOnFoot::Because(why)) => reason(why),
        Some(WhyOnFoot::Obstacle) => "obstacle",
        None => "",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::Bench;
    use crate::desk::Desk;
    use crate::field::Field;

    fn said(edits: &[(Field, &str)]) -> String {
        let mut desk = Desk::default();
        let mut bench = Bench::default();
        for (field, text) in edits {
            bench.write(*field, text);
        }
        desk.lay_out(bench, crate::scenario::Scenario::default());
        desk.lap(true);
        let html = answer(&desk.report()).into_string();
        html.replace("<b>", "")
            .replace("</b>", "")
            .replace("<b class=\"A\">", "")
            .replace("<b class=\"B\">", "")
    }

    #[test]
    fn two_alike_are_said_to_be_alike() {
        let rings = (Field::RingsA, Field::RingsB.spec().start);
        let words = said(&[rings, (Field::CassetteA, Field::CassetteB.spec().start)]);
        assert!(words.starts_with("<p>A and B are the same, so the lap is too."), "{words}");
    }

    #[test]
    fn the_one_place_that_matters_is_named() {
        let words = said(&[]);
        assert!(words.contains("Nearly all of what B gains, it gains at 11"), "{words}");
    }

    #[test]
    fn an_edge_close_to_zero_is_only_just_more() {
        let band = |low_s| TimeBand { low_s, time_s: 5.7, high_s: 9.6 };
        let said = |low_s: f64, only_just| {
            let settled = Settled {
                bands: [band(low_s); 2],
                too_close: [Vec::new(), Vec::new()],
                gained: band(low_s),
                quicker: Quicker::Second,
                only_just,
                parts: Vec::new(),
                main: None,
                curve: Vec::new(),
            };
            verdict(&settled, 2000.0).into_string()
        };
        assert!(said(0.4, true).contains("which is only just more than the uncertainty."));
        assert!(said(2.4, false).contains("which is more than the uncertainty."));
    }

    #[test]
    fn a_hopeless_gear_loses_by_more_than_the_uncertainty() {
        let words = said(&[(Field::RingsA, "56"), (Field::CassetteA, "11")]);
        assert!(words.starts_with("<p>B is quicker here: it gains"), "{words}");
        assert!(words.contains("more than the uncertainty"));
    }

    fn listed(edits: &[(Field, &str)]) -> String {
        let mut desk = Desk::default();
        let mut bench = Bench::default();
        edits.iter().for_each(|(field, text)| bench.write(*field, text));
        desk.lay_out(bench, crate::scenario::Scenario::default());
        desk.lap(true);
        let html = places(&desk.report()).into_string();
        html.replace("<b>", "").replace("</b>", "").replace("<small>", "").replace("</small>", "")
    }

    fn sketched(sketch: &str) -> [(Field, &str); 2] {
        [(Field::Course, "sketch"), (Field::Sketch, sketch)]
    }

    #[test]
    fn a_part_on_foot_across_the_line_is_one() {
        let edits = sketched("10; 0; firm grass; foot 2\n400; 0; tarmac\n10; 0; firm grass; foot 2");
        let (list, answer) = (listed(&edits), said(&edits));
        assert_eq!(list.matches("<li>").count(), 1, "{list}");
        assert!(list.contains("on 10 beyond the line obstacle, 0\u{a0}%, firm grass"), "{list}");
        assert!(answer.contains("With both you get off once."), "{answer}");
    }

    #[test]
    fn who_never_rides_is_on_foot_all_the_way() {
        let edits = sketched("60; 0; firm grass; foot 2");
        let (list, answer) = (listed(&edits), said(&edits));
        assert!(list.contains("on foot all the way") && !list.contains("<li>"), "{list}");
        assert!(answer.contains("You are on foot all the way.") && !answer.contains("get off"), "{answer}");
    }

    #[test]
    fn a_long_part_goes_by_what_holds_over_most_of_it() {
        let edits = sketched("300; 0; tarmac\n40; 38; deep mud\n2; 0; firm grass; foot 1\n300; -5; tarmac");
        let list = listed(&edits);
        assert!(!list.contains("obstacle") && list.contains("38\u{a0}%, deep mud"), "{list}");
        let plank = listed(&sketched("300; 0; tarmac\n1; 0; mud; foot 1\n300; 0; tarmac"));
        assert!(plank.contains("obstacle"), "{plank}");
    }

    #[test]
    fn a_quarter_of_a_lap_is_no_place() {
        let settled = |to_m| Settled {
            bands: [TimeBand { low_s: 0.0, time_s: 0.0, high_s: 0.0 }; 2],
            too_close: [Vec::new(), Vec::new()],
            gained: TimeBand { low_s: 1.0, time_s: 2.0, high_s: 3.0 },
            quicker: Quicker::Second,
            only_just: false,
            parts: Vec::new(),
            main: Some(GainPart { span: gear_math::Span { from_m: 529.0, to_m }, gained_s: 2.0 }),
            curve: Vec::new(),
        };
        assert!(mainly(&settled(600.0), 36_000.0).contains("at 529 to 600"));
        assert_eq!(mainly(&settled(34_480.0), 36_000.0), "");
    }

    #[test]
    fn a_flat_road_is_ridden_throughout() {
        let words = said(&[(Field::Course, "sketch"), (Field::Sketch, "1200; 0; tarmac")]);
        assert!(words.contains("You never get off."), "{words}");
        assert!(words.contains("Your sketch, 1.20\u{a0}km with 0\u{a0}m of climbing"), "{words}");
    }

    #[test]
    fn a_link_without_its_file_says_so() {
        let words = said(&[(Field::Course, "own"), (Field::Paint, "100; 900; deep mud")]);
        assert!(words.starts_with("<p>This is about a course from a file"), "{words}");
        assert!(!words.contains("quicker") && !words.contains("Too close"), "{words}");
        let unpainted = said(&[]);
        let times = |words: &str| words[words.find("Autumn meadow, 3.00").unwrap()..].to_owned();
        assert_eq!(times(&words), times(&unpainted));
    }

    #[test]
    fn times_are_read_as_on_a_watch() {
        assert_eq!([59.96, 372.34, 0.0].map(clock), ["1:00.0", "6:12.3", "0:00.0"]);
        assert_eq!(
            [12.34, 179.0, 239.7].map(|s| duration(s, 1)),
            ["12.3\u{a0}s", "179.0\u{a0}s", "4:00\u{a0}min"]
        );
    }
}
