//! Which bike for this rider and course, and what stands in the way.

use crate::chain::standing::standing;
use crate::chain::words::verdict::said;
use crate::lap::report::LapReport;
use crate::lap::section::NoLap;
use crate::lap::settled::{Settled, Verdict};
use crate::layout::decision::Standing;
use crate::layout::line::Line;
use crate::page::report::Report;
use crate::page::words::overall as words;
use crate::side::Side;

/// The sentence over all decisions.
pub(crate) fn which(report: &Report) -> Line {
    match Side::BOTH.map(|side| takes(report, side)) {
        [false, false] => words::neither(),
        [true, false] => words::only(Side::A),
        [false, true] => words::only(Side::B),
        [true, true] => by_lap(report),
    }
}

/// Whether the bike can be ridden as it is, as far as chain and cage are known.
fn takes(report: &Report, side: Side) -> bool {
    standing(&report.rings.setup(side).cage) != Standing::Stop
}

fn by_lap(report: &Report) -> Line {
    match report.lap_section().laps() {
        Err(NoLap::NotOnThisTrack | NoLap::LacksFile) => words::NO_LAP.into(),
        Ok(laps) if laps.is_of_one_bike() => words::one_bike(),
        Ok(LapReport { settled: Some(settled), .. }) => quicker(settled),
        Ok(_) | Err(NoLap::Awaited) => words::SOON.into(),
    }
}

fn quicker(settled: &Settled) -> Line {
    let (lead, precision) = (settled.lead(), settled.gained.precision());
    match settled.verdict() {
        _ if !settled.is_final => words::so_far(settled.ahead(), &lead, precision),
        Verdict::Alike => words::alike(),
        Verdict::Quicker => words::suits(settled.ahead(), &lead, precision),
        Verdict::OnlyJust => words::only_just(settled.ahead(), &lead, precision),
        Verdict::Level => words::level(),
        Verdict::HardlyApart => words::hardly(settled.ahead(), &lead, precision),
        Verdict::TooClose | Verdict::OpenToForcing => words::too_close(settled.ahead(), &lead, precision),
    }
}

/// What the cages ask for before riding.
pub(crate) fn in_the_way(report: &Report) -> Option<Line> {
    let section = report.chain_section();
    let hinders = |&side: &Side| standing(&report.rings.setup(side).cage) != Standing::Well;
    let told: Vec<(Side, String)> =
        Side::BOTH.into_iter().filter(hinders).map(|side| (side, said(&section, side).in_short())).collect();
    let stops = Side::BOTH.iter().any(|&side| !takes(report, side));
    (!told.is_empty()).then(|| words::in_the_way(&told, stops))
}
