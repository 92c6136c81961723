//! A map of gradient and ground with the verdict for A and B.

use crate::drawing::drawing::Drawing;
use crate::drawing::letters::plain_width;
use crate::drawing::palette::Palette;
use crate::drawing::pen::Size;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::drawing::scale::Scale;
use crate::drawing::spot::Spot;
use crate::number::plain;
use crate::ride::ground_row::{GroundRow, Part, Stretch};
use crate::ride::pictures::slopes::{GRADIENTS, name_climb, shown_up_to};
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

fn across(report: &RideSection, width: f64) -> Scale {
    let rows = report.ride.map().iter();
    let changes =
        rows.flat_map(|row| Side::BOTH.map(|side| row.parts(side).last().map_or(0.0, |it| it.stretch.from)));
    let steepest = changes.fold(report.ride.inputs.climb.percent(), f64::max);
    Scale::even((0.0, shown_up_to(steepest)), (LEFT, width - RIGHT))
}

fn corners(scale: Scale, row: usize, side: Side, stretch: &Stretch) -> (Point, Point) {
    let top = TOP + row as f64 * ROW + side as usize as f64 * (BAR + 2.0);
    ((scale.at(stretch.from), top), (scale.at(stretch.to).min(scale.end()), top + BAR))
}

fn height(report: &RideSection, _: f64) -> f64 {
    TOP + report.ride.map().len() as f64 * ROW + FOOT
}

fn label(report: &RideSection) -> String {
    let here = report.ride.map().iter().find(|row| row.here);
    here.map_or(String::new(), |row| words::label(report, row))
}

fn draw(pen: &mut Pen, look: &Palette, report: &RideSection, size: Size) {
    let scale = across(report, size.0);
    for (index, row) in report.ride.map().iter().enumerate() {
        draw_names(pen, look, index, row);
        each(scale, index, row, |_, part, from, to| draw_part(pen, look, part, from, to));
    }
    draw_axis(pen, look, scale, size.1 - FOOT + 4.0);
    draw_climb(pen, look, report, scale, size.1 - FOOT);
    for (index, row) in report.ride.map().iter().enumerate() {
        each(scale, index, row, |_, part, from, to| draw_words(pen, look, part, from, to));
    }
}

/// Does something with every part of a row and the corners of its bar.
fn each(scale: Scale, index: usize, row: &GroundRow, mut act: impl FnMut(Side, &Part, Point, Point)) {
    for side in Side::BOTH {
        for part in row.parts(side) {
            let (from, to) = corners(scale, index, side, &part.stretch);
            act(side, &part, from, to);
        }
    }
}

fn draw_climb(pen: &mut Pen, look: &Palette, report: &RideSection, scale: Scale, floor: f64) {
    let climb = report.ride.inputs.climb.percent();
    let x = scale.at(climb);
    pen.dashes((x, TOP - 10.0), (x, floor), look.ink, 1.5, 4.0);
    name_climb(pen, look, report, (x, TOP - 33.0), scale.end());
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

/// Ride is full, too close to call is hatched, on foot is grey, on foot by force is open, ruled where a lower gear would ride.
fn draw_part(pen: &mut Pen, look: &Palette, part: &Part, from: Point, to: Point) {
    if part.lower_gear_rides {
        for line in 1..4 {
            let y = from.1 + f64::from(line) * BAR / 4.0;
            pen.line((from.0, y), (to.0, y), look.good, 1.0);
        }
    }
    match part.stretch.verdict {
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
fn draw_words(pen: &mut Pen, look: &Palette, part: &Part, from: Point, to: Point) {
    let (ink, paper) = match part.stretch.verdict {
        Verdict::Ride => (look.paper, look.good),
        Verdict::TooClose => (look.care, look.paper),
        Verdict::Foot => (look.ink, look.rule),
        Verdict::FootForced => (look.soft, look.paper),
    };
    let words = words::short(part);
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
    let scale = across(report, size.0);
    let climb = report.ride.inputs.climb.percent();
    let mut spots = Vec::new();
    for (index, row) in report.ride.map().iter().enumerate() {
        each(scale, index, row, |side, part, from, to| {
            let here = row.here && (part.stretch.from..part.stretch.to).contains(&climb);
            let advice = here.then_some(report.ride.sides[side as usize].ascent.advice);
            let text = words::part_spot(side, row, part, advice);
            spots.push(Spot::around(from, to, 1.0, text));
        });
    }
    spots
}
