//! The picture of speeds.

use crate::number::{plain, rpm};
use crate::rings::report::RingsReport;
use crate::rings::section::RingsSection;
use crate::rings::setup::GearLine;
use crate::side::Side;
use crate::units;

pub(crate) const TITLE: &str = "Speed of every gear";
pub(crate) const CAPTION: &str = "Bars run from your lowest to your highest cadence; notch and upright line are the cadence and the speed chosen below.";

/// The picture in one sentence.
pub(crate) fn label(rings: &RingsReport) -> String {
    let (low, high) = (rpm(rings.window.low), rpm(rings.window.high));
    let [a, b] = Side::BOTH.map(|side| covers(rings, side));
    format!("Speed of every gear between {low} and {high}: {a}; {b}.")
}

fn covers(rings: &RingsReport, side: Side) -> String {
    let setup = rings.setup(side);
    let low = units::speed_number(setup.lowest().speed_low);
    format!("{side} covers {low} to {}", units::speed(setup.highest().speed_high))
}

/// A gear with its speeds, and what it asks for at the speed being looked at.
pub(crate) fn gear(side: Side, line: &GearLine, speeds: &str, probe: &str) -> String {
    let (gear, cadence) = (line.gear, plain(line.cadence_probe.rpm(), 0));
    let never = if line.avoid { ", never to be used" } else { "" };
    format!("{side} {gear}{never}: {speeds}; at {probe} it asks for {cadence} rpm.")
}

/// What speeds A and B cover.
pub(crate) fn says(report: &RingsSection) -> String {
    let rings = &report.rings;
    let (low, high) = (plain(rings.window.low.rpm(), 0), rpm(rings.window.high));
    let [a, b] = Side::BOTH.map(|side| covers(rings, side));
    format!("From {low} to {high} {a}; {b}.")
}
