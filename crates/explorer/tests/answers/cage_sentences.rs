//! What is said of cage and chain, on the page, beside the lap and on the sheet.

use explorer::bench::bench::Bench;
use explorer::bench::field::Field;
use explorer::page::report::Report;
use explorer::side::Side;

fn said(edits: &[(Field, &str)]) -> String {
    crate::common::said("cage-answer", edits)
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
        "B fits by the figures, with nothing to spare: a chain comes in whole pairs of links. Keep the derailleur, with a chain of 108 links, 2 fewer than A’s; check 32×11 for slack.",
    );
    has(&answer, "A capacity of 33 teeth is a cage of about 54 mm between the pulley centres");
    has(&crate::common::said("lap-answer", &[]), "The lap is worked out");
}

/// A gear that is to be looked at is plain fine nowhere, and drawn unless another was chosen.
#[test]
fn a_gear_to_check_is_to_be_checked_everywhere() {
    has(&crate::common::said("chain-bench", &[]), "fine, check for slack");
    has(&crate::common::decided("cage", "#r=3"), "check 32×11 for slack");
    let report = |edits: &[(Field, &str)]| {
        let mut bench = Bench::default();
        edits.iter().for_each(|(field, text)| bench.write(*field, text));
        Report::of(&explorer::page::scenario::Scenario::read(&bench, &Default::default()).scenario)
    };
    for edits in [&[][..], &[(Field::Capacity, "36")], &[(Field::CassetteA, "11-13-15-17-19-21-24-28")]] {
        let report = report(edits);
        for chain in report.chain.solved() {
            let cage = &report.rings.setup(chain.side).cage;
            let tried = |it: &&explorer::chain::report::Station| it.to_try;
            assert_eq!(chain.stations.iter().filter(tried).count(), cage.to_try.count());
            assert_eq!(chain.shown, chain.worst);
            assert!(cage.to_try.is_empty() || chain.station().to_try, "{:?}", chain.station());
        }
    }
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
    for place in ["cage-answer", "sheet-page"] {
        let words = crate::common::said(place, &[(Field::ChainLinks, "104")]);
        has(
            &words,
            "needs a longer chain: the 104 links fitted are too short for 50×21, 50×24, 50×27 and 50×30: do not ride or force it, something breaks",
        );
        has(&words, "Fit a chain of 110 links, 6 more than now");
    }
}

#[test]
fn a_derailleur_that_is_not_known_to_fit_is_not_to_be_kept_with_another_chain() {
    let answer = said(&[&NOTHING_GIVEN[..], &[(Field::ChainLinks, "116")]].concat());
    has(
        &answer,
        "out. Whether the derailleur can then stay is not known. Look up the derailleur’s total capacity, 35 teeth are needed",
    );
    assert!(!answer.contains("keep the derailleur"), "{answer}");
    has(
        &said(&[(Field::Capacity, "43"), (Field::ChainLinks, "116")]),
        " links out, and keep the derailleur.",
    );
}

#[test]
fn gears_that_are_switched_off_are_told_and_left_out() {
    let edits = [(Field::GearsOffA, "50x30, 34-11"), (Field::Capacity, "39")];
    has(
        &said(&edits),
        "Gears to avoid, counted as not there: A 50×30 and 34×11 (50×30 and 34×11 by your choice).",
    );
    has(&crate::common::said("rings-answer", &edits), "of 22, and 2 never to be used");
    let lowest = crate::common::said("rings-summary", &[(Field::GearsOffA, "34×30")]);
    has(&lowest, "34×27");
    let all: Vec<String> = [50, 34]
        .iter()
        .flat_map(|ring| "11-12-13-14-15-17-19-21-24-27-30".split('-').map(move |it| format!("{ring}×{it}")))
        .collect();
    has(
        &said(&[(Field::GearsOffA, &all.join(" "))]),
        "every gear of A, so that its numbers go on as if they ran",
    );
    let ladder = crate::common::said("rings-answer", &[(Field::GearsOffA, &all.join(" "))]);
    has(&ladder, "of 22, all of them never to be used: these numbers go on as if they ran");
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
            let report = Report::of(&Scenario::read(&bench, &Scenario::default()).scenario);
            let cage = &report.rings.setup(Side::A).cage;
            assert!(!cage.does_not_fit() && cage.avoid.is_empty(), "{edits:?} {drivetrain:?} {cage:?}");
        }
    }
}
