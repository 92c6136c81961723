//! Roll-out limits of rule books and the gears named for them.
//!
//! Rule books and clubs name gears for each limit without saying on which wheel. No one wheel meets them all, so the
//! gears are bounds: each passes on the wheel that the limit and the gear imply and fails on any longer one.

use gear_math::gears::{RollOutLimit, RollOutPreset};
use gear_math::{Circumference, Gear};
use reference_checks::{check_all, close, rows};
use serde::Deserialize;

#[derive(Deserialize)]
struct Row {
    federation: String,
    discipline: String,
    category: String,
    limit_m: Option<f64>,
    article: Option<String>,
    typical_gears: String,
}

/// Shortest and longest wheel, in mm, on which the gears named for a limit just pass: some assume a wheel smaller than
/// a road wheel, some stay a tooth below the limit.
const IMPLIED_WHEELS_MM: (f64, f64) = (2000.0, 2250.0);

#[test]
fn named_gears_bound_their_limit() {
    let rows: Vec<Row> = rows("rollout-limits.csv");
    check_all("rollout-limits.csv", &rows, 39, |row| {
        let Some(limit_m) = row.limit_m else { return no_preset(row) };
        let limit = RollOutLimit::new(limit_m).map_err(|error| error.to_string())?;
        row.gears().try_for_each(|gear| just_passes(limit, gear?))
    });
}

fn no_preset(row: &Row) -> Result<(), String> {
    let listed = RollOutPreset::ALL.iter().any(|preset| row.is(preset));
    if listed { Err("a preset without a limit".to_owned()) } else { Ok(()) }
}

fn just_passes(limit: RollOutLimit, gear: Gear) -> Result<(), String> {
    let longest = limit.longest_wheel(gear).mm();
    let (short, long) = IMPLIED_WHEELS_MM;
    if !(short..=long).contains(&longest) {
        return Err(format!("{gear} passes {} m up to a wheel of {longest} mm", limit.m()));
    }
    let allowed = |mm: f64| Circumference::new(mm).is_ok_and(|wheel| limit.allows(gear.development(wheel)));
    let holds = allowed(longest - 1e-6) && !allowed(longest + 1e-6);
    holds.then_some(()).ok_or(format!("{gear} does not turn at {longest} mm"))
}

impl Row {
    fn gears(&self) -> impl Iterator<Item = Result<Gear, String>> + '_ {
        self.typical_gears.split([';', ' ']).filter_map(|gear| gear.split_once('x')).map(
            |(ring, sprocket)| {
                let count = |text: &str| text.parse().map_err(|error| format!("{text}: {error}"));
                Gear::new(count(ring)?, count(sprocket)?).map_err(|error| error.to_string())
            },
        )
    }

    fn is(&self, preset: &RollOutPreset) -> bool {
        self.federation.replace(" / ", " and ") == preset.federation
            && (&*self.discipline, &*self.category) == (preset.discipline, preset.category)
    }
}

struct Implied {
    gear: (u16, u16),
    limit_m: f64,
    wheel_mm: f64,
    within_mm: f64,
}

/// Limit ÷ ratio for the gears that rule books themselves name.
#[test]
fn wheels_that_the_rule_books_imply() {
    let implied = |gear, limit_m, wheel_mm, within_mm| Implied { gear, limit_m, wheel_mm, within_mm };
    let table = [
        implied((52, 14), 7.93, 2135.0, 0.5),
        implied((54, 11), 10.46, 2130.7, 0.05),
        implied((48, 15), 6.78, 2119.0, 0.5),
        implied((48, 16), 6.36, 2120.0, 0.5),
        implied((48, 17), 6.00, 2125.0, 0.5),
    ];
    check_all("implied wheels", &table, 5, |row| {
        let gear = Gear::new(row.gear.0, row.gear.1).map_err(|error| error.to_string())?;
        let limit = RollOutLimit::new(row.limit_m).map_err(|error| error.to_string())?;
        close("longest wheel", limit.longest_wheel(gear).mm(), row.wheel_mm, row.within_mm)
    });
}

struct OnWheel {
    gear: (u16, u16),
    wheel_mm: f64,
    development_m: f64,
    within_m: f64,
    limit_m: f64,
    passes: bool,
}

/// Gears that pass on a 23 mm road tyre (2096 mm) and fail on the 33 mm of cyclo-cross (2161 mm), and club-listed gears
/// that fail already on the road tyre.
#[test]
fn the_wheel_decides() {
    let on = |gear, wheel_mm, development_m, within_m, limit_m, passes| OnWheel {
        gear,
        wheel_mm,
        development_m,
        within_m,
        limit_m,
        passes,
    };
    let table = [
        on((52, 14), 2096.0, 7.79, 0.005, 7.93, true),
        on((52, 14), 2161.0, 8.03, 0.005, 7.93, false),
        on((52, 16), 2096.0, 6.81, 0.005, 6.93, true),
        on((52, 16), 2161.0, 7.02, 0.005, 6.93, false),
        on((49, 19), 2096.0, 5.405, 0.0005, 5.40, false),
        on((39, 16), 2096.0, 5.109, 0.0005, 5.10, false),
        on((48, 19), 2096.0, 5.295, 0.0005, 5.10, false),
    ];
    check_all("gears on wheels", &table, 7, |row| {
        let gear = Gear::new(row.gear.0, row.gear.1).map_err(|error| error.to_string())?;
        let wheel = Circumference::new(row.wheel_mm).map_err(|error| error.to_string())?;
        let limit = RollOutLimit::new(row.limit_m).map_err(|error| error.to_string())?;
        let development = gear.development(wheel);
        close("development", development.m(), row.development_m, row.within_m)?;
        let agrees = limit.allows(development) == row.passes;
        agrees.then_some(()).ok_or(format!("{gear} on {} mm", row.wheel_mm))
    });
}

/// Every preset stands in the table with its limit and article.
#[test]
fn presets_come_from_the_table() {
    let rows: Vec<Row> = rows("rollout-limits.csv");
    check_all("presets", RollOutPreset::ALL, 19, |preset| {
        let found =
            rows.iter().find(|row| row.is(preset)).ok_or(format!("{preset:?} is not in the table"))?;
        let agrees = found.limit_m == Some(preset.limit.m()) && found.article.as_deref() == preset.article;
        agrees.then_some(()).ok_or(format!("{preset:?} differs from the table"))
    });
}
