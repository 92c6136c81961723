//! Time in every gear and on foot as bars, for both set-ups.

use crate::drawing::drawing::Drawing;
use crate::drawing::looks::bar;
use crate::drawing::palette::Palette;
use crate::drawing::pen::Size;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::drawing::scale::Scale;
use crate::drawing::spot::Spot;
use crate::lap::pictures::profile::{draw_waiting, waiting};
use crate::lap::report::LapReport;
use crate::lap::section::LapSection;
use crate::lap::words::pictures::gear_times as words;
use crate::side::Side;

/// How long in each gear.
pub(crate) const GEAR_TIMES: Drawing<LapSection> = Drawing {
    name: "gear-times",
    title: words::TITLE,
    caption: words::CAPTION,
    height,
    draw,
    spots,
    label,
    words: Spot::own_words,
};

const LEFT: f64 = 58.0;
const RIGHT: f64 = 56.0;
const TOP: f64 = 22.0;
const ROW: f64 = 16.0;
const BAR: f64 = 10.0;
/// From this width on both set-ups stand side by side, CSS pixels.
const PAIR: f64 = 560.0;

/// Time and way in one gear, or on foot.
struct Share {
    what: String,
    time_s: f64,
    way_m: f64,
}

/// The gears from the highest, then what is gone on foot, if anything is.
fn shares(laps: &LapReport, side: Side) -> Vec<Share> {
    let lap = &laps.laps[side as usize];
    let gears = lap.gears.iter().rev().map(|used| Share {
        what: laps.gear_name(side, used.gear),
        time_s: used.time_s,
        way_m: used.distance_m,
    });
    let on_foot = Share { what: words::ON_FOOT.to_owned(), time_s: lap.on_foot_s(), way_m: lap.on_foot_m() };
    gears.chain((on_foot.way_m > 0.0).then_some(on_foot)).collect()
}

/// Where one set-up's bars stand: left edge, top, and the scale of seconds.
fn panel(laps: &LapReport, side: Side, width: f64) -> (f64, f64, Scale) {
    let of = |side: Side| shares(laps, side);
    let longest = of(Side::A).iter().chain(&of(Side::B)).map(|share| share.time_s).fold(1.0, f64::max);
    let (left, top, wide) = match (side, width < PAIR) {
        (Side::A, true) => (0.0, TOP, width),
        (Side::B, true) => (0.0, 2.0 * TOP + of(Side::A).len() as f64 * ROW, width),
        (Side::A, false) => (0.0, TOP, width / 2.0),
        (Side::B, false) => (width / 2.0, TOP, width / 2.0),
    };
    (left, top, Scale::even((0.0, longest), (left + LEFT, left + wide - RIGHT)))
}

fn bars(laps: &LapReport, side: Side, width: f64) -> Vec<(Point, Point, Share)> {
    let (_, top, scale) = panel(laps, side, width);
    let place = |(row, share): (usize, Share)| {
        let y = top + row as f64 * ROW;
        ((scale.at(0.0), y), (scale.at(share.time_s).max(scale.at(0.0) + 1.5), y + BAR), share)
    };
    shares(laps, side).into_iter().enumerate().map(place).collect()
}

fn height(report: &LapSection, width: f64) -> f64 {
    let Some(laps) = &report.lap.laps else { return 200.0 };
    let rows = |side: Side| shares(laps, side).len() as f64 * ROW;
    if width < PAIR {
        2.0 * TOP + rows(Side::A) + rows(Side::B)
    } else {
        TOP + rows(Side::A).max(rows(Side::B))
    }
}

fn label(report: &LapSection) -> String {
    let Some(laps) = &report.lap.laps else { return waiting(report).to_owned() };
    words::label(&laps.laps)
}

fn draw(pen: &mut Pen, look: &Palette, report: &LapSection, size: Size) {
    let Some(laps) = &report.lap.laps else { return draw_waiting(pen, look, report) };
    for side in Side::BOTH {
        let (left, top, _) = panel(laps, side, size.0);
        pen.text(&words::head(side), (left, top - 13.0), Type::new(side.ink(look), Anchor::Start).bold());
        for (from, to, share) in bars(laps, side, size.0) {
            let middle = from.1 + BAR / 2.0;
            bar(pen, look, side, from, to);
            pen.text(&share.what, (from.0 - 6.0, middle), Type::new(look.ink, Anchor::End));
            pen.text(&words::time(share.time_s), (to.0 + 5.0, middle), Type::new(look.soft, Anchor::Start));
        }
    }
}

fn spots(report: &LapSection, size: Size) -> Vec<Spot> {
    let Some(laps) = &report.lap.laps else { return Vec::new() };
    let of = |side: Side| {
        let lap_s = laps.laps[side as usize].time_s;
        let spot = move |(from, to, share): (Point, Point, Share)| {
            Spot::around(from, to, 2.0, words::spot(side, &share.what, share.time_s, share.way_m, lap_s))
        };
        bars(laps, side, size.0).into_iter().map(spot)
    };
    of(Side::A).chain(of(Side::B)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::page::desk::Desk;

    #[test]
    fn the_bars_make_up_the_lap() {
        let mut desk = Desk::default();
        desk.lap(true);
        let report = desk.report();
        let laps = report.lap.laps.as_ref().unwrap();
        for side in Side::BOTH {
            let shown: f64 = shares(laps, side).iter().map(|share| share.time_s).sum();
            let lap = &laps.laps[side as usize];
            assert!((shown - lap.time_s).abs() < 0.1 && lap.on_foot_s() > 10.0, "{shown} of {}", lap.time_s);
        }
    }

    #[test]
    fn crossed_gears_stand_in_brackets() {
        let mut desk = Desk::default();
        desk.edit(&[("rings-a".into(), "46/30".into()), ("cassette-a".into(), "11-13-15-17-19".into())]);
        desk.lap(false);
        let report = desk.report();
        let laps = report.lap.laps.as_ref().unwrap();
        let in_brackets = shares(laps, Side::A)
            .iter()
            .filter(|it| it.what.starts_with('('))
            .map(|it| it.time_s)
            .sum::<f64>();
        assert!(in_brackets > 0.0 && (in_brackets - laps.crossed_s(Side::A)).abs() < 1e-9);
    }
}
