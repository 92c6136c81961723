//! “Will the cage take it?” by geometry: chain length, every gear, what was assumed.

use crate::chain::report::{ChainReport, Doubt};
use crate::chain::section::ChainSection;
use crate::chain::words::{bench as gear_words, geometry as words, names};
use crate::layout::pieces::{column, table};
use crate::number::{plain, with_unit};
use crate::side::Side;
use gear_math::chain::PathError;
use maud::{Markup, html};

/// Chain length, capacity, reach and slope of A and B, and what was assumed.
#[must_use]
pub(crate) fn lengths(report: &ChainSection) -> Markup {
    let head = html! { tr { td {} (column(Side::A)) (column(Side::B)) } };
    let row = |what: &str, value: fn(&ChainReport) -> String| {
        let cell = |chain: &Result<ChainReport, PathError>| chain.as_ref().map_or("–".to_owned(), value);
        html! { tr { th scope="row" { (what) } @for chain in &report.chain.chains { td { (cell(chain)) } } } }
    };
    let body = html! {
        (row(words::LINKS_TO_FIT, |chain| chain.advice.suited.links.count().to_string()))
        (row(words::FEWEST, |chain| {
            let window = &chain.advice.fit.window;
            words::exactly(window.shortest.count(), window.shortest_exact)
        }))
        (row(words::MOST, |chain| {
            let window = &chain.advice.fit.window;
            words::exactly(window.longest.count(), window.longest_exact)
        }))
        (row(words::WORKSHOP_RULE, |chain| chain.advice.fit.big_big_plus_two.count().to_string()))
        (row(words::CAPACITY, |chain| plain(chain.advice.fit.capacity_teeth, 1)))
        (row(words::REACH, |chain| with_unit(chain.reach_mm, 0, "mm")))
        (row(words::SLOPE, |chain| format!("{}°", plain(chain.slope_degrees, 0))))
    };
    html! {
        (table(words::LENGTHS, words::LENGTHS_REMARK, &head, &body))
        (front(report))
        (assumptions(report))
    }
}

/// What speaks against the rings on a front derailleur.
fn front(report: &ChainSection) -> Markup {
    html! {
        @for chain in report.chain.solved().filter(|chain| !chain.front.is_empty()) {
            p.prose { (words::front(chain.side, &chain.front)) }
        }
        p.prose.quiet { (words::CLEARANCES) }
    }
}

/// What was left empty, what was taken, and what the chains would be at the ends of the usual range.
fn assumptions(report: &ChainSection) -> Markup {
    let Some(first) = report.chain.solved().next().filter(|chain| !chain.doubts.is_empty()) else {
        return html! {};
    };
    let head = html! {
        tr {
            @for head in words::ASSUMED_HEADS { th scope="col" { (head) } }
            @for chain in report.chain.solved() {
                @for head in words::ends(chain.side) { th scope="col" { (head) } }
            }
            th.words scope="col" { (words::SOURCE) }
        }
    };
    let body = html! { @for place in 0..first.doubts.len() { (assumption(report, place)) } };
    html! {
        details #assumed {
            summary { (words::ASSUMED_OPEN) }
            (table(words::ASSUMED, words::ASSUMED_REMARK, &head, &body))
        }
    }
}

/// One row; both set-ups have the same measures left empty, in the same order.
fn assumption(report: &ChainSection, place: usize) -> Markup {
    let doubts: Vec<&Doubt> = report.chain.solved().filter_map(|chain| chain.doubts.get(place)).collect();
    let Some(assumed) = doubts.first().map(|doubt| &doubt.assumption) else { return html! {} };
    html! {
        tr {
            th scope="row" { (names::measure(assumed.measure)) }
            @for value in words::taken_and_usual(assumed) { td { (value) } }
            @for end in doubts.iter().flat_map(|doubt| &doubt.ends) { td { (words::window(end.as_ref())) } }
            td.words { (words::source(assumed)) }
        }
    }
}

/// The table for the bench: one for each set-up, whose rows can be stepped through with the drawing.
#[must_use]
pub(crate) fn bench(report: &ChainSection) -> Markup {
    html! { @for chain in report.chain.solved() { (bench_table(chain)) } }
}

fn bench_table(chain: &ChainReport) -> Markup {
    let [values @ .., state] = gear_words::HEADS;
    let head = html! {
        tr {
            @for head in values { th scope="col" { (head) } }
            th.words scope="col" { (state) }
        }
    };
    let body = html! {
        @for (place, station) in chain.stations.iter().enumerate() {
            @let fit = &station.fit;
            tr data-puts=(chain.shown_field().spec().key) data-value=(place + 1) tabindex="-1" {
                th scope="row" { (fit.gear) }
                td { @if fit.state.is_usable() { (plain(fit.drawn_angle.degrees(), 0)) "°" } @else { "–" } }
                td { (plain(fit.to_fore_stop, 1)) }
                td { (plain(fit.to_rear_stop, 1)) }
                td { (plain(fit.chain_angle.degrees(), 1)) "°" }
                td.words { (gear_words::station(station)) }
            }
        }
    };
    table(&gear_words::title(chain), gear_words::REMARK, &head, &body)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::bench::Bench;
    use crate::bench::field::Field;
    use crate::chain::words::answer::certainty;
    use crate::chain::words::verdict::said;
    use crate::page::scenario::Scenario;

    /// The answer to a bench with these fields typed, as text without its marks.
    fn answer(edits: &[(Field, &str)]) -> String {
        let mut typed = Bench::default();
        for (field, text) in edits {
            typed.write(*field, text);
        }
        let report = crate::page::report::Report::of(&Scenario::read(&typed, &Scenario::default()).scenario)
            .chain_section();
        let html = html! {
            @for side in Side::BOTH { (said(&report, side).marked(side)) " " }
            (certainty(&report)) (lengths(&report)) (crate::chain::view::remedies::remedies(&report)) (bench(&report))
        };
        let mut text = String::new();
        let mut inside = false;
        for letter in html.into_string().chars() {
            match letter {
                '<' => inside = true,
                '>' => inside = false,
                '\u{a0}' => text.push(' '),
                letter if !inside => text.push(letter),
                _ => {}
            }
        }
        text
    }

    const ALL_MEASURED: [(Field, &str); 9] = [
        (Field::Chainstay, "428"),
        (Field::BottomBracketDrop, "66"),
        (Field::PulleyCentres, "76"),
        (Field::GuideTeeth, "11"),
        (Field::TensionTeeth, "11"),
        (Field::PulleyGap, "12.5"),
        (Field::GuideAngle, "9"),
        (Field::RearStop, "-75"),
        (Field::ForeStop, "65"),
    ];

    #[test]
    fn what_was_left_empty_is_owned_up_to() {
        assert!(answer(&[]).contains("they can change the link count: chainstay"), "{}", answer(&[]));
        let measured = answer(&ALL_MEASURED);
        assert!(!measured.to_lowercase().contains("left these empty"), "{measured}");
    }

    #[test]
    fn the_length_that_a_capacity_sets_is_not_among_what_was_left_empty() {
        let named = "distance between pulley centres";
        assert!(!answer(&[]).contains(named), "{}", answer(&[]));
        assert!(answer(&[(Field::Capacity, "")]).contains(named));
    }

    #[test]
    fn one_chain_is_advised_throughout() {
        let long = answer(&[(Field::ChainLinks, "116"), (Field::PulleyCentres, "75")]);
        assert!(long.contains("A chain of 108 links8 links come off"), "{long}");
        assert!(long.contains("B needs a shorter chain") && long.contains("Take 8 links out"), "{long}");
    }

    #[test]
    fn wheels_that_run_into_each_other_are_named() {
        let text = answer(&[
            (Field::Chainstay, "350"),
            (Field::PulleyCentres, "150"),
            (Field::GuideAngle, "45"),
            (Field::RingsA, "60"),
            (Field::CassetteA, "11-60"),
            (Field::LargestSprocket, "60"),
            (Field::Capacity, "60"),
        ]);
        assert!(text.contains("chainring and tension pulley run into each other"), "{text}");
    }

    #[test]
    fn the_smallest_and_the_largest_bikes_have_an_answer() {
        let one = [(Field::RingsA, "42"), (Field::CassetteA, "18"), (Field::RingsB, "60/40/20")];
        let text =
            answer(&[one[0], one[1], one[2], (Field::CassetteB, "9-10-11-12-14-16-19-22-26-31-37-44-52-60")]);
        assert!(text.contains("42×18"), "{text}");
        assert!(text.contains("so the chain hangs in "), "{text}");
        assert!(!text.contains("NaN") && !text.contains("inf"), "{text}");
    }

    #[test]
    fn a_sprocket_beyond_the_makers_asks_for_a_longer_hanger() {
        let text = answer(&[(Field::LargestSprocket, "28")]);
        assert!(text.contains("A hanger "), "{text}");
        assert!(text.contains("Buy a rear derailleur for a 30 and at least 35 teeth"), "{text}");
    }
}
