//! On a picture that goes elsewhere: what is compared, for whom and where.

use crate::layout::decision::Standing;
use crate::layout::line::Line;
use crate::number::with_unit;
use crate::page::words::board::meaning;
use crate::ride::section::RideSection;
use crate::ride::words::sheet::climb;
use crate::ride::words::terms::ground_name;
use crate::rings::setup::SetupReport;
use crate::units;
use gear_math::{Course, TotalCapacity, TyreSize};

/// The column of questions on the board.
pub(crate) const QUESTION: &str = "Question";

/// The heading, and that it holds the demo's values where it does.
pub(crate) fn titled(title: &str, is_demos: bool) -> String {
    if is_demos { format!("{title} (with values of the demo)") } else { title.to_owned() }
}

/// “A: 50/34, 11-30 11s, 33-622, capacity 33 teeth”
pub(crate) fn bike(setup: &SetupReport, tyre: TyreSize, capacity: Option<TotalCapacity>) -> String {
    let (side, rings, cassette) = (setup.side, setup.drivetrain.chainset, cassette(setup));
    let capacity = capacity
        .map_or(String::new(), |it| format!(", capacity {}", with_unit(it.teeth().into(), 0, "teeth")));
    format!("{side}: {rings}, {cassette}, {tyre}{capacity}")
}

/// Its everyday name where it was typed by it, else every sprocket.
fn cassette(setup: &SetupReport) -> String {
    let cassette = setup.drivetrain.cassette;
    match setup.typed.name {
        Some(_) => {
            format!("{}-{} {}s", cassette.smallest(), cassette.largest(), cassette.sprockets().len())
        }
        None => cassette.to_string(),
    }
}

/// Rider, power, bank and course.
pub(crate) fn scenario(ride: &RideSection, name: &str, course: Option<&Course>) -> String {
    let rider = &ride.ride.inputs.rider;
    let (mass, power) = (units::mass(rider.body.kg()), with_unit(rider.power.watts(), 0, "W"));
    let (bank, ground) = (climb(ride), ground_name(ride.ride.ground()));
    let course = course
        .map_or(String::new(), |it| format!(", {}", units::long_distances().print(it.length_m() / 1e3, 2)));
    format!("Rider {mass}, {power} · bank {bank}, {ground} · course {name}{course}")
}

/// What the signs stand for, and what is not told yet.
pub(crate) fn key() -> String {
    let signs = Standing::SIGNED.map(|standing| format!("{} {}", standing.sign(), meaning(standing)));
    signs.join(" · ")
}

/// Sentences in one paragraph.
pub(crate) fn paragraph(first: &Line, then: Option<&Line>) -> String {
    then.map_or_else(|| first.text(), |then| format!("{} {}", first.text(), then.text()))
}

/// An answer that may still turn out otherwise.
pub(crate) fn not_final(words: &str) -> String {
    format!("{words} (not final yet)")
}

/// A file by what is in it: “remount-gear-ladder-50-34-11-30-against-40-11-36”.
pub(crate) fn file(title: &str, setups: &[SetupReport; 2]) -> String {
    let [a, b] = setups.each_ref().map(|setup| {
        let cassette = setup.drivetrain.cassette;
        format!("{} {} {}", setup.drivetrain.chainset, cassette.smallest(), cassette.largest())
    });
    slug(&format!("remount {title} {a} against {b}"))
}

fn slug(text: &str) -> String {
    let parts = text.split(|letter: char| !letter.is_ascii_alphanumeric()).filter(|part| !part.is_empty());
    parts.map(str::to_ascii_lowercase).collect::<Vec<_>>().join("-")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::page::report::Report;

    #[test]
    fn a_file_is_called_by_what_is_in_it() {
        assert_eq!(
            file("Gear ladder: what “A” has", &Report::default().rings.setups),
            "remount-gear-ladder-what-a-has-50-34-11-30-against-44-32-11-32"
        );
    }
}
