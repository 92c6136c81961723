//! Time in every gear as bars, for both set-ups.

use super::palette::Palette;
use super::pen::{Anchor, Pen, Point, Type};
use super::profile::{draw_waiting, used};
use super::scale::Scale;
use super::side::bar;
use super::{Size, Spot};
use crate::number::with_unit;
use crate::report::{LapReport, Report, Side};
use gear_math::GearUse;

const LEFT: f64 = 58.0;
const RIGHT: f64 = 44.0;
const TOP: f64 = 22.0;
const ROW: f64 = 16.0;
const BAR: f64 = 10.0;
/// From this width on both set-ups stand side by side, CSS pixels.
const PAIR: f64 = 560.0;

/// Where one set-up's bars stand: left edge, top, and the scale of seconds.
fn panel(laps: &LapReport, side: Side, width: f64) -> (f64, f64, Scale) {
    let longest = laps.laps.iter().flat_map(|lap| &lap.gears).map(|used| used.time_s).fold(1.0, f64::max);
    let (left, top, wide) = match (side, width < PAIR) {
        (Side::A, true) => (0.0, TOP, width),
        (Side::B, true) => (0.0, 2.0 * TOP + laps.laps[0].gears.len() as f64 * ROW, width),
        (Side::A, false) => (0.0, TOP, width / 2.0),
        (Side::B, false) => (width / 2.0, TOP, width / 2.0),
    };
    (left, top, Scale::even((0.0, longest), (left + LEFT, left + wide - RIGHT)))
}

fn bars(laps: &LapReport, side: Side, width: f64) -> Vec<(Point, Point, &GearUse)> {
    let (_, top, scale) = panel(laps, side, width);
    let place = |(row, used): (usize, _)| {
        let used: &GearUse = used;
        let y = top + row as f64 * ROW;
        ((scale.at(0.0), y), (scale.at(used.time_s).max(scale.at(0.0) + 1.5), y + BAR), used)
    };
    laps.laps[side as usize].gears.iter().rev().enumerate().map(place).collect()
}

pub(super) fn height(report: &Report, width: f64) -> f64 {
    let Some(laps) = &report.lap.laps else { return 200.0 };
    let rows = |side: Side| laps.laps[side as usize].gears.len() as f64 * ROW;
    if width < PAIR {
        2.0 * TOP + rows(Side::A) + rows(Side::B)
    } else {
        TOP + rows(Side::A).max(rows(Side::B))
    }
}

pub(super) fn label(report: &Report) -> String {
    let Some(laps) = &report.lap.laps else { return "The lap is not worked out yet.".to_owned() };
    let most = |side: Side| {
        let gears = laps.laps[side as usize].gears.iter();
        let most = gears.max_by(|one, other| one.time_s.total_cmp(&other.time_s));
        most.map_or(format!("{side} never rides"), |most| {
            format!("{side} is longest in {}, {}", most.gear, with_unit(most.time_s, 0, "s"))
        })
    };
    format!("Time in gear: {}; {}.", most(Side::A), most(Side::B))
}

pub(super) fn draw(pen: &mut Pen, look: &Palette, report: &Report, size: Size) {
    let Some(laps) = &report.lap.laps else { return draw_waiting(pen, look) };
    for side in Side::BOTH {
        let (left, top, _) = panel(laps, side, size.0);
        let name = format!("{side}, highest gear on top");
        pen.text(&name, (left, top - 13.0), Type::new(side.ink(look), Anchor::Start).bold());
        for (from, to, used) in bars(laps, side, size.0) {
            let middle = from.1 + BAR / 2.0;
            bar(pen, look, side, from, to);
            pen.text(&used.gear.to_string(), (from.0 - 6.0, middle), Type::new(look.ink, Anchor::End));
            let time = with_unit(used.time_s, 0, "s");
            pen.text(&time, (to.0 + 5.0, middle), Type::new(look.soft, Anchor::Start));
        }
    }
}

pub(super) fn spots(report: &Report, size: Size) -> Vec<Spot> {
    let Some(laps) = &report.lap.laps else { return Vec::new() };
    let of = |side: Side| {
        let spot = move |(from, to, gear): (Point, Point, &GearUse)| {
            Spot::around(from, to, 2.0, used(side, gear, &laps.laps[side as usize]))
        };
        bars(laps, side, size.0).into_iter().map(spot)
    };
    of(Side::A).chain(of(Side::B)).collect()
}
