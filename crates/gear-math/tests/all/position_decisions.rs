//! What a position and a stem are told to look at, and the figures beside them.
#![expect(clippy::unwrap_used, reason = "planted values lie within their limits")]

use gear_math::chain::BottomBracketDrop;
use gear_math::position::{
    BarDepth, BarReach, BarShape, BarTolerance, BikePoint, ClampHeight, ExactStem, Footing, ForkRake,
    FrameReach, FrameStack, FrontCentre, FrontEnd, HeadAngle, MissingPiece, PedalOffset, PositionCaution,
    PositionChanges, Saddle, SaddleHeight, SeatAngle, Setback, SoleStack, Spacers, StemAngle, StemLength,
    StemSearchLimits, StemSetup, StemShortfall, TipToBar, ToeRoom, ToeVerdict, TopCap, keep_hoods,
};
use gear_math::rider::CrankLength;
use gear_math::wheel::WheelRadius;
use gear_math::{CrossBike, RoadPosition, StemSearch};
use proptest::prelude::*;

const EXACT_MM: f64 = 1e-9;

fn footing(crank: f64) -> Footing {
    Footing { crank: CrankLength::new(crank).unwrap(), sole_stack: SoleStack::new(15.0).unwrap() }
}

fn road(setback: f64, seat_angle: f64) -> RoadPosition {
    RoadPosition {
        saddle: Saddle {
            height: SaddleHeight::new(730.0).unwrap(),
            setback: Setback::new(setback).unwrap(),
            seat_angle: SeatAngle::new(seat_angle).unwrap(),
        },
        footing: footing(170.0),
        tip_to_bar: TipToBar::new(550.0).unwrap(),
        bar_drop: gear_math::position::BarDrop::new(70.0).unwrap(),
    }
}

fn cross(crank: f64, seat_angle: f64) -> CrossBike {
    CrossBike { seat_angle: SeatAngle::new(seat_angle).unwrap(), footing: footing(crank) }
}

/// UCI 1.3.013, text of 2014: the tip of the saddle is at least 50 mm behind the bottom bracket.
#[test]
fn a_saddle_less_than_50_mm_behind_is_named() {
    let named = |setback| {
        let carried = road(setback, 73.0).carried_to(&cross(170.0, 73.0), &PositionChanges::none());
        carried.cautions.contains(&PositionCaution::UnderRaceSetback)
    };
    assert_eq!([-20.0, 0.0, 49.9, 50.0, 50.1, 90.0].map(named), [true, true, true, false, false, false]);
}

#[test]
fn a_saddle_that_slides_far_either_way_is_named() {
    for seat_angle in [68.0, 70.0, 72.0, 74.0, 76.0, 78.0] {
        let carried = road(60.0, 73.0).carried_to(&cross(170.0, seat_angle), &PositionChanges::none());
        let far = carried.rail_shift_forward_mm.abs() > 20.0;
        assert_eq!(carried.cautions.contains(&PositionCaution::RailsMayRunOut), far, "{seat_angle}");
        assert_eq!(far, !(72.0..=74.0).contains(&seat_angle), "{}", carried.rail_shift_forward_mm);
    }
}

/// The knee stays over the pedal where the saddle comes forward by what the crank grew.
#[test]
fn a_longer_crank_brings_the_saddle_forward_only_where_the_knee_is_to_stay() {
    let setback = |crank, keep_knee_over_pedal| {
        let changes = PositionChanges { keep_knee_over_pedal, ..PositionChanges::none() };
        road(60.0, 73.0).carried_to(&cross(crank, 73.0), &changes).setback_mm.to_string()
    };
    assert_eq!([setback(175.0, true), setback(165.0, true)], ["55", "65"]);
    assert_eq!([setback(175.0, false), setback(165.0, false)], ["60", "60"]);
}

/// Stems of 70 to 130 mm are usual; 30 mm of spacers suit a carbon steerer, 40 mm any other (common practice).
#[test]
fn unusual_stems_and_stacks_of_spacers_are_named() {
    use PositionCaution::{LongStem, ShortStem, SpacersOnCarbonSteerer, SpacersOnMetalSteerer};
    let cautions = |length, spacers| {
        let [length, spacers] = [length, spacers];
        StemSetup {
            length: StemLength::new(length).unwrap(),
            angle: StemAngle::new(-6.0).unwrap(),
            spacers: Spacers::new(spacers).unwrap(),
        }
        .cautions()
    };
    assert_eq!(cautions(60.0, 0.0), [ShortStem]);
    assert_eq!([cautions(70.0, 30.0), cautions(100.0, 15.0), cautions(130.0, 0.0)], [[], [], []]);
    assert_eq!(cautions(140.0, 35.0), [LongStem, SpacersOnCarbonSteerer]);
    assert_eq!(cautions(100.0, 40.0), [SpacersOnCarbonSteerer]);
    assert_eq!(cautions(65.0, 45.0), [ShortStem, SpacersOnMetalSteerer]);
}

fn front() -> FrontEnd {
    FrontEnd {
        stack: FrameStack::new(560.0).unwrap(),
        reach: FrameReach::new(380.0).unwrap(),
        head_angle: HeadAngle::new(72.0).unwrap(),
        top_cap: TopCap::new(12.0).unwrap(),
        clamp_height: ClampHeight::new(40.0).unwrap(),
    }
}

/// 16 CFR 1512.17(d) asks for 89 mm; 100 mm without foot retention.
fn verdict_of(clearance_mm: f64) -> ToeVerdict {
    match clearance_mm {
        100.0.. => ToeVerdict::Clear,
        89.0.. => ToeVerdict::ClearWithRetention,
        _ => ToeVerdict::Short,
    }
}

proptest! {
    #[test]
    fn hoods_stay_when_the_bar_changes(
        x in 300.0..600.0_f64, y in 400.0..800.0_f64, old in 50.0..130.0_f64, new in 50.0..130.0_f64,
        depth in prop::option::of(80.0..180.0_f64),
    ) {
        let target = BikePoint { x_mm: x, y_mm: y };
        let shape = |reach| BarShape { reach: BarReach::new(reach).unwrap(), depth: None };
        let depth = depth.map(|depth| BarDepth::new(depth).unwrap());
        let placed = keep_hoods(target, &shape(old), &BarShape { depth, ..shape(new) });
        prop_assert!((placed.hoods.x_mm - (x + old)).abs() < EXACT_MM);
        prop_assert!((placed.centre.x_mm + new - placed.hoods.x_mm).abs() < EXACT_MM);
        prop_assert!((placed.centre.y_mm - y).abs() < EXACT_MM && (placed.hoods.y_mm - y).abs() < EXACT_MM);
        let drops = placed.drops_y_mm.map(|drops| placed.centre.y_mm - drops);
        prop_assert_eq!(drops.is_some(), depth.is_some());
        prop_assert!(drops.zip(depth).is_none_or(|(found, depth)| (found - depth.mm()).abs() < EXACT_MM));
    }

    #[test]
    fn the_tape_to_the_target_reads_what_was_asked(
        setback in -50.0..150.0_f64, seat_angle in 65.0..82.0_f64, off_x in -50.0..50.0_f64, off_y in -50.0..50.0_f64,
    ) {
        let carried = road(setback, 73.0).carried_to(&cross(172.5, seat_angle), &PositionChanges::default());
        prop_assert!((carried.tape_mm(carried.target) - carried.tip_to_bar_mm).abs() < EXACT_MM);
        let bar = BikePoint { x_mm: carried.target.x_mm + off_x, y_mm: carried.target.y_mm + off_y };
        prop_assert!((carried.tape_mm(bar) - carried.view.saddle_tip.distance_mm(bar)).abs() < EXACT_MM);
    }

    #[test]
    fn the_front_end_is_drawn_part_on_part(length in 60.0..140.0_f64, angle in -17.0..17.0_f64, spacers in 0.0..40.0_f64) {
        let setup = StemSetup {
            length: StemLength::new(length).unwrap(),
            angle: StemAngle::new(angle).unwrap(),
            spacers: Spacers::new(spacers).unwrap(),
        };
        let view = front().view(&setup);
        prop_assert_eq!(view.head_tube_top, BikePoint { x_mm: 380.0, y_mm: 560.0 });
        for (from, to, part) in [
            (view.head_tube_top, view.spacers_foot, 12.0),
            (view.spacers_foot, view.clamp_foot, spacers),
            (view.clamp_foot, view.clamp_top, 40.0),
            (view.clamp_foot, view.stem_on_steerer, 20.0),
            (view.stem_on_steerer, view.bar, length),
        ] {
            prop_assert!((from.distance_mm(to) - part).abs() < EXACT_MM, "{part}");
        }
        let up = view.head_tube_top.distance_mm(view.clamp_top);
        prop_assert!((up - 52.0 - spacers).abs() < EXACT_MM, "one line");
    }

    #[test]
    fn a_stem_is_one_that_is_sold_on_no_less_than_no_spacers(length in -50.0..250.0_f64, spacers in -40.0..80.0_f64) {
        let exact = ExactStem { angle: StemAngle::new(6.0).unwrap(), length_mm: length, spacers_mm: spacers };
        prop_assert_eq!(exact.is_a_stem(), (20.0..=160.0).contains(&length) && spacers >= 0.0);
    }

    #[test]
    fn room_for_the_toes_is_judged_by_the_published_figures(front_centre in 560.0..640.0_f64) {
        let room = ToeRoom {
            front_centre: FrontCentre::new(front_centre).unwrap(),
            bottom_bracket_drop: BottomBracketDrop::new(65.0).unwrap(),
            wheel_radius: WheelRadius::new(345.0).unwrap(),
            head_angle: HeadAngle::new(72.0).unwrap(),
            fork_rake: ForkRake::new(45.0).unwrap(),
            pedal_offset: PedalOffset::new(100.0).unwrap(),
            crank: CrankLength::new(170.0).unwrap(),
        };
        let toe = room.clearance();
        prop_assert_eq!(toe.verdict, verdict_of(toe.swept_mm));
    }

    /// What is missing is told of the length first; of the spacers where the length is right, or where the nearest
    /// set-up has none left to take away or to add.
    #[test]
    fn a_target_out_of_reach_names_every_piece_that_is_missing(
        x in 150.0..750.0_f64, y in 450.0..800.0_f64, most in 0.0..=40.0_f64,
    ) {
        let limits = StemSearchLimits {
            tolerance: BarTolerance::new(1.0).unwrap(),
            max_spacers: Spacers::new(most).unwrap(),
        };
        let StemSearch::NoneFits(StemShortfall { nearest, lack, other }) =
            front().search_stems(BikePoint { x_mm: x, y_mm: y }, &limits)
        else {
            return Ok(());
        };
        let used = nearest.setup.spacers.mm();
        for lack in std::iter::once(&lack).chain(&other) {
            let ExactStem { length_mm: length, spacers_mm: spacers, .. } = lack.exact;
            let names = |wanted: fn(&MissingPiece) -> bool| lack.missing.iter().any(wanted);
            let length_fits = (60.0..=140.0).contains(&length);
            prop_assert_eq!(names(|it| matches!(it, MissingPiece::ShorterStem { .. })), length < 60.0);
            prop_assert_eq!(names(|it| matches!(it, MissingPiece::LongerStem { .. })), length > 140.0);
            let too_high = spacers < 0.0 && (length_fits || used == 0.0);
            prop_assert_eq!(names(|it| matches!(it, MissingPiece::LowerFront { .. })), too_high);
            let too_low = spacers > most && (length_fits || used + 5.0 > most);
            prop_assert_eq!(names(|it| matches!(it, MissingPiece::HigherFront { .. })), too_low);
            let buildable = length_fits && (0.0..=most).contains(&spacers);
            prop_assert_eq!(names(|it| matches!(it, MissingPiece::FinerSteps)), buildable);
        }
    }
}

#[test]
fn every_caution_reads_differently() {
    let mut texts: Vec<String> = PositionCaution::ALWAYS.iter().map(ToString::to_string).collect();
    texts.extend(
        [
            PositionCaution::UnderRaceSetback,
            PositionCaution::RailsMayRunOut,
            PositionCaution::ShortStem,
            PositionCaution::LongStem,
        ]
        .map(|caution| caution.to_string()),
    );
    let pieces = [
        MissingPiece::ShorterStem { by_mm: 7.0 },
        MissingPiece::LongerStem { by_mm: 7.0 },
        MissingPiece::LowerFront { by_mm: 7.0 },
        MissingPiece::HigherFront { by_mm: 7.0 },
    ];
    assert!(pieces.iter().all(|piece| piece.to_string().contains("7 mm")));
    texts.extend(pieces.iter().map(ToString::to_string));
    let count = texts.len();
    texts.sort();
    texts.dedup();
    assert_eq!(texts.iter().filter(|text| text.len() > 20).count(), count);
}
