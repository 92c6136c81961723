//! What every choice on the page means: its keys stand in one order with the values that are picked by them.

use crate::bench::bench::Bench;
use crate::bench::field::{Field, Kind};
use crate::page::scenario::Scenario;
use std::fmt::Debug;

/// A choice, how it is looked up, and what each of its keys must mean.
type Choice = (Field, fn(&Scenario) -> String, &'static [(&'static str, &'static str)]);

fn debug(value: impl Debug) -> String {
    format!("{value:?}")
}

const GROUNDS: &[(&str, &str)] = &[
    ("tarmac", "Tarmac"),
    ("gravel", "PackedGravel"),
    ("firm-grass", "FirmGrass"),
    ("wet-grass", "WetSoftGrass"),
    ("mud", "Mud"),
    ("deep-mud", "DeepMud"),
    ("wet-sand", "WetPackedSand"),
    ("loose-sand", "LooseSand"),
];

const CHOICES: &[Choice] = &[
    (Field::LapModel, |it| debug(it.lap.model), &[("reserve", "Reserve"), ("steady", "Steady")]),
    (Field::Inches, |it| debug(it.rings.nominal_inches), &[("real", "false"), ("nominal", "true")]),
    (Field::SpeedUnit, |it| debug(it.units.speed), &[("kmh", "KmPerH"), ("mph", "MilesPerH")]),
    (Field::MassUnit, |it| debug(it.units.mass), &[("kg", "Kilogram"), ("lb", "Pound")]),
    (Field::DistanceUnit, |it| debug(it.units.distance), &[("m", "Metre"), ("ft", "Foot")]),
    (Field::LengthUnit, |it| debug(it.units.length), &[("mm", "Millimetre"), ("in", "Inch")]),
    (Field::PressureUnit, |it| debug(it.units.pressure), &[("bar", "Bar"), ("psi", "Psi")]),
    (
        Field::GearScale,
        |it| debug(it.units.gears),
        &[("development", "Development"), ("inches", "Inches"), ("ratio", "Ratio")],
    ),
    (Field::DecimalMark, |it| debug(it.units.comma), &[("point", "false"), ("comma", "true")]),
    (Field::StopBy, |it| debug(it.chain.stop_by_capacity), &[("usual", "false"), ("capacity", "true")]),
    (
        Field::Level,
        |it| debug(it.ride.level),
        &[("occasional", "Occasional"), ("club", "Club"), ("racing", "Racing"), ("national", "National")],
    ),
    (Field::Ground, |it| debug(it.ride.surface), GROUNDS),
    (Field::TrackGround, |it| debug(it.lap.track_ground), GROUNDS),
    (Field::OnFoot, |it| debug(it.ride.rider.gaits), &[("run-or-walk", "RunOrWalk"), ("run", "RunOnly")]),
    (
        Field::FootBike,
        |it| debug(it.ride.rider.foot_bike),
        &[("carried", "Carried"), ("pushed", "Pushed"), ("quicker", "Quicker")],
    ),
    (Field::GripCounts, |it| debug(it.ride.grip_counts), &[("on", "true"), ("off", "false")]),
    (
        Field::Legs,
        |it| debug(it.ride.legs.map(gear_math::rider::StrengthShare::share)),
        &[
            ("minutes", "Some(0.5)"),
            ("30s", "Some(0.65)"),
            ("15s", "Some(0.8)"),
            ("5s", "Some(1.0)"),
            ("off", "None"),
        ],
    ),
    (
        Field::Course,
        |it| debug(it.lap.choice),
        &[("meadow", "Demo(Meadow)"), ("sand-pit", "Demo(SandPit)"), ("sketch", "Sketch"), ("own", "Own")],
    ),
    (
        Field::SearchPairs,
        |it| debug(it.lap.search.kinds),
        &[("both", "Both"), ("single", "Single"), ("pair", "Pair")],
    ),
    (Field::BoxBudget, |it| debug(it.parts.budget), &[("1", "1"), ("2", "2"), ("3", "3")]),
    (
        Field::SearchSprockets,
        |it| debug(it.lap.search.sprockets),
        &[("bench", "AsOnBench"), ("a", "AsOn(A)"), ("b", "AsOn(B)"), ("any", "Any")],
    ),
    (
        Field::Construction,
        |it| debug(it.tyres[0].construction),
        &[("tubular", "Tubular"), ("clincher", "Clincher"), ("tubeless", "Tubeless")],
    ),
    (
        Field::ConstructionB,
        |it| debug(it.tyres[1].construction),
        &[("", "Tubeless"), ("tubular", "Tubular"), ("clincher", "Clincher"), ("tubeless", "Tubeless")],
    ),
    (
        Field::WidthLimit,
        |it| debug(it.tyres[0].limit.map(gear_math::wheel::RaceLimit::mm)),
        &[("33", "Some(33.0)"), ("35", "Some(35.0)"), ("38", "Some(38.0)"), ("none", "None")],
    ),
    (
        Field::TyreGround,
        |it| debug(it.tyres[0].ground),
        &[("soft", "Soft"), ("mixed", "Mixed"), ("rocky", "Rocky")],
    ),
    (
        Field::WheelStyle,
        |it| debug(it.tyres[0].style),
        &[("smooth", "Smooth"), ("normal", "Normal"), ("hard", "Hard")],
    ),
    (Field::Hookless, |it| debug(it.tyres[0].marks.hookless), &[("hooked", "false"), ("hookless", "true")]),
    (Field::LabelEdition, |it| debug(it.tyres[0].edition), &[("2020", "Etrto2020"), ("older", "OlderIso")]),
    (
        Field::Knee,
        |it| debug(it.position.changes.keep_knee_over_pedal),
        &[("saddle", "false"), ("knee", "true")],
    ),
    (Field::SheetFor, |it| debug(it.sheet_for), &[("both", "None"), ("a", "Some(A)"), ("b", "Some(B)")]),
];

#[test]
fn every_key_means_what_it_says() {
    for (field, found, meanings) in CHOICES {
        for (key, meaning) in *meanings {
            let mut bench = Bench::default();
            bench.write(*field, key);
            let read = Scenario::read(&bench, &Scenario::default());
            assert_eq!(read.complaints.len(), 0, "{key}");
            assert_eq!(&found(&read.scenario), meaning, "{key} of {field:?}");
        }
    }
}

#[test]
fn no_choice_is_left_out() {
    for &field in Field::ALL {
        let Kind::Choice(choices) = field.spec().kind else { continue };
        let meanings = CHOICES.iter().find(|choice| choice.0 == field).map(|choice| choice.2);
        let keys = meanings.unwrap_or_default().iter().map(|meaning| meaning.0);
        assert!(keys.eq(choices.iter().map(|choice| choice.0)), "{field:?}");
    }
}
