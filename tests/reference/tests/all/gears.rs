//! Gear arithmetic against values printed between 1900 and 2022; each row of the table names its source.

use core::num::NonZeroU16;
use gear_math::{Cadence, Circumference, Gear, Ratio};
use reference_checks::{check_all, close, rows};
use serde::Deserialize;

#[derive(Deserialize)]
struct Row {
    quantity: String,
    ring: Option<u16>,
    sprocket: Option<u16>,
    wheel_kind: String,
    wheel_value: Option<f64>,
    cadence_rpm: Option<f64>,
    published: f64,
    exact: f64,
    tolerance: f64,
}

/// Exact values are tabulated to four decimals.
const EXACT_TOLERANCE: f64 = 5.1e-5;
/// Developments above this are no wheel's circumference; every value in gear inches is above it too.
const LARGEST_WHEEL_M: f64 = 3.0;
const MM_PER_INCH: f64 = 25.4;

#[test]
fn published_gears() {
    let rows: Vec<Row> = rows("gear-checks.csv");
    check_all("gear-checks.csv", &rows, 65, |row| {
        let found = row.compute()?;
        close("exact", found, row.exact, EXACT_TOLERANCE)?;
        close("published", found, row.published, row.tolerance)
    });
}

impl Row {
    fn compute(&self) -> Result<f64, String> {
        let development = || Ok::<_, String>(self.ratio()?.development(self.wheel()?));
        let speed = || Ok::<_, String>(development()?.speed_at(self.cadence()?));
        Ok(match self.quantity.as_str() {
            "development" => development()?.m(),
            "rollout_in" | "rollout_from_gear_inches" => development()?.inches(),
            "gear_inches" if self.wheel_value == Some(27.0) => self.ratio()?.nominal_gear_inches().inches(),
            "gear_inches" => self.ratio()?.gear_inches(self.wheel()?).inches(),
            "gear_inches_from_development" => development()?.gear_inches().inches(),
            "speed_kmh" => speed()?.km_per_h(),
            "speed_mph" => speed()?.miles_per_h(),
            "ratio" => self.ratio()?.value(),
            "step_pct" => self.step_percent()?,
            other => return Err(format!("unknown quantity {other}")),
        })
    }

    /// Rows that give a development or gear inches outright are put as a wheel of that size, driven one to one; where
    /// that would be no wheel, as a wheel a quarter as large, driven four to one.
    fn ratio(&self) -> Result<Ratio, String> {
        let driving = self.ring.unwrap_or(self.gearing_up());
        let driven = self.sprocket.unwrap_or(1);
        let teeth = |n| NonZeroU16::new(n).ok_or("no teeth");
        Ok(Ratio::of(teeth(driving)?, teeth(driven)?))
    }

    fn gearing_up(&self) -> u16 {
        if self.ring.is_none() && self.wheel_value > Some(LARGEST_WHEEL_M) { 4 } else { 1 }
    }

    fn wheel(&self) -> Result<Circumference, String> {
        let value = self.wheel_value.ok_or("no wheel")? / f64::from(self.gearing_up());
        let mm = match self.wheel_kind.as_str() {
            "circumference_m" | "development_m" => value * 1000.0,
            "diameter_in" | "gear_inches" => value * MM_PER_INCH * core::f64::consts::PI,
            other => return Err(format!("unknown wheel {other}")),
        };
        Circumference::new(mm).map_err(|error| format!("{error}: {mm}"))
    }

    fn cadence(&self) -> Result<Cadence, String> {
        Cadence::new(self.cadence_rpm.ok_or("no cadence")?).map_err(|error| error.to_string())
    }

    /// Steps name the larger sprocket in the ring column.
    fn step_percent(&self) -> Result<f64, String> {
        let cassette = gear_math::Cassette::new(self.sprocket.into_iter().chain(self.ring));
        let step = cassette.map_err(|error| error.to_string())?.largest_step().ok_or("no step")?;
        Ok(step.step.percent())
    }
}

#[derive(Deserialize)]
struct Misprint {
    ring: u16,
    sprocket: u16,
    wheel_circumference_m: f64,
    printed_m: f64,
    correct_m: f64,
}

#[test]
fn misprints_differ() {
    let rows: Vec<Misprint> = rows("gear-checks-misprints.csv");
    check_all("gear-checks-misprints.csv", &rows, 3, |row| {
        let gear = Gear::new(row.ring, row.sprocket).map_err(|error| error.to_string())?;
        let wheel =
            Circumference::new(row.wheel_circumference_m * 1000.0).map_err(|error| error.to_string())?;
        let found = gear.development(wheel).m();
        close("development", found, row.correct_m, EXACT_TOLERANCE)?;
        match close("misprint", found, row.printed_m, 0.1) {
            Ok(()) => Err(format!("{found} agrees with the misprint {}", row.printed_m)),
            Err(_) => Ok(()),
        }
    });
}
