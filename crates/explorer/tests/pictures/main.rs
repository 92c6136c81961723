//! The pictures through the SVG backend: golden documents, and no input that is valid but extreme breaks one.

mod legible;
mod odd;
mod said;
mod units;

use expect_test::expect_file;
use explorer::bench::bench::Bench;
use explorer::bench::field::Field;
use explorer::lap::found::{Found, row};
use explorer::lap::report::{LapQuestion, LapReport};
use explorer::lap::search::Hunt;
use explorer::page::desk::Desk;
use explorer::page::pictures::{Picture, as_svg};
use explorer::page::report::Report;
use explorer::page::scenario::Scenario;
use explorer::parts::found::BoxFound;
use explorer::parts::offer::Offer;
use explorer::rack::compared::Compared;
use legible::{Text, texts};
use proptest::prelude::*;
use std::rc::Rc;

fn report(edits: &[(Field, &str)]) -> Report {
    let mut bench = Bench::default();
    for (field, text) in edits {
        bench.write(*field, text);
    }
    let read = Scenario::read(&bench, &Scenario::default());
    assert!(read.complaints.is_empty(), "{:?}", read.complaints);
    let mut report = Report::of(&read.scenario);
    report.lap.laps = lap(&read.scenario, false);
    report
}

fn lap(scenario: &Scenario, settled: bool) -> Option<Rc<LapReport>> {
    LapReport::of(LapQuestion::of(&scenario.basis(), None), settled).ok().map(Rc::new)
}

/// The demo with its lap settled and a small search done.
fn demo() -> Report {
    let (scenario, mut report) = (Scenario::default(), report(&[]));
    report.lap.laps = lap(&scenario, true);
    let mut found = Found::of(&scenario.basis(), None);
    if let Ok(mut hunt) = Hunt::new(&scenario.basis(), &LapQuestion::of(&scenario.basis(), None).course, 0, 5)
    {
        found.take(&hunt.advance(usize::MAX).iter().flat_map(row).collect::<Vec<_>>());
    }
    found.rank();
    report.lap.found = Some(Rc::new(found));
    report.bikes = bikes();
    report.box_found = combined();
    report
}

/// A small box ridden at a steady power: something in it does not fit, and something could be bought.
fn combined() -> Option<Rc<BoxFound>> {
    let mut desk = Desk::default();
    desk.open("#r=3&ly=steady&bx=crank+1:+38+crank+2:+42+46/33+/+11-34+11s,+11-25+11s,+11-40+11s+/+35/32");
    desk.begin_box(Vec::new());
    while desk.sort_box(100) {}
    let rows = desk.course()?.1;
    let errand = Scenario::of_link(&desk.link()).box_errand(&rows)?;
    let laps: Vec<f64> = desk.box_to_ride().0.iter().flat_map(|&lap| errand.ride(lap, true)).collect();
    desk.take_box(&laps);
    let time_s = laps.chunks(5).map(|it| it[1]).fold(f64::INFINITY, f64::min);
    let gained = [time_s - 0.5, 0.2, 0.5, 0.9, 1.9];
    desk.take_box_offers(vec![Offer::from_parts("a ring of 40 teeth".to_owned(), &gained)?]);
    desk.end_box();
    desk.report().box_found.clone()
}

/// The demo's bikes and two more on the rack, with what the lap asks for.
fn bikes() -> Option<Rc<Compared>> {
    let mut desk = Desk::default();
    desk.open("#r=3&ra=40&rb=46/33&tyb=38-622");
    desk.act_on_rack("keep-a", "", "One ring");
    desk.act_on_rack("keep-b", "", "Wide tyre");
    desk.open("#r=3");
    desk.lap(false);
    desk.compare_bikes();
    desk.report().bikes.clone()
}

#[allow(clippy::unwrap_used, reason = "what a test looks for must be there")]
fn picture(name: &str) -> Picture {
    Picture::by_name(name).unwrap()
}

fn svg(report: &Report, picture: Picture, width: f64) -> String {
    let drawn = as_svg(picture, report, (width, picture.height(report, width)));
    assert!(drawn.is_ok(), "{picture:?}: {drawn:?}");
    drawn.unwrap_or_default()
}

#[test]
fn the_demo_looks_as_it_did() {
    let report = demo();
    for picture in Picture::all() {
        let golden = format!("../golden/{}.svg", picture.name());
        expect_file![golden].assert_eq(&svg(&report, picture, 780.0));
    }
}

#[test]
fn what_shows_nothing_takes_no_room() {
    let silent = |report: &Report| -> Vec<&'static str> {
        let silent = Picture::all().filter(|picture| picture.height(report, 780.0) == 0.0);
        let silent = silent.inspect(|picture| assert!(picture.label(report).is_empty(), "{picture:?}"));
        silent.map(Picture::name).collect()
    };
    assert_eq!(silent(&demo()), Vec::<&str>::new());
    assert_eq!(silent(&report(&[])), ["found", "box-laps", "uprights"]);
    let one = [
        (Field::RingsA, "40"),
        (Field::RingsB, "40"),
        (Field::CassetteA, "11-13-15"),
        (Field::CassetteB, "11-13-15"),
    ];
    assert_eq!(silent(&report(&one)), ["overlap", "gain", "found", "box-laps", "uprights"]);
    let [rings_a, rings_b, ..] = one;
    let stepless = [rings_a, rings_b, (Field::CassetteA, "18"), (Field::CassetteB, "18")];
    assert_eq!(silent(&report(&stepless)), ["steps", "overlap", "gain", "found", "box-laps", "uprights"]);
    let not_known = silent(&report(&[(Field::SaddleHeight, "")]));
    assert_eq!(not_known, ["found", "box-laps", "uprights", "position"]);
}

/// While no lap is ridden each of its pictures still has a name of its own.
#[test]
fn no_two_pictures_have_one_name() {
    for report in [report(&[]), demo()] {
        let labels: Vec<String> =
            Picture::all().map(|it| it.label(&report)).filter(|label| !label.is_empty()).collect();
        let names: std::collections::BTreeSet<&String> = labels.iter().collect();
        assert_eq!(names.len(), labels.len(), "{labels:?}");
    }
}

#[test]
fn a_phone_gets_the_ladder_it_did() {
    expect_file!["../golden/ladder-phone.svg"].assert_eq(&svg(&report(&[]), picture("ladder"), 358.0));
}

/// Two gears to a picture: the corners of the map, then a chain too short, and one too long for the cage.
#[test]
fn six_gears_are_drawn_as_they_were() {
    const CAGE: (Field, &str) = (Field::PulleyCentres, "75");
    let corners = [CAGE, (Field::GearA, "11"), (Field::GearB, "12")];
    let short = [CAGE, (Field::Chainstay, "428"), (Field::ChainLinks, "108")];
    let long =
        [(Field::PulleyCentres, "55"), (Field::ChainLinks, "112"), (Field::GearA, "22"), (Field::GearB, "2")];
    for (name, edits) in [("corners", &corners[..]), ("short", &short), ("long", &long)] {
        let golden = format!("../golden/drivetrain-{name}.svg");
        expect_file![golden].assert_eq(&svg(&report(edits), picture("drivetrain"), 780.0));
    }
}

#[test]
fn each_state_of_the_chain_is_said() {
    let label = |edits: &[(Field, &str)]| picture("drivetrain").label(&report(edits)).replace('\u{a0}', " ");
    assert!(label(&[]).contains("A · 34×13: 1° from its stop: check for slack"), "{}", label(&[]));
    let (cage, first) = ((Field::PulleyCentres, "75"), (Field::GearB, "1"));
    let short = label(&[cage, first, (Field::Chainstay, "428"), (Field::ChainLinks, "108")]);
    assert!(short.contains("A · 50×30: too tight, 2.0 links short"), "{short}");
    assert!(short.contains("B · 44×32: cage 66° forward, tight but usual"), "{short}");
    let long = label(&[cage, first, (Field::ChainLinks, "114"), (Field::GearA, "22")]);
    assert!(long.contains("A · 34×11: slack, 2.2 links too many"), "{long}");
    assert!(long.contains("B · 44×32: cage 19° forward, fine"), "{long}");
}

#[test]
fn a_phone_gets_tyre_and_position_as_it_did() {
    expect_file!["../golden/cross-section-phone.svg"].assert_eq(&svg(
        &report(&[]),
        picture("cross-section"),
        358.0,
    ));
    expect_file!["../golden/position-phone.svg"].assert_eq(&svg(&report(&[]), picture("position"), 358.0));
}

#[test]
fn a_tyre_over_the_gauge_looks_as_it_did() {
    let wide = report(&[(Field::Tyre, "38-622"), (Field::Construction, "tubular"), (Field::Rim, "19")]);
    expect_file!["../golden/cross-section-over.svg"].assert_eq(&svg(&wide, picture("cross-section"), 358.0));
}

#[test]
fn a_tyre_of_bs_own_is_drawn_open_under_as() {
    let own = report(&[(Field::TyreB, "40-622"), (Field::RimB, "23")]);
    let drawn = svg(&own, picture("cross-section"), 358.0);
    for words in ["A 33", "B 40", "A rim", "B rim 23"] {
        assert!(drawn.replace('\u{a0}', " ").contains(words), "{words}");
    }
    let label = picture("cross-section").label(&own).replace('\u{a0}', " ");
    assert!(
        label.contains("A 33-622 on a rim of") && label.contains("B 40-622 on a rim of 23 mm"),
        "{label}"
    );
    expect_file!["../golden/cross-section-b.svg"].assert_eq(&drawn);
}

#[test]
fn a_bike_that_no_stem_fits_looks_as_it_did() {
    let long = report(&[(Field::Reach, "460"), (Field::Stack, "640"), (Field::BarDrop, "-60")]);
    expect_file!["../golden/position-none.svg"].assert_eq(&svg(&long, picture("position"), 780.0));
}

/// Set-ups at the ends of what may be typed.
const EXTREMES: [&[(Field, &str)]; 16] = [
    &[(Field::RingsA, "20"), (Field::CassetteA, "60"), (Field::RingsB, "60"), (Field::CassetteB, "9")],
    &[(Field::RingsA, "60/40/20"), (Field::CassetteA, "9-10-11-13-15-17-19-22-25-29-34-40-48-60")],
    &[
        (Field::RingsA, "44/43"),
        (Field::CassetteA, "20-21"),
        (Field::RingsB, "44/43"),
        (Field::CassetteB, "20-21"),
    ],
    &[
        (Field::CadenceLow, "20"),
        (Field::CadenceUsual, "21"),
        (Field::CadenceHigh, "200"),
        (Field::RollOut, "3000"),
    ],
    &[(Field::Tolerance, "10"), (Field::Capacity, ""), (Field::RollOut, "500"), (Field::SpeedUnit, "mph")],
    &[(Field::ChainLinks, "60"), (Field::GearA, "42"), (Field::GearB, "1")],
    &[(Field::ChainLinks, "190"), (Field::GearA, "22"), (Field::GearB, "42"), (Field::RearStop, "-90")],
    &[
        (Field::PulleyCentres, "150"),
        (Field::Chainstay, "350"),
        (Field::BottomBracketDrop, "-40"),
        (Field::ForeStop, "10"),
        (Field::RearStop, "0"),
        (Field::HangerDrop, "80"),
        (Field::HangerSetback, "40"),
    ],
    &[
        (Field::PulleyCentres, "90"),
        (Field::GuideTeeth, "20"),
        (Field::TensionTeeth, "20"),
        (Field::PulleyGap, "40"),
        (Field::GuideAngle, "45"),
        (Field::Chainstay, "350"),
        (Field::RingsA, "60"),
        (Field::CassetteA, "60"),
    ],
    &[
        (Field::BodyMass, "30"),
        (Field::Power, "2000"),
        (Field::Slope, "45"),
        (Field::ClimbLength, "5000"),
        (Field::Headwind, "-10"),
        (Field::SecondsLost, "0"),
        (Field::Legs, "off"),
    ],
    &[
        (Field::BodyMass, "150"),
        (Field::Power, "95"),
        (Field::Slope, "0"),
        (Field::ClimbLength, "1"),
        (Field::Headwind, "10"),
        (Field::SecondsLost, "30"),
        (Field::Rolling, "0.4"),
        (Field::FootGround, "2.5"),
        (Field::SlopeShare, "1"),
    ],
    &[
        (Field::Power, ""),
        (Field::Level, "occasional"),
        (Field::OnFoot, "run"),
        (Field::Balance, ""),
        (Field::GripCounts, "off"),
        (Field::Rolling, "0.001"),
        (Field::DragArea, "0"),
    ],
    &[
        (Field::Tyre, "18-622"),
        (Field::Rim, "10"),
        (Field::WidthLimit, "none"),
        (Field::Hookless, "hookless"),
    ],
    &[(Field::Tyre, "65-559"), (Field::Rim, "45"), (Field::MeasuringRim, "45"), (Field::BodyMass, "150")],
    &[
        (Field::Tyre, "20-622"),
        (Field::Rim, "30"),
        (Field::SaddleHeight, "450"),
        (Field::Setback, "-50"),
        (Field::TipToBar, "750"),
        (Field::BarDrop, "250"),
        (Field::Stack, "750"),
        (Field::Reach, "520"),
    ],
    &[
        (Field::TyreWidthMeasured, "80"),
        (Field::SaddleHeight, "950"),
        (Field::SeatAngle, "65"),
        (Field::CrossSeatAngle, "82"),
        (Field::TipToBar, "400"),
        (Field::BarCloserBy, "60"),
        (Field::BarDrop, "-100"),
        (Field::BarUpBy, "60"),
        (Field::CrossCrank, "200"),
        (Field::HeadAngle, "60"),
        (Field::FrontCentre, "500"),
    ],
];

/// Courses at the ends of what may be sketched.
const COURSES: [&str; 5] = [
    "50; 0; tarmac",
    "9000; 0; tarmac\n9000; -45; loose sand\n20000; 45; deep mud",
    "60; 45; deep mud",
    "55; 0; mud; foot 60",
    "100; -45; tarmac; corner 3\n1; 0; mud; foot",
];

#[test]
fn extreme_but_valid_courses_stay_inside_the_picture() {
    for course in COURSES {
        let edits = [(Field::Course, "sketch"), (Field::Sketch, course)];
        for report in [report(&edits), settled(&edits)] {
            for picture in [picture("profile"), picture("gain"), picture("gear-times")] {
                for width in [300.0, 390.0, 1200.0] {
                    assert_inside(&report, picture, width);
                }
            }
        }
    }
}

fn settled(edits: &[(Field, &str)]) -> Report {
    let mut report = report(edits);
    let question = report.lap.laps.as_ref().map(|laps| laps.question.clone());
    report.lap.laps = question.and_then(|question| LapReport::of(question, true).ok()).map(Rc::new);
    report
}

#[test]
fn extreme_but_valid_set_ups_stay_inside_the_picture() {
    for edits in EXTREMES {
        let report = report(edits);
        for picture in Picture::all() {
            for width in [300.0, 390.0, 780.0, 1200.0] {
                assert_inside(&report, picture, width);
            }
        }
    }
}

fn assert_inside(report: &Report, picture: Picture, width: f64) {
    let height = picture.height(report, width);
    assert!((0.0..4000.0).contains(&height), "{picture:?} {height}");
    let spots = picture.spots(report, (width, height));
    for spot in &spots {
        let inside = [spot.from, spot.to].iter().all(|&point| lies_inside(point, (width, height)));
        assert!(inside, "{picture:?} {spot:?}");
    }
    let drawn = svg(report, picture, width);
    assert!(!drawn.contains("NaN") && !drawn.contains("inf"), "{picture:?}");
    for point in points(&drawn) {
        assert!(lies_inside(point, (width, height)), "{picture:?} {point:?} of {width} × {height}");
    }
}

/// On pictures narrower than any phone's the longest names begin before the edge.
fn lies_inside((x, y): (f64, f64), (width, height): (f64, f64)) -> bool {
    let beside = if width < 360.0 { 60.0 } else { 20.0 };
    (-beside..=width + beside).contains(&x) && (-20.0..=height + 20.0).contains(&y)
}

/// The places of all that is drawn: corners, ends, centres and points of lines and areas.
fn points(svg: &str) -> Vec<(f64, f64)> {
    let number = |text: &str| text.parse::<f64>().unwrap_or(f64::NAN);
    let pair = |point: &str| point.split_once(',').map(|(x, y)| (number(x), number(y)));
    let element = |tag: &str| {
        let value = |name: &str| {
            tag.split_once(&format!(" {name}=\"")).map(|(_, rest)| rest.split('"').next().unwrap_or(""))
        };
        let place = |x: &str, y: &str| value(x).zip(value(y)).map(|(x, y)| (number(x), number(y)));
        let along = value("points").unwrap_or("").split_whitespace().filter_map(pair).collect::<Vec<_>>();
        [place("x", "y"), place("cx", "cy"), place("x1", "y1"), place("x2", "y2")]
            .into_iter()
            .flatten()
            .chain(along)
            .collect::<Vec<_>>()
    };
    svg.split('<').skip(1).flat_map(element).collect()
}

#[test]
fn no_name_in_the_picture_of_slopes_is_cut_on_a_phone() {
    const GIANT: [(Field, &str); 2] = [(Field::BodyMass, "150"), (Field::Slope, "45")];
    let steep = |slope: &'static str| [(Field::Slope, slope), (Field::Power, "300")];
    for edits in [&[][..], &GIANT, &steep("10"), &steep("23"), &steep("40"), EXTREMES[10], EXTREMES[11]] {
        let report = report(edits);
        for width in (320..=420).step_by(20).chain([780]).map(f64::from) {
            for name in ["slopes", "verdicts"] {
                for Text { from, to, words, .. } in texts(&svg(&report, picture(name), width)) {
                    assert!(
                        from.0 >= -1.0 && to.0 <= width + 1.0,
                        "{name}, {width} px: {words} from {} to {}",
                        from.0,
                        to.0
                    );
                }
            }
        }
    }
}

#[test]
fn every_picture_draws_something_to_place() {
    let report = settled(&[]);
    // Nothing was searched yet.
    for picture in
        Picture::all().filter(|picture| !matches!(picture.name(), "found" | "box-laps" | "uprights"))
    {
        assert!(points(&svg(&report, picture, 780.0)).len() > 10, "{picture:?}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn any_valid_set_up_can_be_drawn(
        rings in prop::collection::btree_set(20u16..=60, 1..=3),
        sprockets in prop::collection::btree_set(9u16..=60, 1..=14),
        width in 200.0..1600.0f64,
    ) {
        let typed = |teeth: &std::collections::BTreeSet<u16>| {
            teeth.iter().map(ToString::to_string).collect::<Vec<_>>().join(", ")
        };
        let report = report(&[(Field::RingsA, &typed(&rings)), (Field::CassetteB, &typed(&sprockets))]);
        for picture in Picture::all() {
            assert_inside(&report, picture, width);
        }
    }
}
