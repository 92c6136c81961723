//! Circumference from the tyre's size: worked out apart, and against the setting tables printed for cycle computers.

use gear_math::wheel::TyreKind;
use gear_math::{TyreSize, Wheel};
use reference_checks::{check_all, close, rows};
use serde::Deserialize;

#[derive(Deserialize)]
struct Row {
    iso_size: String,
    bead_seat_mm: u16,
    nominal_width_mm: f64,
    formula_mm: f64,
}

/// The formula is tabulated to a tenth of a millimetre.
const FORMULA_TOLERANCE_MM: f64 = 0.0501;
/// Widest gap between the formula and the settings from 20 to 35 mm on 622 mm.
const CLOSEST_TOLERANCE_MM: f64 = 6.3;

#[test]
fn formula_of_every_size() {
    let rows: Vec<Row> = rows("tyre-circumference.csv");
    check_all("tyre-circumference.csv", &rows, 10, |row| {
        let tyre: TyreSize = row.iso_size.parse().map_err(|error| format!("{error}"))?;
        close("bead seat", tyre.bead_seat.mm().into(), row.bead_seat_mm.into(), 0.0)?;
        close("width", tyre.width.mm(), row.nominal_width_mm, 0.0)?;
        close("formula", tyre.circumference().mm(), row.formula_mm, FORMULA_TOLERANCE_MM)
    });
}

#[derive(Deserialize)]
struct SettingRow {
    table: String,
    iso_size: String,
    bead_seat_mm: u16,
    width_mm: f64,
    published_mm: f64,
}

/// The family of setting tables that is roughly a loaded roll-out, on 622 mm, 18 to 45 mm wide: all within the error
/// that is shown for road tyres.
#[test]
fn settings_lie_within_the_error_shown() {
    let mut rows: Vec<SettingRow> = rows("tyre-rollout-tables.csv");
    rows.retain(|row| row.table == "A" && row.bead_seat_mm == 622 && (18.0..=45.0).contains(&row.width_mm));
    check_all("tyre-rollout-tables.csv", &rows, 14, |row| {
        let tyre: TyreSize = row.iso_size.parse().map_err(|error| format!("{error}"))?;
        if (20.0..=35.0).contains(&row.width_mm) {
            close("20 to 35 mm", tyre.circumference().mm(), row.published_mm, CLOSEST_TOLERANCE_MM)?;
        }
        let estimate = Wheel { tyre, kind: TyreKind::Road, measured: None }.estimate();
        let likely = estimate.shortest.mm()..=estimate.longest.mm();
        likely
            .contains(&row.published_mm)
            .then_some(())
            .ok_or(format!("{} outside {likely:?}", row.published_mm))
    });
}
