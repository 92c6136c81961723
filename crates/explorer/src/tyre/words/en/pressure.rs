//! Pressures.

use crate::number::{plain, with_unit};
use gear_math::wheel::{LimitedBy, PressureReading, WheelPressure};

/// “22 (1.52) ↑”: psi, bar, and whether the start was raised or cut.
pub(crate) fn both_units(wheel: &WheelPressure) -> String {
    let mark = match wheel.limited_by {
        Some(LimitedBy::Floor(_)) => "\u{a0}↑",
        Some(LimitedBy::Ceiling(_)) => "\u{a0}↓",
        None => "",
    };
    let start = wheel.reading(wheel.start);
    format!("{}\u{a0}({}){mark}", psi(start), plain(start.bar, 2))
}

/// “24 psi (1.65 bar)”.
pub(crate) fn start_of(wheel: &WheelPressure) -> String {
    let start = wheel.reading(wheel.start);
    format!("{} ({})", with_unit(start.psi, places(start), "psi"), with_unit(start.bar, 2, "bar"))
}

/// Where to look for one's own pressure, “22 (the lowest) to 28 psi (1.52 to 1.93 bar)”.
pub(crate) fn range(wheel: &WheelPressure) -> String {
    let [low, high] = [wheel.low, wheel.high].map(|pressure| wheel.reading(pressure));
    let lowest = if wheel.low <= wheel.floor { " (the lowest)" } else { "" };
    let high_bar = with_unit(high.bar, 2, "bar");
    if low == high {
        return format!("{high_bar}: no less, no more");
    }
    let (low_psi, high_psi) = (psi(low), with_unit(high.psi, places(high), "psi"));
    format!("{low_psi}{lowest} to {high_psi} ({} to {high_bar})", plain(low.bar, 2))
}

/// The same in short, “22 to 28 (1.52 to 1.93), no less”: in psi, then in bar, as the start before it.
pub(crate) fn range_in_short(wheel: &WheelPressure) -> String {
    let [low, high] = [wheel.low, wheel.high].map(|pressure| wheel.reading(pressure));
    if low == high {
        return range(wheel);
    }
    let no_less = if wheel.low <= wheel.floor { ", no less" } else { "" };
    let [from, to] = [low.bar, high.bar].map(|bar| plain(bar, 2));
    format!("{} to {} ({from} to {to}){no_less}", psi(low), psi(high))
}

fn psi(reading: PressureReading) -> String {
    plain(reading.psi, places(reading))
}

fn places(reading: PressureReading) -> usize {
    usize::from(reading.in_tenths)
}
