//! Properties of positions, stems and toe clearance.

use gear_math::chain::BottomBracketDrop;
use gear_math::position::{
    BarCloser, BarDrop, BarRaise, BarTolerance, BikePoint, ClampHeight, Footing, ForkRake, FrameReach,
    FrameStack, FrontCentre, FrontEnd, HeadAngle, MissingPiece, PedalOffset, PositionChanges, Saddle,
    SaddleHeight, SaddleLowering, SeatAngle, Setback, SoleStack, Spacers, StemAngle, StemLack, StemLength,
    StemSearchLimits, StemSetup, StemShortfall, TipToBar, ToeRoom, TopCap,
};
use gear_math::rider::CrankLength;
use gear_math::wheel::WheelRadius;
use gear_math::{CrossBike, RoadPosition, StemSearch};
use proptest::prelude::*;

/// Plane geometry in lengths of up to a metre: far more than rounding, far less than anyone can tape.
const EXACT_MM: f64 = 1e-9;

/// Any value that a quantity allows.
macro_rules! any {
    ($type:ident) => {
        ($type::LIMITS.min..=$type::LIMITS.max).prop_filter_map("limits", |value| $type::new(value).ok())
    };
}

prop_compose! {
    fn footing()(crank in any!(CrankLength), sole_stack in any!(SoleStack)) -> Footing {
        Footing { crank, sole_stack }
    }
}

prop_compose! {
    fn road()(
        height in any!(SaddleHeight), setback in any!(Setback), seat_angle in any!(SeatAngle), footing in footing(),
        tip_to_bar in any!(TipToBar), bar_drop in any!(BarDrop),
    ) -> RoadPosition {
        RoadPosition { saddle: Saddle { height, setback, seat_angle }, footing, tip_to_bar, bar_drop }
    }
}

prop_compose! {
    fn changes()(
        lower_by in any!(SaddleLowering), bar_up_by in any!(BarRaise), bar_closer_by in any!(BarCloser),
        keep_knee_over_pedal in any::<bool>(),
    ) -> PositionChanges {
        PositionChanges { lower_by, bar_up_by, bar_closer_by, keep_knee_over_pedal }
    }
}

prop_compose! {
    fn cross()(seat_angle in any!(SeatAngle), footing in footing()) -> CrossBike {
        CrossBike { seat_angle, footing }
    }
}

prop_compose! {
    fn front_end()(
        stack in any!(FrameStack), reach in any!(FrameReach), head_angle in any!(HeadAngle), top_cap in any!(TopCap),
        clamp_height in any!(ClampHeight),
    ) -> FrontEnd {
        FrontEnd { stack, reach, head_angle, top_cap, clamp_height }
    }
}

prop_compose! {
    fn stem()(length in any!(StemLength), angle in any!(StemAngle), spacers in any!(Spacers)) -> StemSetup {
        StemSetup { length, angle, spacers }
    }
}

prop_compose! {
    fn sold_stem()(
        length in prop::sample::select(StemLength::SOLD.as_slice()),
        angle in prop::sample::select(StemAngle::SOLD.as_slice()),
        spacers in (0_u8..=6).prop_filter_map("limits", |steps| Spacers::new(5.0 * f64::from(steps)).ok()),
    ) -> StemSetup {
        StemSetup { length, angle, spacers }
    }
}

prop_compose! {
    fn toe_room()(
        front_centre in any!(FrontCentre), bottom_bracket_drop in any!(BottomBracketDrop),
        wheel_radius in any!(WheelRadius), head_angle in any!(HeadAngle), fork_rake in any!(ForkRake),
        pedal_offset in any!(PedalOffset), crank in any!(CrankLength),
    ) -> ToeRoom {
        ToeRoom { front_centre, bottom_bracket_drop, wheel_radius, head_angle, fork_rake, pedal_offset, crank }
    }
}

proptest! {
    #[test]
    fn an_identical_bike_changes_nothing(road in road()) {
        let same = CrossBike { seat_angle: road.saddle.seat_angle, footing: road.footing };
        let carried = road.carried_to(&same, &PositionChanges::none());
        prop_assert!((carried.saddle_height_mm - road.saddle.height.mm()).abs() < EXACT_MM);
        prop_assert!(carried.rail_shift_forward_mm.abs() < EXACT_MM);
        prop_assert!(carried.target.distance_mm(road.view().bar) < EXACT_MM);
        prop_assert!(carried.view.sole.distance_mm(road.view().sole) < EXACT_MM);
    }

    #[test]
    fn the_leg_keeps_its_length_less_what_the_saddle_is_lowered(
        road in road(), cross in cross(), changes in changes(),
    ) {
        let carried = road.carried_to(&cross, &changes);
        let before = road.footing.leg_extension_mm(road.saddle.height.mm());
        prop_assert!((carried.leg_extension_mm + changes.lower_by.mm() - before).abs() < EXACT_MM);
    }

    #[test]
    fn what_is_taped_on_the_new_bike_is_what_was_asked(road in road(), cross in cross(), changes in changes()) {
        let carried = road.carried_to(&cross, &changes);
        let view = carried.view;
        prop_assert!((view.saddle_tip.distance_mm(view.bar) - carried.tip_to_bar_mm).abs() < EXACT_MM);
        prop_assert!((view.saddle_tip.y_mm - view.bar.y_mm - carried.bar_drop_mm).abs() < EXACT_MM);
        let bracket = BikePoint { x_mm: 0.0, y_mm: 0.0 };
        prop_assert!((bracket.distance_mm(view.saddle_top) - carried.saddle_height_mm).abs() < EXACT_MM);
        prop_assert!((view.saddle_top.y_mm - carried.saddle_vertical_mm).abs() < EXACT_MM);
        prop_assert!(view.bar.x_mm.is_finite());
    }

    #[test]
    fn going_there_and_back_is_where_it_was(road in road(), seat_angle in any!(SeatAngle)) {
        let there = road.carried_to(&CrossBike { seat_angle, footing: road.footing }, &PositionChanges::none());
        let Ok(height) = SaddleHeight::new(there.saddle_height_mm) else { return Ok(()) };
        let moved = RoadPosition { saddle: Saddle { height, seat_angle, ..road.saddle }, ..road };
        let home = CrossBike { seat_angle: road.saddle.seat_angle, footing: road.footing };
        let back = moved.carried_to(&home, &PositionChanges::none());
        prop_assert!((back.saddle_height_mm - road.saddle.height.mm()).abs() < EXACT_MM);
        prop_assert!((back.rail_shift_forward_mm + there.rail_shift_forward_mm).abs() < EXACT_MM);
    }

    #[test]
    fn the_exact_stem_is_the_planted_one(front in front_end(), setup in stem()) {
        let exact = front.exact_stem(front.bar(&setup), setup.angle);
        prop_assert!((exact.length_mm - setup.length.mm()).abs() < EXACT_MM);
        prop_assert!((exact.spacers_mm - setup.spacers.mm()).abs() < EXACT_MM);
    }

    #[test]
    fn the_exact_stem_put_back_gives_the_target(front in front_end(), setup in stem(), angle in any!(StemAngle)) {
        let target = front.bar(&setup);
        let exact = front.exact_stem(target, angle);
        let (Ok(length), Ok(spacers)) = (StemLength::new(exact.length_mm), Spacers::new(exact.spacers_mm)) else {
            return Ok(());
        };
        let bar = front.bar(&StemSetup { length, angle, spacers });
        prop_assert!(bar.distance_mm(target) < EXACT_MM);
    }

    #[test]
    fn the_search_finds_a_planted_stem(front in front_end(), planted in sold_stem()) {
        let found = front.search_stems(front.bar(&planted), &StemSearchLimits::default());
        let StemSearch::Found(fits) = found else { return Err(TestCaseError::fail("nothing found")) };
        prop_assert!(fits[0].miss_mm < EXACT_MM);
        prop_assert!(fits.iter().any(|fit| fit.setup == planted));
        prop_assert!(fits.is_sorted_by(|a, b| a.miss_mm <= b.miss_mm));
        prop_assert!(fits.iter().all(|fit| fit.dx_mm.abs() <= 5.0 && fit.dy_mm.abs() <= 5.0));
    }

    #[test]
    fn a_target_out_of_reach_says_what_is_missing(
        front in front_end(), planted in sold_stem(), off_x in -200.0..200.0_f64, off_y in -200.0..200.0_f64,
    ) {
        let bar = front.bar(&planted);
        let target = BikePoint { x_mm: bar.x_mm + off_x, y_mm: bar.y_mm + off_y };
        let limits = StemSearchLimits::default();
        if let StemSearch::NoneFits(shortfall) = front.search_stems(target, &limits) {
            let between_sizes = shortfall.lack.missing == [MissingPiece::FinerSteps];
            prop_assert_eq!(shortfall.lack.exact.is_buildable(limits.max_spacers), between_sizes);
            prop_assert!(shortfall.nearest.miss_mm > limits.tolerance.mm());
            prop_assert!(shortfall.nearest.miss_mm <= off_x.hypot(off_y) + EXACT_MM);
        }
    }

    #[test]
    fn what_is_missing_is_so_for_the_angle_it_is_told_of(
        front in front_end(), planted in sold_stem(), off_x in -200.0..200.0_f64, off_y in -200.0..200.0_f64,
        most in 0.0..=30.0_f64, tolerance in 0.0..=5.0_f64,
    ) {
        let bar = front.bar(&planted);
        let target = BikePoint { x_mm: bar.x_mm + off_x, y_mm: bar.y_mm + off_y };
        let limits = StemSearchLimits {
            tolerance: BarTolerance::new(tolerance).unwrap(), max_spacers: Spacers::new(most).unwrap(),
        };
        let StemSearch::NoneFits(shortfall) = front.search_stems(target, &limits) else { return Ok(()) };
        let StemShortfall { nearest, lack, other } = shortfall;
        let finer = lack.missing == [MissingPiece::FinerSteps];
        prop_assert!(finer || lack.exact.angle == nearest.setup.angle);
        let is_too_high = |lack: &StemLack| lack.exact.spacers_mm < 0.0;
        prop_assert!(other.as_ref().is_none_or(|other| is_too_high(other) != is_too_high(&lack)));
        for lack in std::iter::once(&lack).chain(&other) {
            let exact = front.exact_stem(target, lack.exact.angle);
            for piece in &lack.missing {
                let (said, found) = match *piece {
                    MissingPiece::ShorterStem { by_mm } => (60.0 - by_mm, exact.length_mm),
                    MissingPiece::LongerStem { by_mm } => (140.0 + by_mm, exact.length_mm),
                    MissingPiece::LowerFront { by_mm } => (-by_mm, exact.spacers_mm),
                    MissingPiece::HigherFront { by_mm } => (most + by_mm, exact.spacers_mm),
                    _ => (0.0, 0.0),
                };
                prop_assert!((said - found).abs() < EXACT_MM);
            }
            let length_is_wrong =
                matches!(lack.missing[0], MissingPiece::ShorterStem { .. } | MissingPiece::LongerStem { .. });
            if length_is_wrong && lack.missing.len() > 1 {
                let used = nearest.setup.spacers.mm();
                prop_assert!(used <= 0.0 || used + 5.0 > most);
            }
        }
    }

    #[test]
    fn a_turned_wheel_comes_nearer_only_by_what_it_sweeps(room in toe_room()) {
        let toe = room.clearance();
        prop_assert!(toe.straight_ahead_mm.is_finite() && toe.swept_mm.is_finite());
        prop_assert!(toe.swept_mm >= toe.straight_ahead_mm - EXACT_MM);
    }

    #[test]
    fn a_longer_crank_takes_its_length_from_the_toes(room in toe_room(), crank in any!(CrankLength)) {
        let longer = ToeRoom { crank, ..room };
        let lost = room.clearance().swept_mm - longer.clearance().swept_mm;
        prop_assert!((lost - (crank.mm() - room.crank.mm())).abs() < EXACT_MM);
    }
}
