//! What the section on riding or running says of unusual riders, bikes and climbs.

mod common;

use explorer::bench::Bench;
use explorer::field::Field;
use explorer::scenario::Scenario;

fn said(edits: &[(Field, &str)]) -> String {
    common::said("ride-answer", edits)
}

fn of_climb(edits: &[(Field, &str)]) -> String {
    common::said("ride-climb", edits)
}

#[track_caller]
fn has(answer: &str, words: &str) {
    assert!(answer.contains(words), "“{words}” is not in “{answer}”");
}

const LOW: [(Field, &str); 4] = [
    (Field::RingsA, "24"),
    (Field::CassetteA, "11-13-15-18-21-25-30-36-42-50"),
    (Field::RingsB, "24"),
    (Field::CassetteB, "11-13-15-18-21-25-30-36-42-50"),
];

fn low_and(edits: &[(Field, &'static str)]) -> String {
    said(&[&LOW, edits].concat())
}

#[test]
fn the_gear_runs_out_before_it_is_too_close() {
    let answer = said(&[(Field::Ground, "firm-grass")]);
    has(
        &answer,
        "On firm grass with A you are on foot below 8.1 km/h, which is from 10.0 % up: the lowest gear, 34×30, turns slower there than your 55 rpm.",
    );
    has(
        &answer,
        "From there to about 13 % a lower gear would still beat your feet; beyond, it is too close to call",
    );
    has(
        &answer,
        "B instead of A keeps you riding on slopes up to 1.8 points of gradient steeper, at speeds down to 1.0 km/h lower.",
    );
}

#[test]
fn a_lower_gear_is_not_promised_where_it_is_too_close_already() {
    let answer = said(&[(Field::Ground, "mud")]);
    has(&answer, "A lower gear would change little. From about 4 % it is too close to call");
}

#[test]
fn one_sentence_does_for_two_that_are_alike() {
    let answer = low_and(&[]);
    has(
        &answer,
        "On wet, soft grass with A and B alike your feet are as quick from about 14.7 % up, below 5.4 km/h, for the same effort and by the best guess.",
    );
    has(&answer, "your feet are as quick from about");
    has(&answer, "Between A and B that makes no difference.");
}

#[test]
fn nothing_may_stop_a_rider() {
    let free = [
        (Field::Ground, "tarmac"),
        (Field::GripCounts, "off"),
        (Field::Balance, ""),
        (Field::CadenceLow, "25"),
    ];
    has(&low_and(&free), "On tarmac with A and B alike you can ride all that was measured, up to 45 %.");
}

#[test]
fn the_level_may_be_too_much() {
    let answer = said(&[(Field::Ground, "loose-sand")]);
    has(
        &answer,
        "On loose, dry sand with A and B alike you are on foot on the level already: the lowest gear, 34×30 or 32×32,",
    );
    has(&answer, "too close to call from the level on, until your feet are surely quicker from about 6 % on");
}

#[test]
fn a_short_ramp_is_carried_and_jerks_are_warned_of() {
    has(
        &said(&[(Field::ClimbLength, "12")]),
        "with A carry your speed: coming in at 20.0 km/h you are over it in 2.7 s, before the lowest gear is too tall; with B ride, riding takes 5.7 s, or 2.",
    );
    has(&said(&[]), "Pedal smoothly: under jerky strokes the rear wheel slips from 8.8 % on");
    let steep =
        [(Field::Ground, "tarmac"), (Field::Slope, "30"), (Field::Power, "400"), (Field::CadenceLow, "30")];
    has(&low_and(&steep), "Keep your weight forward: under jerky strokes the front wheel lifts from");
}

#[test]
fn a_peak_power_that_does_not_give_the_power_is_refused_beside_it_but_never_an_estimate() {
    let read = |edits: &[(Field, &str)]| {
        let mut bench = Bench::default();
        for (field, text) in edits {
            bench.write(*field, text);
        }
        Scenario::read(&bench, &Scenario::default())
    };
    let typed = read(&[(Field::Power, "550"), (Field::PeakPower, "1000")]);
    let [complaint] = typed.complaints.as_slice() else { panic!("{:?}", typed.complaints) };
    assert_eq!((complaint.field, complaint.kept.as_str()), (Field::PeakPower, "an estimate of 2200\u{a0}W"));
    has(&complaint.message.replace('\u{a0}', " "), "give 500 W for that long, less than your 550 W");
    assert_eq!(read(&[(Field::Power, "2000")]).complaints, []);
    let heavy = [(Field::Power, ""), (Field::Level, "national"), (Field::BodyMass, "115")];
    assert_eq!(read(&heavy).complaints, []);
}

#[test]
fn a_climb_is_not_forced_where_feet_are_quicker() {
    let sand = [
        (Field::RingsA, "34"),
        (Field::CassetteA, "50"),
        (Field::Ground, "loose-sand"),
        (Field::Slope, "8"),
        (Field::ClimbLength, "120"),
        (Field::Balance, "1"),
    ];
    has(
        &said(&sand),
        "with both get off, because the lowest gear is too tall. On foot it takes 73 s (60 to 92)",
    );
    has(&of_climb(&sand), "enough for this climb, but your feet are quicker");
}

#[test]
fn no_more_is_asked_than_legs_and_reserve_give() {
    let tall = [
        (Field::RingsA, "50"),
        (Field::CassetteA, "11"),
        (Field::Slope, "20"),
        (Field::ClimbLength, "10"),
        (Field::Ground, "tarmac"),
        (Field::Balance, ""),
    ];
    has(&said(&tall), "with A get off, because the lowest gear is too tall and your strength does not last");
    has(&of_climb(&tall), "takes 1551 W, more than you give at that cadence for so long");
    has(
        &of_climb(&[&tall[..], &[(Field::Legs, "off")]].concat()),
        "takes 1551 W, more than you give at that cadence for so long",
    );
    let grinding = [
        (Field::RingsA, "42"),
        (Field::CassetteA, "16"),
        (Field::CadenceLow, "25"),
        (Field::Slope, "25"),
        (Field::ClimbLength, "20"),
        (Field::Ground, "tarmac"),
        (Field::ReserveShare, "1"),
    ];
    has(&of_climb(&grinding), "takes 444 W, more than you give at that cadence for so long");
}

#[test]
fn an_effort_of_seconds_leaves_no_reserve() {
    let minutes = [(Field::Slope, "10")];
    has(&said(&minutes), "with A force it at 252 W");
    has(
        &said(&[&minutes[..], &[(Field::Legs, "15s")]].concat()),
        "with both get off, because the lowest gear is too tall",
    );
}

#[test]
fn a_ramp_is_carried_however_slow_the_steady_speed() {
    let ramp = [(Field::Ground, "firm-grass"), (Field::Slope, "30"), (Field::ClimbLength, "5")];
    has(&said(&ramp), "with both carry your speed: coming in at 20.0 km/h you are over it in 1.2 s, before");
    has(&said(&ramp), "A ramp this short is a matter of the speed you bring to it, not of gears.");
    has(&of_climb(&ramp), "you get 5 m along and 1.6 m up in 1.4 s before you are down to 8.1 km/h");
    has(
        &said(&[(Field::Slope, "5"), (Field::ClimbLength, "8")]),
        "A ramp this short is a matter of the speed",
    );
}

#[test]
fn a_slow_climb_is_forced_at_the_speed_of_balance() {
    let slow = [
        (Field::CadenceLow, "25"),
        (Field::Slope, "25"),
        (Field::ClimbLength, "20"),
        (Field::Ground, "tarmac"),
    ];
    has(
        &said(&slow),
        "with B force it at 224 W, which you have in reserve for this length, in 17 s, or get off, because it is too slow to balance",
    );
}

#[test]
fn who_profits_from_a_lower_gear_is_named() {
    let b_is_low = said(&[(Field::RingsB, "24"), (Field::CassetteB, "11-13-15-18-21-25-30-36-42-50")]);
    has(&b_is_low, "With A a lower gear would still beat your feet up to about 10 %; beyond,");
    let b_is_tall = said(&[&LOW[..2], &[(Field::Ground, "mud"), (Field::CadenceLow, "60")]].concat());
    has(&b_is_tall, "a lower gear would");
    assert!(!b_is_tall.contains("From there"), "{b_is_tall}");
}

#[test]
fn a_gear_that_spins_out_is_told_where_it_costs_the_lead() {
    let tiny = [
        (Field::RingsA, "24"),
        (Field::CassetteA, "50"),
        (Field::RingsB, "24"),
        (Field::CassetteB, "51"),
        (Field::Slope, "2"),
    ];
    has(
        &said(&tiny),
        "The 24×50 spins out at 6.8 km/h, which your feet may better on slopes up to about 10 %.",
    );
    has(&said(&tiny), "riding takes 32 s, spun out in 24×50");
    assert!(!said(&[(Field::Power, "2000")]).contains("spins out"));
}

const FREE: [(Field, &str); 5] = [
    (Field::Ground, "tarmac"),
    (Field::GripCounts, "off"),
    (Field::Balance, ""),
    (Field::Legs, "off"),
    (Field::CadenceLow, "30"),
];

#[test]
fn it_may_be_too_close_to_call_where_nothing_ends_riding() {
    let tiny =
        [(Field::RingsA, "22"), (Field::CassetteA, "50"), (Field::RingsB, "22"), (Field::CassetteB, "50")];
    let answer = said(&[&FREE[..], &tiny].concat());
    has(&answer, "you can ride all that was measured, up to 45 %.");
    has(&answer, "The 22×50 spins out at 6.3 km/h");
    has(&answer, "From about 18 % it is too close to call");
    has(&said(&[&FREE[..], &tiny[2..]].concat()), "B instead of A keeps you riding all the way to 45 %.");
}

#[test]
fn a_difference_that_is_none_is_not_put_into_numbers() {
    let sand = [(Field::RingsA, "34"), (Field::CassetteA, "50"), (Field::Ground, "loose-sand")];
    has(&said(&sand), "Between A and B that end moves by less than 0.1 points of gradient.");
}

#[test]
fn the_widest_doubt_may_be_about_b_alone() {
    let still = [
        (Field::RingsA, "42"),
        (Field::CassetteA, "16"),
        (Field::CadenceLow, "25"),
        (Field::Ground, "tarmac"),
    ];
    has(
        &said(&still),
        "The widest doubt: slowest speed in balance from 1.0 to 1.8 m/s moves B’s end from 28.6 % to",
    );
    has(
        &said(&[(Field::Power, "460"), (Field::Ground, "firm-grass")]),
        "from 0.21 to 0.25 moves A’s end from 12.",
    );
}

#[test]
fn surely_on_foot_from_the_level_on_needs_no_zone() {
    let wading =
        [(Field::FootGround, "1"), (Field::Rolling, "0.3"), (Field::GripCounts, "off"), (Field::Balance, "")];
    has(&low_and(&wading), "Your feet are surely quicker from the level on.");
}

#[test]
fn equal_bikes_get_one_piece_of_advice() {
    let twins = [
        (Field::RingsA, "38"),
        (Field::CassetteA, "18"),
        (Field::RingsB, "38"),
        (Field::CassetteB, "18"),
        (Field::Power, "300"),
        (Field::Ground, "tarmac"),
    ];
    has(
        &said(&twins),
        "with both force it at 322 W, which you have in reserve for this length, in 14 s, or get off",
    );
    has(&of_climb(&twins), "A and B: turning 38×18 at 55 rpm");
}

#[test]
fn times_are_told_as_finely_as_they_matter() {
    let answer = said(&[(Field::ClimbLength, "5000")]);
    has(&answer, "riding takes 39:46 min");
    has(&answer, "On foot it takes 46:21 min (40:22 to 53:12)");
    has(&said(&[(Field::ClimbLength, "12")]), "you are over it in 2.7 s, before");
}

#[test]
fn a_speed_leads_to_its_slope() {
    let at = |speed: &'static str| common::said("ride-at-speed", &[(Field::SlopeSpeed, speed)]);
    has(&at("9"), "At 9.0 km/h: full power holds it on slopes up to 6.");
    has(&at("40"), "full power does not even hold it on the level.");
    has(&at("1"), "full power is faster than that all the way to 45 %.");
}

#[test]
fn grip_balance_and_strength_are_named() {
    has(&low_and(&[(Field::Friction, "0.2")]), "the rear wheel slips there, whatever the gear");
    has(&low_and(&[(Field::Balance, "2.5")]), "slower than that the bike does not stay upright");
    let strong = [
        (Field::Power, "490"),
        (Field::PeakPower, "1000"),
        (Field::CadenceLow, "30"),
        (Field::Ground, "tarmac"),
    ];
    has(&said(&strong), "even the lowest gear, 34×30, asks for more strength than lasts that long");
}

#[test]
fn a_climb_is_ridden_run_or_left_to_taste() {
    let climb = |slope: &'static str| low_and(&[(Field::Slope, slope)]);
    has(&climb("4"), "with both ride, riding takes");
    has(&climb("4"), ", and getting off never pays, however long the climb");
    has(&climb("13"), "with both ride or run as you like, it is too close to call");
    has(&climb("16"), "and by the best guess getting off pays on more than");
    has(
        &said(&[]),
        "with A force it at 236 W, which you have in reserve for this length, in 27 s, or get off, because the lowest gear is too tall; with B ride, riding takes 29 s",
    );
}
