//! What the workshop sheet has of tyre and pressure.

use crate::bench::words::choices::{construction, tyre_ground, wheel_style};
use crate::tyre::report::{TyreFit, TyreReport};
use crate::tyre::words::width::{gauge, likely, mm, typed};
use crate::units::masses;
use gear_math::wheel::Construction;

pub(crate) const TITLE: &str = "Tyre and pressure";
pub(crate) const DANGER: &str = "Danger";
pub(crate) const FIRST: &str = "First";
pub(crate) const TYRE: &str = "Tyre";
pub(crate) const RIM: &str = "Rim";
pub(crate) const WIDTH: &str = "Width";
pub(crate) const HIGHEST: &str = "Highest allowed";
pub(crate) const FOR: &str = "For";
pub(crate) const PRESSURE: &str = "Pressure";
pub(crate) const FRONT: &str = "Front";
pub(crate) const REAR: &str = "Rear";
pub(crate) const OWN_PRESSURE: &str = "Own pressure";

/// The tyre and how it holds its air.
pub(crate) fn tyre(tyre: &TyreReport) -> String {
    format!("{}, {}", tyre.size, construction(tyre.inputs.construction))
}

/// The rim and its kind.
pub(crate) fn rim(tyre: &TyreReport) -> String {
    let kind = match tyre.inputs.construction {
        Construction::Tubular => "bed of a tubular rim",
        _ if tyre.inputs.marks.hookless => "hookless",
        _ => "hooked",
    };
    format!("{} inside, {kind}", typed(tyre.inputs.rim.mm()))
}

/// How wide the tyre is, and what the race says to that.
pub(crate) fn width(tyre: &TyreReport, fit: &TyreFit) -> String {
    let counts = mm(fit.section.width().mm());
    let width = if fit.is_measured {
        format!("{counts} measured")
    } else {
        format!("{counts} computed, likely {}", likely(fit))
    };
    match tyre.inputs.limit.zip(fit.gauge) {
        Some((limit, said)) => format!("{width}; limit {}: {}", typed(limit.mm()), gauge(said)),
        None => width,
    }
}

/// What the pressures are for.
pub(crate) fn worked_out_for(tyre: &TyreReport, fit: &TyreFit) -> String {
    let all = masses().print(fit.case.total_kg(), 1);
    let (ground, style) = (tyre_ground(tyre.inputs.ground), wheel_style(tyre.inputs.style));
    format!("{all} in all, {ground} ground, style {style}")
}

/// Where to start, and where to look for one's own.
pub(crate) fn start_and_range(start: &str, range: &str) -> String {
    format!("{start}; try {range}")
}
