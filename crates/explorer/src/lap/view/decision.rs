//! “Round the lap” on the board.

use crate::lap::report::LapReport;
use crate::lap::section::LapSection;
use crate::lap::settled::{Settled, Verdict as LapVerdict};
use crate::lap::view::answer::lacks_file;
use crate::lap::words::decision as words;
use crate::layout::decision::{Decision, Standing, Verdict};
use crate::side::Side;

/// How long a lap takes with each, how often to dismount, and whether the lead is more than the doubt.
pub(crate) fn decision(report: &LapSection) -> Option<Decision> {
    let no_lap = |why: &str| {
        let said = Verdict { standing: Standing::Open, words: why.to_owned(), detail: String::new() };
        Some(Decision::of(|_| said.clone(), String::new()))
    };
    if report.lap_inputs.fault(report.lap.own.as_deref()).is_some() {
        return no_lap(words::NO_TIMES);
    }
    if lacks_file(report) {
        return no_lap(words::LACKS_FILE);
    }
    let Some(laps) = &report.lap.laps else {
        return no_lap(words::SOON).map(|soon| Decision { is_before: true, ..soon });
    };
    let bike = |side| verdict(laps, side);
    let difference = laps.settled.as_ref().map_or_else(String::new, words::difference);
    let is_before = report.lap.is_stale || laps.settled.as_ref().is_none_or(|settled| !settled.is_final);
    Some(Decision { is_before, ..Decision::of(bike, difference) })
}

fn verdict(laps: &LapReport, side: Side) -> Verdict {
    let lap = &laps.laps[side as usize];
    let words = words::time(lap, laps.settled.as_ref().map(Settled::precision));
    Verdict { standing: standing(laps.settled.as_ref(), side), words, detail: words::dismounts(lap) }
}

fn standing(settled: Option<&Settled>, side: Side) -> Standing {
    let is_quicker = settled.is_some_and(|settled| {
        matches!(settled.verdict(), LapVerdict::Quicker | LapVerdict::OnlyJust) && settled.ahead() == side
    });
    if is_quicker { Standing::Well } else { Standing::Told }
}
