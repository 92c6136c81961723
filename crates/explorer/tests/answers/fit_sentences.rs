//! What the sections on tyre and position and the sheet say of unusual bikes.

use crate::common::{said, shown};
use explorer::bench::bench::Bench;
use explorer::bench::field::Field;

#[track_caller]
fn says(fragment: &str, edits: &[(Field, &str)], expected: &str) {
    let said = said(fragment, edits);
    assert!(said.contains(expected), "{said}");
}

#[test]
fn the_width_is_put_against_the_limit_of_the_race() {
    let tyre = "tyre-answer";
    says(
        tyre,
        &[(Field::Rim, "17")],
        "comes out about 31.4 mm wide, likely 30.7 to 33.1; against the race limit of 33 mm that is likely within",
    );
    says(
        tyre,
        &[(Field::Rim, "23")],
        "33.8 mm wide, likely 33.1 to 35.5; against the race limit of 33 mm that is likely over",
    );
    says(
        tyre,
        &[(Field::WidthLimit, "none")],
        "comes out about 33.0 mm wide, likely 32.3 to 34.7. Start with",
    );
    says(tyre, &[(Field::LabelEdition, "older")], "comes out about 34.1 mm wide");
    says(
        tyre,
        &[(Field::Construction, "tubular")],
        "A tubular is about as wide as its label, 33.0 mm on any rim",
    );
}

#[test]
fn a_rim_that_a_tyre_can_roll_off_is_spoken_of_first() {
    says(
        "tyre-answer",
        &[(Field::Rim, "13")],
        "The rim is too narrow for this tyre, which can roll off it: take a wider rim or a narrower tyre.On a rim of 13",
    );
    let hookless = [(Field::Rim, "29"), (Field::Hookless, "hookless")];
    says("tyre-answer", &hookless, "at least 5 mm wider than the rim: take a wider tyre.On a rim of 29");
}

#[test]
fn no_pressure_is_rounded_over_a_mark_or_under_a_floor() {
    let tubes = [(Field::Construction, "clincher"), (Field::BodyMass, "90"), (Field::TyreMark, "3.5")];
    says("tyre-answer", &tubes, "Start with 3.50 bar (50 psi)");
    says("tyre-answer", &tubes, "stop before the rim touches the ground");
    let none = [&tubes[..], &[(Field::TyreGround, "rocky")]].concat();
    assert!(!said("tyre-answer", &none).contains("This is a start"));
    assert!(!said("sheet-page", &none).contains("This is a start"));
}

#[test]
fn a_measured_width_wins_over_the_label() {
    let measured = |mm| [(Field::TyreWidthMeasured, mm)];
    says(
        "tyre-answer",
        &measured("33.4"),
        "Measured, the tyre is 33.4 mm wide; against the race limit of 33 mm that is over it by your calliper.",
    );
    says("tyre-answer", &measured("32.4"), "that is within it by your calliper.");
    for at_limit in ["32.5", "33"] {
        says("tyre-answer", &measured(at_limit), "that is at the limit: measure again.");
        says("sheet-page", &measured(at_limit), "Close the calliper in small steps");
    }
    says("sheet-page", &measured("33.4"), "33.4 mm measured; limit 33 mm: over it by your calliper");
}

#[test]
fn a_measured_width_that_cannot_be_is_doubted() {
    let measured = |mm| [(Field::TyreWidthMeasured, mm)];
    says("says-tyre-width", &measured("60"), "Far from the 33.0 mm that label and rim lead to");
    says("tyre-answer", &measured("60"), "60.0 mm wide, which its label does not explain");
    says(
        "says-tyre-width",
        &measured("20"),
        "No tyre is narrower than its rim: left aside. Computed: 33.0 mm",
    );
    says("tyre-answer", &measured("20"), "On a rim of 21 mm a tyre labelled 33 comes out about 33.0 mm wide");
    assert!(!said("says-tyre-width", &measured("36.5")).contains("Far from"));
}

#[test]
fn a_narrow_tyre_keeps_to_the_pressure_of_the_standard() {
    let road = [(Field::Tyre, "25-622"), (Field::Rim, "19"), (Field::WidthLimit, "none")];
    says("tyre-answer", &road, "Start with 3.00 bar (44 psi) in front and 3.00 bar (44 psi) behind.");
    says(
        "tyre-answer",
        &road,
        "Front raised from 2.18 bar or 32 psi, rear raised from 2.41 bar or 35 psi: the least that ISO 5775-1 has for a tyre of 25 mm or less is 3.0 bar or 44 psi.",
    );
    says("tyre-answer", &road, "Outside them start from the pressure that the tyre’s maker names.");
    says("tyre-tables", &[], "25-62225.8 mm3.00 (44) ↑ *3.00 (44) ↑ *");
    says("tyre-tables", &[], "33-62233.0 mm1.50 (22) ↑1.59 (23)");
    for edits in [&road[..], &[]] {
        assert!(!said("tyre-tables", edits).contains("go by feel"));
    }
}

#[test]
fn a_pair_that_is_warned_off_gets_no_pressure() {
    let hookless = [(Field::Rim, "25"), (Field::Hookless, "hookless")];
    says(
        "tyre-tables",
        &hookless,
        "28-62230.4 mmnonenoneOn a hookless rim the tyre should be at least 5 mm wider",
    );
    let narrow = [(Field::Rim, "13")];
    says(
        "tyre-tables",
        &narrow,
        "40-62236.0 mmnonenoneThe rim is too narrow for this tyre, which can roll off it",
    );
    for edits in [
        [(Field::Rim, "12"), (Field::Hookless, "hooked")],
        [(Field::Rim, "30"), (Field::Hookless, "hookless")],
    ] {
        says("sheet-page", &edits, "Tyre and pressureDanger");
        says("sheet-page", &edits, "PressureNo pressure is given for such a pair.");
        says("tyre-answer", &edits, "No pressure is given for such a pair.");
        assert!(!said("tyre-answer", &edits).contains("psi"));
        assert!(!said("tyre-tables", &edits).contains("Pressures to start from"));
    }
}

#[test]
fn a_rim_wider_than_the_tyre_is_told_nothing_else() {
    let wide = [(Field::Rim, "40")];
    says("tyre-answer", &wide, "This tyre cannot go on this rim.");
    assert!(!said("tyre-tables", &wide).contains("little spring"));
    assert!(!said("sheet-page", &wide).contains("little spring"));
}

#[test]
fn a_floor_that_no_whole_psi_meets_is_shown_to_a_tenth() {
    let between = [(Field::TyreMark, "1.5")];
    says("tyre-answer", &between, "Start with 1.50 bar (21.8 psi) in front and 1.50 bar (21.8 psi) behind.");
    says("sheet-page", &between, "Highest allowedthe tyre is marked with no more: 1.5 bar or 21 psi");
    let tubes = [(Field::BodyMass, "45"), (Field::Construction, "clincher"), (Field::TyreMark, "2.4")];
    says(
        "tyre-answer",
        &tubes,
        "with a tube (common practice) is 2.42 bar or 35 psi, but the tyre is marked with no more: 2.4 bar or 34 psi",
    );
}

#[test]
fn a_wheel_is_put_against_the_rules_for_races() {
    says("tyre-tables", &[], "forbids spikes and studs");
    says(
        "tyre-tables",
        &[],
        "33-622 measures 688 mm, within that. Leave it room for 694 mm in frame and fork",
    );
    says("tyre-tables", &[(Field::Tyre, "40-622")], "40-622 measures 702 mm, outside that");
}

#[test]
fn a_roll_out_by_size_says_how_far_it_may_be_off() {
    let sheet = "sheet-page";
    says(sheet, &[], "Roll-out2161 mm ±32, by the tyre’s size");
    says(sheet, &[(Field::Tyre, "25-622"), (Field::Rim, "19")], "Roll-out2111 mm ±13, by the tyre’s size");
    says(sheet, &[(Field::RollOut, "2140")], "Roll-out2140 mm measured");
    says("tyre-tables", &[], "2111 mm ±13");
    says("tyre-tables", &[], "2161 mm ±32");
}

#[test]
fn the_sheet_tells_what_to_block_for_the_race() {
    let limit = [(Field::RollOutLimit, "6.1")];
    let sheet = said("sheet-page", &limit);
    assert!(sheet.contains("Roll-out limit6.10 m"), "{sheet}");
    assert!(sheet.contains("A To be blockedon 50: 11 12 13 14 15 17; on 34: 11"), "{sheet}");
    assert!(sheet.contains("A Too close to callon 34: 12"), "{sheet}");
    assert!(sheet.contains("Only the roll-out measured at the race decides"), "{sheet}");
    let for_b = said("sheet-page", &[limit[0], (Field::SheetFor, "b")]);
    assert!(for_b.contains("B To be blocked") && !for_b.contains("A To be blocked"));
    let measured = said("sheet-page", &[limit[0], (Field::RollOut, "2161")]);
    assert!(measured.contains("B Too close to callnone"), "{measured}");
    assert!(!said("sheet-page", &[]).contains("To be blocked"));
}

#[test]
fn a_tyre_that_does_not_go_on_the_rim_gets_no_pressure() {
    let narrow = [(Field::Tyre, "20-622")];
    says(
        "tyre-answer",
        &narrow,
        "This tyre cannot go on this rim. The rim must be narrower inside than the tyre",
    );
    assert!(!said("tyre-tables", &narrow).contains("Pressures to start from"));
    assert!(!said("sheet-page", &narrow).contains("psi"));
}

#[test]
fn what_moved_a_pressure_is_said() {
    says(
        "tyre-answer",
        &[(Field::Tyre, "45-622")],
        "the least that ISO 5775-1 has for open tyres off the road is 1.5 bar or 22 psi.",
    );
}

#[test]
fn a_tube_on_rocks_is_told_custom_and_a_wide_tyre_needs_less() {
    let tubes = [(Field::Construction, "clincher"), (Field::TyreGround, "rocky")];
    let wide = [&tubes[..], &[(Field::Tyre, "45-622"), (Field::Rim, "23")]].concat();
    says("tyre-answer", &wide, "(38 psi) in front");
    says(
        "tyre-answer",
        &wide,
        "the lowest usual pressure with a tube on rocks and roots (common practice) is 2.6 bar or 38 psi.",
    );
    for edits in [&tubes[..], &wide] {
        assert!(!said("tyre-answer", edits).contains("safe"));
    }
    says(
        "tyre-tables",
        &tubes,
        "On rocks workshop custom for tubes, the same under every rider, stands in for",
    );
    says("tyre-tables", &tubes, "recent advice goes lower, to 30 to 40 psi at that width");
    assert!(!said("tyre-tables", &[]).contains("workshop custom"));
}

#[test]
fn the_marks_are_asked_for_and_kept_to() {
    let answer = "tyre-answer";
    says(
        answer,
        &[],
        "is the highest pressure; a marked minimum is the least. Neither maximum was given here",
    );
    says(answer, &[(Field::RimMark, "4")], "The tyre’s maximum was not given here");
    says(answer, &[(Field::TyreMark, "60 psi")], "The rim’s maximum was not given here");
    says(
        answer,
        &[(Field::LeastMark, "2")],
        "Start with 2.00 bar (30 psi) in front and 2.00 bar (30 psi) behind.",
    );
    says(answer, &[(Field::LeastMark, "2")], "the marked minimum is 2.0 bar or 30 psi.");
    let apart = [(Field::LeastMark, "3"), (Field::TyreMark, "2.5")];
    says(
        answer,
        &apart,
        "No pressure suits: the marked minimum is 3.0 bar or 44 psi, but the tyre is marked with no more",
    );
    for fragment in [answer, "sheet-page"] {
        assert!(!said(fragment, &apart).contains("Start with"), "{fragment}");
    }
}

#[test]
fn a_pair_that_no_table_foresees_is_told_of_first() {
    let answer = said("tyre-answer", &[(Field::Rim, "23")]);
    let [first, then] =
        ["No table that we know of foresees this tyre", "On a rim of 23"].map(|it| answer.find(it));
    assert!(first.is_some() && first < then, "{answer}");
    says("sheet-page", &[(Field::Rim, "23")], "FirstNo table that we know of");
}

#[test]
fn width_counts_for_riding_on_soft_ground_and_the_verdicts_say_so() {
    let nothing =
        "Tyre width counts only in mud and loose sand (estimate); on grass and hard ground nobody has";
    let wide = [(Field::Tyre, "40-622"), (Field::Rim, "23"), (Field::Ground, "mud")];
    says("ride-answer", &[], nothing);
    says("ride-answer", &wide, "40.0 mm for 33 mm there takes 8 % off rolling resistance");
    let narrow = [(Field::Tyre, "28-622"), (Field::Rim, "19")];
    says("ride-answer", &narrow, "28.0 mm for 33 mm there adds 8 % to rolling resistance");
    says("says-rolling", &wide[2..], "Empty: 0.080 for mud");
    says("says-rolling", &wide, "Empty: 0.073 for mud");
    let typed = |tyre| {
        said(
            "ride-speeds",
            &[
                (Field::Tyre, tyre),
                (Field::RollOut, "2160"),
                (Field::Ground, "mud"),
                (Field::Rolling, "0.08"),
            ],
        )
    };
    assert_eq!(typed("40-622"), typed("33-622"));
}

#[test]
fn the_sheet_checks_first_what_can_break_first() {
    let sheet = said("sheet-page", &[]);
    let order = [
        "Before ridingChain, cage, spokes",
        "Tyre and rimThe lower of the two",
        "Stem, post, bolts, brakesPull",
        "On the course",
        "How to measure",
    ];
    let places = order.map(|head| sheet.find(head));
    assert!(places.iter().all(Option::is_some) && places.is_sorted(), "{places:?}: {sheet}");
    let mut bench = Bench::default();
    Field::ALL.iter().for_each(|&field| bench.claim(field));
    let html = shown("sheet-page", bench, &[]);
    let ticked: usize = html.split("<ul class=\"ticked\">").skip(1).map(boxes).sum();
    assert!((9..=13).contains(&ticked), "{ticked} boxes");
    assert!(!sheet.contains("125 mm") && !sheet.contains("a quarter of the weight"));
}

/// Boxes in the first list of a piece of the page.
fn boxes(list: &str) -> usize {
    list.split("</ul>").next().map_or(0, |list| list.matches("<li>").count())
}

#[test]
fn a_wider_tyre_makes_every_gear_longer_and_a_narrower_one_shorter() {
    says("tyre-tables", &[(Field::OtherTyre, "40")], "With 40-622 every gear is 2.0 % longer");
    says("tyre-tables", &[(Field::OtherTyre, "28")], "With 28-622 every gear is 1.5 % shorter");
    assert!(!said("tyre-tables", &[(Field::OtherTyre, "33")]).contains("every gear is"));
    assert!(!said("tyre-tables", &[(Field::OtherTyre, "")]).contains("every gear is"));
}

/// A verdict says what is missed, and one measure reads alike wherever it stands.
#[test]
fn a_position_that_asks_for_another_part_is_no_plain_yes() {
    says("position-answer", &[], "15 mm higher and 10 mm closer than on the road bike");
    says(
        "position-answer",
        &[(Field::BarCloserBy, "0")],
        "of its place, 15 mm higher and 0 mm closer than on the road bike",
    );
    says("position-answer", &[(Field::CrossSeatAngle, "69")], "Yes, but only with another seat post");
    let row = crate::common::decided("position", "#r=3&xa=69");
    assert!(row.contains("another seat post, stem of"), "{row}");
    for fragment in ["position-answer", "position-tables"] {
        assert!(!said(fragment, &[]).contains("735.9"), "{fragment}");
    }
}

#[test]
fn the_same_bike_keeps_its_position() {
    let same = [
        (Field::CrossSeatAngle, "73.5"),
        (Field::CrossStack, "15"),
        (Field::BarUpBy, "0"),
        (Field::BarCloserBy, "0"),
    ];
    says(
        "position-answer",
        &same,
        "The saddle goes to 728 mm along the seat tube, its tip 56 mm behind the bottom bracket, and the bar 72 mm below the saddle.",
    );
    says("position-answer", &same, "the rails stay where they are");
}

#[test]
fn what_is_on_the_other_side_is_called_so() {
    says("position-answer", &[(Field::BarDrop, "-20")], "the bar 35 mm above the saddle");
    says("position-answer", &[(Field::Setback, "-10")], "its tip 10 mm ahead of the bottom bracket");
    says("position-answer", &[(Field::CrossSeatAngle, "75")], "back on its rails");
}

#[test]
fn a_frame_that_no_stem_fits_is_told_what_is_missing() {
    says("position-answer", &[(Field::Reach, "300")], "at −6° even the longest stem sold is 50 mm too short");
    says("position-answer", &[(Field::Stack, "700")], "too high, measured along the steerer. The nearest,");
    says(
        "position-tables",
        &[(Field::BarWithin, "0")],
        "What is missing: at −8° the place lies between two sizes",
    );
    says("sheet-page", &[(Field::Stack, "700")], "none fits:");
}

#[test]
fn what_is_missing_holds_for_the_angle_that_is_named() {
    let few = [(Field::SpacersMost, "7")];
    says(
        "position-answer",
        &few,
        "because at +6° even without spacers the bar is 7 mm too high, measured along the steerer, and at −6° it would take 9 mm more spacers than you allow.",
    );
    let long = [(Field::Reach, "500")];
    let answer = said("position-answer", &long);
    assert!(answer.contains("at +17° even the shortest stem sold is 62 mm too long"), "{answer}");
    assert!(!answer.contains("more spacers than you allow"), "{answer}");
    assert!(!said("position-tables", &long).contains("Exactly right"));
    says("position-tables", &[(Field::BarWithin, "0")], "Exactly right would be");
}

#[test]
fn spacers_that_call_for_care_are_told_of_in_the_answer_and_not_offered_instead() {
    let many = [(Field::SpacersMost, "80"), (Field::Stack, "520")];
    says("position-answer", &many, "More than 30 mm of spacers under the stem");
    let sheet = said("sheet-page", &many);
    for worse in ["on 45 mm", "on 50 mm", "on 55 mm", "on 60 mm"] {
        assert!(!sheet.contains(worse), "{sheet}");
    }
    assert!(!said("position-answer", &[]).contains("spacers under the stem"));
}

#[test]
fn the_sheet_says_what_differs_from_the_road_bike() {
    let bars = [
        (Field::RoadBarReach, "80"),
        (Field::CrossBarReach, "70"),
        (Field::RoadBarDepth, "125"),
        (Field::CrossBarDepth, "115"),
    ];
    let sheet = said("sheet-page", &bars);
    for row in [
        "up the seat tube at 73°",
        "Changessaddle 0 mm lower; bar 15 mm higher, 10 mm closer",
        "Handlebarof the cross bike, reach 70 mm, drop 115 mm: saddle to bar and bar centre hold for it (road bike: reach 80 mm, drop 125 mm)",
    ] {
        assert!(sheet.contains(row), "{row}: {sheet}");
    }
    says("position-working", &bars, "Other handlebar");
    assert!(!said("sheet-page", &[]).contains("Handlebar"));
    says("position-tables", &[bars[2]], "nor does a drop without it: give the reach of both");
}

#[test]
fn the_room_for_the_toes_does_not_read_like_the_limit_it_misses() {
    let toes = [(Field::FrontCentre, "590"), (Field::CrossCrank, "175")];
    says("position-tables", &toes, "Toe overlap: 99 mm");
    says("sheet-page", &toes, "Toe overlap99 mm from pedal axle to tyre, short, see below");
}

/// A wheel of 40-622 is 7 mm larger in radius than one of 33-622.
#[test]
fn where_b_has_another_wheel_its_toes_are_told_too() {
    let toes = [(Field::FrontCentre, "590"), (Field::CrossCrank, "175"), (Field::Tyre, "33-622")];
    let alike = said("position-tables", &[&toes[..], &[(Field::TyreB, "33-622")]].concat());
    assert!(alike.contains("Toe overlap: 99 mm") && !alike.contains("B’s tyre"), "{alike}");
    let own = [&toes[..], &[(Field::TyreB, "40-622")]].concat();
    says("position-tables", &own, "Toe overlap with A’s tyre: 99 mm");
    says("position-tables", &own, "Toe overlap with B’s tyre: 92 mm");
    says("sheet-page", &own, "Toe overlapA 99 mm from pedal axle to tyre, short, see below; B 92 mm");
}

#[test]
fn the_worked_setback_is_the_one_reckoned_with() {
    let knee = [(Field::CrossCrank, "180"), (Field::Knee, "knee")];
    says("position-working", &knee, "56 + 172.5 − 180 = 48.5 mm");
    says("position-working", &knee, "− 48.5 = ");
}

#[test]
fn a_saddle_far_forward_is_no_secret_before_a_race() {
    says(
        "position-tables",
        &[(Field::Setback, "20")],
        "The saddle tip is less than 50 mm behind the bottom bracket",
    );
    says("position-tables", &[], "For UCI races: saddle tip at least 50 mm");
    says("sheet-page", &[(Field::Setback, "20")], "ask your commissaire before a UCI race");
}

#[test]
fn another_handlebar_moves_the_bar_but_not_the_hoods() {
    let bars = [
        (Field::RoadBarReach, "80"),
        (Field::RoadBarDepth, "125"),
        (Field::CrossBarReach, "70"),
        (Field::CrossBarDepth, "115"),
    ];
    says("position-tables", &bars, "Bar centre ahead of the bottom bracket484 mm486 mm");
    says("position-tables", &bars, "Saddle tip to bar centre, straight545 mm545 mm");
    says("position-tables", &bars, "Drops above the bottom bracket501 mm532 mm");
    says("position-tables", &[bars[0], bars[2]], "Bar centre ahead of the bottom bracket484 mm486 mm");
    says("position-tables", &bars[..2], "The reach of one handlebar alone says nothing");
    says("position-tables", &[], "The same handlebar on both bikes.");
}

#[test]
fn the_sheet_has_what_the_chosen_set_up_needs() {
    let for_a = said("sheet-page", &[(Field::SheetFor, "a")]);
    assert!(for_a.contains("Set-up A") && for_a.contains("50/34") && !for_a.contains("44/32"));
    says("sheet-page", &[], "A Derailleurfits if you never use 34×11 and 34×12");
    says("sheet-page", &[], "6.68×");
}

#[test]
fn the_sheet_says_no_caution_twice() {
    let hookless = [(Field::Hookless, "hookless"), (Field::Construction, "clincher")];
    for (edits, named) in [(&[][..], 0), (&hookless, 1)] {
        let sheet = said("sheet-page", edits);
        let cautions = [
            ("needs a tyre that its maker names", named),
            ("Turn slowly into the largest", 1),
            ("Turn the bar fully", 1),
        ];
        for (caution, times) in cautions {
            assert_eq!(sheet.matches(caution).count(), times, "{caution}: {sheet}");
        }
    }
}

#[test]
fn the_sheet_tells_riding_from_running() {
    let sheet = "sheet-page";
    says(sheet, &[], "For220 W and 72.9 kg in all on wet, soft grass");
    says(
        sheet,
        &[],
        "A Lowest gear34×30, needs at least 8.1 km/h; riding ends from about 8 % up (likely 6 to 10)",
    );
    says(
        sheet,
        &[],
        "Running winsbelow 8.6 km/h on this climb, likely 7.4 to 10.0; on a slope held for long too close to call from about 9 % up",
    );
    says(
        sheet,
        &[],
        "A 9.0 %, 60 mforce it: 310 W in 34×30 at 72 rpm for 21 s, 2.3 kJ of your reserve, or run: 25 s",
    );
    says(
        sheet,
        &[],
        "B 9.0 %, 60 mforce it: 310 W in 32×32 at 81 rpm for 21 s, 2.2 kJ of your reserve, or run: 25 s",
    );
    let free =
        [(Field::Ground, "tarmac"), (Field::GripCounts, "off"), (Field::Balance, ""), (Field::Legs, "off")];
    let low =
        [&free[..], &[(Field::RingsA, "22"), (Field::CassetteA, "50"), (Field::CadenceLow, "25")]].concat();
    says(sheet, &low, "; riding ends nowhere up to 45 %");
    says(sheet, &[(Field::Ground, "loose-sand")], "riding ends on the level already: no gear low enough");
    assert!(!said(sheet, &[(Field::SheetFor, "b")]).contains("A Lowest gear"));
}

#[test]
fn the_pressure_is_for_the_rider_of_the_other_section() {
    let light = [(Field::BodyMass, "50"), (Field::KitMass, "1.5"), (Field::BikeMass, "8")];
    says(
        "tyre-answer",
        &light,
        "For a rider of 50 kg with 1.5 kg of kit on a bike of 8 kg, and 45 % of the weight",
    );
    says("tyre-working", &light, "1.931 × (59.5 ÷ 79)");
    says("tyre-answer", &[(Field::RearWeight, "0.62")], "38 % of the weight on the front wheel");
}
