//! One cadence, one speed: what every gear makes of them.

use crate::layout::line::Line;
use crate::number::{rpm, with_unit};
use crate::rings::report::RingsReport;
use crate::rings::section::RingsSection;
use crate::rings::setup::{GearLine, SetupReport};
use crate::rings::words::gears::with_flags;
use crate::rings::words::probes as words;
use crate::side::Side;
use crate::units;
use gear_math::order::ascending;
use maud::{Markup, html};

/// The read-out under the speed picture, in both directions.
#[must_use]
pub(crate) fn answer(report: &RingsSection) -> Markup {
    let (rings, probe) = (&report.rings, report.rings.probe);
    let [a, b] = Side::BOTH.map(|side| at_cadence(rings.setup(side)));
    let [in_a, in_b] = Side::BOTH.map(|side| gears_in_window(rings, rings.setup(side)));
    html! {
        div.prose {
            p { (words::at_cadence(&rpm(probe.cadence), &a, &b)) }
            p { (words::at_speed(&units::speed(probe.speed), &in_a, &in_b)) }
        }
    }
}

fn at_cadence(setup: &SetupReport) -> Line {
    let (low, high) = (setup.lowest().speed_probe, setup.highest().speed_probe);
    match setup.gears.len() {
        1 => words::makes(setup.side, &units::speed(low)),
        _ => words::goes(setup.side, &units::speed_number(low), &units::speed(high)),
    }
}

/// The gear to be in at that speed: within the cadences, nearest to the usual one, neither crossed nor to avoid if there is
/// such a gear; and the gears next to it.
fn gears_in_window(rings: &RingsReport, setup: &SetupReport) -> Line {
    let window = rings.window.low.rpm()..=rings.window.high.rpm();
    let mut usable: Vec<&GearLine> =
        setup.gears.iter().filter(|line| window.contains(&line.cadence_probe.rpm())).collect();
    ascending(&mut usable, |line| {
        let off = (line.cadence_probe.rpm() - rings.window.usual.rpm()).abs();
        off + if line.crossed || line.avoid { SHUNNED } else { 0.0 }
    });
    let Some(best) = usable.first() else { return words::no_gear(setup.side) };
    let also: Vec<String> = usable.iter().skip(1).take(SHOWN).map(|line| with_flags(line)).collect();
    words::turns(setup.side, &with_flags(best), &with_unit(best.cadence_probe.rpm(), 0, "rpm"), &also)
}

/// Sorts crossed gears and those to avoid behind all others; above any difference of cadences.
const SHUNNED: f64 = 1000.0;
/// How many further gears are named.
const SHOWN: usize = 3;
