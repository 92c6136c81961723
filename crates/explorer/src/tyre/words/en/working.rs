//! How it was worked out.

use crate::tyre::words::said;
use crate::tyre::words::width::typed;
use gear_math::PressureCase;
use gear_math::wheel::{AirSpring, PressureFloor, TyreWidth};

pub(crate) const WIDTH: &str = "Width on the rim";
pub(crate) const PRESSURE: &str = "Pressure, mean of both wheels";
pub(crate) const DROP: &str = "Drop and reserve";
pub(crate) const LAW: &str = "The law d^1.5 is that of Renart and Roura-Grabulosa, Am. J. Phys. 87, 102 (2019); its constant follows from the drawn arc.";

/// How a width follows from label and rim.
pub(crate) fn width_formula() -> String {
    format!("label + {} × (rim − measuring rim)", TyreWidth::PER_RIM)
}

/// The width was measured.
pub(crate) fn measured(width: &str, computed: &str) -> String {
    format!("The width is your calliper’s, {width}; computed it would be {computed}.")
}

/// A computed width, and what the casing makes of it.
pub(crate) fn width(sum: &str, width: &str, arc: &str) -> String {
    format!("{sum} = {width}; with the casing as an arc {arc}")
}

/// How pressure follows from mass, width, ground and style.
pub(crate) fn pressure_formula() -> String {
    let (kg, mm) = (PressureCase::BASE_KG, PressureCase::BASE_WIDTH.mm());
    format!(
        "p₀ × (mass ÷ {kg} kg) × ({mm} mm ÷ width)^1.5 × ground × style; front × (0.5 + x), rear × (1.5 − x)"
    )
}

/// A pressure, and the front wheel's share in it.
pub(crate) fn pressure(sum: &str, mean: &str, share: &str) -> String {
    format!("{sum} = {mean}, with x = {share}")
}

/// What the formula rests on.
pub(crate) fn practice() -> String {
    let (base, mm) = (typed(PressureCase::BASE_WIDTH.mm()), PressureCase::BASE_WIDTH.mm());
    format!(
        "Mass and width follow from one aim, the same drop of the tyre. The starting figures, and the lowest usual pressures with a tube, are workshop practice for {base}; other widths get both × ({mm} ÷ width)^1.5, which keeps the reserve before the rim touches. The factors for ground and style are chosen to meet that practice."
    )
}

/// The lowest pressure and why it is that.
pub(crate) fn lowest(floor: &PressureFloor) -> String {
    format!("Lowest here: {}.", said::floor(floor))
}

/// How the tyre gives way under its load.
pub(crate) fn spring_law() -> String {
    let (softening, bottoming) = (AirSpring::SOFTENING, AirSpring::BOTTOMING_LOAD);
    format!(
        "F = 4/3 k₀ (1 − {softening} f) p √(2R) d^1.5, f = d ÷ h; reserve = {bottoming} ÷ ((1 − {softening} f) f^1.5)"
    )
}

/// The drop of the rear tyre under its load.
pub(crate) fn drop(load: &str, height: &str, drop: &str) -> String {
    format!("rear: {load} on h = {height} gives d = {drop}")
}
