//! A map of gradient and ground with the verdict for A and B.

use crate::drawing::drawing::Drawing;
use crate::drawing::letters::plain_width;
use crate::drawing::palette::Palette;
use crate::drawing::pen::Size;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::drawing::scale::Scale;
use crate::drawing::spot::Spot;
use crate::number::plain;
use crate::ride::ground_row::{GroundRow, Stretch};
use crate::ride::pictures::slopes::{GRADIENTS, name_climb};
use crate::ride::section::RideSection;
use crate::ride::words::pictures::{SLOPE, verdicts as words};
use crate::ride::words::terms::ground_name;
use crate::side::Side;
use gear_math::rider::Verdict;

/// Verdict by gradient and ground.
pub(crate) const VERDICTS: Drawing<RideSection> = Drawing {
    name: "verdicts",
    title: words::TITLE,
    caption: words::CAPTION,
    height,
    draw,
    says: words::says,
    spots,
    label,
    words: Spot::own_words,
};

const NAME: f64 = 120.0;
const LEFT: f64 = NAME + 18.0;
const RIGHT: f64 = 12.0;
const TOP: f64 = 48.0;
const BAR: f64 = 14.0;
const ROW: f64 = 2.0 * BAR + 14.0;
const FOOT: f64 = 24.0;
const HATCH: f64 = 6.0;

fn across(width: f64) -> Scale {
    Scale::even((0.0, 45.0), (LEFT, width - RIGHT))
}

fn corners(scale: Scale, row: usize, side: Side, stretch: &Stretch) -> (Point, Point) {
    let top = TOP + row as f64 * ROW + side as usize as f64 * (BAR + 2.0);
    ((scale.at(stretch.from), top), (scale.at(stretch.to), top + BAR))
}

fn height(report: &RideSection, _: f64) -> f64 {
    TOP + report.ride.map.len() as f64 * ROW + FOOT
}

fn label(report: &RideSection) -> String {
    let here = report.ride.map.iter().find(|row| row.here);
    here.map_or(String::new(), |row| words::label(report, row))
}

fn draw(pen: &mut Pen, look: &Palette, report: &RideSection, size: Size) {
    let scale = across(size.0);
    for (index, row) in report.ride.map.iter().enumerate() {
        draw_names(pen, look, index, row);
        each(scale, index, row, |_, stretch, from, to| draw_stretch(pen, look, stretch, from, to));
    }
    draw_axis(pen, look, scale, size.1 - FOOT + 4.0);
    draw_climb(pen, look, report, scale, size.1 - FOOT);
    for (index, row) in report.ride.map.iter().enumerate() {
        each(scale, index, row, |_, stretch, from, to| draw_words(pen, look, stretch, from, to));
    }
}

/// Does something with every stretch of a row and the corners of its bar.
fn each(scale: Scale, index: usize, row: &GroundRow, mut act: impl FnMut(Side, &Stretch, Point, Point)) {
    for side in Side::BOTH {
        for stretch in &row.stretches[side as usize] {
            let (from, to) = corners(scale, index, side, stretch);
            act(side, stretch, from, to);
        }
    }
}

fn draw_climb(pen: &mut Pen, look: &Palette, report: &RideSection, scale: Scale, floor: f64) {
    let climb = report.ride.inputs.climb.percent();
    let x = scale.at(climb);
    pen.dashes((x, TOP - 10.0), (x, floor), look.ink, 1.5, 4.0);
    name_climb(pen, look, report, (x, TOP - 33.0), scale.at(45.0));
}

fn draw_axis(pen: &mut Pen, look: &Palette, scale: Scale, y: f64) {
    for tick in scale.ticks(&GRADIENTS, 22.0) {
        pen.text(&plain(tick, 0), (scale.at(tick), y + 8.0), Type::new(look.soft, Anchor::Middle));
    }
    pen.text(SLOPE, (0.0, y + 8.0), Type::new(look.soft, Anchor::Start));
}

fn draw_names(pen: &mut Pen, look: &Palette, index: usize, row: &GroundRow) {
    let middle = TOP + index as f64 * ROW + BAR + 1.0;
    let set = Type::new(look.ink, Anchor::Start);
    pen.text(ground_name(row.surface), (0.0, middle), if row.here { set.bold() } else { set });
    for (side, y) in [(Side::A, middle - 8.0), (Side::B, middle + 8.0)] {
        pen.text(&side.to_string(), (LEFT - 6.0, y), Type::new(side.ink(look), Anchor::End).bold());
    }
}

/// Ride is full, too close to call is hatched, on foot is grey, on foot by force is open.
fn draw_stretch(pen: &mut Pen, look: &Palette, stretch: &Stretch, from: Point, to: Point) {
    match stretch.verdict {
        Verdict::Ride => pen.fill(from, to, look.good),
        Verdict::TooClose => hatch(pen, look, from, to),
        Verdict::Foot => {
            pen.fill(from, to, look.rule);
            pen.frame(from, to, look.soft, 1.0);
        }
        Verdict::FootForced => pen.frame(from, to, look.soft, 1.0),
    }
}

/// The verdict inside its bar, where there is room.
fn draw_words(pen: &mut Pen, look: &Palette, stretch: &Stretch, from: Point, to: Point) {
    let (ink, paper) = match stretch.verdict {
        Verdict::Ride => (look.paper, look.good),
        Verdict::TooClose => (look.care, look.paper),
        Verdict::Foot => (look.ink, look.rule),
        Verdict::FootForced => (look.soft, look.paper),
    };
    let words = words::short(stretch);
    let wide = plain_width(words);
    let middle = ((from.0 + to.0) / 2.0, (from.1 + to.1) / 2.0);
    if wide + 8.0 < to.0 - from.0 {
        let half = wide / 2.0 + 1.0;
        pen.fill((middle.0 - half, from.1 + 1.0), (middle.0 + half, to.1 - 1.0), paper);
        pen.text(words, middle, Type::new(ink, Anchor::Middle));
    }
}

fn hatch(pen: &mut Pen, look: &Palette, from: Point, to: Point) {
    let mut x = from.0 - (to.1 - from.1);
    while x < to.0 {
        let (start, end) = (x.max(from.0), (x + to.1 - from.1).min(to.0));
        pen.line((start, to.1 - (start - x)), (end, to.1 - (end - x)), look.care, 1.0);
        x += HATCH;
    }
    pen.frame(from, to, look.care, 1.0);
}

fn spots(report: &RideSection, size: Size) -> Vec<Spot> {
    let scale = across(size.0);
    let climb = report.ride.inputs.climb.percent();
    let mut spots = Vec::new();
    for (index, row) in report.ride.map.iter().enumerate() {
        each(scale, index, row, |side, stretch, from, to| {
            let here = row.here && (stretch.from..stretch.to).contains(&climb);
            let advice = here.then_some(report.ride.sides[side as usize].ascent.advice);
            let text = words::stretch_spot(side, row, stretch, advice);
            spots.push(Spot::around(from, to, 1.0, text));
        });
    }
    spots
}
