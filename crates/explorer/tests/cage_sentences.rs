//! What is said of cage and chain, on the page, beside the lap and on the sheet.

#![allow(clippy::unwrap_used, reason = "what a test looks for must be there")]

#[allow(dead_code, reason = "each test program uses some of it")]
mod common;

use explorer::bench::bench::Bench;
use explorer::bench::field::Field;
use explorer::page::desk::Desk;
use explorer::page::report::Report;
use explorer::page::sections::fragments;
use explorer::side::Side;
use gear_math::chain::{CageOutcome, ChainDefaults, ChainMeasure};
use gear_math::gears::GearSet;
use gear_math::{Cassette, Chainset, Drivetrain};

fn said(edits: &[(Field, &str)]) -> String {
    common::said("cage-answer", edits)
}

#[track_caller]
fn has(answer: &str, words: &str) {
    assert!(answer.contains(words), "“{words}” is not in “{answer}”");
}

const NOTHING_GIVEN: [(Field, &str); 4] = [
    (Field::Capacity, ""),
    (Field::LargestSprocket, ""),
    (Field::SmallestSprocket, ""),
    (Field::RingDifference, ""),
];

#[test]
fn the_demo_has_one_verdict_each() {
    let answer = said(&[]);
    has(
        &answer,
        "A fits if you never use 34×11 and 34×12: 2 teeth short of capacity, so the chain hangs there.",
    );
    has(&answer, "Keep the derailleur, with a chain of 110 links; check 34×13 for slack.");
    has(
        &answer,
        "B fits on paper, with nothing to spare: a chain comes in whole pairs of links, so check 32×11 for slack.",
    );
    has(&answer, "A capacity of 33 teeth is a cage of about 54 mm between the pulley centres");
    has(&common::said("lap-answer", &[]), "The lap is worked out");
}

#[test]
fn a_short_cage_is_never_to_be_kept_where_it_is_too_short() {
    let answer = said(&[(Field::Capacity, "29")]);
    has(&answer, "A does not fit: 6 teeth short of capacity");
    has(
        &answer,
        "Buy a rear derailleur for a 30 and at least 35 teeth (by common practice a medium cage), and a chain of 110 links.",
    );
    assert!(!answer.contains("Keep the derailleur"), "{answer}");
}

#[test]
fn what_a_mechanic_has_to_buy_is_one_sentence() {
    let answer = said(&[
        (Field::RingsA, "48/34"),
        (Field::CassetteA, "12-13-14-15-16-17-19-21-23-25"),
        (Field::RingsB, "48/34"),
        (Field::CassetteB, "11-13-15-17-19-21-23-25-27-30-34"),
        (Field::Capacity, "29"),
        (Field::LargestSprocket, "28"),
    ]);
    has(
        &answer,
        "B does not fit: a 34 sprocket is larger than the 28 it may take; 8 teeth short of capacity",
    );
    has(
        &answer,
        "Buy a rear derailleur for a 34 and at least 37 teeth (by common practice a medium cage), and a chain of 112 links, 4 more than A’s.",
    );
}

#[test]
fn with_nothing_given_short_medium_and_long_are_told() {
    let answer = said(&NOTHING_GIVEN);
    has(
        &answer,
        "A is not known to fit: works with a medium or long cage; a short one hangs slack in 34×11, 34×12",
    );
    has(
        &answer,
        "Look up the derailleur’s total capacity, 35 teeth are needed, or measure from one pulley’s bolt to the other’s.",
    );
    has(&answer, "Links and drawing are for a medium cage, 75 mm between the pulley centres.");
}

#[test]
fn a_figure_not_looked_up_is_no_verdict() {
    let answer = said(&NOTHING_GIVEN[1..]);
    has(
        &answer,
        "B is not known to fit: the capacity is enough, with nothing to spare, but whether the derailleur clears the 32 is open. Look up its largest sprocket.",
    );
    has(
        &answer,
        "A is not known to fit: whether the derailleur clears the 30 is open, and in 34×11 and 34×12 the chain hangs.",
    );
}

#[test]
fn measures_that_could_turn_the_verdict_are_named() {
    let answer = said(&[(Field::Capacity, ""), (Field::PulleyCentres, "55")]);
    has(&answer, "within their usual range");
    has(&answer, "can turn that. Measure the ");
    let answer = said(&[(Field::Capacity, "39"), (Field::PulleyCentres, "50")]);
    has(
        &answer,
        "A is not known to fit: a capacity of 39 teeth and 50 mm between the pulley centres do not go together: such a cage takes about 32.",
    );
}

#[test]
fn a_chain_that_breaks_something_is_in_the_verdict_and_on_the_sheet() {
    let mut bench = Bench::default();
    bench.write(Field::ChainLinks, "104");
    let report = desk(&bench).report();
    for place in ["cage-answer", "sheet-page"] {
        let words = common::words(&fragment(&report, place));
        has(
            &words,
            "needs a longer chain: the 104 links fitted are too short for 50×21, 50×24, 50×27 and 50×30: do not ride or force it, something breaks",
        );
        has(&words, "Fit a chain of 110 links, 6 more than now");
    }
}

#[test]
fn gears_that_are_switched_off_are_told_and_left_out() {
    let edits = [(Field::GearsOffA, "50x30, 34-11"), (Field::Capacity, "39")];
    has(
        &said(&edits),
        "Gears to avoid, used nowhere on this page: A 50×30 and 34×11 (50×30 and 34×11 by your choice).",
    );
    has(&common::said("rings-answer", &edits), "of 22, 2 of them never to be used");
    let lowest = common::said("rings-summary", &[(Field::GearsOffA, "34×30")]);
    has(&lowest, "34×27");
    let all: Vec<String> = [50, 34]
        .iter()
        .flat_map(|ring| "11-12-13-14-15-17-19-21-24-27-30".split('-').map(move |it| format!("{ring}×{it}")))
        .collect();
    has(
        &said(&[(Field::GearsOffA, &all.join(" "))]),
        "every gear of A, so that its numbers go on as if they ran",
    );
}

/// Numbers that look random and are the same every time: a linear congruential generator.
struct Dice(u64);

impl Dice {
    fn throw(&mut self, sides: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 33) % sides as u64) as usize
    }

    fn pick<'t>(&mut self, texts: &[&'t str]) -> &'t str {
        texts[self.throw(texts.len())]
    }
}

/// Fields for a measure of cage and frame, with the names of [`ChainMeasure`].
const MEASURED: [(ChainMeasure, &[Field]); 7] = [
    (ChainMeasure::Chainstay, &[Field::Chainstay]),
    (ChainMeasure::BottomBracketDrop, &[Field::BottomBracketDrop]),
    (ChainMeasure::PulleyCentres, &[Field::PulleyCentres]),
    (ChainMeasure::PulleyTeeth, &[Field::GuideTeeth, Field::TensionTeeth]),
    (ChainMeasure::PulleyGap, &[Field::PulleyGap]),
    (ChainMeasure::GuideAngle, &[Field::GuideAngle]),
    (ChainMeasure::RearStop, &[Field::RearStop]),
];

fn random_bench(dice: &mut Dice) -> Bench {
    let mut bench = Bench::default();
    let chainsets: Vec<Chainset> = Chainset::common().collect();
    let cassettes: Vec<Cassette> = Cassette::common().collect();
    for (rings, cassette, off) in [
        (Field::RingsA, Field::CassetteA, Field::GearsOffA),
        (Field::RingsB, Field::CassetteB, Field::GearsOffB),
    ] {
        let drivetrain = Drivetrain {
            chainset: chainsets[dice.throw(chainsets.len())],
            cassette: cassettes[dice.throw(cassettes.len())],
        };
        bench.write(rings, &drivetrain.chainset.to_string());
        bench.write(cassette, &drivetrain.cassette.to_string());
        if dice.throw(4) == 0 {
            let gears: Vec<String> = drivetrain.gears().map(|gear| gear.to_string()).collect();
            bench.write(
                off,
                &format!("{}, {}", gears[dice.throw(gears.len())], gears[dice.throw(gears.len())]),
            );
        }
    }
    let fields: [(Field, &[&str]); 9] = [
        (Field::Capacity, &["", "", "20", "29", "33", "35", "37", "39", "43", "47"]),
        (Field::LargestSprocket, &["", "28", "34", "36", "42", "52"]),
        (Field::SmallestSprocket, &["", "10", "11"]),
        (Field::RingDifference, &["", "14", "16", "22"]),
        (Field::PulleyCentres, &["", "", "50", "55", "74", "86", "100"]),
        (Field::ChainLinks, &["", "", "", "104", "108", "112", "116"]),
        (Field::Chainstay, &["", "405", "425", "435"]),
        (Field::RearStop, &["", "-80", "-70"]),
        (Field::StopBy, &["usual", "usual", "capacity"]),
    ];
    for (field, texts) in fields {
        bench.write(field, dice.pick(texts));
    }
    if dice.throw(3) == 0 {
        for (_, fields) in MEASURED {
            for &field in fields.iter().filter(|field| **field != Field::PulleyCentres) {
                let usual = match field {
                    Field::Chainstay => "425",
                    Field::BottomBracketDrop => "65",
                    Field::PulleyGap => "12.5",
                    Field::GuideAngle => "10",
                    Field::RearStop => "-75",
                    _ => "11",
                };
                bench.write(field, usual);
            }
        }
    }
    bench
}

/// A desk with this bench and its lap in coarse steps.
fn desk(bench: &Bench) -> Desk {
    let mut desk = Desk::default();
    let edits: Vec<(String, String)> =
        Field::ALL.iter().map(|&field| (field.spec().key.to_owned(), bench.text(field).to_owned())).collect();
    desk.edit(&edits);
    desk.lap(false);
    desk
}

fn fragment(report: &Report, wanted: &str) -> String {
    let fragments = fragments(report, &[], &[], false, "r=2");
    fragments.into_iter().find(|(id, _)| id == wanted).map(|(_, html)| html).unwrap_or_default()
}

/// No gear to avoid has time in the lap, and the lap says so where a set-up does not fit.
fn check_lap(report: &Report, lap_words: &str) {
    let laps = report.lap.laps.as_ref().unwrap();
    for side in Side::BOTH {
        let setup = report.rings.setup(side);
        let (avoid, bike) = (setup.cage.avoid, &setup.drivetrain);
        for used in &laps.laps[side as usize].gears {
            assert!(avoid.holds_all(bike) || !avoid.holds(bike, used.gear), "{side} {} is ridden", used.gear);
        }
        let (fails, open) =
            (format!("{side} does not fit as it is"), format!("every gear of {side} is not known"));
        assert_eq!(lap_words.contains(&fails), setup.cage.does_not_fit(), "{lap_words}");
        assert_eq!(lap_words.contains(&open), setup.cage.is_not_known(), "{lap_words}");
    }
}

/// Page and sheet say the same of each set-up, and never two opposing things.
fn check_words(report: &Report, answer: &str, sheet: &str) {
    let paragraphs: Vec<&str> = answer.split("<p class=\"verdict\">").skip(1).take(2).collect();
    assert_eq!(paragraphs.len(), 2, "{answer}");
    for (side, paragraph) in Side::BOTH.into_iter().zip(paragraphs) {
        let paragraph = &common::words(&paragraph[..paragraph.find("</p>").unwrap()]);
        let outcome = &report.rings.setup(side).cage.outcome;
        let fails = matches!(outcome, CageOutcome::DoesNotFit(_));
        assert_eq!(paragraph.contains("does not fit"), fails, "{paragraph}");
        assert!(!fails || !paragraph.to_lowercase().contains("keep the derailleur"), "{paragraph}");
        assert!(
            !matches!(outcome, CageOutcome::NotKnown(_)) || paragraph.contains("is not known to fit"),
            "{paragraph}"
        );
        let verdict = paragraph.trim_start_matches(&format!("{side} ")).trim_start_matches("is ");
        let first = verdict.split(". ").next().unwrap();
        assert!(sheet.contains(first), "“{first}” is not in “{sheet}”");
        let named: Vec<String> = report.rings.setup(side).avoided();
        assert!(named.iter().all(|gear| sheet.contains(gear)), "{named:?} {sheet}");
    }
}

/// A green verdict stays one without gears to avoid wherever what was left empty lies within its usual range.
fn check_green(bench: &Bench, report: &Report) -> usize {
    let green: Vec<Side> = Side::BOTH
        .into_iter()
        .filter(|&side| report.rings.setup(side).cage.outcome == CageOutcome::Fits)
        .collect();
    if green.is_empty() {
        return 0;
    }
    for (measure, fields) in MEASURED {
        let known = fields.iter().all(|&field| !bench.text(field).is_empty());
        let by_capacity = measure == ChainMeasure::PulleyCentres && !bench.text(Field::Capacity).is_empty();
        let Some(assumed) = ChainDefaults::ASSUMPTIONS.iter().find(|it| it.measure == measure) else {
            continue;
        };
        if known || by_capacity {
            continue;
        }
        for end in [assumed.low, assumed.high] {
            let mut moved = bench.clone();
            fields.iter().for_each(|&field| moved.write(field, &end.to_string()));
            let then = desk_report(&moved);
            for &side in &green {
                let cage = &then.rings.setup(side).cage;
                assert!(
                    !cage.does_not_fit() && cage.avoid_by_cage() == GearSet::NONE,
                    "{measure:?} {end}: {cage:?}"
                );
            }
        }
    }
    green.len()
}

fn desk_report(bench: &Bench) -> Report {
    use explorer::page::scenario::Scenario;
    Report::of(&Scenario::read(bench, &Scenario::default()).scenario)
}

#[test]
fn cage_lap_and_sheet_never_contradict_each_other() {
    let mut dice = Dice(7);
    let mut seen = [0; 6];
    let mut green = 0;
    for _ in 0..300 {
        let bench = random_bench(&mut dice);
        let desk = desk(&bench);
        let report = desk.report();
        let answer = fragment(&report, "cage-answer");
        let is_green = answer.contains("class=\"good\"");
        let fits = report.rings.setups.iter().filter(|setup| setup.cage.outcome == CageOutcome::Fits).count();
        assert_eq!(is_green, fits > 0, "{answer}");
        check_words(&report, &answer, &common::words(&fragment(&report, "sheet-page")));
        check_lap(&report, &common::words(&fragment(&report, "lap-answer")));
        green += check_green(&bench, &report);
        for setup in &report.rings.setups {
            seen[match setup.cage.outcome {
                CageOutcome::Fits => 0,
                CageOutcome::FitsOnPaper => 1,
                CageOutcome::FitsAvoidingGears => 2,
                CageOutcome::OtherChain { .. } => 3,
                CageOutcome::NotKnown(_) => 4,
                CageOutcome::DoesNotFit(_) => 5,
            }] += 1;
        }
    }
    assert!(seen.iter().all(|&count| count >= 4) && green > 100, "{seen:?}");
}

/// What a search tries is never refused once it stands on the bench, and has no gears to avoid there.
#[test]
fn what_a_search_tries_fits_as_far_as_is_known() {
    use explorer::page::scenario::Scenario;
    let wide = [(Field::Capacity, "45"), (Field::LargestSprocket, "52"), (Field::SmallestSprocket, "10")];
    let measured = [(Field::Capacity, ""), (Field::PulleyCentres, "55")];
    let counted = [(Field::Capacity, "39"), (Field::LargestSprocket, "36"), (Field::ChainLinks, "108")];
    for edits in [&wide[..], &NOTHING_GIVEN, &measured, &counted, &[]] {
        let mut bench = Bench::default();
        edits.iter().for_each(|(field, text)| bench.write(*field, text));
        let all = Scenario::read(&bench, &Scenario::default()).scenario.basis().search_space();
        assert!(all.len() > 100, "{} set-ups", all.len());
        for drivetrain in all.iter().step_by(all.len() / 60) {
            bench.write(Field::RingsA, &drivetrain.chainset.to_string());
            bench.write(Field::CassetteA, &drivetrain.cassette.to_string());
            let report = desk_report(&bench);
            let cage = &report.rings.setup(Side::A).cage;
            assert!(!cage.does_not_fit() && cage.avoid.is_empty(), "{edits:?} {drivetrain:?} {cage:?}");
        }
    }
}
