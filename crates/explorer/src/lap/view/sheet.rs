//! “Round the lap” on the workshop sheet.

use crate::bench::field::Field;
use crate::chain::words::beside_lap;
use crate::lap::report::LapReport;
use crate::lap::section::LapSection;
use crate::lap::settled::Settled;
use crate::lap::view::answer::course_name;
use crate::lap::words::places::{DOWNHILL, WALK_IT_FIRST, WHILE_OPEN};
use crate::lap::words::{question, sheet as words};
use crate::layout::concern::Concern;
use crate::layout::sheet_block::Block;
use crate::side::Side;

/// The lap in short; nothing until it has been worked out.
#[must_use]
pub(crate) fn block(report: &LapSection, sheet_for: Option<Side>) -> Option<Block> {
    let mut block = Block::new(question::TITLE);
    if let Some(fault) = report.lap_inputs.fault(report.lap.own.as_deref()) {
        block.row(words::COURSE, words::no_course(&course_name(report), &fault));
        block.on(&[Field::Course]);
        return Some(block);
    }
    let laps = report.lap.laps.as_ref().filter(|_| !report.lacks_file() && !report.lap.is_stale)?;
    let settled = laps.settled.as_ref()?;
    block.row(words::COURSE, words::course(&course_name(report), laps));
    laps_of(&mut block, laps, settled);
    if sheet_for.is_none() {
        block.row(words::QUICKER, words::quicker(settled));
    }
    for note in beside_lap::fits(&report.chain_section()) {
        block.row(words::NOTE, note);
    }
    block.check(Concern::Course, [WALK_IT_FIRST, DOWNHILL, WHILE_OPEN].join(" "));
    Some(block)
}

fn laps_of(block: &mut Block, laps: &LapReport, settled: &Settled) {
    for (side, (lap, band)) in Side::BOTH.into_iter().zip(laps.laps.iter().zip(&settled.bands)) {
        block.row_of(side, words::LAP, words::time(band, settled));
        block.row_of(side, &words::on_foot_in(), words::spans_on_foot(lap));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lap::sent_track;
    use crate::lap::view::answer::tests::{ridden, settled, track};
    use crate::page::desk::Desk;
    use gear_math::course::TimeBand;

    #[test]
    fn a_track_that_is_no_course_is_said_to_be_none_on_the_sheet() {
        let mut desk = ridden("");
        desk.take_track("Ridge", sent_track::read(&track(100, 3.0)));
        let sheet = format!("{:?}", block(&desk.report().lap_section(), None).unwrap());
        assert!(
            sheet.contains("Ridge cannot be used for a lap: 100") && !sheet.contains("likely"),
            "{sheet}"
        );
    }

    #[test]
    fn times_on_the_sheet_are_no_finer_than_their_band() {
        let sheet = format!("{:?}", block(&ridden("").report().lap_section(), None).unwrap());
        let (_, lap) = sheet.split_once("likely ").unwrap();
        assert!(!lap[..20].contains('.'), "{lap}");
    }

    #[test]
    fn the_sheet_says_how_the_lap_is_ridden() {
        let told = |edits: &[(Field, &str)]| {
            let mut desk = Desk::default();
            desk.edit(&edits.iter().map(|it| (it.0.spec().key.into(), it.1.into())).collect::<Vec<_>>());
            desk.lap(false);
            words::ridden(&desk.report().lap.laps.as_ref().unwrap().question)
        };
        assert_eq!(told(&[]), "lap after lap");
        assert_eq!(told(&[(Field::LapBudget, "3")]), "with 3.0\u{a0}kJ of the reserve spent");
        assert_eq!(
            told(&[(Field::LapModel, "steady"), (Field::Power, "231")]),
            "at a steady power of 231\u{a0}W"
        );
    }

    #[test]
    fn who_is_quicker_is_told_as_in_the_answer() {
        let told = |low_s, time_s, high_s| words::quicker(&settled(TimeBand { low_s, time_s, high_s }));
        assert_eq!(told(-1.0, 3.0, 7.0), "too close to call");
        assert_eq!(told(1.0, 3.0, 5.0), "B, by 3.0\u{a0}s a lap");
        assert_eq!(told(-60.0, -33.4, -7.0), "A, by 33\u{a0}s a lap");
    }
}
