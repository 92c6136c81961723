//! Torque and power of the legs, body weight on the pedal, and short efforts.

use gear_math::rider::{
    CrankLength, CriticalPower, EffortTime, LegStrength, PeakPower, ReserveShare, StrengthShare, Torque,
    WorkReserve, body_weight_gradient, break_even_length,
};
use gear_math::{Cadence, Power};
use reference_checks::ride_or_run::{Case, climb, speed};
use reference_checks::{check_all, close, rows};
use serde::Deserialize;
use std::error::Error;

type Outcome<T> = Result<T, Box<dyn Error>>;

#[derive(Deserialize)]
struct PowerRow {
    #[serde(rename = "P_max_W")]
    peak_w: f64,
    optimal_cadence_rpm: f64,
    cadence_rpm: f64,
    #[serde(rename = "max_mean_torque_Nm")]
    torque: f64,
    #[serde(rename = "max_power_W")]
    power: f64,
}

/// Worked out from the linear law, for the riders of Martin, Wagner & Coyle (1997), of Dorel et al. (2005), and the
/// default.
#[test]
fn power_against_cadence() {
    let table: Vec<PowerRow> = rows("power-cadence.csv");
    check_all("power-cadence.csv", &table, 27, |row| {
        let (legs, cadence) = legs(row).map_err(|error| error.to_string())?;
        close("torque", legs.torque(cadence).n_m(), row.torque, 0.01)?;
        close("power", legs.power(cadence).watts(), row.power, 0.1)
    });
}

fn legs(row: &PowerRow) -> Outcome<(LegStrength, Cadence)> {
    let (peak, optimal) = (PeakPower::new(row.peak_w)?, Cadence::new(row.optimal_cadence_rpm)?);
    Ok((LegStrength { peak, optimal, usable: StrengthShare::MINUTES }, Cadence::new(row.cadence_rpm)?))
}

/// Dorel et al. (2005, *Int J Sports Med* 26:739–746) measured 118.5 ± 9.8 N·m at the optimal cadence of sprinters.
#[test]
fn measured_optimal_torque() -> Outcome<()> {
    let optimal = Cadence::new(129.8)?;
    let legs = LegStrength { peak: PeakPower::new(1600.0)?, optimal, usable: StrengthShare::SECONDS_5 };
    close("torque", legs.torque(optimal).n_m(), 118.5, 1.0)?;
    Ok(())
}

#[derive(Deserialize)]
#[expect(non_snake_case, reason = "named as the columns are")]
struct TorqueRow {
    surface: String,
    chainring_teeth: u16,
    sprocket_teeth: u16,
    gradient_rise_over_run: f64,
    resisting_force_N: f64,
    mean_crank_torque_Nm: f64,
    mean_effective_force_N_at_170mm: f64,
    #[serde(rename = "mean_effective_force_N_at_172.5mm")]
    mean_effective_force_N_at_172: f64,
    torque_over_body_weight_torque_170mm: f64,
}

/// Worked out from T = F D/(2π η) at vanishing speed.
#[test]
fn pedal_torque() {
    let table: Vec<TorqueRow> = rows("pedal-torque.csv");
    check_all("pedal-torque.csv", &table, 42, |row| {
        let (force, torque, body_weight) = standing_torque(row).map_err(|error| error.to_string())?;
        let crank = |mm: f64| CrankLength::new(mm).map_err(|error| error.to_string());
        close("force", force, row.resisting_force_N, 0.01)?;
        close("torque", torque.n_m(), row.mean_crank_torque_Nm, 0.01)?;
        // Printed to 0.1 N.
        close("170 mm", torque.pedal_force_n(crank(170.0)?), row.mean_effective_force_N_at_170mm, 0.051)?;
        close("172.5 mm", torque.pedal_force_n(crank(172.5)?), row.mean_effective_force_N_at_172, 0.051)?;
        let share = torque.n_m() / body_weight.n_m();
        close("share", share, row.torque_over_body_weight_torque_170mm, 0.001)
    });
}

fn standing_torque(row: &TorqueRow) -> Outcome<(f64, Torque, Torque)> {
    let case = Case::new(&row.surface, row.chainring_teeth, row.sprocket_teeth)?;
    let resistance = case.question()?.resistance(&case.ground, climb(row.gradient_rise_over_run)?);
    let still = speed(0.0)?;
    let torque = resistance.crank_torque(still, case.bike.lowest_development());
    let body_weight = Torque::of_body_weight(case.rider.body, case.rider.kit, CrankLength::USUAL);
    Ok((resistance.force_n(still), torque, body_weight))
}

#[derive(Deserialize)]
struct BodyWeightRow {
    surface: String,
    chainring_teeth: u16,
    sprocket_teeth: u16,
    crank_length_m: f64,
    #[serde(rename = "body_weight_torque_Nm")]
    torque: f64,
    gradient_rise_over_run: f64,
}

/// Worked out from the closed form.
#[test]
fn body_weight() {
    let table: Vec<BodyWeightRow> = rows("body-weight-gradient.csv");
    check_all("body-weight-gradient.csv", &table, 24, |row| {
        let mut case =
            Case::new(&row.surface, row.chainring_teeth, row.sprocket_teeth).map_err(|e| e.to_string())?;
        case.rider.crank = CrankLength::new(row.crank_length_m * 1000.0).map_err(|e| e.to_string())?;
        let torque = Torque::of_body_weight(case.rider.body, case.rider.kit, case.rider.crank);
        close("torque", torque.n_m(), row.torque, 0.01)?;
        let gradient = body_weight_gradient(&case.rider, &case.bike, case.ground.rolling).ok_or("never")?;
        close("gradient", gradient.rise_over_run(), row.gradient_rise_over_run, 1e-4)
    });
}

fn typical() -> Outcome<CriticalPower> {
    Ok(CriticalPower::new(Power::new(250.0)?, WorkReserve::USUAL, PeakPower::new(1000.0)?)?)
}

#[derive(Deserialize)]
#[expect(non_snake_case, reason = "named as the columns are")]
struct ShortRow {
    duration_s: f64,
    P_two_parameter_W: f64,
    P_three_parameter_W: f64,
    P_one_fifth_of_Wprime_W: f64,
    P_suggested_cap_W: f64,
}

/// Worked out from Monod & Scherrer (1965) and Morton (1996).
#[test]
fn short_efforts() -> Outcome<()> {
    let rider = typical()?;
    let table: Vec<ShortRow> = rows("short-effort-power.csv");
    check_all("short-effort-power.csv", &table, 9, |row| {
        let time = EffortTime::new(row.duration_s).map_err(|error| error.to_string())?;
        close("two parameters", rider.power_without_peak(time).watts(), row.P_two_parameter_W, 0.1)?;
        close("three parameters", rider.power(time).watts(), row.P_three_parameter_W, 0.1)?;
        close(
            "one fifth",
            rider.power_spending(ReserveShare::EACH_LAP, time).watts(),
            row.P_one_fifth_of_Wprime_W,
            0.1,
        )?;
        close("race", rider.race_power(ReserveShare::EACH_LAP, time).watts(), row.P_suggested_cap_W, 0.1)
    });
    Ok(())
}

#[derive(Deserialize)]
#[expect(non_snake_case, reason = "named as the columns are")]
struct OverGearRow {
    surface: String,
    chainring_teeth: u16,
    sprocket_teeth: u16,
    min_cadence_rpm: f64,
    gradient_rise_over_run: f64,
    speed_m_per_s: f64,
    power_needed_W: f64,
    time_all_Wprime_s: Option<f64>,
    distance_all_Wprime_m: Option<f64>,
    time_one_fifth_Wprime_s: Option<f64>,
    distance_one_fifth_Wprime_m: Option<f64>,
}

/// Worked out from the two-parameter model; an empty cell means that the power can be sustained.
#[test]
fn gears_that_are_too_tall() -> Outcome<()> {
    let effort = typical()?;
    let table: Vec<OverGearRow> = rows("over-gear-distance.csv");
    check_all("over-gear-distance.csv", &table, 60, |row| {
        let forced = |share| forced(row, &effort, share).map_err(|error| error.to_string());
        let all = forced(ReserveShare::ALL)?;
        close("speed", all.speed.m_per_s(), row.speed_m_per_s, 1e-4)?;
        close("power", all.power.watts(), row.power_needed_W, 0.1)?;
        lasts(all, row.time_all_Wprime_s, row.distance_all_Wprime_m)?;
        lasts(forced(ReserveShare::EACH_LAP)?, row.time_one_fifth_Wprime_s, row.distance_one_fifth_Wprime_m)
    });
    Ok(())
}

fn forced(
    row: &OverGearRow,
    effort: &CriticalPower,
    share: ReserveShare,
) -> Outcome<gear_math::rider::OverGear> {
    let mut case = Case::new(&row.surface, row.chainring_teeth, row.sprocket_teeth)?;
    case.rider.lowest_cadence = Cadence::new(row.min_cadence_rpm)?;
    let gradient = climb(row.gradient_rise_over_run)?;
    Ok(case.question()?.over_gear(&case.ground, gradient, effort, share))
}

fn lasts(found: gear_math::rider::OverGear, time: Option<f64>, distance: Option<f64>) -> Result<(), String> {
    match (found.lasts, time, distance) {
        (Some((s, m)), Some(time), Some(distance)) => {
            close("time", s.s(), time, 0.1)?;
            close("distance", m.m(), distance, 0.1)
        }
        (None, None, None) => Ok(()),
        (found, ..) => Err(format!("found {found:?}, expected {time:?} and {distance:?}")),
    }
}

#[derive(Deserialize)]
struct BreakEvenRow {
    v_ride_m_per_s: f64,
    v_foot_m_per_s: f64,
    t0_s: f64,
    break_even_length_m: f64,
}

/// Worked out from the times of both ways.
#[test]
fn break_even() {
    let table: Vec<BreakEvenRow> = rows("obstacle-break-even.csv");
    check_all("obstacle-break-even.csv", &table, 24, |row| {
        let length = || -> Outcome<_> {
            let lost = gear_math::rider::SecondsLost::new(row.t0_s)?;
            Ok(break_even_length(speed(row.v_ride_m_per_s)?, speed(row.v_foot_m_per_s)?, lost))
        };
        let length = length().map_err(|error| error.to_string())?.ok_or("never")?;
        close("length", length.m(), row.break_even_length_m, 0.001)
    });
}

/// Lengths for the reference rider who loses 3 s, as the model's description states them to the metre.
#[test]
fn break_even_of_the_reference_rider() {
    let table = [
        ("firm_grass", 0.25, 82.0),
        ("firm_grass", 0.30, 64.0),
        ("mud", 0.15, 59.0),
        ("mud", 0.20, 32.0),
        ("mud", 0.30, 24.0),
    ];
    check_all("break-even of a rider", &table, 5, |&(surface, gradient, metres)| {
        let plan = || -> Outcome<_> {
            let mut case = Case::new(surface, 20, 60)?;
            case.rider.lowest_cadence = Cadence::new(20.0)?;
            let length = gear_math::rider::ClimbLength::new(50.0)?;
            let lost = gear_math::rider::SecondsLost::PRACTISED;
            Ok(case.question()?.climb(&case.ground, climb(gradient)?, length, lost))
        };
        let length = plan().map_err(|error| error.to_string())?.break_even.ok_or("never")?;
        close("length", length.m(), metres, 0.5)
    });
}
