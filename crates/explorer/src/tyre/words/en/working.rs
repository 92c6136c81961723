//! How it was worked out.

use crate::number::trimmed;
use crate::tyre::words::said;
use crate::tyre::words::width::typed;
use crate::units::chosen::signed_so;
use crate::units::mass;
use gear_math::PressureCase;
use gear_math::wheel::{AirSpring, PressureFloor, TyreWidth};

pub(crate) const WIDTH: &str = "Width on the rim";
pub(crate) const PRESSURE: &str = "Pressure, mean of both wheels";
pub(crate) const DROP: &str = "Drop and reserve";
/// The law of the spring, and whose it is.
pub(crate) fn law() -> String {
    format!(
        "The law d^{} is that of Renart and Roura-Grabulosa, Am. J. Phys. 87, 102 (2019); its constant follows from the drawn arc.",
        trimmed(1.5)
    )
}

/// How a width follows from label and rim.
pub(crate) fn width_formula() -> String {
    format!("label + {} × (rim − measuring rim)", trimmed(TyreWidth::PER_RIM))
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
    let (mass, width) = (mass(PressureCase::BASE_KG), typed(PressureCase::BASE_WIDTH.mm()));
    signed_so(format!(
        "p₀ × (mass ÷ {mass}) × ({width} ÷ width)^1.5 × ground × style; front × (0.5 + x), rear × (1.5 − x)"
    ))
}

/// A pressure, and the front wheel's share in it.
pub(crate) fn pressure(sum: &str, mean: &str, share: &str) -> String {
    format!("{sum} = {mean}, with x = {share}")
}

/// What the formula rests on.
pub(crate) fn practice() -> String {
    let (base, mm) = (typed(PressureCase::BASE_WIDTH.mm()), trimmed(PressureCase::BASE_WIDTH.mm()));
    let power = trimmed(1.5);
    format!(
        "Mass and width follow from one aim, the same drop of the tyre. The starting figures, and the lowest usual pressures with a tube, are workshop practice for {base}; other widths get both × ({mm} ÷ width)^{power}, which keeps the reserve before the rim touches. The factors for ground and style are chosen to meet that practice."
    )
}

/// The lowest pressure and why it is that.
pub(crate) fn lowest(floor: &PressureFloor) -> String {
    format!("Lowest here: {}.", said::floor(floor))
}

/// How the tyre gives way under its load.
pub(crate) fn spring_law() -> String {
    let (softening, bottoming) = (AirSpring::SOFTENING, AirSpring::BOTTOMING_LOAD);
    signed_so(format!(
        "F = 4/3 k₀ (1 − {softening} f) p √(2R) d^1.5, f = d ÷ h; reserve = {bottoming} ÷ ((1 − {softening} f) f^1.5)"
    ))
}

/// The drop of the rear tyre under its load.
pub(crate) fn drop(load: &str, height: &str, drop: &str) -> String {
    format!("rear: {load} on h = {height} gives d = {drop}")
}
