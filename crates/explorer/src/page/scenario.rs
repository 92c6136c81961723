//! The bench understood: validated values, and what could not be understood.

use crate::bench::bench::Bench;
use crate::bench::complaint::Complaint;
use crate::bench::field::Field;
use crate::bench::owners::Owners;
use crate::bench::reader::Reader;
use crate::bench::units_chosen;
use crate::chain::cages::Cages;
use crate::chain::inputs::ChainInputs;
use crate::lap::basis::Basis;
use crate::lap::inputs::LapInputs;
use crate::parts::inputs::BoxInputs;
use crate::position::inputs::PositionInputs;
use crate::ride::inputs::{Given, RideInputs};
use crate::rings::inputs::RingsInputs;
use crate::side::Side;
use crate::tyre::inputs::TyreInputs;
use crate::units::Units;
use std::rc::Rc;

/// Everything the page is worked out from.
#[derive(Debug, Clone, PartialEq)]
pub struct Scenario {
    /// Gears, wheel and cadences.
    pub rings: RingsInputs,
    /// Derailleur, frame, cage and chain.
    pub chain: ChainInputs,
    /// Whether the cage takes A and B.
    pub cages: Cages,
    /// The road position and the bike it goes to.
    pub position: PositionInputs,
    /// Tyre, rim and what loads them, of A and of B.
    pub tyres: [TyreInputs; 2],
    /// Riding against going on foot.
    pub ride: RideInputs,
    /// The course and how it is ridden.
    pub lap: LapInputs,
    /// What lies in the box of parts.
    pub parts: BoxInputs,
    /// What everything is told in.
    pub units: Units,
    /// The one set-up that the workshop sheet is for; both when `None`.
    pub sheet_for: Option<Side>,
    /// What it was understood from: of a field in error, the last good text.
    texts: Bench,
    /// Whose value every field holds.
    pub owners: Rc<Owners>,
}

/// A scenario and the complaints met on the way to it.
#[derive(Debug)]
pub struct ReadBench {
    /// What was understood, with the last good value wherever something was not.
    pub scenario: Scenario,
    /// What was not.
    pub complaints: Vec<Complaint>,
}

impl Scenario {
    /// What it was understood from.
    #[must_use]
    pub(crate) fn texts(&self) -> &Bench {
        &self.texts
    }

    /// Understands a bench; a field in error keeps its value from `good`.
    #[must_use]
    pub fn read(bench: &Bench, good: &Self) -> ReadBench {
        let mut reader = Reader::new(bench, &good.texts);
        let units = units_chosen::read(&mut reader);
        let _in_force = units.enter();
        let rings = RingsInputs::read(&mut reader, &good.rings);
        let chain = ChainInputs::read(&mut reader, &good.chain, rings.drivetrains());
        let cages = if chain == good.chain { good.cages.clone() } else { Cages::of(&chain) };
        let position = PositionInputs::read(&mut reader);
        let sheet_for = reader.pick(Field::SheetFor, &[None, Some(Side::A), Some(Side::B)]);
        let lap = LapInputs::read(&mut reader, &good.lap, &rings);
        let parts = BoxInputs::read(&mut reader, &lap, &rings.drivetrains());
        let tyres = TyreInputs::read(&mut reader, good.ride.burdens());
        let given = Given {
            drivetrains: rings.drivetrains(),
            avoid: cages.avoided(),
            wheels: rings.wheels.map(|wheel| wheel.roll_out()),
            window: rings.window,
            crank: position.cross.footing.crank,
            tyres: Side::BOTH.map(|side| tyres[side as usize].width(rings.wheel(side).tyre.width)),
            is_repeated: lap.is_repeated(),
        };
        let ride = RideInputs::read(&mut reader, &good.ride, &given);
        let burdens = ride.burdens();
        let tyres = Side::BOTH.map(|side| tyres[side as usize].under(burdens[side as usize]));
        let (complaints, unknown) = reader.findings();
        let mut texts = bench.clone();
        for complaint in &complaints {
            texts.take(complaint.field, &good.texts);
        }
        let owners = Rc::new(Owners::of(&texts, &unknown));
        ReadBench {
            scenario: Self {
                rings,
                chain,
                cages,
                position,
                tyres,
                ride,
                lap,
                parts,
                units,
                sheet_for,
                texts,
                owners,
            },
            complaints,
        }
    }

    /// The same after its fields were rearranged, such as those of A and B exchanged.
    #[must_use]
    pub fn rearranged(&self, rearrange: fn(&Bench) -> Bench) -> Self {
        Self::read(&rearrange(&self.texts), self).scenario
    }

    /// What the lap and the search are worked out from.
    #[must_use]
    pub const fn basis(&self) -> Basis<'_> {
        Basis {
            rings: &self.rings,
            chain: &self.chain,
            cages: &self.cages,
            ride: &self.ride,
            lap: &self.lap,
            texts: &self.texts,
        }
    }
}

impl Default for Scenario {
    /// The demo bench, understood. A test holds it free of complaints.
    fn default() -> Self {
        Self::read(&Bench::default(), &bare()).scenario
    }
}

/// A plain set-up to read the demo bench with, so that reading always has something to fall back on.
#[expect(clippy::expect_used, reason = "fixed values within every limit, run by every test")]
fn bare() -> Scenario {
    let texts = Bench::default();
    let mut reader = Reader::new(&texts, &texts);
    let rings = RingsInputs::bare();
    let ride = RideInputs::bare(rings.drivetrain(Side::A));
    let chain = ChainInputs::bare(rings.drivetrains()).expect("a usual cage");
    Scenario {
        units: Units::METRIC,
        cages: Cages::of(&chain),
        chain,
        rings,
        position: PositionInputs::read(&mut reader),
        tyres: TyreInputs::read(&mut reader, ride.burdens()),
        ride,
        lap: LapInputs::bare(),
        parts: BoxInputs::default(),
        sheet_for: None,
        owners: Rc::new(Owners::of(&texts, &[])),
        texts,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::field::Kind;
    use crate::bench::words::TEETH;
    use proptest::prelude::*;

    fn complaints(edits: &[(Field, &str)]) -> Vec<(Field, String)> {
        let mut bench = Bench::default();
        for (field, text) in edits {
            bench.write(*field, text);
        }
        let read = Scenario::read(&bench, &Scenario::default());
        read.complaints.into_iter().map(|complaint| (complaint.field, complaint.message)).collect()
    }

    #[test]
    fn the_demo_is_in_order() {
        assert_eq!(complaints(&[]), []);
    }

    #[test]
    fn a_bad_field_is_named_and_the_others_are_taken() {
        let mut bench = Bench::default();
        bench.write(Field::RingsA, "<b>x</b>");
        bench.write(Field::RingsB, "40");
        let read = Scenario::read(&bench, &Scenario::default());
        assert_eq!(read.complaints.len(), 1);
        assert_eq!(read.complaints[0].field, Field::RingsA);
        assert_eq!(read.scenario.rings.drivetrain(Side::A).chainset.to_string(), Field::RingsA.spec().start);
        assert_eq!(read.scenario.rings.drivetrain(Side::B).chainset.to_string(), "40");
    }

    #[test]
    fn every_kind_of_bad_input_gets_a_message() {
        for text in ["", "words", "0", "-3", "1e9", "NaN", "inf", "<script>alert(1)</script>", "１０"] {
            for field in [Field::RingsA, Field::CassetteB, Field::Tyre, Field::CadenceUsual, Field::Tolerance]
            {
                let found = complaints(&[(field, text)]);
                let fine = field == Field::Tolerance && text == "0";
                assert_eq!(found.len(), usize::from(!fine), "{field:?} {text}: {found:?}");
            }
        }
    }

    #[test]
    fn optional_fields_may_be_empty() {
        for field in [Field::RollOut, Field::Capacity, Field::LargestSprocket, Field::RollOutLimit] {
            assert_eq!(complaints(&[(field, " ")]), [], "{field:?}");
        }
    }

    #[test]
    fn chain_measures_may_be_empty_and_odd_links_are_refused() {
        assert_eq!(complaints(&[(Field::Chainstay, "428 mm"), (Field::RearStop, "−70 °")]), []);
        let odd = complaints(&[(Field::ChainLinks, "109")]);
        assert_eq!(odd[0].0, Field::ChainLinks);
        assert!(odd[0].1.contains("109 links cannot be closed"), "{odd:?}");
        assert_eq!(complaints(&[(Field::ChainLinks, "links")]).len(), 1);
    }

    #[test]
    fn pulleys_that_run_into_each_other_keep_the_cage_before() {
        let mut bench = Bench::default();
        bench.write(Field::PulleyCentres, "40");
        bench.write(Field::Chainstay, "428");
        let read = Scenario::read(&bench, &Scenario::default());
        assert_eq!(read.complaints.len(), 1);
        assert_eq!(read.complaints[0].field, Field::PulleyCentres);
        assert_eq!(read.scenario.chain.cages, Scenario::default().chain.cages);
        assert!((read.scenario.chain.frame().chainstay.mm() - 428.0).abs() < 1e-9);
        assert_eq!(complaints(&[(Field::PulleyGap, "0")])[0].0, Field::PulleyGap);
    }

    #[test]
    fn units_and_decimal_commas_are_understood() {
        assert_eq!(complaints(&[(Field::CadenceLow, "57,5 rpm"), (Field::Tolerance, "2 %")]), []);
        for text in ["33 teeth", "33t", "33T"] {
            assert_eq!(complaints(&[(Field::Capacity, text), (Field::GuideTeeth, "11 teeth")]), [], "{text}");
        }
        assert_eq!(complaints(&[(Field::ChainLinks, "110 links")]), []);
    }

    #[test]
    fn other_units_of_the_same_kind_are_understood() {
        let read = |edits: &[(Field, &str)]| {
            let mut bench = Bench::default();
            edits.iter().for_each(|(field, text)| bench.write(*field, text));
            let read = Scenario::read(&bench, &Scenario::default());
            assert_eq!(read.complaints, []);
            read.scenario
        };
        let typed = [
            (Field::BodyMass, "130 lb"),
            (Field::Rim, "21c"),
            (Field::EntrySpeed, "12,5 mph"),
            (Field::HeadAngle, "72 deg"),
            (Field::SaddleHeight, "72.8 cm"),
            (Field::ClimbLength, "200 ft"),
        ];
        let same = [
            (Field::BodyMass, "58.967"),
            (Field::Rim, "21"),
            (Field::EntrySpeed, "20.117"),
            (Field::HeadAngle, "72"),
            (Field::SaddleHeight, "728"),
            (Field::ClimbLength, "60.96"),
        ];
        let [typed, same] = [read(&typed), read(&same)];
        assert_eq!((typed.tyres[0].rim, typed.position), (same.tyres[0].rim, same.position));
        assert!((typed.ride.rider.body.kg() - same.ride.rider.body.kg()).abs() < 1e-3);
        for slope in ["1:8", "12,5%", "1 in 8", "12.5 percent", "7.125 deg"] {
            assert!((read(&[(Field::Slope, slope)]).ride.climb.percent() - 12.5).abs() < 2e-3, "{slope}");
        }
        assert_eq!(complaints(&[(Field::Slope, "1:0"), (Field::BodyMass, "62 mm")]).len(), 2);
    }

    /// What may be typed in place of a unit, and how many of it that is.
    const SAID: &[(&str, &[(&str, f64)])] = &[
        (
            "mm",
            &[
                ("mm", 1.0),
                ("MM", 1.0),
                ("cm", 10.0),
                ("m", 1000.0),
                ("in", 25.4),
                ("inches", 25.4),
                ("\"", 25.4),
            ],
        ),
        ("m", &[("m", 1.0), ("ft", 0.3048), ("feet", 0.3048), ("km", 1000.0), ("cm", 0.01)]),
        ("kg", &[("kg", 1.0), ("lb", 0.453_592_37), ("lbs", 0.453_592_37), ("g", 0.001)]),
        ("km/h", &[("km/h", 1.0), ("kph", 1.0), ("mph", 1.609_344), ("m/s", 3.6)]),
        ("m/s", &[("m/s", 1.0), ("km/h", 1.0 / 3.6), ("mph", 1.609_344 / 3.6)]),
        ("m/s²", &[("m/s²", 1.0), ("m/s2", 1.0)]),
        ("m²", &[("m²", 1.0), ("m2", 1.0)]),
        ("kg/m³", &[("kg/m³", 1.0), ("kg/m3", 1.0)]),
        ("°", &[("°", 1.0), ("deg", 1.0), ("Degrees", 1.0)]),
        ("%", &[("%", 1.0), ("percent", 1.0)]),
        ("", &[("", 1.0), ("%", 0.01)]),
        ("×", &[("×", 1.0), ("x", 1.0), ("%", 0.01)]),
        ("s", &[("s", 1.0), ("sec", 1.0), ("min", 60.0)]),
        ("W", &[("W", 1.0), ("w", 1.0), ("watts", 1.0), ("kW", 1000.0)]),
        ("W/kg", &[("W/kg", 1.0), ("w/kg", 1.0)]),
        ("kJ", &[("kJ", 1.0), ("J", 0.001)]),
        ("rpm", &[("rpm", 1.0), ("RPM", 1.0)]),
        (
            "bar",
            &[
                ("bar", 1.0),
                ("kPa", 0.01),
                ("psi", 0.068_947_572_931_683_6),
                ("PSI", 0.068_947_572_931_683_6),
            ],
        ),
    ];

    /// What is read when a text stands in a field, apart from the text, and whether there is nothing to complain of.
    fn meaning(field: Field, text: &str) -> (Scenario, bool) {
        let mut bench = Bench::default();
        bench.write(field, text);
        let read = Scenario::read(&bench, &Scenario::default());
        let texts = Bench::default();
        (Scenario { texts, ..read.scenario }, read.complaints.is_empty())
    }

    #[test]
    fn every_number_field_understands_other_units_and_a_decimal_comma() {
        // None of them at the edge of any limits: a typed number of pounds rounds to either side.
        const TRIED: [f64; 24] = [
            0.0041, 0.053, 0.21, 0.53, 0.91, 1.23, 1.63, 4.13, 6.13, 11.3, 21.3, 34.3, 45.3, 62.3, 73.3,
            121.3, 172.3, 221.3, 402.3, 602.3, 852.3, 1202.3, 2102.3, -20.3,
        ];
        for &field in Field::ALL.iter().filter(|field| matches!(field.spec().kind, Kind::Number)) {
            let unit = field.spec().unit;
            if unit == TEETH || field.twin() == Field::ChainLinks || field == Field::ChainLinks {
                let text = ["110", "34", "16", "11"].into_iter().find(|text| meaning(field, text).1).unwrap();
                let mark = if unit == TEETH { "t" } else { "links" };
                assert_eq!(meaning(field, &format!("{text} {mark}")), meaning(field, text), "{field:?}");
                continue;
            }
            let good = TRIED.into_iter().find(|number| meaning(field, &number.to_string()).1);
            let good = good.unwrap_or_else(|| panic!("{field:?}"));
            let (_, said) =
                SAID.iter().find(|it| it.0 == unit).unwrap_or_else(|| panic!("{unit} of {field:?}"));
            for &(other, worth) in *said {
                // A rounding lies between dividing and multiplying: what is typed is a short number.
                let typed = (good / worth * 1e9).round() / 1e9;
                let own = (typed * worth).to_string();
                let (meant, is_good) = meaning(field, &own);
                for text in [format!("{typed} {other}"), format!("{typed}{other}").replacen('.', ",", 1)] {
                    assert_eq!(meaning(field, &text), (meant.clone(), is_good), "{field:?}: {text}");
                }
                assert!(is_good, "{field:?}: {own}");
            }
        }
    }

    #[test]
    fn a_decimal_comma_is_echoed_as_it_was_typed() {
        let said = |edits: &[(Field, &str)], then: (Field, &str)| {
            let mut bench = Bench::default();
            edits.iter().for_each(|(field, text)| bench.write(*field, text));
            let good = Scenario::read(&bench, &Scenario::default()).scenario;
            bench.write(then.0, then.1);
            let mut complaints = Scenario::read(&bench, &good).complaints;
            let complaint = complaints.remove(0);
            [complaint.kept, complaint.offer].map(Option::unwrap_or_default)
        };
        assert_eq!(said(&[(Field::BodyMass, "62,5")], (Field::BodyMass, "6200"))[0], "62,5\u{a0}kg");
        assert_eq!(said(&[(Field::BodyMass, "137,5 lb")], (Field::BodyMass, "?"))[0], "137,5 lb");
        assert_eq!(said(&[], (Field::SeatAngle, "7,35"))[1], "");
        assert_eq!(said(&[(Field::CadenceLow, "57,5")], (Field::CadenceLow, "90,5"))[0], "57,5\u{a0}rpm");
        assert_eq!(said(&[(Field::Slope, "9,5")], (Field::Slope, "95,5"))[0], "9,5\u{a0}%");
        assert_eq!(said(&[], (Field::BodyMass, "621,0"))[1], "62,1");
    }

    #[test]
    fn every_number_field_refuses_what_is_no_number_and_keeps_the_last_good_value() {
        for &field in Field::ALL {
            if matches!(field.spec().kind, Kind::Number | Kind::Choice(_)) {
                for text in ["words", "1e9", "NaN", "<b>"] {
                    let found = complaints(&[(field, text)]);
                    assert_eq!(found.first().map(|complaint| complaint.0), Some(field), "{field:?} {text}");
                }
            }
        }
    }

    #[test]
    fn a_mark_may_be_typed_in_psi() {
        let mut bench = Bench::default();
        bench.write(Field::TyreMark, "65 psi");
        let read = Scenario::read(&bench, &Scenario::default());
        assert_eq!(read.complaints, []);
        assert!(read.scenario.tyres[0].marks.tyre.is_some_and(|mark| (mark.psi() - 65.0).abs() < 1e-9));
        assert_eq!(complaints(&[(Field::TyreMark, "900 psi")])[0].0, Field::TyreMark);
    }

    #[test]
    fn cadences_must_ascend() {
        assert_eq!(complaints(&[(Field::CadenceHigh, "80")])[0].0, Field::CadenceHigh);
        assert_eq!(complaints(&[(Field::CadenceLow, "90")])[0].0, Field::CadenceLow);
        assert_eq!(complaints(&[(Field::CadenceUsual, "120")])[0].0, Field::CadenceUsual);
    }

    #[test]
    fn no_cadence_is_passed_over_in_silence() {
        let named = |edits: &[(Field, &str)]| {
            complaints(edits).into_iter().map(|complaint| complaint.0).collect::<Vec<_>>()
        };
        let (low, usual, high) = (Field::CadenceLow, Field::CadenceUsual, Field::CadenceHigh);
        assert_eq!(named(&[(low, "90"), (usual, "9o")]), [usual, low]);
        assert_eq!(named(&[(low, "90"), (high, "80")]), [low, high]);
        assert_eq!(named(&[(low, "90"), (high, "80"), (usual, "300")]), [usual, low, high]);
    }

    #[test]
    fn what_is_kept_moves_with_its_set_up() {
        let mut good = Bench::default();
        good.write(Field::RingsB, "40/26");
        let good = Scenario::read(&good, &Scenario::default()).scenario;
        let swapped = good.rearranged(Bench::swapped);
        assert_eq!(swapped.rings.drivetrain(Side::A), good.rings.drivetrain(Side::B));
        let mut typed = Bench::default();
        typed.write(Field::RingsA, "4x");
        let read = Scenario::read(&typed, &swapped);
        assert_eq!(read.complaints[0].kept.as_deref(), Some("40/26"));
        assert_eq!(read.scenario.rings.drivetrain(Side::A).chainset, good.rings.drivetrain(Side::B).chainset);
    }

    proptest! {
        /// What is not understood is complained of, and then stands as it was; the rest is read alike a second time.
        #[test]
        fn any_text_is_understood_or_complained_of(texts in prop::collection::vec("\\PC{0,80}", Field::ALL.len())) {
            let mut bench = Bench::default();
            for (field, text) in Field::ALL.iter().zip(&texts) {
                bench.write(*field, text);
            }
            let read = Scenario::read(&bench, &Scenario::default());
            let complained = |field: &Field| read.complaints.iter().any(|it| it.field == *field);
            prop_assert!(read.complaints.iter().all(|it| !it.message.is_empty()));
            let start = Bench::default();
            for field in Field::ALL {
                let expected = if complained(field) { start.text(*field) } else { bench.text(*field) };
                prop_assert_eq!(read.scenario.texts.text(*field), expected);
            }
        }

        #[test]
        fn a_word_is_no_number(words in prop::collection::vec("[a-z]{1,12}", Field::ALL.len())) {
            let mut bench = Bench::default();
            let numbers = |field: &&Field| matches!(field.spec().kind, Kind::Number);
            for (field, word) in Field::ALL.iter().filter(numbers).zip(&words) {
                bench.write(*field, word);
            }
            let read = Scenario::read(&bench, &Scenario::default());
            let complained = |field: &Field| read.complaints.iter().any(|it| it.field == *field);
            prop_assert!(Field::ALL.iter().filter(numbers).all(complained));
        }
    }
}
