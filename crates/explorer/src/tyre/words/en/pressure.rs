//! Pressures.

use crate::number::{plain, with_unit};
use crate::units::pressures;
use gear_math::wheel::{LimitedBy, PressureReading, WheelPressure};

/// What is told in bar and what in psi, in the order chosen.
pub(crate) fn first<T>(bar: T, psi: T) -> [T; 2] {
    if pressures().is_other() { [psi, bar] } else { [bar, psi] }
}

/// “1.52 (22) ↑”: bar, psi, and whether the start was raised or cut.
pub(crate) fn both_units(wheel: &WheelPressure) -> String {
    let mark = match wheel.limited_by {
        Some(LimitedBy::Floor(_)) => "\u{a0}↑",
        Some(LimitedBy::Ceiling(_)) => "\u{a0}↓",
        None => "",
    };
    let [one, other] = numbers(wheel.reading(wheel.start));
    format!("{one}\u{a0}({other}){mark}")
}

/// “1.65 bar (24 psi)”.
pub(crate) fn start_of(wheel: &WheelPressure) -> String {
    let [one, other] = told(wheel.reading(wheel.start));
    format!("{one} ({other})")
}

/// Where to look for one's own pressure, “1.52 (the lowest) to 1.93 bar (22 to 28 psi)”.
pub(crate) fn range(wheel: &WheelPressure) -> String {
    let [low, high] = [wheel.low, wheel.high].map(|pressure| wheel.reading(pressure));
    let lowest = if wheel.low <= wheel.floor { " (the lowest)" } else { "" };
    let ([from, from_other], [to, to_other]) = (numbers(low), told(high));
    if low == high {
        return format!("{to}: no less, no more");
    }
    format!("{from}{lowest} to {to} ({from_other} to {to_other})")
}

/// The same in short, “1.52 to 1.93 (22 to 28), no less”, as the start before it.
pub(crate) fn range_in_short(wheel: &WheelPressure) -> String {
    let [low, high] = [wheel.low, wheel.high].map(|pressure| wheel.reading(pressure));
    if low == high {
        return range(wheel);
    }
    let no_less = if wheel.low <= wheel.floor { ", no less" } else { "" };
    let ([from, from_other], [to, to_other]) = (numbers(low), numbers(high));
    format!("{from} to {to} ({from_other} to {to_other}){no_less}")
}

fn numbers(reading: PressureReading) -> [String; 2] {
    first(plain(reading.bar, 2), plain(reading.psi, places(reading)))
}

fn told(reading: PressureReading) -> [String; 2] {
    first(with_unit(reading.bar, 2, "bar"), with_unit(reading.psi, places(reading), "psi"))
}

fn places(reading: PressureReading) -> usize {
    usize::from(reading.in_tenths)
}
