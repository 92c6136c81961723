//! What the width of the tyre does to riding.

use super::{A, B};
use crate::layout::line::Line;
use crate::number::{percent, shows_nothing, with_unit};
use crate::ride::report::RideReport;
use crate::side::Side;
use gear_math::wheel::{MountedWidth, WidthFactor};

/// Where the width counts for riding, and what this one does there; said beside every verdict on riding.
pub(crate) fn counts(ride: &RideReport) -> Line {
    let [a, b] = Side::BOTH.map(|side| ride.inputs.bike(side).tyre);
    if a == b { of(a) } else { of_each([a, b]) }
}

fn of(tyre: MountedWidth) -> Line {
    let factor = WidthFactor::on_soft_ground(tyre).value();
    let change = 100.0 * (factor - 1.0).abs();
    if shows_nothing(change, 0) {
        return "Tyre width counts only in mud and loose sand (estimate); on grass and hard ground nobody has measured enough.".into();
    }
    format!("Tyre width counts only in mud and loose sand (estimate): {}; on grass and hard ground nobody has measured enough.", there(tyre, factor)).into()
}

fn of_each(tyres: [MountedWidth; 2]) -> Line {
    let [a, b] = tyres.map(|tyre| there(tyre, WidthFactor::on_soft_ground(tyre).value()));
    format!("Tyre width counts only in mud and loose sand (estimate): on {A}, {a}; on {B}, {b}; on grass and hard ground nobody has measured enough.").into()
}

fn there(tyre: MountedWidth, factor: f64) -> String {
    let change = 100.0 * (factor - 1.0).abs();
    if shows_nothing(change, 0) {
        return format!("{} changes nothing there", with_unit(tyre.mm(), 1, "mm"));
    }
    let change = percent(change, 0);
    let (width, usual) = (with_unit(tyre.mm(), 1, "mm"), MountedWidth::CROSS.mm());
    let resistance = if factor < 1.0 {
        format!("takes {change} off rolling resistance")
    } else {
        format!("adds {change} to rolling resistance")
    };
    format!("{width} for {usual}\u{a0}mm there {resistance}, likely between nothing and twice that")
}
