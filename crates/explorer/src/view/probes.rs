//! One cadence, one speed: what every gear makes of them.

use super::words::name;
use crate::number::{listed, plain, with_unit};
use crate::report::{GearLine, Report, SetupReport, Side};
use maud::{Markup, html};

/// The read-out under the speed picture, in both directions.
#[must_use]
pub(super) fn answer(report: &Report) -> Markup {
    html! {
        div.prose {
            p { "At " b { (with_unit(report.probe.cadence.rpm(), 0, "rpm")) } ": " (at_cadence(report)) }
            p { "At " b { (report.unit.print(report.probe.speed)) } ": " (at_speed(report)) }
        }
    }
}

fn at_cadence(report: &Report) -> Markup {
    let reach = |side: Side| {
        let setup = report.setup(side);
        let (low, high) = (setup.lowest().speed_probe, setup.highest().speed_probe);
        html! { (name(side)) " goes from " (plain(report.unit.value(low), 1)) " to " (report.unit.print(high)) }
    };
    html! { (reach(Side::A)) ", " (reach(Side::B)) "." }
}

fn at_speed(report: &Report) -> Markup {
    html! { (gears_in_window(report, report.setup(Side::A))) "; " (gears_in_window(report, report.setup(Side::B))) "." }
}

/// The gears whose cadence at that speed lies in the rider's window, and the one nearest the usual cadence.
fn gears_in_window(report: &Report, setup: &SetupReport) -> Markup {
    let window = report.window.low.rpm()..=report.window.high.rpm();
    let usable: Vec<&GearLine> =
        setup.gears.iter().filter(|line| window.contains(&line.cadence_probe.rpm())).collect();
    let off = |line: &GearLine| (line.cadence_probe.rpm() - report.window.usual.rpm()).abs();
    let best = usable.iter().min_by(|x, y| off(x).total_cmp(&off(y)));
    let names: Vec<String> = usable.iter().map(|line| line.gear.to_string()).collect();
    html! {
        (name(setup.side))
        @match best {
            Some(best) => {
                " turns " b { (best.gear) } " at " (with_unit(best.cadence_probe.rpm(), 0, "rpm"))
                " (within your cadences: " (listed(&names)) ")"
            }
            None => " has no gear within your cadences",
        }
    }
}
