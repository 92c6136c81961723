//! What is said of a tyre's width, roll-out and pressure, and the figures beside it.
#![expect(clippy::unwrap_used, reason = "planted values lie within their limits")]

use gear_math::rider::{BikeMass, BodyMass, KitMass, RearShare};
use gear_math::wheel::{
    CalliperVerdict, Construction, FrontShare, LabelEdition, MountedWidth, NominalWidth, PressureCaution,
    PressureMarks, RaceLimit, RimInnerWidth, TyreGround, TyreKind, TyreSection, TyreWidth, WheelStyle,
};
use gear_math::{Circumference, PressureCase, TyreSize, Wheel};
use proptest::prelude::*;

fn label(mm: f64) -> NominalWidth {
    NominalWidth::new(mm).unwrap()
}

fn rim(mm: f64) -> RimInnerWidth {
    RimInnerWidth::new(mm).unwrap()
}

/// The calliper may be off by 0.5 mm; the gauge is the limit itself.
#[test]
fn a_calliper_reading_is_over_at_or_within_the_limit() {
    let read = |mm| RaceLimit::UCI.by_calliper(MountedWidth::new(mm).unwrap());
    assert_eq!([33.01, 40.0].map(read), [CalliperVerdict::Over; 2]);
    assert_eq!([33.0, 32.75, 32.5].map(read), [CalliperVerdict::AtLimit; 3]);
    assert_eq!([32.49, 28.0].map(read), [CalliperVerdict::Within; 2]);
}

#[test]
fn two_wheels_carry_the_whole_weight() {
    for rear in [0.3, 0.45, 0.55, 0.8] {
        let front = FrontShare::beside(RearShare::new(rear).unwrap());
        assert!((front.fraction() + rear - 1.0).abs() < 1e-12);
    }
}

/// A roll-out of 3 % over is a mistyped one; one that is 1 % off a cyclo-cross tyre's is not.
#[test]
fn a_measured_roll_out_is_told_against_the_size() {
    let tyre: TyreSize = "33-622".parse().unwrap();
    for (off, is_likely) in [(-3.0, false), (-1.0, true), (0.0, true), (1.0, true), (3.0, false)] {
        let measured = Circumference::new(tyre.circumference().mm() * (1.0 + off / 100.0)).ok();
        let check = Wheel { tyre, kind: TyreKind::CycloCross, measured }.check_measured().unwrap();
        assert!((check.deviation.percent() - off).abs() < 1e-9);
        assert_eq!(check.is_likely, is_likely, "{off} %");
    }
}

#[test]
fn an_estimate_is_off_as_far_either_way() {
    for (kind, percent) in [(TyreKind::Road, 0.6), (TyreKind::CycloCross, 1.5)] {
        let estimate = Wheel { tyre: "28-622".parse().unwrap(), kind, measured: None }.estimate();
        let give_or_take = percent / 100.0 * estimate.circumference.mm();
        assert!((estimate.give_or_take_mm() - give_or_take).abs() < 1e-6);
        assert!((estimate.longest.mm() - estimate.circumference.mm() - give_or_take).abs() < 1e-6);
        assert!((estimate.circumference.mm() - estimate.shortest.mm() - give_or_take).abs() < 1e-6);
    }
}

/// 571 mm is the bead seat of the 650C of triathlon bikes (ISO 5775 designation 571).
#[test]
fn trade_names_of_650_are_two_wheels() {
    let seat = |name: &str| name.parse::<TyreSize>().unwrap().bead_seat.mm();
    assert_eq!(["650x23C", "650x40B", "700x33C"].map(seat), [571, 584, 622]);
}

fn case(rider: f64, bike: f64, width: f64) -> PressureCase {
    PressureCase {
        rider: BodyMass::new(rider).unwrap(),
        kit_and_bike: Some((KitMass::new(2.0).unwrap(), BikeMass::new(bike).unwrap())),
        width: MountedWidth::new(width).unwrap(),
        label: None,
        construction: Construction::Tubeless,
        ground: TyreGround::Mixed,
        style: WheelStyle::Normal,
        front_share: FrontShare::USUAL,
        marks: PressureMarks::default(),
    }
}

#[test]
fn what_the_formula_was_not_made_for_is_named() {
    let names = |case: PressureCase, caution| case.advice().cautions.contains(&caution);
    let width = |width| names(case(65.0, 9.0, width), PressureCaution::UnusualWidth);
    assert_eq!([27.9, 28.0, 33.0, 45.0, 45.1].map(width), [true, false, false, false, true]);
    let mass = |rider| names(case(rider, 9.0, 33.0), PressureCaution::UnusualMass);
    assert_eq!([30.0, 119.5, 60.0].map(mass), [false, true, false]);
    assert!(names(case(30.0, 5.0, 33.0), PressureCaution::UnusualMass));
}

#[test]
fn every_construction_has_its_own_cautions() {
    use PressureCaution::{Burping, Glue, PinchFlat};
    let of = |construction| PressureCase { construction, ..case(65.0, 9.0, 33.0) }.advice().cautions;
    let own = |construction| [Glue, PinchFlat, Burping].map(|caution| of(construction).contains(&caution));
    assert_eq!(own(Construction::Tubular), [true, false, false]);
    assert_eq!(own(Construction::Clincher), [false, true, false]);
    assert_eq!(own(Construction::Tubeless), [false, false, true]);
}

#[test]
fn a_missing_mark_is_asked_for_and_a_known_one_not() {
    let asked = |tyre: Option<f64>, rim: Option<f64>| {
        let pressure = |bar: Option<f64>| bar.map(|bar| gear_math::Pressure::new(bar).unwrap());
        let marks = PressureMarks { tyre: pressure(tyre), rim: pressure(rim), ..PressureMarks::default() };
        PressureCase { marks, ..case(65.0, 9.0, 33.0) }.advice().cautions.contains(&PressureCaution::NoMark)
    };
    assert!(asked(None, None));
    assert!(!asked(Some(5.0), Some(5.0)));
}

/// Where no start is given nothing is said of finding one's own pressure from it.
#[test]
fn nothing_is_told_of_a_start_that_is_not_given() {
    let mark = |bar| PressureMarks { tyre: gear_math::Pressure::new(bar).ok(), ..PressureMarks::default() };
    for (bar, given) in [(1.2, false), (5.0, true)] {
        let advice = PressureCase { marks: mark(bar), ..case(65.0, 9.0, 33.0) }.advice();
        assert_eq!(advice.start.is_ok(), given);
        assert_eq!(advice.cautions.iter().any(|caution| caution.tells_of_a_start()), given);
    }
}

proptest! {
    #[test]
    fn the_range_of_widths_lies_about_what_is_read(mm in 20.0..60.0_f64, on in 12.0..40.0_f64) {
        let widths = [Some(TyreWidth::tubular(label(mm))), TyreWidth::on_rim(label(mm), rim(on), rim(0.6 * mm)).ok()];
        for width in widths.into_iter().flatten() {
            let (low, high) = width.range_mm();
            let [bias, spread] = [width.accuracy.bias_mm(), width.accuracy.spread_mm()];
            prop_assert!(spread > 0.0 && bias.abs() <= spread);
            prop_assert!((high - low - 2.0 * spread).abs() < 1e-9);
            prop_assert!((low.midpoint(high) - width.mounted.mm() - bias).abs() < 1e-9);
        }
    }

    /// Up to 4 mm off, a little more than any reading in print.
    #[test]
    fn a_reading_far_from_the_computed_width_is_not_explained(mm in 25.0..50.0_f64, off in -8.0..8.0_f64) {
        let width = TyreWidth::tubular(label(mm));
        prop_assert_eq!(width.explains(MountedWidth::new(mm + off).unwrap()), off.abs() <= 4.0);
    }

    /// The casing keeps its length: the arc over the new rim is as long as over the rim that the label was read on.
    #[test]
    fn the_arc_on_another_rim_is_as_long(mm in 25.0..50.0_f64, on in 0.3..0.9_f64) {
        let measured_on = LabelEdition::Etrto2020.measuring_rim(label(mm));
        let Ok(width) = TyreWidth::on_rim(label(mm), rim((on * mm).max(10.0)), measured_on) else { return Ok(()) };
        let casing = |width: MountedWidth, rim: RimInnerWidth| {
            let arc = TyreSection::new(width, rim).map(|section| section.arc()).ok()?;
            Some(2.0 * arc.radius_mm * (std::f64::consts::PI - arc.rim_angle_rad))
        };
        let before = casing(MountedWidth::new(mm).unwrap(), measured_on);
        let after = casing(width.arc, rim((on * mm).max(10.0)));
        prop_assert!(before.zip(after).is_none_or(|(before, after)| (before - after).abs() < 1e-6));
    }
}

/// Where floor and ceiling leave no mark of a gauge between them, the nearest tenth of a psi and hundredth of a bar is told.
#[test]
fn a_reading_between_two_close_limits_is_to_the_nearest_mark() {
    let with = |construction, bar| {
        let marks = PressureMarks { tyre: gear_math::Pressure::new(bar).ok(), ..PressureMarks::default() };
        let case = PressureCase { construction, ground: TyreGround::Soft, marks, ..case(50.0, 9.0, 40.0) };
        let wheel = case.advice().start.unwrap().rear;
        wheel.reading(wheel.start)
    };
    let tubeless = with(Construction::Tubeless, 1.502);
    assert!((tubeless.psi - 21.8).abs() < 1e-9 && (tubeless.bar - 1.5).abs() < 1e-9 && tubeless.in_tenths);
    let lowest = PressureCase {
        construction: Construction::Clincher,
        ground: TyreGround::Soft,
        ..case(50.0, 9.0, 40.0)
    };
    let floor = lowest.advice().floor.pressure.bar();
    let up = (floor * 100.0).ceil() / 100.0;
    let tube = with(Construction::Clincher, f64::midpoint(floor, up));
    assert!((tube.bar - floor).abs() <= 0.006, "{} for {floor}", tube.bar);
}

/// Texts that are shown in each other's place must differ.
fn all_differ(texts: &[String]) {
    let mut sorted = texts.to_vec();
    sorted.sort();
    sorted.dedup();
    assert!(sorted.len() == texts.len() && sorted.iter().all(|text| text.len() > 2), "{texts:?}");
}

#[test]
fn every_answer_on_tyres_has_words_of_its_own() {
    all_differ(&Construction::ALL.map(|it| it.to_string()));
    all_differ(&TyreGround::ALL.map(|it| it.to_string()));
    all_differ(&WheelStyle::ALL.map(|it| it.to_string()));
    let verdicts = [CalliperVerdict::Within, CalliperVerdict::AtLimit, CalliperVerdict::Over];
    all_differ(&verdicts.map(|it| it.to_string()));
    use gear_math::wheel::{RimCaution, WidthVerdict};
    let verdicts = [WidthVerdict::LikelyWithin, WidthVerdict::Measure, WidthVerdict::LikelyOver];
    all_differ(&verdicts.map(|it| it.to_string()));
    let cautions =
        [RimCaution::TooNarrowRim, RimCaution::NarrowRim, RimCaution::WideRim, RimCaution::NotForeseen];
    all_differ(&cautions.map(|it| it.to_string()));
    let errors =
        ["", "33", "650", "33-600", "2.1x"].map(|text| text.parse::<TyreSize>().unwrap_err().to_string());
    assert!(errors.iter().all(|text| text.len() > 10), "{errors:?}");
    let fit = TyreSection::new(MountedWidth::new(30.0).unwrap(), rim(32.0)).unwrap_err();
    assert!(fit.to_string().len() > 10);
}
