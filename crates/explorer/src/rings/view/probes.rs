//! One cadence, one speed: what every gear makes of them.

use crate::layout::pieces::name;
use crate::number::{listed, plain, rpm, with_unit};
use crate::rings::section::RingsSection;
use crate::rings::setup::{GearLine, SetupReport};
use crate::rings::view::gears::flags;
use crate::side::Side;
use gear_math::ascending;
use maud::{Markup, html};

/// The read-out under the speed picture, in both directions.
#[must_use]
pub(crate) fn answer(report: &RingsSection) -> Markup {
    html! {
        div.prose {
            p { "At " b { (rpm(report.rings.probe.cadence)) } ": " (at_cadence(report)) }
            p { "At " b { (report.rings.unit.print(report.rings.probe.speed)) } ": " (at_speed(report)) }
        }
    }
}

fn at_cadence(report: &RingsSection) -> Markup {
    let reach = |side: Side| {
        let setup = report.rings.setup(side);
        let (low, high) = (setup.lowest().speed_probe, setup.highest().speed_probe);
        html! {
            (name(side))
            @if setup.gears.len() == 1 { " makes " (report.rings.unit.print(low)) }
            @else { " goes from " (plain(report.rings.unit.value(low), 1)) " to " (report.rings.unit.print(high)) }
        }
    };
    html! { (reach(Side::A)) ", " (reach(Side::B)) "." }
}

fn at_speed(report: &RingsSection) -> Markup {
    html! { @for setup in &report.rings.setups { (gears_in_window(report, setup)) " " } }
}

/// The gear to be in at that speed: within the cadences, nearest to the usual one, neither crossed nor to avoid if there is
/// such a gear; and the gears next to it.
fn gears_in_window(report: &RingsSection, setup: &SetupReport) -> Markup {
    let window = report.rings.window.low.rpm()..=report.rings.window.high.rpm();
    let mut usable: Vec<&GearLine> =
        setup.gears.iter().filter(|line| window.contains(&line.cadence_probe.rpm())).collect();
    ascending(&mut usable, |line| {
        let off = (line.cadence_probe.rpm() - report.rings.window.usual.rpm()).abs();
        off + if line.crossed || line.avoid { SHUNNED } else { 0.0 }
    });
    let also: Vec<String> = usable.iter().skip(1).take(SHOWN).map(|line| in_words(line)).collect();
    html! {
        (name(setup.side))
        @match usable.first() {
            Some(best) => {
                " turns " b { (in_words(best)) } " at " (with_unit(best.cadence_probe.rpm(), 0, "rpm"))
                @if !also.is_empty() { "; also " (listed(&also)) }
                "."
            }
            None => " has no gear within your cadences.",
        }
    }
}

fn in_words(line: &GearLine) -> String {
    let flags = flags(line);
    if flags.is_empty() { line.gear.to_string() } else { format!("{} ({flags})", line.gear) }
}

/// Sorts crossed gears and those to avoid behind all others; above any difference of cadences.
const SHUNNED: f64 = 1000.0;
/// How many further gears are named.
const SHOWN: usize = 3;
