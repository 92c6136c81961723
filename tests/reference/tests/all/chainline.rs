//! Sideways measures and hanger reach against tables.

use gear_math::chain::{Cage, ChainDefaults, HubMeasures, SprocketPitch, cassette_slope_degrees};
use gear_math::gears::ChainAngle;
use gear_math::{Drivetrain, Sprocket};
use reference_checks::{check_all, close, rows};
use serde::Deserialize;

#[expect(clippy::needless_pass_by_value, reason = "handed to map_err")]
fn text<E: ToString>(error: E) -> String {
    error.to_string()
}

#[derive(Deserialize)]
struct AngleRow {
    ring: u16,
    sprocket: u16,
    sprocket_mm_from_midplane: f64,
    ring_minus_sprocket_mm: f64,
    chain_angle_deg: f64,
}

/// Source: worked out independently for 46/36 with an 11-speed 11-28, both chainlines 43.5 mm, chainstay 425 mm.
#[test]
fn chain_angles() {
    let file = "chain-angle-example.csv";
    let bike = Drivetrain {
        chainset: "46/36".parse().unwrap(),
        cassette: "11-12-13-14-15-17-19-21-23-25-28".parse().unwrap(),
    };
    let line = ChainDefaults::chainline(&bike);
    let planes: Vec<f64> = line.sprocket_planes_mm(&bike.cassette).collect();
    let rings: Vec<f64> = line.ring_planes_mm(&bike.chainset).collect();
    let angles: Vec<f64> =
        line.sideways(&bike, ChainDefaults::FRAME.chainstay).map(ChainAngle::degrees).collect();
    check_all(file, &rows(file), 22, |row: &AngleRow| {
        let at = bike.gears().position(|g| (g.ring.teeth(), g.sprocket.teeth()) == (row.ring, row.sprocket));
        let at = at.ok_or("no such gear")?;
        let [ring, sprocket] = [rings[at / 11], planes[at % 11]];
        close("sprocket plane", sprocket, row.sprocket_mm_from_midplane, 0.0051)?;
        close("offset", ring - sprocket, row.ring_minus_sprocket_mm, 0.0101)?;
        // The file's angles were made from planes rounded to 0.01 mm: 0.0014 degrees.
        close("angle", angles[at], row.chain_angle_deg, 0.002)
    });
}

#[derive(Deserialize)]
struct PlaneRow {
    sprocket_from_largest: usize,
    published_mm: f64,
}

/// Source: a published layout of a 10-speed cassette on a 130 mm hub, 3 mm to the frame end, sprockets of 1.6 mm.
#[test]
fn published_sprocket_planes() {
    let file = "chainline-10-speed-check.csv";
    let bike = Drivetrain {
        chainset: "44".parse().unwrap(),
        cassette: "11-12-13-14-15-17-19-21-23-25".parse().unwrap(),
    };
    let pitch = SprocketPitch::new(3.95).unwrap();
    let hub = HubMeasures { width_mm: 130.0, end_gap_mm: 3.0, sprocket_thickness_mm: 1.6 };
    let mut line = ChainDefaults::chainline(&bike);
    line.sprocket_pitch = pitch;
    line.rear = hub.chainline(pitch, 10).unwrap();
    let planes: Vec<f64> = line.sprocket_planes_mm(&bike.cassette).collect();
    check_all(file, &rows(file), 10, |row: &PlaneRow| {
        close("plane", planes[10 - row.sprocket_from_largest], row.published_mm, 0.0051)
    });
}

#[derive(Deserialize)]
struct WidthRow {
    speeds: usize,
    sprocket_thickness_mm: f64,
    total_width_mm: f64,
    sprocket_pitch_mm: f64,
}

/// Source: a published table of cassette widths up to ten speeds; eleven and twelve from memory.
#[test]
fn sprocket_pitches() {
    let file = "cassette-widths.csv";
    check_all(file, &rows(file), 6, |row: &WidthRow| {
        let pitch = SprocketPitch::usual(row.speeds).mm();
        close("pitch", pitch, row.sprocket_pitch_mm, 0.00051)?;
        let steps = f64::from(u16::try_from(row.speeds).map_err(text)?) - 1.0;
        close("width", steps * pitch + row.sprocket_thickness_mm, row.total_width_mm, 0.03)
    });
}

/// Source: worked out independently with the hanger about 28 mm below and 9 mm behind the axle, printed to 0.1 mm.
#[test]
fn reach_on_the_largest_sprocket() {
    let cage = Cage::new(ChainDefaults::CAGE).unwrap();
    let table =
        [(25, 64.5), (28, 70.4), (30, 74.3), (32, 78.2), (34, 82.2), (36, 86.1), (40, 94.0), (42, 98.0)];
    check_all("reach", &table, 8, |&(teeth, mm)| {
        let sprocket = Sprocket::new(teeth).map_err(text)?;
        close("reach", ChainDefaults::HANGER.reach_mm(sprocket, &ChainDefaults::FRAME, &cage), mm, 0.06)
    });
}

/// Source: worked out independently for 11-speed cassettes, printed to whole degrees.
#[test]
fn cassette_slopes() {
    let table = [(25, 37.0), (28, 42.0), (34, 51.0), (36, 53.0), (42, 59.0)];
    check_all("slope", &table, 5, |&(largest, degrees)| {
        let cassette = gear_math::Cassette::new((11..=20).chain([largest])).map_err(text)?;
        close("slope", cassette_slope_degrees(&cassette, SprocketPitch::usual(11)), degrees, 0.51)
    });
}
