//! “Will the cage take it?” by geometry: the answer, chain length, what would help, what was assumed.

use super::gears::column;
use super::sheet::{Block, Part};
use super::sheet_checks::Concern;
use super::words::{name, table};
use crate::number::{counted, listed, plain, trimmed, with_unit};
use crate::report::{ChainReport, Doubt, Report, Side, state_name};
use gear_math::{
    CageVerdict, ChainDefaults, ChainFit, ChainMeasure, ChainVerdict, ChainWindow, Change, FrontConcern,
    Gear, GearState, PathError,
};
use maud::{Markup, html};

/// Gears or measures named one by one in a sentence; of more, only the first few are.
const NAMED: usize = 5;

/// What geometry says to one set-up, behind what its maker says.
#[must_use]
pub(super) fn verdict(report: &Report, side: Side) -> Markup {
    match &report.chains[side as usize] {
        Ok(chain) => html! { (opening(report, side)) " " (by_geometry(chain)) },
        Err(error) => html! { "By geometry nothing can be said: " (error) "." },
    }
}

fn opening(report: &Report, side: Side) -> &'static str {
    match report.setup(side).cage.verdict {
        CageVerdict::Fits | CageVerdict::FitsAsFarAsKnown | CageVerdict::Unknown => "By geometry",
        CageVerdict::FitsIfGearsAvoided | CageVerdict::DoesNotFit => "By geometry alone, which comes second,",
    }
}

fn by_geometry(chain: &ChainReport) -> Markup {
    let suited = &chain.advice.suited;
    let links = html! { b { (links(suited.links.count())) } };
    let slack = || few(&in_state(suited, GearState::Slack));
    match chain.advice.verdict {
        ChainVerdict::Keep => {
            html! { b.good { "keep the cage" } " with " (links) ": every gear runs" (tight(suited)) "." }
        }
        ChainVerdict::KeepAvoidingGears => html! {
            b.care { "keep the cage" } " with " (links) ", but never use " (slack()) ", where the chain hangs" (tight(suited)) "."
        },
        ChainVerdict::KeepWithTightChain => html! {
            b.care { "keep the cage" } " with " (links) " and no more: every gear runs" (tight(suited)) "."
        },
        ChainVerdict::LongerCageNeeded => html! {
            b.stop { "a longer cage is needed" } ": with the " (links) " of the largest gear the chain hangs in " (slack())
            (longer_cage(chain)) "."
        },
    }
}

pub(super) fn links(count: u16) -> String {
    counted(usize::from(count), "link", "links")
}

pub(super) fn in_state(fit: &ChainFit, state: GearState) -> Vec<Gear> {
    fit.in_state(state).collect()
}

/// “, tight but usual in 50×30”, when there are such gears.
pub(super) fn tight(fit: &ChainFit) -> String {
    match in_state(fit, GearState::TightButUsual).as_slice() {
        [] => String::new(),
        gears => format!(", tight but usual in {}", few(gears)),
    }
}

/// The first few items, and how many more there are.
pub(super) fn few<T: ToString>(items: &[T]) -> String {
    let mut names: Vec<String> = items.iter().take(NAMED).map(ToString::to_string).collect();
    if items.len() > NAMED {
        names.pop();
        names.push(format!("{} more", items.len() + 1 - NAMED));
    }
    listed(&names)
}

fn longer_cage(chain: &ChainReport) -> String {
    let enough = chain.advice.remedies.iter().find_map(|remedy| match &remedy.change {
        Change::LongerCage(centres) => Some(*centres),
        _ => None,
    });
    enough.map_or_else(String::new, |centres| {
        format!("; {} or more between the pulley centres would do", with_unit(centres.mm(), 0, "mm"))
    })
}

/// The chains whose links were counted, as far as they break something or do not.
fn counted_chains(report: &Report, breaks: bool) -> impl Iterator<Item = &ChainReport> {
    let is_short = |chain: &ChainReport| !in_state(&chain.advice.fit, GearState::TooTight).is_empty();
    report.solved_chains().filter(move |chain| chain.present.is_some() && is_short(chain) == breaks)
}

/// What must be said before anything else: a chain on the bike that is too short.
#[must_use]
pub(super) fn dangers(report: &Report) -> Markup {
    html! {
        @for chain in counted_chains(report, true) {
            p.verdict {
                "On " (name(chain.side)) " the " b.stop { (links(chain.advice.fit.links.count())) " counted are " (present(chain)) } "."
            }
        }
    }
}

/// What the chain now on the bike does, where its links were counted and break nothing.
#[must_use]
pub(super) fn harmless(report: &Report) -> Markup {
    html! {
        @for chain in counted_chains(report, false) {
            "On " (name(chain.side)) " the " (links(chain.advice.fit.links.count())) " counted " (present(chain)) ". "
        }
    }
}

/// What the chain that was counted does.
fn present(chain: &ChainReport) -> String {
    let fit = &chain.advice.fit;
    let [short, slack] = [GearState::TooTight, GearState::Slack].map(|state| in_state(fit, state));
    let breaks = "do not ride or force it, something breaks";
    match (short.is_empty(), slack.is_empty()) {
        (true, true) => format!("suit every gear{}", tight(fit)),
        (true, false) => format!("hang in {}", few(&slack)),
        (false, true) => format!("too short for {}: {breaks}", few(&short)),
        (false, false) => format!("too short for {} and yet hang in {}: {breaks}", few(&short), few(&slack)),
    }
}

/// What the workshop has to know.
#[must_use]
pub(super) fn block(report: &Report) -> Block {
    let mut block = Block::new("Chain and cage, by geometry");
    for (chain, side) in report.chains.iter().zip(Side::BOTH) {
        match chain {
            Err(error) => block.row_of(side, "Chain", error.to_string()),
            Ok(chain) => {
                block.row_of(side, "Chain to fit", links(chain.advice.suited.links.count()));
                let makers = &report.setups[side as usize].cage.verdict;
                block.row_of(side, "Cage", for_the_sheet(chain) + before_geometry(*makers));
                if let Some(counted) = chain.present {
                    block.row_of(side, "Links fitted", format!("{}: {}", counted.count(), present(chain)));
                }
            }
        }
    }
    if report.solved_chains().all(|chain| chain.present.is_none()) {
        block.parts.push(Part::blank("Links fitted"));
    }
    let deciding = deciding(report);
    if !deciding.is_empty() {
        let measures = listed(&deciding);
        block.check(Concern::Drivetrain, format!("Measure before you cut the chain: {measures}. Left empty, taken as usual, and enough to change a number of links."));
    }
    block
}

/// What has to be said beside the verdict of geometry, where the maker's is another.
const fn before_geometry(makers: CageVerdict) -> &'static str {
    match makers {
        CageVerdict::DoesNotFit => ", were it not for the maker’s figures above, which come first",
        CageVerdict::FitsIfGearsAvoided => "; the maker’s figures above come first",
        _ => "",
    }
}

fn for_the_sheet(chain: &ChainReport) -> String {
    let suited = &chain.advice.suited;
    let slack = || few(&in_state(suited, GearState::Slack));
    let verdict = match chain.advice.verdict {
        ChainVerdict::Keep => "keep it".to_owned(),
        ChainVerdict::KeepAvoidingGears => format!("keep it, but never use {}", slack()),
        ChainVerdict::KeepWithTightChain => "keep it, with these links and no more".to_owned(),
        ChainVerdict::LongerCageNeeded => {
            return format!("a longer one is needed: the chain hangs in {}{}", slack(), longer_cage(chain));
        }
    };
    verdict + &tight(suited)
}

/// Measures that were left empty and decide a number of links.
fn deciding(report: &Report) -> Vec<&'static str> {
    let decides = |measure| {
        let mut doubts = report.solved_chains().flat_map(|chain| &chain.doubts);
        doubts.any(|doubt| doubt.decides && doubt.assumption.measure == measure)
    };
    let measures = ChainDefaults::ASSUMPTIONS.iter().map(|assumption| assumption.measure);
    measures.filter(|&measure| decides(measure)).map(name_of).collect()
}

/// What was left empty, and whether that leaves the answers open.
#[must_use]
pub(super) fn certainty(report: &Report) -> Markup {
    let deciding = deciding(report);
    let doubts = || report.solved_chains().flat_map(|chain| &chain.doubts);
    html! {
        @if !deciding.is_empty() {
            "Left empty, taken as usual, and enough to change a number of links: " (listed(&deciding)) ". Measure before you cut a chain; the table below says what each may do."
        } @else if doubts().next().is_some() {
            "Within the usual range of what you left empty, the same number of links is right."
        }
    }
}

const fn name_of(measure: ChainMeasure) -> &'static str {
    match measure {
        ChainMeasure::PulleyTeeth => "teeth of the pulleys",
        measure => measure.limits().name,
    }
}

/// Chain length, capacity, reach and slope of A and B, and what was assumed.
#[must_use]
pub(super) fn lengths(report: &Report) -> Markup {
    let [a, b] = &report.setups;
    let head = html! { tr { td {} (column(a)) (column(b)) } };
    let row = |what: &str, value: fn(&ChainReport) -> String| {
        let cell = |chain: &Result<ChainReport, PathError>| chain.as_ref().map_or("–".to_owned(), value);
        html! { tr { th scope="row" { (what) } @for chain in &report.chains { td { (cell(chain)) } } } }
    };
    let body = html! {
        (row("Links to fit", |chain| chain.advice.suited.links.count().to_string()))
        (row("Fewest that let the largest gear stay behind the fore stop", |chain| {
            let window = &chain.advice.fit.window;
            format!("{}, exactly {}", window.shortest.count(), plain(window.shortest_exact, 2))
        }))
        (row("Most that the smallest gear takes up", |chain| {
            let window = &chain.advice.fit.window;
            format!("{}, exactly {}", window.longest.count(), plain(window.longest_exact, 2))
        }))
        (row("By the trade’s rule, largest with largest and two more", |chain| chain.advice.fit.big_big_plus_two.count().to_string()))
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
fn front(report: &Report) -> Markup {
    html! {
        @for chain in report.solved_chains().filter(|chain| !chain.front.is_empty()) {
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
fn assumptions(report: &Report) -> Markup {
    let Some(first) = report.solved_chains().next().filter(|chain| !chain.doubts.is_empty()) else {
        return html! {};
    };
    let head = html! {
        tr {
            th scope="col" { "Left empty" } th scope="col" { "Taken" } th scope="col" { "Usual" }
            @for chain in report.solved_chains() {
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
fn assumption(report: &Report, place: usize) -> Markup {
    let doubts: Vec<&Doubt> = report.solved_chains().filter_map(|chain| chain.doubts.get(place)).collect();
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
pub(super) fn bench(report: &Report) -> Markup {
    html! { @for chain in report.solved_chains() { (bench_table(chain)) } }
}

fn bench_table(chain: &ChainReport) -> Markup {
    let head = html! {
        tr {
            th scope="col" { "Gear" } th scope="col" { "Cage angle" } th scope="col" { "Spare, tight end" }
            th scope="col" { "Spare, slack end" } th scope="col" { "Chain angle" } th.words scope="col" { "State" }
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
                    @if station.crossed { ", crossed" }
                    @if station.beyond_maker > 0 { ", over the maker’s" }
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
    let remark = "Cage angle: forward of straight down. Spare: links before the cage reaches its fore stop, or its rear stop.";
    table(&title, remark, &head, &body)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::Bench;
    use crate::field::Field;
    use crate::scenario::Scenario;

    /// The answer to a bench with these fields typed, as text without its marks.
    fn answer(edits: &[(Field, &str)]) -> String {
        let mut typed = Bench::default();
        for (field, text) in edits {
            typed.write(*field, text);
        }
        let report = Report::of(&Scenario::read(&typed, &Scenario::default()).scenario);
        let html = html! {
            @for side in Side::BOTH { (name(side)) " " (verdict(&report, side)) " " }
            (dangers(&report)) (harmless(&report)) (certainty(&report)) (lengths(&report)) (super::super::chain_remedies::remedies(&report)) (bench(&report))
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

    #[test]
    fn each_verdict_has_its_sentence() {
        let keep = answer(&[]);
        assert!(keep.contains(
            "By geometry alone, which comes second, keep the cage with 110 links: every gear runs."
        ));
        assert!(keep.contains("B By geometry keep the cage with 108 links: every gear runs."), "{keep}");
        let short = (Field::PulleyCentres, "55");
        let avoid = answer(&[short]);
        assert!(
            avoid.contains("with 110 links, but never use 34×11 and 34×12, where the chain hangs."),
            "{avoid}"
        );
        let one_ring =
            [(Field::RingsA, "40"), (Field::CassetteA, "10-12-14-18-22-28-36-42"), (Field::Chainstay, "419")];
        let tight = answer(&[short, one_ring[0], one_ring[1], one_ring[2]]);
        assert!(
            tight.contains("with 110 links and no more: every gear runs, tight but usual in 40×42."),
            "{tight}"
        );
        let single =
            answer(&[short, (Field::RingsA, "40"), (Field::CassetteA, "10-12-14-18-22-28-36-44-52")]);
        assert!(single.contains("a longer cage is needed"), "{single}");
        assert!(single.contains("between the pulley centres would do"), "{single}");
    }

    #[test]
    fn a_chain_that_was_counted_is_judged() {
        assert!(answer(&[(Field::ChainLinks, "110")]).contains("On A the 110 links counted suit every gear"));
        let short = answer(&[(Field::ChainLinks, "104")]);
        assert!(
            short.contains("On A the 104 links counted are too short for 50×21, 50×24, 50×27 and 50×30"),
            "{short}"
        );
        let long = answer(&[(Field::ChainLinks, "120")]);
        assert!(long.contains("On A the 120 links counted hang in"), "{long}");
    }

    #[test]
    fn what_was_left_empty_is_owned_up_to() {
        assert!(answer(&[]).contains("enough to change a number of links: chainstay"));
        let typed = [
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
        assert!(!answer(&typed).to_lowercase().contains("left empty"), "{}", answer(&typed));
    }

    #[test]
    fn a_longer_cage_leaves_its_chain_in_doubt() {
        let edits = |chainstay| {
            [
                (Field::RingsA, "46/33"),
                (Field::CassetteA, "11-13-15-17-19-21-23-25-27-30-34"),
                (Field::PulleyCentres, "50"),
                (Field::Chainstay, chainstay),
            ]
        };
        let sure = "the same number of links is right";
        let (empty, shorter) = (answer(&edits("")), answer(&edits("420")));
        assert!(empty.contains("with the 112 links"), "{empty}");
        assert!(shorter.contains("with the 110 links"), "{shorter}");
        assert!(
            empty.contains("enough to change a number of links: chainstay") && !empty.contains(sure),
            "{empty}"
        );
    }

    #[test]
    fn a_chain_that_breaks_something_is_said_first_and_on_the_sheet() {
        let mut typed = Bench::default();
        typed.write(Field::ChainLinks, "104");
        let report = Report::of(&Scenario::read(&typed, &Scenario::default()).scenario);
        let first = super::super::cage::answer(&report).into_string();
        assert!(
            first.starts_with("<p class=\"verdict\">On <b class=\"A\">A</b> the <b class=\"stop\">104"),
            "{first}"
        );
        let sheet = format!("{:?}", block(&report));
        assert!(sheet.contains("104: too short for"), "{sheet}");
        assert!(!sheet.contains("Blank"), "{sheet}");
    }

    #[test]
    fn one_chain_is_advised_throughout() {
        let long = answer(&[(Field::ChainLinks, "116")]);
        assert!(long.contains("A chain of 108 links8 links come off"), "{long}");
    }

    #[test]
    fn wheels_that_run_into_each_other_are_named() {
        let text = answer(&[
            (Field::Chainstay, "350"),
            (Field::PulleyCentres, "150"),
            (Field::GuideAngle, "45"),
            (Field::RingsA, "60"),
            (Field::CassetteA, "11-60"),
        ]);
        assert!(text.contains("chainring and tension pulley run into each other"), "{text}");
    }

    #[test]
    fn the_smallest_and_the_largest_bikes_have_an_answer() {
        let one = [(Field::RingsA, "42"), (Field::CassetteA, "18"), (Field::RingsB, "60/40/20")];
        let text =
            answer(&[one[0], one[1], one[2], (Field::CassetteB, "9-10-11-12-14-16-19-22-26-31-37-44-52-60")]);
        assert!(text.contains("42×18"), "{text}");
        assert!(text.contains("the chain hangs in 60×9, 60×10, 60×11, 60×12 and 27 more."), "{text}");
        assert!(!text.contains("NaN") && !text.contains("inf"), "{text}");
    }

    #[test]
    fn a_sprocket_beyond_the_makers_asks_for_a_longer_hanger() {
        let text = answer(&[(Field::LargestSprocket, "28")]);
        assert!(text.contains("A hanger "), "{text}");
        assert!(text.contains("By geometry alone, which comes second, keep the cage"), "{text}");
    }
}
