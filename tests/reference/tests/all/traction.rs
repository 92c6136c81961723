//! Slip of the rear wheel, lift of the front wheel, and the table of grounds.

use gear_math::Surface;
use gear_math::rider::{
    Basis, Friction, MassHeight, PeakFactor, Range, RearShare, RollingCoefficient, Stance, Wheelbase,
};
use reference_checks::{check_all, close, rows};
use serde::Deserialize;

#[derive(Deserialize)]
struct TractionRow {
    friction_coefficient: f64,
    rear_weight_fraction_on_level: f64,
    com_height_m: f64,
    wheelbase_m: f64,
    #[serde(rename = "Crr")]
    crr: f64,
    peak_factor: f64,
    slip_gradient_rise_over_run: f64,
    front_lift_gradient_rise_over_run: f64,
}

/// Static balance, checked with a numerical solution of the moments.
#[test]
fn slip_and_lift() {
    let table: Vec<TractionRow> = rows("traction-reference.csv");
    check_all("traction-reference.csv", &table, 56, |row| {
        let (stance, friction, rolling) = seated(row).map_err(|error| error.to_string())?;
        let slip = stance.slip(friction, rolling).ok_or("never slips")?;
        close("slip", slip.rise_over_run(), row.slip_gradient_rise_over_run, 1e-4)?;
        let lift = stance.lift(rolling).rise_over_run();
        close("lift", lift, row.front_lift_gradient_rise_over_run, 1e-4)
    });
}

fn seated(row: &TractionRow) -> Result<(Stance, Friction, RollingCoefficient), gear_math::OutOfLimits> {
    let stance = Stance {
        wheelbase: Wheelbase::new(row.wheelbase_m * 1000.0)?,
        height: MassHeight::new(row.com_height_m * 1000.0)?,
        rear: RearShare::new(row.rear_weight_fraction_on_level)?,
        peak: PeakFactor::new(row.peak_factor)?,
    };
    Ok((stance, Friction::new(row.friction_coefficient)?, RollingCoefficient::new(row.crr)?))
}

#[derive(Deserialize)]
#[expect(non_snake_case, reason = "named as the columns are")]
struct SurfaceRow {
    surface: String,
    Crr_low: f64,
    Crr_typical: f64,
    Crr_high: f64,
    Crr_status: String,
    S_low: f64,
    S_typical: f64,
    S_high: f64,
    S_status: String,
    mu_low: f64,
    mu_typical: f64,
    mu_high: f64,
    mu_status: String,
}

/// Sources as named at each function of `Surface`.
#[test]
fn surfaces() {
    let table: Vec<SurfaceRow> = rows("surfaces.csv");
    check_all("surfaces.csv", &table, 8, |row| {
        let surface = named(&row.surface)?;
        let rolling = surface.rolling();
        let expected = ([row.Crr_low, row.Crr_typical, row.Crr_high], &*row.Crr_status);
        range("rolling", rolling, RollingCoefficient::value, expected)?;
        let expected = ([row.S_low, row.S_typical, row.S_high], &*row.S_status);
        range("foot", surface.foot(), gear_math::rider::FootFactor::value, expected)?;
        let expected = ([row.mu_low, row.mu_typical, row.mu_high], &*row.mu_status);
        range("friction", surface.friction(), Friction::mu, expected)
    });
}

fn named(surface: &str) -> Result<Surface, String> {
    Ok(match surface {
        "tarmac" => Surface::Tarmac,
        "packed_gravel" => Surface::PackedGravel,
        "firm_grass" => Surface::FirmGrass,
        "wet_soft_grass" => Surface::WetSoftGrass,
        "mud" => Surface::Mud,
        "deep_mud" => Surface::DeepMud,
        "wet_packed_sand" => Surface::WetPackedSand,
        "loose_sand" => Surface::LooseSand,
        _ => return Err(format!("no surface called {surface}")),
    })
}

fn range<T>(
    what: &str,
    found: Range<T>,
    value: fn(T) -> f64,
    (expected, status): ([f64; 3], &str),
) -> Result<(), String> {
    let basis = match found.basis {
        Basis::Published => "published",
        Basis::Bracketed => "bracketed",
        Basis::Estimate => "estimate",
    };
    if basis != status {
        return Err(format!("{what}: {basis}, expected {status}"));
    }
    let found = [found.low, found.typical, found.high].map(value);
    found.into_iter().zip(expected).try_for_each(|(found, expected)| close(what, found, expected, 1e-12))
}
