//! “Round the lap”: where to dismount and remount, and what to heed before riding there.

use crate::lap::report::LapReport;
use crate::lap::section::LapSection;
use crate::lap::stem_note::to_the_metre;
use crate::lap::words::places as words;
use crate::layout::line::Line;
use crate::side::Side;
use gear_math::Lap;
use maud::{Markup, html};

/// Where to dismount and remount, fit to be written on a stem.
#[must_use]
pub(crate) fn places(report: &LapSection) -> Markup {
    let Some(laps) = &report.lap.laps else { return html! {} };
    let [a, b] = &laps.laps;
    html! {
        h3 { (words::STEM_NOTE) }
        div.pair {
            @if to_the_metre(a) == to_the_metre(b) {
                (list(laps, a, &words::of_both()))
            } @else {
                (list(laps, a, &words::of_one(Side::A)))
                (list(laps, b, &words::of_one(Side::B)))
            }
        }
        h3 { (words::HEED) }
        ul {
            li.care { (words::WALK_IT_FIRST) }
            li.care { (words::descents(laps)) " " (words::DOWNHILL) }
            li.care { (words::WHILE_OPEN) " " (words::RIGHT_OF_WAY) }
        }
    }
}

fn list(laps: &LapReport, lap: &Lap, whose: &Line) -> Markup {
    let parts = lap.dismounts();
    html! {
        div {
            p { (whose) }
            @if parts.is_empty() { p.stem { (words::RIDE_ALL) } }
            @if lap.is_all_on_foot() { p.stem { (words::ALL_ON_FOOT) } } @else {
                ol.stem {
                    @for part in &parts {
                        li {
                            (words::dismount(part, laps.length_m())) " "
                            small { (words::remark(laps, part)) }
                        }
                    }
                }
            }
        }
    }
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
        assert!(list.contains("rear wheel slips, 21\u{a0}%") && !list.contains("off 4"), "{list}");
        let times: Vec<&str> = list.split("\u{a0}s</li>").filter_map(|it| it.rsplit(' ').next()).collect();
        let long = |it: &&&str| it.parse::<f64>().is_ok_and(|s| s >= 10.0);
        assert!(
            times.iter().filter(long).count() > 1 && times.iter().filter(long).all(|it| !it.contains('.')),
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
