//! The tyre on the board.

use crate::number::{plain, with_unit};
use crate::tyre::report::TyreFit;
use crate::tyre::words::pressure::first;
use crate::tyre::words::width::{gauge, mm};
use gear_math::wheel::WheelPressure;

/// Tyre and rim do not go together.
pub(crate) const NO_FIT: &str = "does not go on this rim";
/// They are dangerous together.
pub(crate) const DANGER: &str = "dangerous on this rim";
/// Their marks leave no pressure.
pub(crate) const NO_PRESSURE: &str = "no pressure suits the marks";

/// A and B have one.
pub(crate) const ALIKE: &str = "the same tyre and rim";

/// How wide it comes out, and what the race's gauge says.
pub(crate) fn width(fit: &TyreFit) -> String {
    let width = mm(fit.section.width().mm());
    match fit.gauge {
        Some(verdict) => format!("{width}, {}", gauge(verdict)),
        None => width,
    }
}

/// The pressures to start from, front and rear.
pub(crate) fn start(front: &WheelPressure, rear: &WheelPressure) -> String {
    let [front, rear] = [front, rear].map(|wheel| wheel.reading(wheel.start));
    let psi = format!("{} / {}", plain(front.psi, 0), with_unit(rear.psi, 0, "psi"));
    let bar = format!("{} / {}", plain(front.bar, 2), with_unit(rear.bar, 2, "bar"));
    let [one, other] = first(bar, psi);
    format!("start with {one} ({other})")
}
