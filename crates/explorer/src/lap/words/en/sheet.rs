//! What the section gives to the workshop sheet.

use crate::lap::report::{LapQuestion, LapReport, Spread};
use crate::lap::settled::{Settled, Verdict};
use crate::number::{clock, seconds_in, with_unit};
use crate::units;
use crate::words::about_clock;
use gear_math::Lap;
use gear_math::course::{PlanPart, TimeBand, TrackFault};
use gear_math::rider::EffortBudget;

/// The course.
pub(crate) const COURSE: &str = "Course";

/// The time of a lap.
pub(crate) const LAP: &str = "Lap";

/// Where to go on foot.
pub(crate) fn on_foot_in() -> String {
    format!("On foot, {}", units::distances().symbol())
}

/// Who is quicker.
pub(crate) const QUICKER: &str = "Quicker";

/// What else holds.
pub(crate) const NOTE: &str = "Note";

/// That a track is no course, and why.
pub(crate) fn no_course(course: &str, fault: &TrackFault) -> String {
    format!("{course} cannot be used for a lap: {fault}")
}

/// The course with its length and climb, and how effort is spread over it.
pub(crate) fn course(course: &str, laps: &LapReport) -> String {
    let length = units::long_distances().print(laps.length_m() / 1e3, 2);
    let climb = units::distances().print(laps.question.course.climb_m(), 0);
    format!("{course}, {length}, {climb} up; ridden {}", ridden(&laps.question))
}

/// How effort is spread over it.
pub(crate) fn ridden(question: &LapQuestion) -> String {
    match question.spread {
        Spread::Even(_) => {
            let power = with_unit(question.setups[0].rider.power.watts(), 0, "W");
            format!("at a steady power of {power}")
        }
        Spread::Reserve { budget, .. } if budget == EffortBudget::NONE => "lap after lap".to_owned(),
        Spread::Reserve { budget, .. } => {
            format!("with {} of the reserve spent", with_unit(budget.j() / 1e3, 1, "kJ"))
        }
    }
}

/// The time of one lap.
pub(crate) fn time(band: &TimeBand, settled: &Settled) -> String {
    let [low, high] = [band.low_s, band.high_s].map(|s| clock(s, settled.precision()));
    let time = about_clock(band.time_s, settled.precision());
    format!("{time}, likely {low} to {high}")
}

/// The parts on foot.
pub(crate) fn spans_on_foot(lap: &Lap) -> String {
    let span = |part: &PlanPart| {
        let [from, to] = [part.from_m, part.to_m].map(|m| units::distances().number(m, 0));
        format!("{from} to {to}")
    };
    let spans: Vec<String> = lap.dismounts().iter().map(span).collect();
    match spans.len() {
        _ if lap.is_all_on_foot() => "all the way".to_owned(),
        0 => "nowhere".to_owned(),
        _ => spans.join("; "),
    }
}

/// Who is quicker, and by how much.
pub(crate) fn quicker(settled: &Settled) -> String {
    match settled.verdict() {
        Verdict::HardlyApart => "hardly a difference".to_owned(),
        Verdict::Alike | Verdict::Level | Verdict::TooClose => "too close to call".to_owned(),
        Verdict::OpenToForcing => "too close to call while forcing a gear is left out".to_owned(),
        Verdict::OnlyJust | Verdict::Quicker => {
            let gained = seconds_in(settled.lead().time_s, settled.gained.precision());
            format!("{}, by {gained}\u{a0}s a lap", settled.ahead())
        }
    }
}
