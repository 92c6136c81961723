//! What must hold for the chain of any bicycle, not only the tabulated ones.
#![expect(clippy::unwrap_used, reason = "planted values lie within their limits")]

use gear_math::chain::{
    BottomBracketDrop, Cage, CageAngle, CageMeasures, CentreDistance, ChainDefaults, ChainFit, ChainPath,
    ChainPitch, ChainstayLength, Change, ForeStop, FrameMeasures, GearState, GuideAngle, Hanger, HangerDrop,
    PathError, PitchCircle, PulleyCentres, PulleyGap, RearStop, Remedy, TwoSprocketDrive,
};
use gear_math::gears::Pulley;
use gear_math::{ChainLinks, ChainSetup, Derailleur, Drivetrain, Gear, Sprocket};
use proptest::prelude::*;

fn frame(chainstay: f64, drop: f64) -> FrameMeasures {
    FrameMeasures {
        chainstay: ChainstayLength::new(chainstay).unwrap(),
        bottom_bracket_drop: BottomBracketDrop::new(drop).unwrap(),
    }
}

fn cage(centres: f64, pulleys: [u16; 2], guide_angle: f64, gap: f64) -> Cage {
    let [guide, tension] = pulleys.map(|teeth| Pulley::new(teeth).unwrap());
    Cage::new(CageMeasures {
        pulley_centres: PulleyCentres::new(centres).unwrap(),
        guide,
        tension,
        gap: PulleyGap::new(gap).unwrap(),
        guide_angle: GuideAngle::new(guide_angle).unwrap(),
        ..ChainDefaults::CAGE
    })
    .unwrap()
}

prop_compose! {
    /// Layouts of the range over which the length is known to fall with the cage angle.
    fn usual_layout()(
        stay in 400.0..460.0, drop in 50.0..80.0, centres in 52.0..100.0, guide in 10_u16..=12, tension in 10_u16..=12,
        forward in 0.0..20.0, gap in 8.0..20.0,
    ) -> (FrameMeasures, Cage) {
        (frame(stay, drop), cage(centres, [guide, tension], forward, gap))
    }
}

prop_compose! {
    fn usual_bike()(
        small in 28_u16..44, difference in 4_u16..=16, first in 10_u16..=12, second in 15_u16..=22, last in 25_u16..=42,
    ) -> Drivetrain {
        Drivetrain {
            chainset: format!("{}/{small}", small + difference).parse().unwrap(),
            cassette: format!("{first}-{second}-{last}").parse().unwrap(),
        }
    }
}

fn setup(drivetrain: Drivetrain, (frame, cage): (FrameMeasures, Cage)) -> ChainSetup {
    ChainSetup { chainline: ChainDefaults::chainline(&drivetrain), drivetrain, frame, cage }
}

fn fit(setup: &ChainSetup, links: u16) -> ChainFit {
    setup.fit(Some(ChainLinks::new(links).unwrap())).unwrap()
}

/// Grows with the length of the chain.
fn ease(state: GearState) -> u8 {
    match state {
        GearState::TooTight => 0,
        GearState::TightButUsual => 1,
        GearState::Comfortable => 2,
        GearState::Slack => 3,
    }
}

proptest! {
    #[test]
    fn the_path_shortens_as_the_cage_swings_forward(
        (frame, cage) in usual_layout(), ring in 28_u16..=53, sprocket in 10_u16..=45, angle in -90.0..64.9,
    ) {
        let gear = Gear::new(ring, sprocket).unwrap();
        let length = |degrees| {
            let angle = CageAngle::new(degrees).unwrap();
            ChainPath::trace(gear, &frame, &cage, angle).unwrap().length_mm
        };
        prop_assert!(length(angle + 0.1) < length(angle));
    }

    #[test]
    fn a_solved_angle_gives_its_links_back(layout in usual_layout(), bike in usual_bike(), extra in 0_u16..4) {
        let setup = setup(bike, layout);
        let fit = fit(&setup, setup.fit(None).unwrap().recommended.count() + 2 * extra);
        for gear in &fit.gears {
            let Some(angle) = gear.cage_angle else { continue };
            let path = ChainPath::trace(gear.gear, &setup.frame, &setup.cage, angle).unwrap();
            prop_assert!((path.links() - f64::from(fit.links.count())).abs() < 1e-6);
            prop_assert!(gear.links_over.abs() < f64::EPSILON);
        }
    }

    #[test]
    fn what_is_left_over_closes_the_gap(layout in usual_layout(), bike in usual_bike(), links in 48_u16..65) {
        let setup = setup(bike, layout);
        let stops = setup.cage.measures();
        for gear in fit(&setup, 2 * links).gears.iter().filter(|gear| gear.cage_angle.is_none()) {
            let stop =
                if gear.links_over > 0.0 { stops.rear_stop.degrees() } else { stops.fore_stop.degrees() };
            let angle = CageAngle::new(stop).unwrap();
            let at_stop = ChainPath::trace(gear.gear, &setup.frame, &setup.cage, angle).unwrap();
            prop_assert!((at_stop.links() + gear.links_over - f64::from(2 * links)).abs() < 1e-6);
        }
    }

    #[test]
    fn two_more_links_never_make_a_gear_tighter(
        layout in usual_layout(), bike in usual_bike(), links in 48_u16..65,
    ) {
        let setup = setup(bike, layout);
        let [shorter, longer] = [fit(&setup, 2 * links), fit(&setup, 2 * links + 2)];
        for (short, long) in shorter.gears.iter().zip(&longer.gears) {
            prop_assert!(long.drawn_angle <= short.drawn_angle);
            prop_assert!(long.links_over >= short.links_over);
            prop_assert!(ease(long.state) >= ease(short.state));
        }
    }

    #[test]
    fn the_recommended_chain_is_safe_in_the_largest_gear(layout in usual_layout(), bike in usual_bike()) {
        let fit = setup(bike, layout).fit(None).unwrap();
        prop_assert!(fit.recommended >= fit.window.shortest && fit.recommended >= fit.big_big_plus_two);
        prop_assert!(fit.gears.iter().all(|gear| gear.links_over >= 0.0));
        prop_assert_eq!(fit.all_usable(), fit.recommended <= fit.window.longest);
    }

    /// For doubles and largest sprockets up to 36 teeth the spread is half a tooth over all bikes; a usual bike
    /// with the same cage stands for them.
    #[test]
    fn geometric_capacity_hardly_depends_on_the_bike(
        stay in 410.0..445.0, drop in 58.0..72.0, centres in 55.0..100.0, large in 44_u16..=50, small in 30_u16..=36,
        last in 25_u16..=36,
    ) {
        let capacity = |stay, drop, rings: String, last| {
            let drivetrain =
                Drivetrain { chainset: rings.parse().unwrap(), cassette: format!("11-{last}").parse().unwrap() };
            let layout = (frame(stay, drop), cage(centres, [11, 11], 10.0, 12.5));
            setup(drivetrain, layout).fit(None).unwrap().capacity_teeth
        };
        let usual = capacity(425.0, 65.0, "46/33".to_owned(), 32);
        let found = capacity(stay, drop, format!("{large}/{small}"), last);
        prop_assert!((found - usual).abs() < 0.5);
    }

    #[test]
    fn a_stated_capacity_is_met(layout in usual_layout(), bike in usual_bike(), change in -4.0..1.0_f64) {
        let setup = setup(bike, layout);
        let stated = (setup.fit(None).unwrap().capacity_teeth + change) as u16;
        let calibrated = setup.with_stated_capacity(stated).unwrap().expect("within the rest position's limits");
        prop_assert!((calibrated.fit(None).unwrap().capacity_teeth - f64::from(stated)).abs() < 1e-6);
    }

    #[test]
    fn two_wheels_do_not_mind_their_order(first in 10_u16..=60, second in 10_u16..=60, centres in 400.0..460.0) {
        let wheel = |teeth| PitchCircle::new(teeth, ChainPitch::BICYCLE).unwrap();
        let centres = CentreDistance::new(centres).unwrap();
        let drive = |a, b| TwoSprocketDrive::new(wheel(a), wheel(b), centres).unwrap();
        prop_assert_eq!(drive(first, second), drive(second, first));
        prop_assert!((drive(first, second).exact_links() - drive(first, second).handbook_links()).abs() < 0.02);
    }

    #[test]
    fn a_taut_centre_distance_gives_its_links_back(
        first in 10_u16..=50, second in 10_u16..=50, pairs in 45_u16..=70,
    ) {
        let wheel = |teeth| PitchCircle::new(teeth, ChainPitch::BICYCLE).unwrap();
        let drive = |centres| {
            TwoSprocketDrive::new(wheel(first), wheel(second), CentreDistance::new(centres).unwrap())
        };
        let links = ChainLinks::new(2 * pairs).unwrap();
        let found = drive(drive(1000.0).unwrap().taut_centres_mm(links).unwrap()).unwrap();
        prop_assert!((found.handbook_links() - f64::from(2 * pairs)).abs() < 1e-9);
    }

    #[test]
    fn every_remedy_helps_and_the_least_comes_first(
        bike in usual_bike(), centres in 50.0..75.0, pairs in proptest::option::of(50_u16..60),
    ) {
        let setup = setup(bike, (ChainDefaults::FRAME, cage(centres, [11, 11], 10.0, 12.5)));
        let links = pairs.map(|pairs| ChainLinks::new(2 * pairs).unwrap());
        let advice = setup.advise(links, &Derailleur::default(), &ChainDefaults::HANGER).unwrap();
        prop_assert!(advice.remedies.windows(2).all(|pair| pair[0].effort <= pair[1].effort));
        if advice.fit.all_usable() {
            prop_assert!(advice.remedies.is_empty());
        }
        for Remedy { change, fit, .. } in &advice.remedies {
            match change {
                Change::AvoidGears(gears) => {
                    prop_assert_eq!(gears, &fit.in_state(GearState::Slack).collect::<Vec<_>>());
                    prop_assert_eq!(fit.in_state(GearState::TooTight).count(), 0);
                }
                _ => prop_assert!(fit.all_usable()),
            }
        }
    }

    #[test]
    fn the_longer_cage_is_the_shortest_that_will_do(bike in usual_bike(), centres in 50.0..75.0) {
        let with = |centres| setup(bike, (ChainDefaults::FRAME, cage(centres, [11, 11], 10.0, 12.5)));
        let advice = with(centres).advise(None, &Derailleur::default(), &ChainDefaults::HANGER).unwrap();
        for remedy in advice.remedies {
            let Change::LongerCage(enough) = remedy.change else { continue };
            prop_assert!(with(enough.mm()).window().unwrap().is_open());
            prop_assert!(!with((enough.mm() - 1.0).max(centres)).window().unwrap().is_open());
        }
    }

    #[test]
    fn a_longer_hanger_reaches_as_far_as_before(usual in 25_u16..34, more in 1_u16..12, drop in 24.0..35.0) {
        let [usual, wanted] = [usual, usual + more].map(|teeth| Sprocket::new(teeth).unwrap());
        let (frame, cage) = (ChainDefaults::FRAME, Cage::new(ChainDefaults::CAGE).unwrap());
        let hanger = Hanger { drop: HangerDrop::new(drop).unwrap(), ..ChainDefaults::HANGER };
        let extension = hanger.extension_mm(usual, wanted, &frame, &cage).unwrap();
        let longer = Hanger { drop: HangerDrop::new(drop + extension).unwrap(), ..hanger };
        let change = longer.reach_mm(wanted, &frame, &cage) - hanger.reach_mm(usual, &frame, &cage);
        prop_assert!(change.abs() < 1e-9 && extension > 0.0);
    }
}

/// A gear and a cage of any measures that may be typed.
type Typed = (CageMeasures, FrameMeasures, Drivetrain, u16);

fn typed() -> impl Strategy<Value = Typed> {
    let cages = (10.0..=150.0, 8_u16..=20, 8_u16..=20, 0.0..=40.0, -20.0..=45.0, -90.0..=0.0, 10.0..=78.0);
    let measures = cages.prop_map(|(centres, guide, tension, gap, forward, rear, fore)| CageMeasures {
        pulley_centres: PulleyCentres::new(centres).unwrap(),
        guide: Pulley::new(guide).unwrap(),
        tension: Pulley::new(tension).unwrap(),
        gap: PulleyGap::new(gap).unwrap(),
        guide_angle: GuideAngle::new(forward).unwrap(),
        rear_stop: RearStop::new(rear).unwrap(),
        fore_stop: ForeStop::new(fore).unwrap(),
    });
    let frames = (350.0..=550.0, -40.0..=120.0).prop_map(|(stay, drop)| frame(stay, drop));
    let gears = (20_u16..=60, 9_u16..=60).prop_map(|(ring, sprocket)| Drivetrain {
        chainset: ring.to_string().parse().unwrap(),
        cassette: sprocket.to_string().parse().unwrap(),
    });
    (measures, frames, gears, 30_u16..=95)
}

/// Every value that may be typed gives finite answers or an error that names two wheels; most give answers.
#[test]
fn nothing_typed_breaks_the_path() {
    let answered = core::cell::Cell::new([0, 0]);
    let mut runner = proptest::test_runner::TestRunner::new(ProptestConfig::default());
    let run = runner.run(&typed(), |(measures, frame, drivetrain, pairs)| {
        let fit = Cage::new(measures)
            .and_then(|cage| setup(drivetrain, (frame, cage)).fit(ChainLinks::new(2 * pairs).ok()));
        let [asked, answers] = answered.get();
        answered.set([asked + 1, answers + u32::from(fit.is_ok())]);
        match fit {
            Ok(fit) => is_sound(&fit, &measures),
            Err(error) => {
                let names_two_wheels = matches!(error, PathError::WheelsOverlap { .. });
                prop_assert!(names_two_wheels);
                Ok(())
            }
        }
    });
    let [asked, answers] = answered.get();
    assert!(run.is_ok() && 2 * answers > asked, "{run:?}, {answers} of {asked}");
}

fn is_sound(fit: &ChainFit, measures: &CageMeasures) -> Result<(), TestCaseError> {
    let gear = fit.gears[0];
    prop_assert!(fit.capacity_teeth.is_finite() && gear.links_over.is_finite());
    prop_assert!(fit.window.shortest_exact < fit.window.longest_exact);
    prop_assert_eq!(gear.cage_angle.is_some(), gear.links_over.abs() < f64::EPSILON);
    let limits = measures.rear_stop.degrees() - 1e-9..=GearState::TIGHT_TO_DEGREES + 1e-9;
    prop_assert!(limits.contains(&gear.drawn_angle.degrees()));
    Ok(())
}

proptest! {
    /// A jump would be a whole turn round a pulley, 100 mm or more: what a cage far back and far forward once did.
    #[test]
    fn no_path_jumps_as_its_cage_swings((measures, frame, drivetrain, _) in typed()) {
        const MM_PER_DEGREE: f64 = 8.0;
        let gear = Gear { ring: drivetrain.chainset.largest(), sprocket: drivetrain.cassette.largest() };
        let length = |cage: &Cage, angle: i8| {
            ChainPath::trace(gear, &frame, cage, CageAngle::new(f64::from(angle)).unwrap()).map(|path| path.length_mm)
        };
        let Ok(cage) = Cage::new(measures) else { return Ok(()) };
        let Ok(lengths) = (-90..=78).map(|angle| length(&cage, angle)).collect::<Result<Vec<_>, _>>() else { return Ok(()) };
        for pair in lengths.windows(2) {
            prop_assert!((pair[1] - pair[0]).abs() < MM_PER_DEGREE, "{pair:?}");
        }
    }

    #[test]
    fn links_to_the_stops_say_where_the_cage_stands(bike in usual_bike(), layout in usual_layout(), pairs in 48_u16..64) {
        for gear in fit(&setup(bike, layout), 2 * pairs).gears {
            let beyond = (-gear.to_rear_stop).max(0.0) - (-gear.to_fore_stop).max(0.0);
            prop_assert!((beyond - gear.links_over).abs() < 1e-9, "{gear:?}");
            prop_assert!(gear.to_fore_stop + gear.to_rear_stop > 0.0);
        }
    }

    #[test]
    fn a_sagging_run_is_as_long_as_its_chain(angle in -75.0..60.0, links in 0.0..0.8) {
        const PIECES: i32 = 2000;
        let cage = Cage::new(ChainDefaults::CAGE).unwrap();
        let gear = Gear::new(34, 13).unwrap();
        let run = ChainPath::trace(gear, &ChainDefaults::FRAME, &cage, CageAngle::new(angle).unwrap()).unwrap().runs[0];
        let (sag, surplus) = (run.sag_mm(links), links * ChainPitch::BICYCLE.mm());
        let depth = |share: f64| 4.0 * sag * share * (1.0 - share);
        let piece = |at: i32| {
            let [from, to] = [at, at + 1].map(|at| f64::from(at) / f64::from(PIECES));
            (run.length_mm / f64::from(PIECES)).hypot(depth(to) - depth(from))
        };
        let hanging: f64 = (0..PIECES).map(piece).sum();
        prop_assert!((hanging - run.length_mm - surplus).abs() < 0.03 * surplus + 1e-6, "{hanging}");
    }
}
