//! A pressure in words, in bar and in psi.

use crate::wheel::quantity::Pressure;

/// “2.75 bar or 39 psi”: hundredths of a bar and whole psi, each by `rounding`.
pub(crate) fn in_both_units(pressure: Pressure, rounding: fn(f64) -> f64) -> String {
    let hundredths = rounding(pressure.bar() * 100.0);
    let places = if hundredths % 10.0 > 0.0 { 2 } else { 1 };
    format!("{:.places$} bar or {:.0} psi", hundredths / 100.0, rounding(pressure.psi()))
}

/// Not above `value`; what only arithmetic takes away is given back.
pub(crate) fn rounded_down(value: f64) -> f64 {
    (value + 1e-6).floor()
}

/// Not below `value`; what only arithmetic adds is taken away.
pub(crate) fn rounded_up(value: f64) -> f64 {
    (value - 1e-6).ceil()
}
