//! What chain, tyre and position are told in when other units are chosen.

use crate::common::said;
use explorer::bench::field::Field;

const INCHES: (Field, &str) = (Field::LengthUnit, "in");
const PSI: (Field, &str) = (Field::PressureUnit, "psi");
const POUNDS: (Field, &str) = (Field::MassUnit, "lb");
const FEET: (Field, &str) = (Field::DistanceUnit, "ft");
const COMMA: (Field, &str) = (Field::DecimalMark, "comma");

#[track_caller]
fn says(fragment: &str, edits: &[(Field, &str)], expected: &str) {
    let said = said(fragment, edits);
    assert!(said.contains(expected), "{said}");
}

/// Millimetres, each with what stands before it.
fn millimetres(said: &str) -> Vec<String> {
    let words: Vec<&str> = said.split_whitespace().collect();
    let is_mm = |at: &usize| words[*at].trim_matches(|it: char| !it.is_alphanumeric()) == "mm";
    (1..words.len()).filter(is_mm).map(|at| words[at - 1..=at].join(" ")).collect()
}

const POSITION: [&str; 7] = [
    "decide-position",
    "position-answer",
    "position-tables",
    "position-working",
    "shows-position",
    "says-bar-up",
    "says-headset",
];

#[test]
fn a_position_is_told_in_inches() {
    let none_fits = (Field::Reach, "300");
    let toes = (Field::FrontCentre, "575");
    let other_bars = [
        (Field::RoadBarReach, "85"),
        (Field::CrossBarReach, "70"),
        (Field::RoadBarDepth, "130"),
        (Field::CrossBarDepth, "125"),
    ];
    let usual = [INCHES, (Field::CrossCrank, "170")];
    for edits in [
        usual.to_vec(),
        [&usual[..], &[none_fits, toes]].concat(),
        [&usual[..], &[(Field::Knee, "knee"), (Field::Setback, "40")], &other_bars].concat(),
    ] {
        for fragment in POSITION {
            let told = said(fragment, &edits);
            assert!(!told.is_empty(), "{fragment}");
            // Cranks, the label on a stem, and what is among the chain's measures stay in millimetres.
            let stays = |it: &String| {
                it.starts_with('(')
                    || ["170 mm", "172.5 mm", "65 mm", "mm170 mm", "mm172.5 mm"].contains(&it.as_str())
            };
            let left: Vec<String> = millimetres(&told).into_iter().filter(|it| !stays(it)).collect();
            assert!(left.is_empty(), "{fragment}: {left:?} in {told}");
        }
    }
}

#[test]
fn inches_are_those_of_the_millimetres() {
    // 728, 56, 72, 15 and 10 mm ÷ 25.4.
    let level = [
        INCHES,
        (Field::BarUpBy, "0"),
        (Field::BarCloserBy, "0"),
        (Field::CrossStack, "15"),
        (Field::CrossSeatAngle, "73.5"),
    ];
    says(
        "position-answer",
        &level,
        "The saddle goes to 28.66 in along the seat tube, its tip 2.20 in behind the bottom bracket, and the bar 2.83 in below the saddle.",
    );
    says("position-answer", &[INCHES], "0.59 in higher and 0.39 in closer than on the road bike");
    says("position-answer", &[INCHES, COMMA], "0,59 in higher and 0,39 in closer");
    says("position-tables", &[INCHES], "Saddle tip behind the bottom bracket, level2.20 in2.20 in");
    says("says-bar-up", &[INCHES], "0.39 to 0.79 by common practice");
    says(
        "position-answer",
        &[INCHES, (Field::Reach, "300")],
        "even the longest stem sold is 1.97 in too short",
    );
    let typed = [INCHES, (Field::SaddleHeight, "28.5 in")];
    says("position-working", &typed, "28.5 + 6.791 − 6.791 + 0.827 − 0.591 − 0 = ");
    let cautions = "saddle tip at least 1.97 in behind the bottom bracket, saddle 9.45 to 11.81 in long";
    says("position-tables", &[INCHES], cautions);
}

#[test]
fn a_stem_is_told_with_what_stands_on_it() {
    let told = said("decide-position", &[INCHES]);
    let metric = said("decide-position", &[]);
    assert!(metric.contains("stem of 110 mm at"), "{metric}");
    assert!(told.contains("stem of 4.33 in (110 mm) at"), "{told}");
}

#[test]
fn the_unit_chosen_comes_first_with_pressures() {
    let both = [PSI, POUNDS];
    says("tyre-answer", &[], "Start with 1.50 bar (22 psi) in front");
    says("tyre-answer", &both, "Start with 22 psi (1.50 bar) in front");
    says("tyre-answer", &[COMMA], "Start with 1,50 bar (22 psi) in front");
    says("tyre-answer", &both, "For a rider of 136.7 lb with 4.409 lb of kit on a bike of 19.62 lb");
    says("tyre-tables", &both, "Front, psi (bar)Rear, psi (bar)");
    says("tyre-tables", &[], "Front, bar (psi)Rear, bar (psi)");
    says("tyre-tables", &both, "A rider of 187 lb or more");
    says("decide-tyre-section", &both, "psi (1.50 / ");
    says("tyre-working", &both, "28.0 × (160.7 ÷ 174.2) × (33 ÷ ");
    let road = [PSI, (Field::Tyre, "25-622"), (Field::Rim, "19")];
    says(
        "tyre-answer",
        &road,
        "Front raised from 32 psi or 2.18 bar, rear raised from 35 psi or 2.41 bar: the least that ISO 5775-1 has for a tyre of 25 mm or less is 44 psi or 3.0 bar.",
    );
    says("tyre-answer", &[PSI, (Field::TyreMark, "30 psi")], "(1.50 bar)");
}

#[test]
fn developments_on_another_tyre_follow_the_ways() {
    let [metric, imperial] = [&[][..], &[FEET]].map(|edits| said("tyre-tables", edits));
    // 50/11 of 2.161 m is 9.82 m, 32.2 ft.
    assert!(metric.contains("50×119.825 m"), "{metric}");
    assert!(imperial.contains("50×1132.23"), "{imperial}");
}

#[test]
fn a_chain_is_measured_in_millimetres_everywhere() {
    let imperial = [INCHES, POUNDS, FEET, PSI];
    for fragment in
        ["cage-answer", "chain-lengths", "chain-remedies", "cage-tables", "cage-working", "says-chainstay"]
    {
        let metric = said(fragment, &[]);
        assert!(!metric.is_empty(), "{fragment}");
        assert_eq!(said(fragment, &imperial), metric, "{fragment}");
    }
    let answers = said("cage-working", &[COMMA]);
    assert!(answers.contains("12,7 mm") && !answers.contains("12.7"), "{answers}");
}
