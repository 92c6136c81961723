//! The air spring against numerical integration of the same section, computed independently; the power 3/2 is that of
//! Renart and Roura-Grabulosa, Am. J. Phys. 87, 102 (2019).

use gear_math::wheel::{
    AirSpring, MountedWidth, RimInnerWidth, TyreSection, WheelLoad, WheelRadius, contact_area_cm2,
};
use gear_math::{OutOfLimits, Pressure};
use reference_checks::{check_all, close, rows};
use serde::Deserialize;

/// The table has two decimals, of inputs rounded to four figures.
const ROUNDING: f64 = 0.0051;

#[derive(Deserialize)]
struct Example {
    width_mm: f64,
    rim_inner_mm: f64,
    outer_radius_mm: f64,
    load_n: f64,
    pressure_bar: f64,
    contact_area_cm2: f64,
    section_height_mm: f64,
    deflection_closed_mm: f64,
    deflection_numeric_mm: f64,
    drop_percent: f64,
    patch_length_mm: f64,
    bottoming_reserve: f64,
}

fn spring(measures: [f64; 3], pressure: Pressure) -> Result<AirSpring, String> {
    let [width, rim, radius] = measures;
    let (width, rim) = (MountedWidth::new(width).map_err(said)?, RimInnerWidth::new(rim).map_err(said)?);
    let section = TyreSection::new(width, rim).map_err(|error| error.to_string())?;
    Ok(AirSpring { section, outer_radius: WheelRadius::new(radius).map_err(said)?, pressure })
}

fn said(error: OutOfLimits) -> String {
    error.to_string()
}

impl Example {
    fn check(&self) -> Result<(), String> {
        let pressure = Pressure::new(self.pressure_bar).map_err(said)?;
        let spring = spring([self.width_mm, self.rim_inner_mm, self.outer_radius_mm], pressure)?;
        let tyre = spring.under(WheelLoad::new(self.load_n).map_err(said)?);
        close("height", spring.section.height_mm(), self.section_height_mm, ROUNDING)?;
        close("area", tyre.contact_area_cm2, self.contact_area_cm2, ROUNDING)?;
        close("deflection", tyre.deflection_mm, self.deflection_closed_mm, ROUNDING)?;
        // The closed form is claimed to be within 0.01 mm of integration.
        close("deflection, integrated", tyre.deflection_mm, self.deflection_numeric_mm, 0.01 + ROUNDING)?;
        close("drop", 100.0 * tyre.drop, self.drop_percent, 0.051)?;
        close("patch", tyre.patch_length_mm, self.patch_length_mm, 0.51)?;
        close("reserve", tyre.bottoming_reserve, self.bottoming_reserve, ROUNDING)
    }
}

#[test]
fn gives_as_integration_does() {
    const FILE: &str = "tyre-air-spring-examples.csv";
    check_all(FILE, &rows(FILE), 7, Example::check);
}

/// A = F ÷ p in handy units; 100 lbf at 25 psi must be 4 square inches.
#[test]
fn contact_areas_agree_with_handy_figures() {
    let area = |newtons, pressure| contact_area_cm2(WheelLoad::new(newtons).unwrap(), pressure);
    close("400 N", area(400.0, Pressure::new(2.0).unwrap()), 20.0, 1e-9).unwrap();
    close("348.6 N", area(348.6, Pressure::new(1.638).unwrap()), 21.3, 0.05).unwrap();
    close("100 lbf", area(444.8222, Pressure::from_psi(25.0).unwrap()), 4.0 * 6.4516, 1e-4).unwrap();
}

/// Energy that bottoms a 33 mm tubular on a bed of 18 mm, integrated independently.
#[test]
fn bottoming_energy_grows_with_pressure() {
    for (psi, joules) in [(25.0, 15.8), (35.0, 22.2), (50.0, 31.7)] {
        let spring = spring([33.0, 18.0, 346.0], Pressure::from_psi(psi).unwrap()).unwrap();
        close(&format!("{psi} psi"), spring.bottoming_energy_j(), joules, 0.1).unwrap();
    }
}
