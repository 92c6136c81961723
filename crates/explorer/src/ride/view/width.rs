//! What the width of the tyre does to riding.

use crate::number::percent;
use crate::ride::report::RideReport;
use crate::tyre::words::width::{mm, typed};
use gear_math::wheel::{MountedWidth, WidthFactor};
use maud::{Markup, html};

/// Where the width counts for riding, and what this one does there; said beside every verdict on riding.
#[must_use]
pub(crate) fn counts(ride: &RideReport) -> Markup {
    let tyre = ride.inputs.bike.tyre;
    let factor = WidthFactor::on_soft_ground(tyre).value();
    let change = percent(100.0 * (factor - 1.0).abs(), 0);
    html! {
        p.quiet {
            "Tyre width counts only in mud and loose sand (estimate)"
            @if change != percent(0.0, 0) {
                ": " (mm(tyre.mm())) " for " (typed(MountedWidth::CROSS.mm())) " there "
                (if factor < 1.0 { "takes " } else { "adds " }) (change) (if factor < 1.0 { " off" } else { " to" })
                " rolling resistance, likely between nothing and twice that"
            }
            "; on grass and hard ground nobody has measured enough."
        }
    }
}
