//! Energy cost of running and walking against gradient.

use gear_math::rider::{Climb, FootDrag, running_cost, walking_cost};
use gear_math::{Gradient, Power};
use reference_checks::ride_or_run::{Case, climb};
use reference_checks::{check_all, close, rows};
use serde::Deserialize;
use std::error::Error;

#[derive(Deserialize)]
#[expect(non_snake_case, reason = "named as the columns are")]
struct GridRow {
    gradient_rise_over_run: f64,
    Cr_fit_J_per_kg_m: f64,
    Cw_fit_J_per_kg_m: f64,
}

/// The polynomials of Minetti, Moia, Roi, Susta & Ferretti (2002), *J Appl Physiol* 93:1039–1046.
#[test]
fn published_polynomials() {
    let table: Vec<GridRow> = rows("minetti-2002-fit-grid.csv");
    check_all("minetti-2002-fit-grid.csv", &table, 19, |row| {
        let gradient = Gradient::new(row.gradient_rise_over_run * 100.0).map_err(|e| e.to_string())?;
        close("running", running_cost(gradient).j_per_kg_m(), row.Cr_fit_J_per_kg_m, 1e-6)?;
        close("walking", walking_cost(gradient).j_per_kg_m(), row.Cw_fit_J_per_kg_m, 1e-6)
    });
}

#[derive(Deserialize)]
#[expect(non_snake_case, reason = "named as the columns are")]
struct MeasuredRow {
    gradient_rise_over_run: f64,
    Cr_measured_J_per_kg_m: f64,
    Cr_sd_J_per_kg_m: f64,
    Cr_fit_J_per_kg_m: f64,
    Cw_fit_J_per_kg_m: f64,
}

/// Means and standard deviations as measured, same paper: running lies within one of them throughout.
#[test]
fn measured_costs() {
    let table: Vec<MeasuredRow> = rows("minetti-2002.csv");
    check_all("minetti-2002.csv", &table, 13, |row| {
        let gradient = Gradient::new(row.gradient_rise_over_run * 100.0).map_err(|e| e.to_string())?;
        let running = running_cost(gradient).j_per_kg_m();
        close("running, measured", running, row.Cr_measured_J_per_kg_m, row.Cr_sd_J_per_kg_m)?;
        close("running, fit", running, row.Cr_fit_J_per_kg_m, 1e-4)?;
        close("walking, fit", walking_cost(gradient).j_per_kg_m(), row.Cw_fit_J_per_kg_m, 1e-4)
    });
}

/// Giovanelli, Ortiz, Henninger & Kram (2016, *J Appl Physiol* 120:370–375): 48.5 running and 44.2 walking per vertical
/// metre, averaged over 20.4° to 35°. The two laboratories agree to about a tenth.
#[test]
fn vertical_costs_of_another_laboratory() {
    let angles = [20.4_f64, 24.2];
    check_all("vertical cost", &angles, 2, |degrees| {
        let angle = degrees.to_radians();
        let gradient = Gradient::new((angle.tan() * 100.0).min(45.0)).map_err(|e| e.to_string())?;
        close("running", running_cost(gradient).j_per_kg_m() / angle.sin(), 48.5, 0.1 * 48.5)?;
        close("walking", walking_cost(gradient).j_per_kg_m() / angle.sin(), 44.2, 0.105 * 44.2)
    });
}

/// Pandolf, Givoni & Goldman (1977, *J Appl Physiol* 43:577–581), fitted to walking soldiers with loads, gives the same
/// speeds on hard ground within 2 %: `M = 1.5 W + 2 (W + L)(L/W)² + η (W + L)(1.5 V² + 0.35 V G)` solved for V.
#[test]
fn speeds_of_an_independent_equation() {
    let gradients = [5.0, 10.0, 15.0, 20.0, 25.0, 30.0];
    check_all("Pandolf", &gradients, 6, |&percent| {
        let case = Case::new("firm_grass", 39, 28).map_err(|error| error.to_string())?;
        let question = case.question().map_err(|error| error.to_string())?;
        let answer =
            question.answer(&case.ground, climb(percent / 100.0).map_err(|error| error.to_string())?);
        let (body, load) = (70.0, 10.5);
        let spent = 1.5 * body + 2.0 * (body + load) * (load / body) * (load / body);
        let per_mass = (250.0 / 0.23 - spent) / (body + load);
        let slope = 0.35 * percent;
        let speed = ((slope * slope + 6.0 * per_mass).sqrt() - slope) / 3.0;
        close("speed", answer.foot.m_per_s(), speed, 0.02 * speed)
    });
}

/// Pugh (1970, *J Physiol* 207:823–835): on a still day about 8 % of the cost of running at 6 m/s goes into the air.
#[test]
fn air_on_foot() -> Result<(), Box<dyn Error>> {
    let mut case = Case::new("firm_grass", 39, 28)?;
    case.rider.power = Power::new(505.0)?;
    let in_air = case.question()?.answer(&case.ground, Climb::LEVEL).run.m_per_s();
    case.air.foot_drag = FootDrag::new(0.0)?;
    let without = case.question()?.answer(&case.ground, Climb::LEVEL).run.m_per_s();
    close("speed", in_air, 6.0, 0.2)?;
    close("share of the air", 1.0 - in_air / without, 0.08, 0.02)?;
    Ok(())
}
