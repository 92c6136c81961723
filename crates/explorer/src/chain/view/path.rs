//! “Will the cage take it?” by geometry: chain length, every gear, what was assumed.

use crate::chain::report::{ChainReport, Doubt, state_name};
use crate::chain::section::ChainSection;
use crate::layout::pieces::column;
use crate::layout::pieces::{name, table};
use crate::layout::sheet_block::{Block, Part};
use crate::number::{counted, listed, plain, trimmed, with_unit};
use crate::side::Side;
use gear_math::Gear;
use gear_math::cage::FrontConcern;
use gear_math::chain::{ChainDefaults, ChainFit, ChainMeasure, ChainWindow, GearState, PathError};
use maud::{Markup, html};

/// Gears or measures named one by one in a sentence; of more, only the first few are.
const NAMED: usize = 5;

pub(crate) fn links(count: u16) -> String {
    counted(usize::from(count), "link", "links")
}

pub(crate) fn in_state(fit: &ChainFit, state: GearState) -> Vec<Gear> {
    fit.in_state(state).collect()
}

/// “, tight but usual in 50×30”, when there are such gears.
pub(crate) fn tight(fit: &ChainFit) -> String {
    match in_state(fit, GearState::TightButUsual).as_slice() {
        [] => String::new(),
        gears => format!(", tight but usual in {}", few(gears)),
    }
}

/// The first few items, and how many more there are.
pub(crate) fn few<T: ToString>(items: &[T]) -> String {
    let mut names: Vec<String> = items.iter().take(NAMED).map(ToString::to_string).collect();
    if items.len() > NAMED {
        names.pop();
        names.push(format!("{} more", items.len() + 1 - NAMED));
    }
    listed(&names)
}

/// The chain now on the bike, or room to write its links in.
pub(crate) fn links_fitted(report: &ChainSection, block: &mut Block) {
    match report.rings.setup(Side::A).cage.fitted {
        Some(fitted) => block.row("Links in the chain fitted", fitted.count().to_string()),
        None => block.parts.push(Part::blank("Links in the chain fitted")),
    }
}

/// What to measure before cutting the chain, where that could change its links.
pub(crate) fn before_cutting(report: &ChainSection) -> Option<String> {
    let deciding = deciding(report);
    (!deciding.is_empty()).then(|| {
        format!(
            "Measure before you cut the chain: {}. Usual values were taken; they can change the link count.",
            listed(&deciding)
        )
    })
}

/// Measures that were left empty and decide a number of links.
fn deciding(report: &ChainSection) -> Vec<&'static str> {
    let decides = |measure| {
        let mut doubts = report.chain.solved().flat_map(|chain| &chain.doubts);
        doubts.any(|doubt| doubt.decides && doubt.assumption.measure == measure)
    };
    let measures = ChainDefaults::ASSUMPTIONS.iter().map(|assumption| assumption.measure);
    measures.filter(|&measure| decides(measure)).map(name_of).collect()
}

/// What was left empty, and whether that leaves the answers open.
#[must_use]
pub(crate) fn certainty(report: &ChainSection) -> Markup {
    let deciding = deciding(report);
    let doubts = || report.chain.solved().flat_map(|chain| &chain.doubts);
    html! {
        @if !deciding.is_empty() {
            "You left these empty. Usual values were taken; they can change the link count: " (listed(&deciding)) ". Measure before cutting; the table below says what each may do."
        } @else if doubts().next().is_some() {
            "Within the usual range of what you left empty, the same number of links is right."
        }
    }
}

pub(crate) const fn name_of(measure: ChainMeasure) -> &'static str {
    match measure {
        ChainMeasure::PulleyTeeth => "teeth of the pulleys",
        measure => measure.limits().name,
    }
}

/// Chain length, capacity, reach and slope of A and B, and what was assumed.
#[must_use]
pub(crate) fn lengths(report: &ChainSection) -> Markup {
    let head = html! { tr { td {} (column(Side::A)) (column(Side::B)) } };
    let row = |what: &str, value: fn(&ChainReport) -> String| {
        let cell = |chain: &Result<ChainReport, PathError>| chain.as_ref().map_or("–".to_owned(), value);
        html! { tr { th scope="row" { (what) } @for chain in &report.chain.chains { td { (cell(chain)) } } } }
    };
    let body = html! {
        (row("Links to fit", |chain| chain.advice.suited.links.count().to_string()))
        (row("Fewest that keep big-big behind the forward limit", |chain| {
            let window = &chain.advice.fit.window;
            format!("{}, exactly {}", window.shortest.count(), plain(window.shortest_exact, 2))
        }))
        (row("Most that small-small takes up", |chain| {
            let window = &chain.advice.fit.window;
            format!("{}, exactly {}", window.longest.count(), plain(window.longest_exact, 2))
        }))
        (row("Workshop rule: big-big + 2 links", |chain| chain.advice.fit.big_big_plus_two.count().to_string()))
        (row("Capacity of the cage by geometry, teeth", |chain| plain(chain.advice.fit.capacity_teeth, 1)))
        (row("Hanger to guide pulley under the largest sprocket", |chain| with_unit(chain.reach_mm, 0, "mm")))
        (row("Slope that the guide pulley climbs", |chain| format!("{}°", plain(chain.slope_degrees, 0))))
    };
    html! {
        (table("Chain and cage by geometry", "Inner and outer links counted alike; only an even number closes.", &head, &body))
        (front(report))
        (assumptions(report))
    }
}

/// What speaks against the rings on a front derailleur.
fn front(report: &ChainSection) -> Markup {
    html! {
        @for chain in report.chain.solved().filter(|chain| !chain.front.is_empty()) {
            p.prose { (name(chain.side)) " on a front derailleur: " (chain.front.iter().map(concern).collect::<Vec<_>>().join("; ")) "." }
        }
        p.prose.quiet { "Whether the rings clear the chainstay, and the tyre leaves room for the chain, only the bike can tell." }
    }
}

fn concern(concern: &FrontConcern) -> String {
    match concern {
        FrontConcern::DifferenceTooLarge { teeth, most } => {
            format!("{teeth} teeth between the rings are more than the {most} it spans")
        }
        FrontConcern::DifferenceTooSmall { teeth, least } => format!(
            "only {} between neighbouring rings, where {least} are usual: its inner plate may meet the larger one",
            counted(usize::from(*teeth), "tooth", "teeth")
        ),
        FrontConcern::CurveDiffers { ring, made_for } => format!(
            "its plates are curved for a ring of {made_for}, too far from {ring} to follow it closely"
        ),
    }
}

/// What was left empty, what was taken, and what the chains would be at the ends of the usual range.
fn assumptions(report: &ChainSection) -> Markup {
    let Some(first) = report.chain.solved().next().filter(|chain| !chain.doubts.is_empty()) else {
        return html! {};
    };
    let head = html! {
        tr {
            th scope="col" { "Left empty" } th scope="col" { "Taken" } th scope="col" { "Usual" }
            @for chain in report.chain.solved() {
                th scope="col" { (name(chain.side)) " at the least" } th scope="col" { (name(chain.side)) " at the most" }
            }
            th.words scope="col" { "Where from" }
        }
    };
    let body = html! { @for place in 0..first.doubts.len() { (assumption(report, place)) } };
    let remark = "Exact links, fewest and most that suit every gear, if the measure lay at either end of what is usual.";
    html! {
        details #assumed {
            summary { "What was assumed, and what it costs in certainty" }
            (table("Measures that were left empty", remark, &head, &body))
        }
    }
}

/// One row; both set-ups have the same measures left empty, in the same order.
fn assumption(report: &ChainSection, place: usize) -> Markup {
    let doubts: Vec<&Doubt> = report.chain.solved().filter_map(|chain| chain.doubts.get(place)).collect();
    let Some(assumed) = doubts.first().map(|doubt| &doubt.assumption) else { return html! {} };
    let unit = with_space(assumed.measure.limits().unit);
    html! {
        tr {
            th scope="row" { (name_of(assumed.measure)) }
            td { (trimmed(assumed.value)) (unit) }
            td { (trimmed(assumed.low)) " to " (trimmed(assumed.high)) (unit) }
            @for end in doubts.iter().flat_map(|doubt| &doubt.ends) { td { (window(end.as_ref())) } }
            td.words { (assumed.source) }
        }
    }
}

fn with_space(unit: &str) -> String {
    if unit == "degrees" { "°".to_owned() } else { format!("\u{a0}{unit}") }
}

fn window(window: Option<&ChainWindow>) -> String {
    window.map_or("no path".to_owned(), |window| {
        format!("{} to {}", plain(window.shortest_exact, 1), plain(window.longest_exact, 1))
    })
}

/// The table for the bench: one for each set-up, whose rows can be stepped through with the drawing.
#[must_use]
pub(crate) fn bench(report: &ChainSection) -> Markup {
    html! { @for chain in report.chain.solved() { (bench_table(chain)) } }
}

fn bench_table(chain: &ChainReport) -> Markup {
    let head = html! {
        tr {
            th scope="col" { "Gear" } th scope="col" { "Cage angle" } th scope="col" { "Links left before too tight" }
            th scope="col" { "Links left before slack" } th scope="col" { "Chain angle" } th.words scope="col" { "State" }
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
                td.words {
                    (state_name(station.fit.state))
                    @if station.crossed { ", cross-chained" }
                    @if station.beyond_maker > 0 { ", beyond maker’s capacity" }
                    @if station.avoid { ", never use" }
                }
            }
        }
    };
    let drivetrain = &chain.setup.drivetrain;
    let title = format!(
        "{} on the bench: {} with {}-{}, {}",
        chain.side,
        drivetrain.chainset,
        drivetrain.cassette.smallest(),
        drivetrain.cassette.largest(),
        links(chain.advice.fit.links.count())
    );
    let remark = "Cage angle: forward of straight down. Links left: that could come off before the cage reaches its forward limit, or be added before it reaches its stop pin.";
    table(&title, remark, &head, &body)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::bench::Bench;
    use crate::bench::field::Field;
    use crate::chain::view::cage_verdict;
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
            @for side in Side::BOTH { (cage_verdict::said(&report, side).marked(side)) " " }
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
