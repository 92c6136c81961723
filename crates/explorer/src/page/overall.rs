//! Which bike for this rider and course, and what stands in the way.

use crate::chain::words::verdict::said;
use crate::lap::settled::{Settled, Verdict};
use crate::lap::view::answer::lacks_file;
use crate::layout::line::Line;
use crate::page::report::Report;
use crate::page::words::overall as words;
use crate::side::Side;
use gear_math::chain::CageOutcome;

/// The sentence over all decisions, and one on what stands in the way.
pub(crate) fn overall(report: &Report) -> [Option<Line>; 2] {
    [Some(which(report)), in_the_way(report)]
}

fn which(report: &Report) -> Line {
    match Side::BOTH.map(|side| takes(report, side)) {
        [false, false] => words::neither(),
        [true, false] => words::only(Side::A),
        [false, true] => words::only(Side::B),
        [true, true] => by_lap(report),
    }
}

/// Whether the bike can be ridden as it is, as far as chain and cage are known.
fn takes(report: &Report, side: Side) -> bool {
    let cage = &report.rings.setup(side).cage;
    !matches!(cage.outcome, CageOutcome::DoesNotFit(_)) && cage.too_short.is_empty()
}

fn by_lap(report: &Report) -> Line {
    let section = report.lap_section();
    if report.lap_inputs.fault(report.lap.own.as_deref()).is_some() || lacks_file(&section) {
        return words::NO_LAP.into();
    }
    let Some(laps) = &report.lap.laps else { return words::SOON.into() };
    match &laps.settled {
        _ if laps.is_of_one_bike() => words::one_bike(),
        Some(settled) => quicker(settled),
        None => words::SOON.into(),
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

fn in_the_way(report: &Report) -> Option<Line> {
    let section = report.chain_section();
    let hinders = |&side: &Side| report.rings.setup(side).cage.outcome != CageOutcome::Fits;
    let told: Vec<(Side, String)> =
        Side::BOTH.into_iter().filter(hinders).map(|side| (side, said(&section, side).in_short())).collect();
    let stops = Side::BOTH.iter().any(|&side| !takes(report, side));
    (!told.is_empty()).then(|| words::in_the_way(&told, stops))
}
