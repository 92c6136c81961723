//! Stems and positions on angles whose sines and cosines stand in every handbook, and on Pythagorean triples: vectors
//! that are added by hand.
#![expect(clippy::unwrap_used, reason = "reference values lie within their limits")]

use gear_math::position::{
    BarDrop, BikePoint, ClampHeight, Footing, FrameReach, FrameStack, FrontEnd, HeadAngle, PositionChanges,
    Saddle, SaddleHeight, SeatAngle, Setback, SoleStack, Spacers, StemAngle, StemLength, StemSetup, TipToBar,
    TopCap,
};
use gear_math::rider::CrankLength;
use gear_math::{CrossBike, RoadPosition};
use reference_checks::{check_all, close, rows};
use serde::Deserialize;

const FILE: &str = "handbook-angles.csv";
/// The table has sixteen digits.
const TOLERANCE_MM: f64 = 1e-9;

#[derive(Deserialize)]
struct Angle {
    degrees: f64,
    sine: f64,
    cosine: f64,
}

/// The row of an angle; a negative one has the opposite sine.
fn handbook(degrees: f64) -> Option<[f64; 2]> {
    let row = rows::<Angle>(FILE).into_iter().find(|row| (row.degrees - degrees.abs()).abs() < 1e-9)?;
    Some([row.sine * degrees.signum(), row.cosine])
}

/// 12 mm of top cap, 10 mm of spacers and half of a clamp of 40 mm: 42 mm up the steerer.
fn bar(head_angle: f64, stem_angle: f64) -> BikePoint {
    let front = FrontEnd {
        stack: FrameStack::new(560.0).unwrap(),
        reach: FrameReach::new(380.0).unwrap(),
        head_angle: HeadAngle::new(head_angle).unwrap(),
        top_cap: TopCap::new(12.0).unwrap(),
        clamp_height: ClampHeight::new(40.0).unwrap(),
    };
    front.bar(&StemSetup {
        length: StemLength::new(100.0).unwrap(),
        angle: StemAngle::new(stem_angle).unwrap(),
        spacers: Spacers::new(10.0).unwrap(),
    })
}

/// Back along the steerer, forward along the stem: at right angles to the steerer it rises by what the steerer leans.
#[test]
fn a_stem_is_the_sum_of_two_vectors() {
    let angles: Vec<(f64, f64)> = [60.0, 75.0, 90.0]
        .into_iter()
        .flat_map(|head| [-45.0, -30.0, -15.0, 0.0, 15.0, 30.0, 45.0].map(|stem| (head, stem)))
        .collect();
    check_all(FILE, &angles, 21, |&(head, stem)| {
        let [steerer_up, steerer_back] = handbook(head).ok_or("no head angle")?;
        let [stem_up, stem_forward] = handbook(90.0 - head + stem).ok_or("no stem direction")?;
        let found = bar(head, stem);
        close("forward", found.x_mm, 380.0 - 42.0 * steerer_back + 100.0 * stem_forward, TOLERANCE_MM)?;
        close("up", found.y_mm, 560.0 + 42.0 * steerer_up + 100.0 * stem_up, TOLERANCE_MM)
    });
}

fn seated(seat_angle: f64, bar: [f64; 2]) -> RoadPosition {
    let [tip_to_bar, bar_drop] = bar;
    RoadPosition {
        saddle: Saddle {
            height: SaddleHeight::new(700.0).unwrap(),
            setback: Setback::new(60.0).unwrap(),
            seat_angle: SeatAngle::new(seat_angle).unwrap(),
        },
        footing: Footing {
            crank: CrankLength::new(170.0).unwrap(),
            sole_stack: SoleStack::new(15.0).unwrap(),
        },
        tip_to_bar: TipToBar::new(tip_to_bar).unwrap(),
        bar_drop: BarDrop::new(bar_drop).unwrap(),
    }
}

/// The tape is the longest side of a right triangle: 7–24–25 (twice), 8–15–17 and 5–12–13 (Euclid, *Elements* I.47), and
/// a saddle of 700 mm at 75° stands 175 (√6 + √2) mm high.
#[test]
fn a_position_is_a_right_triangle_on_a_leaning_line() {
    let triangles: [[f64; 3]; 4] =
        [[500.0, 140.0, 480.0], [510.0, 240.0, 450.0], [650.0, 250.0, 600.0], [625.0, 175.0, 600.0]];
    check_all("right triangles", &triangles, 4, |&[tape, drop, forward]| {
        let road = seated(75.0, [tape, drop]);
        let same = CrossBike { seat_angle: road.saddle.seat_angle, footing: road.footing };
        let carried = road.carried_to(&same, &PositionChanges::none());
        let height = 175.0 * (6.0_f64.sqrt() + 2.0_f64.sqrt());
        close("height", carried.saddle_vertical_mm, height, TOLERANCE_MM)?;
        close("bar ahead of the tip", carried.target.x_mm + 60.0, forward, TOLERANCE_MM)?;
        close("bar below the saddle", height - carried.target.y_mm, drop, TOLERANCE_MM)
    });
}
