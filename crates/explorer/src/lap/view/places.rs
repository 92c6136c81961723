//! “Round the lap”: where to dismount and remount, and what to heed before riding there.

use crate::lap::report::LapReport;
use crate::lap::section::LapSection;
use crate::layout::pieces::name;
use crate::number::{brief, listed, percent, plain, with_unit};
use crate::ride::words::terms::surface_name;
use crate::side::Side;
use gear_math::course::{PlanPart, WhyOnFoot};
use gear_math::rider::Reason;
use gear_math::{Lap, Surface};
use maud::{Markup, html};

/// Where to dismount and remount, fit to be written on a stem.
#[must_use]
pub(crate) fn places(report: &LapSection) -> Markup {
    let Some(laps) = &report.lap.laps else { return html! {} };
    let [a, b] = &laps.laps;
    html! {
        h3 { "Stem note: where to dismount and remount" }
        div.pair {
            @if stem(a) == stem(b) {
                (list(laps, a, &html! { (name(Side::A)) " and " (name(Side::B)) }))
            } @else {
                (list(laps, a, &name(Side::A)))
                (list(laps, b, &name(Side::B)))
            }
        }
        h3 { "Before you ride it" }
        ul { @for caution in cautions(laps) { li.care { (caution) } } }
    }
}

fn stem(lap: &Lap) -> Vec<(i64, i64)> {
    lap.dismounts().iter().map(|part| (part.from_m.round() as i64, part.to_m.round() as i64)).collect()
}

fn list(laps: &LapReport, lap: &Lap, whose: &Markup) -> Markup {
    let parts = lap.dismounts();
    html! {
        div {
            p { (whose) ", metres from the line" }
            @if parts.is_empty() { p.stem { "ride it all" } }
            @if lap.is_all_on_foot() { p.stem { "on foot all the way" } } @else {
                ol.stem {
                    @for part in &parts {
                        li {
                            (dismount(part, laps.length_m()))
                            " " small { (why(part)) ", " (place(laps, part)) ", " (brief(part.time_s)) }
                        }
                    }
                }
            }
        }
    }
}

fn dismount(part: &PlanPart, end: f64) -> Markup {
    let metre = |at: f64| html! { b { (with_unit(at, 0, "m")) } };
    let [from, to] = [part.from_m, part.to_m];
    html! {
        @if plain(from, 0) == plain(to, 0) { "on foot at " (metre(from)) }
        @else if from <= 0.0 { "on foot over the line, remount " (metre(to)) }
        @else if to > end - 0.01 { "dismount " (metre(from)) ", on foot to the line" }
        @else { "dismount " (metre(from)) ", remount " (metre(to)) @if to < from { " beyond the line" } }
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

/// Why a part is gone on foot.
const fn why(part: &PlanPart) -> &'static str {
    match part.why {
        Some(WhyOnFoot::Obstacle) => "obstacle",
        Some(WhyOnFoot::Because(Reason::Gear)) => "no gear low enough",
        Some(WhyOnFoot::Because(Reason::Force)) => "legs not strong enough",
        Some(WhyOnFoot::Because(Reason::Balance)) => "too slow to balance",
        Some(WhyOnFoot::Because(Reason::Grip)) => "rear wheel slips",
        Some(WhyOnFoot::Because(Reason::Energy)) => "running is quicker",
        None => "",
    }
}

/// What to heed before the lap is ridden.
fn cautions(laps: &LapReport) -> [String; 3] {
    [
        WALK_IT_FIRST.to_owned(),
        descents(laps),
        format!("{WHILE_OPEN} Where you record or ride a lap on public paths, others have the right of way."),
    ]
}

/// What goes on the sheet of it.
pub(crate) const WALK_IT_FIRST: &str =
    "Walk the course before you ride it: the plan knows neither ruts and lines nor other riders.";

/// What goes on the sheet of descents, which are assumed and not judged.
pub(super) const DOWNHILL: &str = "Ride down only what you can see and stop on.";

/// What goes on the sheet of when to ride it.
pub(super) const WHILE_OPEN: &str = "Ride a course only while it is open to you.";

/// That descents and braking are assumed, and what the braking takes.
fn descents(laps: &LapReport) -> String {
    let segments = laps.question.course.segments();
    let steepest = segments.iter().map(|segment| segment.gradient.percent()).fold(0.0, f64::min);
    let braking = laps.question.setups[0].mounting.braking;
    let needed = braking.friction_needed();
    let slippery: Vec<&str> = Surface::ALL
        .into_iter()
        .filter(|&it| it.friction().low.mu() < needed && segments.iter().any(|s| s.surface == it))
        .map(surface_name)
        .collect();
    let down = if steepest < 0.0 { format!(", down to {},", percent(steepest, 0)) } else { String::new() };
    let grip = if slippery.is_empty() {
        String::new()
    } else {
        format!(", which {} may not give when it is slippery", listed(&slippery))
    };
    format!(
        "Descents{down} and braking are assumed, not judged: {} into bends takes a grip of {}{grip}. {DOWNHILL}",
        with_unit(braking.m_per_s2(), 1, "m/s²"),
        plain(needed, 2)
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::field::Field;
    use crate::lap::view::answer::tests::{filled, plain_text, ridden};

    fn listed_of(sketch: &str) -> String {
        plain_text(&places(
            &filled(&[(Field::Course, "sketch"), (Field::Sketch, sketch)]).report().lap_section(),
        ))
    }

    #[test]
    fn a_part_on_foot_across_the_line_is_one() {
        let list = listed_of("10; 0; firm grass; foot 2\n400; 0; tarmac\n10; 0; firm grass; foot 2");
        assert_eq!(list.matches("<ol").count(), 1, "{list}");
        assert!(list.contains("remount 10\u{a0}m beyond the line obstacle, 0\u{a0}%, firm grass"), "{list}");
    }

    #[test]
    fn who_never_rides_is_on_foot_all_the_way() {
        let list = listed_of("60; 0; firm grass; foot 2");
        assert!(list.contains("on foot all the way") && !list.contains("<ol"), "{list}");
    }

    #[test]
    fn a_long_part_goes_by_what_holds_over_most_of_it() {
        let list = listed_of("300; 0; tarmac\n40; 38; deep mud\n2; 0; firm grass; foot 1\n300; -5; tarmac");
        assert!(!list.contains("obstacle,") && list.contains("38\u{a0}%, deep mud"), "{list}");
        let plank = listed_of("300; 0; tarmac\n1; 0; mud; foot 1\n300; 0; tarmac");
        assert!(plank.contains("obstacle,"), "{plank}");
    }

    #[test]
    fn places_are_told_in_the_words_of_the_trade_and_in_whole_seconds() {
        let list = plain_text(&places(&ridden("").report().lap_section()));
        assert!(list.contains("dismount 407\u{a0}m, remount 4"), "{list}");
        assert!(list.contains("no gear low enough, ") && !list.contains("off 4"), "{list}");
        let times: Vec<&str> = list.split("\u{a0}s</li>").filter_map(|it| it.rsplit(' ').next()).collect();
        let long = |it: &&&str| it.parse::<f64>().is_ok_and(|s| s >= 10.0);
        assert!(
            times.iter().filter(long).count() > 2 && times.iter().filter(long).all(|it| !it.contains('.')),
            "{times:?}"
        );
    }

    #[test]
    fn what_to_heed_stands_on_the_page_with_what_the_braking_takes() {
        let list = plain_text(&places(&ridden("").report().lap_section()));
        assert!(list.contains("Walk the course before you ride it"), "{list}");
        assert!(list.contains("right of way") && list.contains("only while it is open"), "{list}");
        assert!(
            list.contains("braking are assumed, not judged: 3.0\u{a0}m/s² into bends takes a grip of 0.31"),
            "{list}"
        );
        assert!(list.contains("wet, soft grass"), "{list}");
        let dry = listed_of("400; 0; tarmac\n400; -3; packed gravel");
        assert!(dry.contains("Descents, down to −3\u{a0}%, and braking are assumed"), "{dry}");
        assert!(!dry.contains("slippery"), "{dry}");
    }
}
