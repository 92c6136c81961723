//! What the width of the tyre does to riding.

use crate::layout::line::Line;
use crate::number::{percent, shows_nothing, with_unit};
use crate::ride::report::RideReport;
use gear_math::wheel::{MountedWidth, WidthFactor};

/// Where the width counts for riding, and what this one does there; said beside every verdict on riding.
pub(crate) fn counts(ride: &RideReport) -> Line {
    let tyre = ride.inputs.bike.tyre;
    let factor = WidthFactor::on_soft_ground(tyre).value();
    let change = 100.0 * (factor - 1.0).abs();
    if shows_nothing(change, 0) {
        return "Tyre width counts only in mud and loose sand (estimate); on grass and hard ground nobody has measured enough.".into();
    }
    let change = percent(change, 0);
    let (width, usual) = (with_unit(tyre.mm(), 1, "mm"), MountedWidth::CROSS.mm());
    let resistance = if factor < 1.0 {
        format!("takes {change} off rolling resistance")
    } else {
        format!("adds {change} to rolling resistance")
    };
    format!(
        "Tyre width counts only in mud and loose sand (estimate): {width} for {usual}\u{a0}mm there {resistance}, likely between nothing and twice that; on grass and hard ground nobody has measured enough."
    )
    .into()
}
