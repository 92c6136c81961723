//! The gear ladder.

use crate::layout::line::name;
use crate::number::plain;
use crate::rings::report::RingsReport;
use crate::rings::section::RingsSection;
use crate::rings::setup::{GearLine, SetupReport};
use crate::side::Side;
use crate::units::{self, GearScale, Units};
use crate::words::{capital, counted, gears_by, listed};
use gear_math::Development;

pub(crate) const TITLE: &str = "The gear ladder";
pub(crate) const CAPTION: &str = "The longest rungs are the largest ring; a tie across the rail joins the same gear. “Bank”: the gear it asks for at your lowest cadence. In brackets: cross-chained; with “no”: to be avoided.";
/// Beside the lowest gear that the climb asks for.
pub(crate) const BANK: &str = "bank";
/// The same where that lies below all that is drawn.
pub(crate) const BANK_BELOW: &str = "↓ bank";

/// The picture in one sentence.
pub(crate) fn label(rings: &RingsReport) -> String {
    let [a, b] = rings.setups.each_ref().map(|setup| reach(rings, setup));
    let common = counted(rings.common.len(), "gear is", "gears are");
    format!("Gear ladder: {a}; {b}; {common} the same on both.")
}

fn reach(rings: &RingsReport, setup: &SetupReport) -> String {
    let scale = Units::now().gears;
    let unit = match scale {
        GearScale::Development => format!("{} of {}", units::gear_unit(), gears_by(scale)),
        GearScale::Ratio => format!("in {}", gears_by(scale)),
        GearScale::Inches | GearScale::NominalInches => gears_by(scale).to_owned(),
    };
    format!(
        "{side} reaches from {low} to {high} {unit} in {gears}",
        side = setup.side,
        low = rings.gear_number(setup.side, setup.lowest().development, 2),
        high = rings.gear_number(setup.side, setup.highest().development, 2),
        gears = counted(setup.usable(), "gear", "gears"),
    )
}

/// Before the slowest speed and before the fastest.
pub(crate) const FROM_TO: [&str; 2] = ["from", "to"];

/// One of those.
pub(crate) fn end(end: &str, speed: &str) -> String {
    format!("{end} {speed}")
}

/// Gears that coincide, by one label.
pub(crate) fn both(one: &str, other: &str) -> String {
    format!("{one}, {other}")
}

/// Over what one set-up alone reaches.
pub(crate) fn only_reaches(side: Side) -> String {
    format!("only {side} reaches")
}

/// The same where there is little room.
pub(crate) fn only(side: Side) -> String {
    format!("only {side}")
}

/// Over the rungs of a single ring.
pub(crate) fn one_ring(ring: &str) -> String {
    format!("{ring} only")
}

/// Which of two lengths is which ring.
pub(crate) fn two_rings(large: &str, small: &str) -> String {
    format!("long {large}, short {small}")
}

/// A gear with its development, inches, speeds, and its twins on the other side.
pub(crate) fn gear(
    rings: &RingsReport,
    side: Side,
    line: &GearLine,
    speeds: &str,
    twins: &[String],
) -> String {
    let (gear, inches) = (line.gear, plain(line.inches.inches(), 1));
    let size = match Units::now().gears {
        GearScale::Ratio => rings.gear(side, line.development, 3),
        _ => units::distances().print(line.development.m(), 3),
    };
    let mut words = format!("{side} {gear}: {size}, {inches} gear inches; {speeds}.");
    if !twins.is_empty() {
        words += &format!(" Same gear as {}.", listed(twins));
    }
    if line.crossed {
        words += " Cross-chained: the chain runs at its steepest.";
    }
    if line.avoid {
        words += " Never use it.";
    }
    words
}

/// A gear of the other side that counts as the same.
pub(crate) fn twin(side: Side, gear: &str, apart: &str) -> String {
    format!("{side} {gear}, {apart} apart")
}

/// Who reaches farther at either end, what both have, and who has the gear that the climb asks for.
pub(crate) fn says(report: &RingsSection) -> String {
    format!("{}{}", reaches(report), bank(report))
}

fn bank(report: &RingsSection) -> String {
    let [Some(of_a), Some(of_b)] = report.asked else { return String::new() };
    let has = |side: Side, asked: Development| report.rings.setup(side).lowest().development <= asked;
    let (a, b) = (name(Side::A), name(Side::B));
    let who = match (has(Side::A, of_a), has(Side::B, of_b)) {
        (true, true) => "both have it".to_owned(),
        (false, false) => "neither has it".to_owned(),
        (true, false) => format!("only {a} has it"),
        (false, true) => format!("only {b} has it"),
    };
    format!(" Your bank asks for a gear of {} or less: {who}.", report.rings.gear(Side::A, of_a, 1))
}

fn reaches(report: &RingsSection) -> String {
    let (rings, a, b) = (&report.rings, name(Side::A), name(Side::B));
    if rings.has_one_set_up() {
        return format!("{a} and {b} have the same gears.");
    }
    let [below, above] = rings.reach;
    let below = below.map(|reach| (reach.side, "below", reach.span.to));
    let above = above.map(|reach| (reach.side, "above", reach.span.from));
    let ends = below.into_iter().chain(above);
    let ends: Vec<String> = ends
        .map(|(side, where_to, end)| {
            format!("only {} reaches {where_to} {}", name(side), rings.gear(side, end, 1))
        })
        .collect();
    let common = match rings.common.len() {
        0 => "they have no gear in common".to_owned(),
        count => format!("{} in common", counted(count, "gear", "gears")),
    };
    match ends.as_slice() {
        [] => format!("{a} and {b} reach equally far, with {common}."),
        ends => format!("{}; {common}.", capital(&ends.join(", "))),
    }
}
