//! Rolling on soft ground by Wismer & Luth: the closed form, worked out apart from gear-math.

use gear_math::OutOfLimits;
use gear_math::wheel::{ConeIndex, MountedWidth, SinkingWheel, WheelLoad, WheelRadius, WidthFactor};
use reference_checks::{check_all, close, rows};
use serde::Deserialize;

const FILE: &str = "soft-ground-rolling.csv";

#[derive(Deserialize)]
struct Row {
    #[serde(rename = "CI_kPa")]
    cone_index_kpa: f64,
    width_m: f64,
    diameter_m: f64,
    #[serde(rename = "load_N")]
    load_n: f64,
    #[serde(rename = "Cn")]
    number: f64,
    ratio: f64,
}

impl Row {
    fn wheel(&self) -> Result<SinkingWheel, OutOfLimits> {
        Ok(SinkingWheel {
            cone_index: ConeIndex::new(self.cone_index_kpa)?,
            width: MountedWidth::new(1000.0 * self.width_m)?,
            outer_radius: WheelRadius::new(500.0 * self.diameter_m)?,
            load: WheelLoad::new(self.load_n)?,
        })
    }

    fn check(&self) -> Result<(), String> {
        let wheel = self.wheel().map_err(|error| error.to_string())?;
        close("number", wheel.number(), self.number, 1e-4)?;
        close("rolling over load", wheel.rolling(), self.ratio, 1e-4)
    }
}

#[test]
fn rolls_by_the_closed_form() {
    check_all(FILE, &rows(FILE), 4, Row::check);
}

/// The two rows that differ in width alone are what a tyre of 40 mm is judged by: 8 % less than one of 33.
#[test]
fn a_wider_tyre_is_judged_by_the_ratio_of_two_rows() {
    let rows: Vec<Row> = rows(FILE);
    let ratio = rows[2].ratio / rows[1].ratio;
    let found = WidthFactor::on_soft_ground(MountedWidth::new(40.0).unwrap_or(MountedWidth::CROSS)).value();
    assert!((found - ratio).abs() < 2e-4 && (0.915..0.922).contains(&found), "{found} for {ratio}");
}
