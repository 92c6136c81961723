//! “Round the lap” on the board.

use crate::chain::standing::standing as cage_standing;
use crate::lap::report::LapReport;
use crate::lap::section::{LapSection, NoLap};
use crate::lap::settled::{Settled, Verdict as LapVerdict};
use crate::lap::words::decision as words;
use crate::layout::decision::{Decision, Standing, Verdict};
use crate::side::Side;

/// How long a lap takes with each, how often to dismount, and whether the lead is more than the doubt.
pub(crate) fn decision(report: &LapSection) -> Decision {
    let laps = match report.laps() {
        Ok(laps) => laps,
        Err(why) => return Decision { is_before: why == NoLap::Awaited, ..without_lap(why) },
    };
    let difference = laps.settled.as_ref().map_or_else(String::new, words::difference);
    let is_before = report.lap.is_stale || laps.settled.as_ref().is_none_or(|settled| !settled.is_final);
    Decision { is_before, ..Decision::of(|side| verdict(report, laps, side), difference) }
}

fn without_lap(why: NoLap) -> Decision {
    let words = words::no_lap(why);
    let said = |_| Verdict { standing: Standing::Open, words: words.to_owned(), detail: String::new() };
    Decision::of(said, String::new())
}

fn verdict(report: &LapSection, laps: &LapReport, side: Side) -> Verdict {
    let lap = &laps.laps[side as usize];
    let words = words::time(lap, laps.settled.as_ref().map(Settled::precision));
    let is_ridden = cage_standing(&report.rings.setup(side).cage) != Standing::Stop;
    let standing = if is_ridden { standing(laps.settled.as_ref(), side) } else { Standing::Told };
    Verdict { standing, words, detail: words::dismounts(lap) }
}

/// A bike that cannot be ridden is not well however quick it would be.
fn standing(settled: Option<&Settled>, side: Side) -> Standing {
    let Some(settled) = settled.filter(|settled| settled.is_final) else { return Standing::Open };
    match settled.verdict() {
        LapVerdict::Quicker | LapVerdict::OnlyJust if settled.ahead() == side => Standing::Well,
        LapVerdict::Quicker | LapVerdict::OnlyJust => Standing::Told,
        _ => Standing::Even,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::page::desk::Desk;
    use std::rc::Rc;

    #[test]
    fn nothing_is_called_while_draws_are_to_come() {
        let mut desk = Desk::default();
        desk.open("#r=3&ly=steady");
        desk.lap(true);
        let mut section = desk.report().lap_section();
        assert!(!decision(&section).difference.contains("worked out"));
        let mut laps = section.lap.laps.as_deref().unwrap().clone();
        laps.settled.as_mut().unwrap().is_final = false;
        assert!(laps.settled.as_ref().unwrap().stretch().is_none());
        section.lap.laps = Some(Rc::new(laps));
        let open = decision(&section).difference;
        assert!(open.starts_with("being worked out: ") && !open.contains("close"), "{open}");
    }
}
