//! The roll-out limit of a race: which sprockets pass.

use crate::layout::concern::Concern;
use crate::layout::pieces::{name, table};
use crate::layout::sheet_block::Block;
use crate::rings::section::RingsSection;
use crate::rings::setup::SetupReport;
use crate::rings::words::limit as words;
use crate::units;
use gear_math::gears::{RingPasses, RollOutLimit};
use gear_math::{Gear, Sprocket, Wheel};
use maud::{Markup, html};

/// Which gears pass, when a limit is set.
#[must_use]
pub(crate) fn table_of(report: &RingsSection) -> Markup {
    let Some(limit) = report.rings.limit else { return html! {} };
    let head = html! {
        tr {
            th scope="col" { (words::SET_UP_AND_RING) }
            th.words scope="col" { (words::PASS) }
            th.words scope="col" { (words::TOO_CLOSE_MEASURE) }
            th.words scope="col" { (words::TOO_LONG) }
        }
    };
    let body = html! { @for setup in &report.rings.setups { (rows(report, setup, limit)) } };
    table(&words::title(&units::distances().print(limit.m(), 2)), words::MEASURED_DECIDES, &head, &body)
}

fn rows(report: &RingsSection, setup: &SetupReport, limit: RollOutLimit) -> Markup {
    html! {
        @for ring in limit.test(&setup.drivetrain, report.rings.wheel(setup.side).roll_out()) { (row(report, setup, limit, &ring)) }
    }
}

fn row(report: &RingsSection, setup: &SetupReport, limit: RollOutLimit, ring: &RingPasses<'_>) -> Markup {
    html! {
        tr {
            th scope="row" { (name(setup.side)) " " (ring.ring) }
            @for sprockets in told(report.rings.wheel(setup.side), limit, ring) {
                td.words { @if sprockets.is_empty() { (words::NONE) } @else { (sprockets) } }
            }
        }
    }
}

/// The sprockets that pass, those that are too close to call and those to be blocked. Without a measured roll-out, gears that
/// the wheel's uncertainty leaves open stand apart from those that are clear.
fn told(wheel: &Wheel, limit: RollOutLimit, ring: &RingPasses<'_>) -> [String; 3] {
    let estimate = wheel.estimate();
    let is_open = |&&sprocket: &&Sprocket| {
        wheel.measured.is_none() && limit.is_undecided(Gear { ring: ring.ring, sprocket }, &estimate)
    };
    let clear = |sprockets: &[Sprocket]| teeth(sprockets.iter().filter(|sprocket| !is_open(sprocket)));
    let open = teeth(ring.too_long.iter().chain(ring.passes).filter(is_open));
    [clear(ring.passes), open, clear(ring.too_long)]
}

/// What has to be blocked for the race, when a limit is set.
pub(crate) fn for_the_sheet(report: &RingsSection, block: &mut Block) {
    let Some(limit) = report.rings.limit else { return };
    block.row(words::LIMIT, units::distances().print(limit.m(), 2));
    for setup in &report.rings.setups {
        let mut rows = [(words::TO_BE_BLOCKED, Vec::new()), (words::TOO_CLOSE, Vec::new())];
        for ring in limit.test(&setup.drivetrain, report.rings.wheel(setup.side).roll_out()) {
            let [_, open, too_long] = told(report.rings.wheel(setup.side), limit, &ring);
            for ((_, told), sprockets) in rows.iter_mut().zip([too_long, open]) {
                if !sprockets.is_empty() {
                    told.push(words::on_ring(&ring.ring.to_string(), &sprockets));
                }
            }
        }
        for (what, told) in rows {
            let told = if told.is_empty() { words::NONE.to_owned() } else { told.join("; ") };
            block.row_of(setup.side, what, told);
        }
    }
    block.check(Concern::Measuring, words::MEASURED_DECIDES);
}

fn teeth<'s>(sprockets: impl Iterator<Item = &'s Sprocket>) -> String {
    sprockets.map(ToString::to_string).collect::<Vec<_>>().join(" ")
}
