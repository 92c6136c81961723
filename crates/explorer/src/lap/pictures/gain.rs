//! Time that one set-up gains on the other along the lap.

use crate::drawing::drawing::Drawing;
use crate::drawing::palette::Palette;
use crate::drawing::pen::Size;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::drawing::scale::Scale;
use crate::drawing::spot::Spot;
use crate::lap::pictures::profile::{
    across, draw_distances, draw_waiting, mark_stretch, metre, metres, waiting, waiting_height,
};
use crate::lap::report::LapReport;
use crate::lap::section::LapSection;
use crate::lap::settled::Settled;
use crate::lap::words::pictures::{gain as told, none_yet};
use crate::number::with_unit;
use crate::side::Side;

/// Time gained along the lap.
pub(crate) const GAIN: Drawing<LapSection> = Drawing {
    name: "gain",
    title: told::TITLE,
    caption: told::CAPTION,
    height,
    draw,
    says,
    spots,
    label,
    words,
};

const LEFT: f64 = 46.0;
const TOP: f64 = 22.0;
const HEIGHT: f64 = 230.0;
const FOOT: f64 = 24.0;
/// Least extent upward and downward, s.
const LEAST_S: f64 = 0.5;

fn settled(report: &LapSection) -> Option<(&LapReport, &Settled)> {
    let laps = report.lap.laps.as_deref()?;
    Some((laps, laps.settled.as_ref()?))
}

fn up(settled: &Settled) -> Scale {
    let gains = settled.gains.curve.iter().map(|point| point.1);
    let (low, high) =
        gains.fold((-LEAST_S, LEAST_S), |(low, high), gain| (f64::min(low, gain), f64::max(high, gain)));
    Scale::even((low, high), (HEIGHT - FOOT - 4.0, TOP + 4.0))
}

fn gain_at(settled: &Settled, at: f64) -> f64 {
    let index = settled.gains.curve.partition_point(|point| point.0 < at - 1e-6);
    settled.gains.curve.get(index).or(settled.gains.curve.last()).map_or(0.0, |point| point.1)
}

/// None where A and B are one and the same.
fn height(report: &LapSection, _: f64) -> f64 {
    match &report.lap.laps {
        None => waiting_height(report, HEIGHT),
        Some(laps) if laps.question.setups[0] == laps.question.setups[1] => 0.0,
        Some(_) => HEIGHT,
    }
}

fn label(report: &LapSection) -> String {
    match settled(report) {
        None => none_yet(told::TITLE, waiting(report)),
        Some((_, settled)) => told::label(settled.gained.time_s, settled.gained.precision()),
    }
}

fn says(report: &LapSection) -> String {
    settled(report).map_or_else(|| waiting(report).to_owned(), |(_, settled)| told::says(settled))
}

fn draw(pen: &mut Pen, look: &Palette, report: &LapSection, size: Size) {
    let Some((laps, settled)) = settled(report) else { return draw_waiting(pen, look, report) };
    let (scale, up) = (across(laps, size.0), up(settled));
    let (start, end) = (scale.at(0.0), scale.at(laps.length_m()));
    for tick in up.even_ticks(26.0) {
        pen.line((start, up.at(tick)), (end, up.at(tick)), look.rule, 1.0);
        let gain = with_unit(tick.abs(), usize::from(tick.fract() != 0.0), "s");
        pen.text(&gain, (LEFT - 6.0, up.at(tick)), Type::new(look.soft, Anchor::End));
    }
    let line: Vec<Point> =
        columns(laps.length_m(), end - start).map(|at| (scale.at(at), up.at(gain_at(settled, at)))).collect();
    for (side, held) in [(Side::A, f64::max as fn(f64, f64) -> f64), (Side::B, f64::min)] {
        let mut area: Vec<Point> = line.iter().map(|&(x, y)| (x, held(y, up.at(0.0)))).collect();
        area.extend([(end, up.at(0.0)), (start, up.at(0.0))]);
        pen.shape(&area, side.wash(look));
    }
    pen.line((start, up.at(0.0)), (end, up.at(0.0)), look.ink, 1.0);
    pen.path(&line, look.ink, 2.0);
    pen.text(told::B_AHEAD, (start, 9.0), Type::new(look.b, Anchor::Start).bold());
    pen.text(told::A_AHEAD, (end, 9.0), Type::new(look.a, Anchor::End).bold());
    mark_stretch(pen, look, settled, scale, HEIGHT - FOOT);
    draw_distances(pen, look, laps, scale, HEIGHT - 11.0);
}

/// As many places as there are columns, or metres where those are fewer.
fn columns(length_m: f64, width: f64) -> impl Iterator<Item = f64> {
    let count = length_m.min(width).max(1.0).floor();
    (0..=count as usize).map(move |index| (length_m * index as f64 / count).round().min(length_m))
}

fn spots(report: &LapSection, size: Size) -> Vec<Spot> {
    let Some((laps, settled)) = settled(report) else { return Vec::new() };
    let (scale, up) = (across(laps, size.0), up(settled));
    let spot = |at: f64| {
        let place = (scale.at(at), up.at(gain_at(settled, at)));
        Spot::around(place, place, 5.0, String::new())
    };
    metres(laps).map(spot).collect()
}

fn words(report: &LapSection, _: &Spot, index: usize) -> String {
    settled(report).map_or_else(String::new, |(laps, settled)| {
        let at = metre(laps, index);
        told::place(at, gain_at(settled, at), settled.gained.precision())
    })
}
