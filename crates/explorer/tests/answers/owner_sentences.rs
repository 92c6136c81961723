//! Whose values the page goes by: what it says of those that are not the rider's, and that it never loses track of them.

use crate::common::{in_full, said, shown, words};
use explorer::bench::bench::Bench;
use explorer::bench::field::Field;
use explorer::bench::owner::Owner;
use explorer::page::desk::Desk;
use explorer::page::pictures::{Picture, as_svg};
use explorer::page::questions::rests_on;
use explorer::page::report::Report;
use explorer::page::scenario::Scenario;
use explorer::page::sections;
use proptest::prelude::*;

const ANSWERS: [(&str, &str); 6] = [
    ("rings", "rings-answer"),
    ("cage", "cage-answer"),
    ("ride", "ride-answer"),
    ("lap", "lap-answer"),
    ("tyre-section", "tyre-answer"),
    ("position", "position-answer"),
];

/// A bench that is all the rider's but for some fields.
fn all_but(left: &[Field]) -> Bench {
    let mut bench = Bench::default();
    Field::ALL.iter().filter(|field| !left.contains(field)).for_each(|&field| bench.claim(field));
    bench
}

/// All fragments after a good bench was changed into one that may be in error.
fn fragments(good: &Bench, edits: &[(Field, &str)]) -> Vec<(String, String)> {
    let before = Scenario::read(good, &Scenario::default()).scenario;
    let mut bench = good.clone();
    edits.iter().for_each(|(field, text)| bench.write(*field, text));
    let read = Scenario::read(&bench, &before);
    in_full(sections::fragments(&Report::of(&read.scenario), &[], &read.complaints, &bench, "r=3"))
}

fn fragment(all: &[(String, String)], id: &str) -> String {
    all.iter().find(|(named, _)| named == id).map(|(_, html)| words(html)).unwrap_or_default()
}

fn demos() -> impl Iterator<Item = Field> {
    Field::ALL.iter().copied().filter(|field| field.start_owner() == Owner::Demo)
}

#[test]
fn no_answer_is_green_on_a_value_of_the_demo() {
    for field in demos() {
        let bench = all_but(&[field]);
        let counts = bench.owner(field) == Owner::Demo;
        for (section, id) in ANSWERS.iter().filter(|(section, _)| counts && rests_on(section, field)) {
            let answer = shown(id, bench.clone(), &[]);
            assert!(!answer.contains("class=\"good\""), "{field:?} {section:?} {answer}");
            assert!(words(&answer).contains("Not yours yet: "), "{field:?} {section:?} {answer}");
            assert!(answer.contains(&format!("#{}\"", field.spec().key)), "{field:?} {section:?} {answer}");
        }
    }
}

#[test]
fn what_is_all_the_riders_bears_no_mark() {
    for (_, id) in ANSWERS {
        let answer = shown(id, all_but(&[]), &[]);
        assert!(!answer.contains("Not yours yet") && !answer.contains("class=\"demo\""), "{answer}");
    }
    assert!(shown("position-answer", all_but(&[]), &[]).contains("class=\"good\""));
    assert_eq!(said("scenario", &[]), "");
}

#[test]
fn the_bench_lists_what_is_not_yours_with_a_way_there() {
    let list = shown("scenario", Bench::default(), &[(Field::Rim, "23"), (Field::Power, "")]);
    let said = words(&list);
    assert!(said.contains("Not yours yet: set-up A (2), set-up B (2), wheel (1), derailleurs (4), rider and climb (6), course (1), tyre and rim (2), position (14)."), "{said}");
    assert!(list.contains("href=\"#body-mass\""), "{list}");
}

#[test]
fn a_line_names_a_few_fields_and_counts_the_rest() {
    let line = |left: &[Field]| words(&shown("position-answer", all_but(left), &[]));
    assert!(
        line(&[Field::CrossCrank, Field::Stack])
            .contains("Not yours yet: cross bike’s crank, frame stack. Hatched")
    );
    let many: Vec<Field> = demos().filter(|&field| rests_on("position", field)).collect();
    assert!(
        line(&many).contains("pedal axle to sole") || line(&many).contains(" and 8 more"),
        "{}",
        line(&many)
    );
}

#[test]
fn only_the_figures_that_rest_on_the_demo_are_hatched() {
    let answer = shown("position-answer", all_but(&[Field::Stack]), &[]);
    assert!(answer.contains("<span class=\"demo\"><b class=\"unsure\">Yes"), "{answer}");
    assert!(answer.contains("goes to <b>736"), "{answer}");
}

#[test]
fn the_untouched_demo_makes_an_example_of_the_sheet() {
    let sheet = words(&shown("sheet-page", Bench::default(), &[]));
    assert!(sheet.contains("EXAMPLE: the demo’s bike and rider, not yours"), "{sheet}");
    assert!(sheet.contains("Saddle height736 mm") && !sheet.contains("not known"), "{sheet}");
}

#[test]
fn the_sheet_leaves_open_what_is_not_the_riders() {
    let edits = [(Field::RingsB, "40"), (Field::CassetteB, "11-13-15-17-19-21-24-28-32-36-42")];
    let sheet = words(&shown("sheet-page", Bench::default(), &edits));
    assert!(!sheet.contains("EXAMPLE"), "{sheet}");
    for row in [
        "B Rings40",
        "A Ringsnot known ________",
        "Saddle heightnot known ________",
        "Roll-outnot known",
        "Rearnot known",
    ] {
        assert!(sheet.contains(row), "{row}: {sheet}");
    }
    for demo in ["736", "578", "220 W", "72.9", "22 psi", "50/34", "9.0 %", "2161"] {
        assert!(!sheet.contains(demo), "{demo}: {sheet}");
    }
    assert!(sheet.contains("bar 15 mm higher, 10 mm closer (usual)"), "{sheet}");
}

#[test]
fn what_rests_on_one_set_up_alone_does_not_wait_for_the_other() {
    let sheet = words(&shown("sheet-page", all_but(&[Field::RingsB]), &[]));
    assert!(sheet.contains("A Lowest gear34×30") && sheet.contains("B Lowest gearnot known"), "{sheet}");
}

#[test]
fn a_refused_measure_is_not_known_unless_it_was_the_riders() {
    let refused = |good: &Bench| fragments(good, &[(Field::SaddleHeight, "72.8")]);
    let demo = refused(&Bench::default());
    let answer = fragment(&demo, "position-answer");
    assert!(answer.contains("Which stem is not known"), "{answer}");
    assert!(answer.contains("The saddle’s height is not known, its tip 56 mm behind the bottom bracket, and the bar 57 mm below the saddle."), "{answer}");
    assert!(answer.contains("Not known: saddle height."), "{answer}");
    let tables = fragment(&demo, "position-tables");
    assert!(!tables.contains("736") && tables.contains("not known") && !tables.contains("Stems"), "{tables}");
    let beside = fragment(&demo, "says-saddle-height");
    assert_eq!(beside, "Type 450 to 950 mm.728 mm? The page goes on without it.");
    assert!(demo.iter().any(|(_, html)| html.contains("data-write=\"saddle-height=728\"")));
    let own = refused(&all_but(&[]));
    assert!(fragment(&own, "says-saddle-height").contains("The page goes on with 728 mm, your last."));
    assert!(fragment(&own, "position-answer").contains("736 mm along the seat tube"));
}

#[test]
fn a_refused_figure_of_the_derailleur_is_not_the_demos() {
    let refused = |good: &Bench| fragments(good, &[(Field::Capacity, "abc")]);
    let demo = refused(&Bench::default());
    assert!(fragment(&demo, "says-capacity").ends_with("The page goes on without it."));
    let answer = fragment(&demo, "cage-answer");
    assert!(
        answer.contains("A is not known to fit") && answer.contains("Not known: total capacity."),
        "{answer}"
    );
    let own = refused(&all_but(&[]));
    assert!(fragment(&own, "says-capacity").ends_with("The page goes on with 33 teeth, your last."));
}

#[test]
fn no_picture_is_green_on_the_demos_values() {
    let green = |bench: &Bench, picture: Picture| {
        let report = Report::of(&Scenario::read(bench, &Scenario::default()).scenario);
        let svg = as_svg(picture, &report, (760.0, picture.height(&report, 760.0))).unwrap();
        svg.contains("#1E6B4F")
    };
    let verdicts = Picture::by_name("verdicts").unwrap();
    for picture in Picture::all() {
        assert!(!green(&Bench::default(), picture), "{picture:?}");
    }
    assert!(green(&all_but(&[]), verdicts));
    assert!(!green(&all_but(&[Field::Power]), verdicts));
}

#[test]
fn what_goes_on_with_the_demos_value_says_so() {
    let page = fragments(&Bench::default(), &[(Field::BodyMass, "200")]);
    let beside = fragment(&page, "says-body-mass");
    assert!(
        beside.contains("90.7 kg?") && beside.contains("The page goes on with 62 kg, the demo’s."),
        "{beside}"
    );
    assert!(fragment(&page, "ride-answer").contains("this goes on with 62 kg, the demo’s."));
}

#[test]
fn an_empty_measure_of_the_position_is_not_known() {
    let answer = said("position-answer", &[(Field::TipToBar, "")]);
    assert!(
        answer.contains("Which stem is not known") && answer.contains("736 mm along the seat tube"),
        "{answer}"
    );
    let sheet = said("sheet-page", &[(Field::TipToBar, "")]);
    assert!(sheet.contains("Stemnot known") && sheet.contains("Saddle height736 mm"), "{sheet}");
}

#[test]
fn measures_that_ask_for_a_rare_stem_are_questioned() {
    let answer = said("position-answer", &[(Field::SaddleHeight, "782")]);
    assert!(answer.contains("Is every measure right?") && answer.contains("saddle height 782?"), "{answer}");
    assert!(!said("position-answer", &[]).contains("Is every measure right?"));
}

#[test]
fn an_invented_course_is_never_called_the_riders() {
    let lap = words(&shown("lap-answer", all_but(&[]), &[(Field::Course, "sand-pit")]));
    assert!(lap.contains("The course is an invented one."), "{lap}");
}

#[test]
fn a_button_claims_a_group() {
    let mut desk = Desk::default();
    desk.open("");
    desk.edit(&[("saddle-height".into(), "728".into())]);
    assert_eq!(desk.link(), "r=3&sh=728");
    desk.act("mine:head-angle");
    assert_eq!(desk.link(), "r=3&sh=728&st=578&re=383&ha=72&hs=12");
    desk.act("undo");
    assert_eq!(desk.link(), "r=3&sh=728");
    desk.act("reset");
    assert_eq!((desk.link(), desk.report().owners.is_example), ("r=3".to_owned(), true));
    assert!(desk.act("mine:no-such").is_none());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn undo_brings_owners_back(steps in prop::collection::vec((0..6_usize, any::<prop::sample::Index>()), 1..8)) {
        let mut desk = Desk::default();
        desk.open("");
        let mut links = Vec::new();
        for (what, which) in steps {
            let before = desk.link();
            let field = which.get(Field::ALL);
            let key = field.spec().key;
            match what {
                0 => drop(desk.act("swap")),
                1 => drop(desk.act("copy")),
                2 => drop(desk.act(&format!("mine:{key}"))),
                3 => drop(desk.act("reset")),
                _ if field.is_look() => {}
                _ => drop(desk.edit(&[(key.into(), field.spec().start.into())])),
            }
            desk.pause();
            if desk.link() != before {
                links.push(before);
            }
        }
        for link in links.into_iter().rev() {
            let goes_back = |_| {
                desk.act("undo");
                desk.link() == link
            };
            prop_assert!((0..8).any(goes_back), "{}", link);
        }
    }
}
