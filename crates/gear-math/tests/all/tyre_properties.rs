//! Properties of tyre width, roll-out, air spring and pressure.

use gear_math::rider::{BikeMass, BodyMass, KitMass};
use gear_math::wheel::{
    AirSpring, BeadSeat, Construction, FrontShare, LabelEdition, MountedWidth, NominalWidth, PressureMarks,
    RaceLimit, RimInnerWidth, TyreFitError, TyreGround, TyreSection, TyreWidth, WheelLoad, WheelRadius,
    WheelStyle, WidthVerdict, contact_area_cm2,
};
use gear_math::{Pressure, PressureCase, TyreSize};
use proptest::prelude::*;

/// Relative: a few thousand roundings.
const EXACT: f64 = 1e-12;

/// Any value that a quantity allows.
macro_rules! any {
    ($type:ident) => {
        ($type::LIMITS.min..=$type::LIMITS.max).prop_filter_map("limits", |value| $type::new(value).ok())
    };
}

prop_compose! {
    fn spring()(
        width in any!(MountedWidth), rim_part in 0.3..0.9, outer_radius in any!(WheelRadius), pressure in any!(Pressure),
    ) -> Option<AirSpring> {
        let section = TyreSection::new(width, RimInnerWidth::new(rim_part * width.mm()).ok()?).ok()?;
        Some(AirSpring { section, outer_radius, pressure })
    }
}

prop_compose! {
    fn marks()(
        tyre in prop::option::of(any!(Pressure)), rim in prop::option::of(any!(Pressure)),
        least in prop::option::weighted(0.2, any!(Pressure)), hookless in any::<bool>(),
    ) -> PressureMarks {
        PressureMarks { tyre, rim, least, hookless }
    }
}

prop_compose! {
    fn case()(
        rider in any!(BodyMass), kit_and_bike in prop::option::of((any!(KitMass), any!(BikeMass))), width in any!(MountedWidth),
        label in prop::option::of(any!(NominalWidth)),
        construction in prop::sample::select(Construction::ALL.as_slice()),
        ground in prop::sample::select(TyreGround::ALL.as_slice()),
        style in prop::sample::select(WheelStyle::ALL.as_slice()),
        front_share in any!(FrontShare), marks in marks(),
    ) -> PressureCase {
        PressureCase { rider, kit_and_bike, width, label, construction, ground, style, front_share, marks }
    }
}

fn starts(case: &PressureCase) -> Option<[f64; 2]> {
    let start = case.advice().start.ok()?;
    Some([start.front.start.bar(), start.rear.start.bar()])
}

proptest! {
    #[test]
    fn width_grows_with_the_rim(
        label in any!(NominalWidth), a in any!(RimInnerWidth), b in any!(RimInnerWidth), measured_on in any!(RimInnerWidth),
    ) {
        let on = |rim| TyreWidth::on_rim(label, rim, measured_on);
        let (a, b) = if a < b { (a, b) } else { (b, a) };
        match (on(a), on(b)) {
            (Ok(first), Ok(second)) => {
                prop_assert!(first.mounted < second.mounted);
                prop_assert!(first.arc.mm() < second.arc.mm() + EXACT * label.mm());
            }
            (Err(TyreFitError::MeasuringRimTooWide), _) => prop_assert!(measured_on.mm() >= label.mm()),
            (Err(_), second) => prop_assert!(a.mm() >= label.mm() && second.is_err()),
            (Ok(_), Err(_)) => prop_assert!(a.mm() < label.mm() && b.mm() >= label.mm()),
        }
    }

    #[test]
    fn a_tyre_on_its_measuring_rim_is_as_wide_as_its_label(label in any!(NominalWidth)) {
        for edition in [LabelEdition::Etrto2020, LabelEdition::OlderIso] {
            let rim = edition.measuring_rim(label);
            let width = TyreWidth::on_rim(label, rim, rim).unwrap();
            prop_assert!((width.mounted.mm() - label.mm()).abs() < EXACT * label.mm());
            prop_assert!((width.arc.mm() - label.mm()).abs() < EXACT * label.mm());
        }
    }

    #[test]
    fn computed_widths_keep_to_their_own_limits(
        label in any!(NominalWidth), rim in any!(RimInnerWidth), measured_on in any!(RimInnerWidth),
    ) {
        let Ok(width) = TyreWidth::on_rim(label, rim, measured_on) else { return Ok(()) };
        prop_assert!(MountedWidth::new(width.mounted.mm()).is_ok());
        prop_assert!(TyreSection::new(width.mounted, rim).is_ok());
        prop_assert!(width.arc.mm() >= rim.mm());
    }

    #[test]
    fn the_arc_ends_on_the_rim(width in any!(MountedWidth), rim in any!(RimInnerWidth)) {
        let Ok(section) = TyreSection::new(width, rim) else { return Ok(()) };
        let arc = section.arc();
        prop_assert!((arc.radius_mm * arc.rim_angle_rad.sin() - arc.half_rim_mm).abs() < 1e-9);
        prop_assert!((arc.half_rim_mm.hypot(arc.centre_height_mm) - arc.radius_mm).abs() < 1e-9);
        prop_assert!((arc.height_mm - arc.centre_height_mm - arc.radius_mm).abs() < 1e-9);
    }

    #[test]
    fn a_wider_limit_is_never_harder_to_pass(label in any!(NominalWidth), rim in any!(RimInnerWidth)) {
        let rank = |verdict| match verdict {
            WidthVerdict::LikelyWithin => 0,
            WidthVerdict::Measure => 1,
            WidthVerdict::LikelyOver => 2,
        };
        let measured_on = LabelEdition::Etrto2020.measuring_rim(label);
        for width in [Some(TyreWidth::tubular(label)), TyreWidth::on_rim(label, rim, measured_on).ok()] {
            let ranks = RaceLimit::CHOICES.map(|limit| width.map_or(0, |width| rank(width.verdict(limit))));
            prop_assert!(ranks.is_sorted_by(|a, b| a >= b));
        }
    }

    #[test]
    fn roll_out_grows_with_the_label(a in any!(NominalWidth), b in any!(NominalWidth), bead_seat in prop::sample::select(BeadSeat::ALL.as_slice())) {
        prop_assume!(a < b);
        let size = |width| TyreSize { width, bead_seat };
        prop_assert!(size(a).circumference() < size(b).circumference());
        prop_assert!(size(a).outer_radius() < size(b).outer_radius());
        prop_assert!(WheelRadius::new(size(a).outer_radius().mm()).is_ok());
        prop_assert!(size(b).clearance_diameter() > size(b).circumference().diameter());
    }

    /// What a tyre does under single loads is held against integration in the reference table of air springs; that table
    /// stands for all pressures, since as much more air as load leaves the drop as it is.
    #[test]
    fn the_drop_depends_on_load_over_pressure(spring in spring(), load in any!(WheelLoad), times in 1.01..4.0_f64) {
        let Some(spring) = spring else { return Ok(()) };
        let harder = Pressure::new(spring.pressure.bar() * times).map(|pressure| AirSpring { pressure, ..spring });
        let (Ok(harder), Ok(heavier)) = (harder, WheelLoad::new(load.newtons() * times)) else { return Ok(()) };
        let (tyre, other) = (spring.under(load), harder.under(heavier));
        prop_assert!((tyre.drop - other.drop).abs() < 1e-9);
        prop_assert!((tyre.deflection_mm - tyre.drop * spring.section.height_mm()).abs() < 1e-6);
        prop_assert!((tyre.bottoming_reserve / other.bottoming_reserve - 1.0).abs() < 1e-9);
        let reserve = spring.under(heavier).bottoming_reserve * times;
        prop_assert!((tyre.bottoming_reserve / reserve - 1.0).abs() < 1e-9);
    }

    #[test]
    fn more_load_or_less_air_presses_a_tyre_further(spring in spring(), load in any!(WheelLoad), more in 1.01..3.0) {
        let Some(spring) = spring else { return Ok(()) };
        let tyre = spring.under(load);
        prop_assert!((0.0..=1.0).contains(&tyre.drop));
        if let Ok(heavier) = WheelLoad::new(load.newtons() * more) {
            let pressed = spring.under(heavier);
            prop_assert!(pressed.deflection_mm >= tyre.deflection_mm);
            prop_assert!(pressed.bottoming_reserve < tyre.bottoming_reserve);
            prop_assert!(pressed.contact_area_cm2 > tyre.contact_area_cm2);
        }
        if let Ok(pressure) = Pressure::new(spring.pressure.bar() / more) {
            let softer = AirSpring { pressure, ..spring };
            prop_assert!(softer.under(load).drop >= tyre.drop);
            prop_assert!(softer.bottoming_energy_j() < spring.bottoming_energy_j());
            prop_assert!(contact_area_cm2(load, pressure) > tyre.contact_area_cm2);
        }
    }

    #[test]
    fn pressure_never_leaves_floor_or_ceiling(case in case()) {
        let advice = case.advice();
        let (floor, ceiling) = (advice.floor.pressure, advice.ceiling.map(|ceiling| ceiling.pressure));
        match advice.start {
            Ok(wheels) => for wheel in [wheels.front, wheels.rear] {
                prop_assert!(floor <= wheel.low && wheel.low <= wheel.start && wheel.start <= wheel.high);
                prop_assert!(ceiling.is_none_or(|ceiling| wheel.high <= ceiling));
                prop_assert!(wheel.start.bar().is_finite());
            },
            Err(conflict) => prop_assert!(conflict.floor.pressure > conflict.ceiling.pressure),
        }
    }

    #[test]
    fn what_is_shown_never_leaves_floor_or_ceiling(case in case()) {
        let advice = case.advice();
        let (floor, ceiling) = (advice.floor.pressure, advice.ceiling.map(|ceiling| ceiling.pressure));
        let Ok(wheels) = advice.start else { return Ok(()) };
        for wheel in [wheels.front, wheels.rear] {
            for pressure in [wheel.low, wheel.start, wheel.high] {
                let shown = wheel.reading(pressure);
                // Half a step of a scale that has no mark between floor and ceiling; else only arithmetic.
                let span = ceiling.map_or(f64::INFINITY, |most| most.psi() - floor.psi());
                let psi = if span < 0.1 { 0.05 } else { 0.0 } + 1e-6;
                let bar = if span * 0.0689 < 0.01 { 0.005 } else { 0.0 } + 1e-6;
                prop_assert!(shown.psi >= floor.psi() - psi && shown.bar >= floor.bar() - bar);
                prop_assert!(ceiling.is_none_or(|most| shown.psi <= most.psi() + psi && shown.bar <= most.bar() + bar));
                let step = if shown.in_tenths { 0.1 } else { 1.0 };
                prop_assert!((shown.psi - pressure.psi()).abs() <= step);
                prop_assert!((shown.bar - pressure.bar()).abs() <= 0.01);
            }
        }
    }

    #[test]
    fn a_tyre_of_25_mm_or_less_is_never_under_3_bar(case in case(), label in 18.0..=25.0_f64) {
        prop_assume!(case.construction != Construction::Tubular);
        let narrow = PressureCase { label: NominalWidth::new(label).ok(), ..case };
        match narrow.advice().start {
            Ok(wheels) => prop_assert!(wheels.front.low.bar() >= 3.0 && wheels.rear.low.bar() >= 3.0),
            Err(conflict) => prop_assert!(conflict.ceiling.pressure < conflict.floor.pressure),
        }
    }

    #[test]
    fn what_is_given_keeps_to_every_mark(case in case()) {
        let Ok(wheels) = case.advice().start else { return Ok(()) };
        for wheel in [wheels.front, wheels.rear] {
            prop_assert!(case.marks.least.is_none_or(|least| wheel.low >= least));
            prop_assert!(case.marks.tyre.is_none_or(|most| wheel.high <= most));
            prop_assert!(case.marks.rim.is_none_or(|most| wheel.high <= most));
        }
    }

    #[test]
    fn a_wider_tyre_never_has_a_higher_floor(case in case(), width in any!(MountedWidth)) {
        prop_assume!(width > case.width);
        let floor = |case: PressureCase| case.advice().floor.pressure.psi();
        let wider = floor(PressureCase { width, ..case });
        prop_assert!(wider <= floor(case));
        let (marks, ground) = (PressureMarks::default(), TyreGround::Soft);
        let tubed = |width| floor(PressureCase { width, construction: Construction::Clincher, marks, ground, label: None, ..case });
        let custom = 35.0 * (33.0 / width.mm()).powf(1.5);
        prop_assert!(tubed(width) >= custom - 1e-9);
        if width.mm() > 28.0 && custom > 21.8 {
            prop_assert!((tubed(width) - custom).abs() < 1e-9);
        }
    }

    #[test]
    fn the_floor_has_no_step_in_mass(case in case(), kg in 30.0..150.0_f64) {
        let floor = |kg| Some(PressureCase { rider: BodyMass::new(kg).ok()?, ..case }.advice().floor.pressure.psi());
        let (Some(here), Some(heavier)) = (floor(kg), floor(kg + 0.1)) else { return Ok(()) };
        prop_assert!((0.0..=0.134 * case.width_factor()).contains(&(heavier - here)));
    }

    #[test]
    fn pressure_rises_with_mass(case in case(), rider in any!(BodyMass)) {
        prop_assume!(rider > case.rider);
        let heavier = PressureCase { rider, ..case };
        prop_assert!(heavier.advice().mean > case.advice().mean);
        if let (Some(before), Some(after)) = (starts(&case), starts(&heavier)) {
            prop_assert!(before[0] <= after[0] && before[1] <= after[1]);
        }
    }

    #[test]
    fn pressure_falls_with_width(case in case(), width in any!(MountedWidth)) {
        prop_assume!(width > case.width);
        let wider = PressureCase { width, ..case };
        prop_assert!(wider.advice().mean < case.advice().mean);
        if let (Some(before), Some(after)) = (starts(&case), starts(&wider)) {
            prop_assert!(before[0] >= after[0] && before[1] >= after[1]);
        }
    }

    #[test]
    fn the_wheels_share_the_mean_and_the_load(case in case()) {
        let free = PressureCase { marks: PressureMarks::default(), ..case };
        let loads = free.loads();
        prop_assert!((loads.front.newtons() + loads.rear.newtons() - free.total_kg() * 9.81).abs() < 1e-9);
        prop_assert!(WheelLoad::new(loads.front.newtons()).is_ok() && WheelLoad::new(loads.rear.newtons()).is_ok());
        let advice = free.advice();
        let wheels = advice.start.unwrap();
        if wheels.front.limited_by.is_none() && wheels.rear.limited_by.is_none() {
            let mean = wheels.front.start.bar().midpoint(wheels.rear.start.bar());
            prop_assert!((mean - advice.mean.bar()).abs() < 1e-9);
        }
    }
}
