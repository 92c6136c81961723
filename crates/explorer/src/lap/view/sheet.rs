//! “Round the lap” on the workshop sheet.

use crate::bench::field::Field;
use crate::chain::words::beside_lap;
use crate::lap::report::{LapReport, Settled};
use crate::lap::section::LapSection;
use crate::lap::view::answer::{course_name, lacks_file};
use crate::lap::view::places::{DOWNHILL, WALK_IT_FIRST, WHILE_OPEN};
use crate::layout::sheet_block::Block;
use crate::layout::sheet_checks::Concern;
use crate::number::{about_clock, clock, plain, seconds_in, with_unit};
use crate::side::Side;
use gear_math::Lap;
use gear_math::course::{PlanPart, Quicker};

/// The lap in short; nothing until it has been worked out.
#[must_use]
pub(crate) fn block(report: &LapSection, sheet_for: Option<Side>) -> Option<Block> {
    let mut block = Block::new("Round the lap");
    if let Some(fault) = report.lap_inputs.fault(report.lap.own.as_deref()) {
        block.row("Course", format!("{} cannot be used for a lap: {fault}", course_name(report)));
        block.on(&[Field::Course]);
        return Some(block);
    }
    let laps = report.lap.laps.as_ref().filter(|_| !lacks_file(report))?;
    let settled = laps.settled.as_ref()?;
    laps_of(&mut block, report, laps, settled, sheet_for.is_none());
    for note in beside_lap::fits(&report.chain_section()) {
        block.row("Note", note);
    }
    block.check(Concern::Course, [WALK_IT_FIRST, DOWNHILL, WHILE_OPEN].join(" "));
    Some(block)
}

fn laps_of(block: &mut Block, report: &LapSection, laps: &LapReport, settled: &Settled, both: bool) {
    let length = with_unit(laps.length_m() / 1e3, 2, "km");
    let climb = with_unit(laps.question.course.climb_m(), 0, "m");
    block.row("Course", format!("{}, {length}, {climb} up", course_name(report)));
    for (side, (lap, band)) in Side::BOTH.into_iter().zip(laps.laps.iter().zip(&settled.bands)) {
        let [low, high] = [band.low_s, band.high_s].map(|s| clock(s, settled.precision()));
        let time = about_clock(band.time_s, settled.precision());
        block.row_of(side, "Lap", format!("{time}, likely {low} to {high}"));
        block.row_of(side, "On foot, m", spans_on_foot(lap));
    }
    if both {
        block.row("Quicker", quicker(settled));
    }
}

fn spans_on_foot(lap: &Lap) -> String {
    let span = |part: &PlanPart| format!("{} to {}", plain(part.from_m, 0), plain(part.to_m, 0));
    let spans: Vec<String> = lap.dismounts().iter().map(span).collect();
    match spans.len() {
        _ if lap.is_all_on_foot() => "all the way".to_owned(),
        0 => "nowhere".to_owned(),
        _ => spans.join("; "),
    }
}

fn quicker(settled: &Settled) -> String {
    let gained = settled.gained;
    let ahead = if gained.time_s < 0.0 { Side::A } else { Side::B };
    match (settled.quicker(), gained.quicker()) {
        (_, Quicker::TooClose) => "too close to call".to_owned(),
        (Quicker::TooClose, _) => "too close to call while forcing a gear is left out".to_owned(),
        _ => format!("{ahead}, by {}\u{a0}s a lap", seconds_in(gained.time_s.abs(), gained.precision())),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::lap::view::answer::tests::{ridden, settled, track};
    use gear_math::course::TimeBand;

    #[test]
    fn a_track_that_is_no_course_is_said_to_be_none_on_the_sheet() {
        let mut desk = ridden("");
        desk.take_track("Ridge", &track(100, 3.0));
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
    fn who_is_quicker_is_told_as_in_the_answer() {
        let told = |low_s, time_s, high_s| quicker(&settled(TimeBand { low_s, time_s, high_s }));
        assert_eq!(told(-1.0, 3.0, 7.0), "too close to call");
        assert_eq!(told(1.0, 3.0, 5.0), "B, by 3.0\u{a0}s a lap");
        assert_eq!(told(-60.0, -33.4, -7.0), "A, by 33\u{a0}s a lap");
    }
}
