//! What the section on riding or running says of unusual riders, bikes and climbs.

mod common;

use explorer::bench::bench::Bench;
use explorer::bench::field::Field;
use explorer::page::scenario::Scenario;
use gear_math::rider::{EffortBudget, RepaidShare, StrengthShare};

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
        "On firm grass with A no gear is low enough below 8.1 km/h, with B below 7.1 km/h. Running itself only wins below 6.2 km/h on this bank (likely 5.6 to 7.2).",
    );
    has(
        &answer,
        "At a steady 220 W, with A riding ends from about 10 % up (likely 8 to 12): 34×30 at 55 rpm is too tall.",
    );
    has(
        &answer,
        "A lower gear would be quicker than running up to about 16 %. Between running this climb and a gear low enough it is too close to call from about 16 % up",
    );
    has(&answer, "B instead of A keeps you riding on slopes up to 1.8 points steeper.");
}

#[test]
fn a_lower_gear_is_not_promised_where_it_is_too_close_already() {
    let answer = said(&[(Field::Ground, "mud")]);
    has(&answer, "With A a lower gear would be quicker than running up to about 7 %. Between");
    assert!(!said(&[(Field::Ground, "loose-sand")]).contains("lower gear would be quicker"));
}

#[test]
fn one_sentence_does_for_two_that_are_alike() {
    let answer = low_and(&[]);
    has(
        &answer,
        "On wet, soft grass with A and B alike no gear is low enough below 3.4 km/h. Running itself wins below 5.9 km/h on this bank",
    );
    has(&answer, "with A and B nothing ends riding before running wins.");
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
    has(&low_and(&free), "with A and B nothing ends riding up to 45 %.");
}

#[test]
fn the_level_may_be_too_much() {
    let answer = said(&[(Field::Ground, "loose-sand")]);
    has(&answer, "with A and B riding ends on the level already: 34×30 or 32×32 at 55 rpm is too tall.");
    has(&answer, "too close to call from the level on: let grip and balance decide");
}

#[test]
fn a_short_ramp_is_carried_and_jerks_are_warned_of() {
    has(
        &said(&[(Field::ClimbLength, "12")]),
        "with A carry your speed: 2.7 s from 20.0 km/h, or run: 9.7 s; with B ride: 5.7 s (2.7 s with the speed you bring), or run: 9.7 s",
    );
    has(&said(&[]), "Pedal smoothly: under a choppy stroke the rear wheel slips from about 9 % on");
    let steep =
        [(Field::Ground, "tarmac"), (Field::Slope, "30"), (Field::Power, "400"), (Field::CadenceLow, "30")];
    has(&low_and(&steep), "Keep your weight forward: under a choppy stroke the front wheel lifts from");
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
    assert_eq!(
        (complaint.field, complaint.kept.as_deref()),
        (Field::PeakPower, Some("an estimate of 2200\u{a0}W"))
    );
    has(&complaint.message.replace('\u{a0}', " "), "give 500 W for that long, less than your 550 W");
    assert_eq!(read(&[(Field::Power, "2000")]).complaints, []);
    let low = read(&[(Field::Power, "300"), (Field::PeakPower, "250"), (Field::Legs, "off")]);
    has(&low.complaints[0].message.replace('\u{a0}', " "), "ype a peak power above the sustainable 300 W");
    let heavy = [(Field::Power, ""), (Field::Level, "national"), (Field::BodyMass, "115")];
    assert_eq!(read(&heavy).complaints, []);
}

#[test]
fn the_account_of_effort_is_the_riders() {
    let ride = |edits: &[(Field, &str)]| {
        let mut bench = Bench::default();
        edits.iter().for_each(|(field, text)| bench.write(*field, text));
        Scenario::read(&bench, &Scenario::default()).scenario.ride
    };
    let usual = ride(&[]);
    assert_eq!(usual.account().effort.sustainable(), usual.rider.power);
    assert_eq!(
        (usual.account().repaid, usual.account().lasting),
        (RepaidShare::USUAL, StrengthShare::MINUTES)
    );
    assert!((usual.budget().j() - 3600.0).abs() < 1e-9);
    let own = ride(&[(Field::Repaid, "0.3"), (Field::Reserve, "12"), (Field::ReserveShare, "0.5")]);
    assert_eq!((own.account().repaid.value(), own.account().effort.reserve().kj()), (0.3, 12.0));
    assert!((own.budget().j() - 6000.0).abs() < 1e-9);
    let spent = ride(&[(Field::Legs, "15s")]);
    assert_eq!((spent.budget(), spent.account().lasting), (EffortBudget::NONE, StrengthShare::SECONDS_15));
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
        "with A run: 73 s (forcing it at 231 W takes 89 s); with B run: 73 s, because no gear is low enough, and forcing one asks too much of legs or reserve. Running takes 73 s (likely 60 to 92 s)",
    );
    has(&of_climb(&sand), "enough for this climb, but running is quicker");
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
    has(
        &said(&tall),
        "with A run: 10 s, because no gear is low enough and your strength does not last, and forcing one asks too much of legs or reserve",
    );
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
    has(&said(&minutes), "with A force it: 252 W for 27 s (legs and reserve last 111 s), or run: 37 s");
    has(
        &said(&[&minutes[..], &[(Field::Legs, "15s")]].concat()),
        "with both run: 37 s, because no gear is low enough. Running takes",
    );
}

#[test]
fn a_ramp_is_carried_however_slow_the_steady_speed() {
    let ramp = [(Field::Ground, "firm-grass"), (Field::Slope, "30"), (Field::ClimbLength, "5")];
    has(&said(&ramp), "with both carry your speed: 1.2 s from 20.0 km/h, or run: 8.1 s.");
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
    has(&said(&slow), "with B force it: 224 W for 17 s (legs and reserve last 111 s), or run: 20 s");
}

#[test]
fn who_profits_from_a_lower_gear_is_named() {
    let b_is_low = said(&[(Field::RingsB, "24"), (Field::CassetteB, "11-13-15-18-21-25-30-36-42-50")]);
    has(&b_is_low, "With A a lower gear would be quicker than running up to about 12 %.");
    let b_is_tall = said(&[&LOW[..2], &[(Field::Ground, "mud"), (Field::CadenceLow, "60")]].concat());
    has(&b_is_tall, "With B a lower gear would");
    has(&b_is_low, "B instead of A keeps you riding until running wins.");
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
        "The 24×50 spins out at 6.8 km/h, which running this climb may better on slopes up to about 8 %.",
    );
    has(
        &said(&tiny),
        "with A too close to call: running 29 s, riding 32 s, and by the best guess running pays on more than 31 m",
    );
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
    has(&answer, "with A and B nothing ends riding up to 45 %.");
    has(&answer, "The 22×50 spins out at 6.3 km/h");
    has(&answer, "it is too close to call from about 21 % up");
    has(&said(&[&FREE[..], &tiny[2..]].concat()), "B instead of A keeps you riding until running wins.");
}

#[test]
fn a_difference_that_is_none_is_not_put_into_numbers() {
    has(&said(&[(Field::Ground, "loose-sand")]), "Riding ends at the same slope with both.");
    let strong = said(&[(Field::Power, "460"), (Field::Ground, "firm-grass")]);
    assert!(!strong.contains("instead of") && !strong.contains("same slope"), "{strong}");
}

#[test]
fn the_widest_doubt_is_named() {
    let still = [
        (Field::RingsA, "42"),
        (Field::CassetteA, "16"),
        (Field::CadenceLow, "25"),
        (Field::Ground, "tarmac"),
    ];
    has(&said(&still), "What moves the end of riding most is slowest speed you can balance.");
    has(
        &said(&[(Field::Power, "460"), (Field::Ground, "firm-grass")]),
        "What moves the end of riding most is gross efficiency.",
    );
}

#[test]
fn running_from_the_level_on_needs_no_zone() {
    let wading =
        [(Field::FootGround, "1"), (Field::Rolling, "0.3"), (Field::GripCounts, "off"), (Field::Balance, "")];
    has(&low_and(&wading), "Running is quicker from the level on, whatever the gear.");
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
    has(&said(&twins), "with both force it: 322 W for 14 s (legs and reserve last 161 s), or run: 24 s.");
    has(&of_climb(&twins), "A and B: turning 38×18 at 55 rpm");
}

#[test]
fn times_are_told_as_finely_as_they_matter() {
    let answer = said(&[(Field::ClimbLength, "5000")]);
    has(&answer, "with B ride: 39:46 min");
    has(&answer, "Running takes 46:21 min (likely 40:22 to 53:12 min)");
    has(&answer, "a lower gear would save about 6:35 min");
    has(&said(&[(Field::ClimbLength, "12")]), "carry your speed: 2.7 s");
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
    has(&low_and(&[(Field::Friction, "0.2")]), "(likely 3 to 15): the rear wheel slips, whatever the gear");
    has(&low_and(&[(Field::Balance, "2.5")]), "slower than that the bike does not stay upright");
    let strong = [
        (Field::Power, "490"),
        (Field::PeakPower, "1000"),
        (Field::CadenceLow, "30"),
        (Field::Ground, "tarmac"),
    ];
    has(&said(&strong), "34×30 asks for more strength than lasts");
}

#[test]
fn a_climb_is_ridden_run_or_left_to_taste() {
    let climb = |slope: &'static str| low_and(&[(Field::Slope, slope)]);
    has(&climb("4"), "with both ride: 19 s, or run: 31 s, and running does not pay however long it is.");
    has(&climb("13"), "with both too close to call: riding 36 s, running 41 s.");
    has(&climb("16"), "and by the best guess running pays on more than 224 m");
}
