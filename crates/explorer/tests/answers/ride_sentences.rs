//! What the section on riding or running says of unusual riders, bikes and climbs.

use explorer::bench::bench::Bench;
use explorer::bench::field::Field;
use explorer::page::scenario::Scenario;
use gear_math::rider::{EffortBudget, RepaidShare, StrengthShare};

fn said(edits: &[(Field, &str)]) -> String {
    crate::common::said("ride-answer", edits)
}

fn of_climb(edits: &[(Field, &str)]) -> String {
    crate::common::said("ride-climb", edits)
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
        "On firm grass with A no gear is low enough below 8.1 km/h, with B below 7.1 km/h. Running itself wins below 9.2 km/h on this bank",
    );
    has(
        &answer,
        "On a slope so long that you hold it at 220 W, with A riding ends from about 10 % up (likely 8 to 12): 34×30 at 55 rpm is too tall.",
    );
    has(
        &answer,
        "A lower gear would be quicker than running up to about 13 %. Between running and a gear low enough it is too close to call from about 13 % up",
    );
    has(&answer, "B instead of A keeps you riding on slopes up to 1.8 points steeper.");
}

#[test]
fn a_lower_gear_is_not_promised_where_it_is_too_close_already() {
    let answer = said(&[(Field::Ground, "mud")]);
    assert!(!answer.contains("gear would be quicker than running"), "{answer}");
    has(&answer, "With A a lower gear would save about 1 s.");
    assert!(!said(&[(Field::Ground, "loose-sand")]).contains("lower gear would be quicker"));
}

#[test]
fn one_sentence_does_for_two_that_are_alike() {
    let answer = low_and(&[]);
    has(
        &answer,
        "On wet, soft grass with A and B alike no gear is low enough below 3.4 km/h. Running itself wins below 8.6 km/h on this bank",
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
        &said(&[(Field::ClimbLength, "9"), (Field::ReserveShare, "0.01")]),
        "with both carry your speed: 1.9 s from 20.0 km/h, or run: ",
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
        "with A run: 73 s (forcing it at 255 W takes 81 s); with B run: 73 s (riding takes 89 s).Running takes 73 s (likely 60 to 92 s)",
    );
    has(&of_climb(&sand), "Riding81 s89 s");
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
    let grinding = [
        (Field::RingsA, "42"),
        (Field::CassetteA, "16"),
        (Field::Slope, "25"),
        (Field::ClimbLength, "20"),
        (Field::Ground, "tarmac"),
        (Field::ReserveShare, "1"),
    ];
    for edits in [&tall[..], &[&tall[..], &[(Field::Legs, "off")]].concat(), &grinding] {
        let answer = said(edits);
        let (_, told) = answer.split_once("with A run: ").unwrap_or_else(|| panic!("{answer}"));
        has(told, " s, because no gear is low enough; with B ");
    }
}

#[test]
fn an_effort_of_seconds_leaves_no_reserve() {
    let minutes = [(Field::Slope, "10")];
    has(
        &said(&minutes),
        "with A force it: 309 W in 34×30 at 67 rpm for 22 s, 2.6 kJ of your reserve, or run: 26 s",
    );
    has(
        &said(&[&minutes[..], &[(Field::Legs, "15s")]].concat()),
        "Running takes 37 s (likely 33 to 42 s), dismount and remount included. Riding",
    );
}

#[test]
fn a_ramp_is_carried_however_slow_the_steady_speed() {
    let ramp = [(Field::Ground, "firm-grass"), (Field::Slope, "30"), (Field::ClimbLength, "5")];
    has(&said(&ramp), "with both carry your speed: 1.2 s from 20.0 km/h, or run: 7.2 s.");
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
        "with B force it: 256 W in 32×32 at 38 rpm for 15 s, 1.2 kJ of your reserve, or run: 15 s",
    );
    let steeper = [&slow[..], &[(Field::Balance, "2.5"), (Field::Slope, "40")]].concat();
    has(&said(&steeper), "s, because it is too slow to balance");
    has(&said(&[&slow[..], &[(Field::Friction, "0.3")]].concat()), "s, because the rear wheel slips");
}

#[test]
fn who_profits_from_a_lower_gear_is_named() {
    let b_is_low = said(&[(Field::RingsB, "24"), (Field::CassetteB, "11-13-15-18-21-25-30-36-42-50")]);
    has(&b_is_low, "With A a lower gear would be quicker than running up to about 9 %.");
    let b_is_tall = said(&[&LOW[..2], &[(Field::Ground, "mud"), (Field::CadenceLow, "60")]].concat());
    has(&b_is_tall, "A instead of B keeps you riding until running wins.");
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
        "The 24×50 spins out at 6.8 km/h, which running may better on slopes up to about 10 %.",
    );
    has(&said(&tiny), "with both too close to call: running 20 s, riding 25 s.Running takes");
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
    has(&answer, "it is too close to call from about 17 % up");
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
    has(
        &said(&twins),
        "with both force it: 368 W in 38×18 at 62 rpm for 13 s, 1.3 kJ of your reserve, or run: 18 s.",
    );
    has(&of_climb(&twins), "At368 W in 38×18 at 62 rpm368 W in 38×18 at 62 rpm");
}

#[test]
fn times_are_told_as_finely_as_they_matter() {
    let answer = said(&[(Field::ClimbLength, "5000")]);
    has(&answer, "with B too close to call: riding 40:17 min, running 46:21 min.");
    has(&answer, "Running takes 46:21 min (likely 40:22 to 53:12 min)");
    has(&answer, "With A a lower gear would save about 94 s");
    has(&said(&[(Field::ClimbLength, "8")]), "carry your speed: 1.7 s");
}

#[test]
fn a_speed_leads_to_its_slope() {
    let at = |speed: &'static str| crate::common::said("ride-at-speed", &[(Field::SlopeSpeed, speed)]);
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
    has(
        &climb("4"),
        "with both force it: 285 W in 24×18 at 83 rpm for 15 s, 1.1 kJ of your reserve, or run: 21 s.",
    );
    has(&climb("13"), "with both force it");
    has(&climb("16"), "with both too close to call");
    has(
        &low_and(&[(Field::Slope, "4"), (Field::ClimbLength, "900")]),
        "with both ride: 4:31 min at 233 W in 24×21 at 81 rpm, 3.6 kJ of your reserve, or run: 6:45 min",
    );
}
