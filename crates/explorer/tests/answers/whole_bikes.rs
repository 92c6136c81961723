//! Set-up B as a whole bike: what it leaves empty is as on A, and what it has of its own reaches every answer.

use crate::common::{said, shown};
use explorer::bench::bench::Bench;
use explorer::bench::field::{Field, Group};
use explorer::bench::link;
use explorer::bench::of_b::NOT_KNOWN;
use explorer::page::report::Report;
use explorer::page::scenario::Scenario;
use explorer::page::sections::fragments;
use explorer::side::Side;
use proptest::prelude::*;
use std::collections::BTreeMap;

const OWN: [(Field, &str); 9] = [
    (Field::TyreB, "40-622"),
    (Field::RimB, "23"),
    (Field::ConstructionB, "clincher"),
    (Field::CapacityB, "43"),
    (Field::LargestSprocketB, "42"),
    (Field::SmallestSprocketB, "11"),
    (Field::RingDifferenceB, "14"),
    (Field::ChainLinksB, "112"),
    (Field::BikeMassB, "9.7"),
];

fn bench(edits: &[(Field, &str)]) -> Bench {
    let mut bench = Bench::default();
    edits.iter().for_each(|(field, text)| bench.write(*field, text));
    bench
}

fn page(bench: &Bench) -> BTreeMap<String, String> {
    let read = Scenario::read(bench, &Scenario::default());
    assert_eq!(read.complaints, []);
    crate::common::in_full(fragments(&Report::of(&read.scenario), &[], &[], bench, "r=3"))
        .into_iter()
        .collect()
}

#[test]
fn b_empty_is_as_a() {
    let mut empty = Bench::default();
    Field::ALL.iter().for_each(|&field| empty.claim(field));
    let mut filled = empty.clone();
    for field in Group::BikeB.fields() {
        filled.write(field, empty.text(field.twin()));
    }
    let (empty, filled) = (page(&empty), page(&filled));
    let says_what_is_empty = |id: &str| id.starts_with("says-") || id.starts_with("by-");
    for (id, html) in empty.iter().filter(|(id, _)| !says_what_is_empty(id)) {
        assert!(html == &filled[id], "{id}");
    }
}

#[test]
fn a_long_cage_on_b_alone_takes_what_as_does_not() {
    let wide = (Field::CassetteB, "11-13-15-17-19-22-25-28-32-37-42");
    let both = said("cage-answer", &[wide]);
    let own = said("cage-answer", &[wide, (Field::CapacityB, "47"), (Field::LargestSprocketB, "46")]);
    assert_ne!(both, own);
    let table = said("cage-tables", &[(Field::CapacityB, "47")]);
    assert!(table.contains("A’s derailleur") && table.contains("B’s derailleur"), "{table}");
    assert!(!said("cage-tables", &[]).contains("B’s derailleur"));
}

#[test]
fn what_the_fields_in_sight_tell_is_not_told_again() {
    assert_eq!(said("differences", &[]).trim(), "");
    let heavy = said("differences", &[(Field::BikeMassB, "9.7")]);
    assert!(heavy.contains("9.7 for ") && !heavy.contains("44/32"), "{heavy}");
}

#[test]
fn developments_are_of_each_wheel() {
    let same = [(Field::RingsB, "50/34"), (Field::CassetteB, Field::CassetteA.spec().start)];
    let alike = said("rings-answer", &same);
    let apart = said("rings-answer", &[same[0], same[1], (Field::TyreB, "42-622")]);
    assert!(alike.contains("alike") || alike.contains("same"), "{alike}");
    assert_ne!(alike, apart);
}

#[test]
fn a_heavier_bike_runs_and_rides_slower() {
    let report =
        |edits: &[(Field, &str)]| Report::of(&Scenario::read(&bench(edits), &Scenario::default()).scenario);
    let same = [(Field::RingsB, "50/34"), (Field::CassetteB, Field::CassetteA.spec().start)];
    let heavy = report(&[same[0], same[1], (Field::BikeMassB, "12")]);
    let [a, b] = &heavy.ride.sides;
    assert!(a.ascent.foot < b.ascent.foot && a.plan.answer.foot > b.plan.answer.foot);
    assert_eq!(heavy.rings.setup(Side::A).gears.len(), heavy.rings.setup(Side::B).gears.len());
    assert!(said("ride-answer", &[(Field::BikeMassB, "12")]).contains("with B"));
}

#[test]
fn a_usual_width_beside_a_wide_one_changes_nothing() {
    let told = said("ride-answer", &[(Field::TyreB, "40-622"), (Field::RimB, "23")]);
    assert!(told.contains("changes nothing there") && !told.contains(" 0 % "), "{told}");
}

#[test]
fn tyre_and_pressure_are_told_of_each_where_they_differ() {
    assert!(!shown("tyre-answer", Bench::default(), &[]).contains("<h3>"));
    let each = said("tyre-answer", &[(Field::TyreB, "40-622"), (Field::RimB, "23")]);
    assert!(each.contains("labelled 33") && each.contains("labelled 40"), "{each}");
    let sheet = said("sheet-page", &OWN);
    assert!(sheet.contains("40-622") || !sheet.contains("33-622"), "{sheet}");
}

#[test]
fn links_of_every_version_open_with_b_as_a() {
    for link in ["#remount=1&capacity=39&tyre=38-622", "#r=2&tc=39&ty=38-622", "#r=3&tc=39&ty=38-622"] {
        let opened = link::read(link).bench;
        assert_eq!(opened.text_of(Side::B, Field::Capacity), "39", "{link}");
        assert_eq!(opened.text_of(Side::B, Field::Tyre), "38-622", "{link}");
        assert_eq!(link::read(&link::write(&opened)).bench, opened);
    }
}

#[test]
fn what_b_does_not_know_may_be_said() {
    let known =
        bench(&[(Field::CapacityB, NOT_KNOWN), (Field::ChainLinks, "110"), (Field::ChainLinksB, NOT_KNOWN)]);
    let read = Scenario::read(&known, &Scenario::default());
    assert_eq!(read.complaints, []);
    assert!(read.scenario.chain.derailleur(Side::B).total_capacity.is_none());
    assert!(read.scenario.chain.derailleur(Side::A).total_capacity.is_some());
    assert_eq!(read.scenario.chain.links.map(|links| links.is_some()), [true, false]);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn any_mixture_travels_in_the_link(own in prop::collection::vec(any::<bool>(), OWN.len())) {
        let edits: Vec<_> = OWN.into_iter().zip(own).filter(|it| it.1).map(|it| it.0).collect();
        let bench = bench(&edits);
        let opened = link::read(&link::write(&bench)).bench;
        prop_assert_eq!(&opened, &bench);
        let swapped = page(&bench.swapped());
        prop_assert_eq!(page(&bench.swapped().swapped()), page(&bench));
        prop_assert!(swapped.len() > 20);
    }
}
