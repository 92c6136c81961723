//! Time against length of the climb: riding with A and B, going on foot, and where getting off begins to pay.

use crate::drawing::drawing::Drawing;
use crate::drawing::letters::{lines, plain_width};
use crate::drawing::looks::{tube, wire};
use crate::drawing::palette::Palette;
use crate::drawing::pen::Size;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::drawing::scale::{Scale, spread};
use crate::drawing::spot::Spot;
use crate::number::trimmed;
use crate::ride::section::RideSection;
use crate::ride::side::RideSide;
use crate::ride::words::pictures::climb as words;
use crate::side::Side;
use crate::units;
use gear_math::order::ascending;
use gear_math::rider::{Distance, Time};

/// Time against length of the climb.
pub(crate) const CLIMB: Drawing<RideSection> = Drawing {
    name: "climb",
    title: words::TITLE,
    caption: words::CAPTION,
    height,
    draw,
    says: words::says,
    spots,
    label: words::label,
    words: Spot::own_words,
};

const LEFT: f64 = 40.0;
const RIGHT: f64 = 66.0;
const TOP: f64 = 34.0;
const PLOT: f64 = 230.0;
const FOOT: f64 = 24.0;
const LINE: f64 = 16.0;
struct Layout {
    across: Scale,
    up: Scale,
    right: f64,
    floor: f64,
    end: f64,
}

impl Layout {
    fn new(report: &RideSection, width: f64) -> Self {
        let sides = &report.ride.sides;
        let ridden = sides.iter().filter_map(|side| side.far.ride).map(Time::s);
        let longest = ridden.fold(sides[0].far.foot_at_worst.s(), f64::max);
        let (right, top) = (width - RIGHT, TOP + unridden(report, width).len() as f64 * LINE);
        let (floor, end) = (top + PLOT, report.ride.far.m());
        Self {
            across: Scale::even((0.0, end), (LEFT, right)),
            up: Scale::even((0.0, longest * 1.04), (floor, top)),
            right,
            floor,
            end,
        }
    }

    fn at(&self, length: f64, time: f64) -> Point {
        (self.across.at(length), self.up.at(time))
    }
}

/// What is said of the sides that have no steady ride here, line by line.
fn unridden(report: &RideSection, width: f64) -> Vec<(Side, String)> {
    let sides = report.ride.sides.iter().filter(|side| side.plan.ride.is_none());
    let said = |side: &RideSide| {
        let whose = side.side;
        lines(&words::unridden(side), width - LEFT - 8.0).into_iter().map(move |line| (whose, line))
    };
    sides.flat_map(said).collect()
}

fn height(report: &RideSection, width: f64) -> f64 {
    TOP + PLOT + FOOT + unridden(report, width).len() as f64 * LINE
}

fn draw(pen: &mut Pen, look: &Palette, report: &RideSection, size: Size) {
    let layout = Layout::new(report, size.0);
    let far = &report.ride.sides[0].far;
    let lost = report.ride.inputs.lost.s();
    let end = |time: f64| layout.at(layout.end, time);
    let start = layout.at(0.0, lost);
    pen.shape(&[start, end(far.foot_at_worst.s()), end(far.foot_at_best.s())], look.rule);
    draw_grid(pen, look, &layout);
    pen.dashes(start, end(far.foot.s()), look.ink, 1.5, 5.0);
    let [a, b] = &report.ride.sides;
    for side in [b, a] {
        let Some(time) = side.far.ride else { continue };
        let line = [layout.at(0.0, 0.0), end(time.s())];
        if side.side == Side::A { wire(pen, look, &line) } else { tube(pen, look, &line) }
    }
    for side in [b, a] {
        let Some(time) = side.advised_time() else { continue };
        let at = layout.at(report.ride.inputs.length.m(), time.s());
        pen.dot(at, 4.5, if side.side == Side::A { look.a } else { look.paper });
        pen.ring(at, 4.5, side.side.ink(look), 1.5);
    }
    // Lines are wider than a point: nothing of them stands below no time at all.
    pen.fill((LEFT - 6.0, layout.floor + 0.5), (LEFT + 14.0, layout.floor + 6.0), look.paper);
    draw_ends(pen, look, report, &layout);
    draw_lengths(pen, look, report, &layout);
    for (row, (side, line)) in unridden(report, size.0).into_iter().enumerate() {
        let y = TOP - 4.0 + row as f64 * LINE;
        pen.text(&line, (LEFT + 4.0, y), Type::new(side.ink(look), Anchor::Start));
    }
}

fn draw_grid(pen: &mut Pen, look: &Palette, layout: &Layout) {
    for tick in layout.up.even_ticks(28.0) {
        let y = layout.up.at(tick);
        pen.line((LEFT, y), (layout.right, y), look.rule, 1.0);
        pen.text(&format!("{} s", trimmed(tick)), (LEFT - 6.0, y), Type::new(look.soft, Anchor::End));
    }
    let unit = units::distances();
    let across = layout.across.told(unit);
    for tick in across.even_ticks(44.0) {
        let x = across.at(tick);
        pen.text(
            &format!("{} {}", trimmed(tick), unit.symbol()),
            (x, layout.floor + 12.0),
            Type::new(look.soft, Anchor::Middle),
        );
    }
    pen.line((LEFT, layout.floor), (layout.right, layout.floor), look.ink, 1.0);
}

/// Names at the right ends of the lines.
fn draw_ends(pen: &mut Pen, look: &Palette, report: &RideSection, layout: &Layout) {
    let [a, b] = &report.ride.sides;
    let mut names = vec![(words::RUN, a.far.foot.s(), look.ink)];
    match (a.far.ride, b.far.ride) {
        (Some(both), Some(same)) if both == same => names.push((words::RIDE_BOTH, both.s(), look.ink)),
        (of_a, of_b) => {
            names.extend(of_a.map(|time| (words::ride(Side::A), time.s(), look.a)));
            names.extend(of_b.map(|time| (words::ride(Side::B), time.s(), look.b)));
        }
    }
    ascending(&mut names, |name| -name.1);
    let wanted: Vec<f64> = names.iter().map(|(_, time, _)| layout.up.at(*time)).collect();
    let placed = spread(&wanted, 15.0, TOP - 6.0, layout.floor);
    for ((name, _, ink), y) in names.into_iter().zip(placed) {
        pen.text(name, (layout.right + 11.0, y), Type::new(ink, Anchor::Start));
    }
}

/// This climb, and where getting off begins to pay.
fn draw_lengths(pen: &mut Pen, look: &Palette, report: &RideSection, layout: &Layout) {
    let top = layout.floor - PLOT;
    let length = report.ride.inputs.length.m();
    let x = layout.across.at(length);
    pen.dashes((x, top), (x, layout.floor), look.ink, 1.0, 3.0);
    let past_middle = length > 0.5 * layout.end;
    let anchor = if past_middle { Anchor::End } else { Anchor::Start };
    pen.text(&words::this_climb(length), (x, 10.0), Type::new(look.ink, anchor));
    for (row, (whose, pays)) in pays(report).into_iter().enumerate() {
        if pays > layout.end {
            continue;
        }
        let x = layout.across.at(pays);
        let y = layout.floor - 12.0 - row as f64 * LINE;
        pen.line((x, y), (x, layout.floor), look.good, 2.0);
        let words = words::pays(whose, pays);
        let wide = plain_width(&words);
        let (anchor, start) =
            if pays > 0.5 * layout.end { (Anchor::End, x - 6.0 - wide) } else { (Anchor::Start, x + 6.0) };
        pen.fill((start, y - 7.0), (start + wide, y + 7.0), look.paper);
        let at = if anchor == Anchor::End { start + wide } else { start };
        pen.text(&words, (at, y), Type::new(look.good, anchor));
    }
}

/// Break-even lengths with the side they are of; `None` stands for both.
fn pays(report: &RideSection) -> Vec<(Option<Side>, f64)> {
    let [a, b] =
        [&report.ride.sides[0], &report.ride.sides[1]].map(|side| side.plan.break_even.map(Distance::m));
    let both = a.filter(|_| a == b).map(|length| (None, length));
    let apart = Side::BOTH.into_iter().zip([a, b]).filter(|_| a != b);
    let apart = apart.filter_map(|(side, length)| Some((Some(side), length?)));
    both.into_iter().chain(apart).collect()
}

fn spots(report: &RideSection, size: Size) -> Vec<Spot> {
    let layout = Layout::new(report, size.0);
    let length = report.ride.inputs.length.m();
    let mut spots = Vec::new();
    for (length, pick) in [(length, false), (layout.end, true)] {
        let plans = [&report.ride.sides[0], &report.ride.sides[1]]
            .map(|side| (side.side, if pick { &side.far } else { &side.plan }));
        for (side, plan) in plans {
            let Some(time) = plan.ride else { continue };
            let at = layout.at(length, time.s());
            spots.push(Spot::around(at, at, 8.0, words::ride_spot(side, length, time)));
        }
        let plan = plans[0].1;
        let at = layout.at(length, plan.foot.s());
        spots.push(Spot::around(at, at, 8.0, words::run_spot(plan, length)));
    }
    for side in &report.ride.sides {
        let Some(time) = side.advised_time() else { continue };
        let at = layout.at(length, time.s());
        spots.push(Spot::around(at, at, 8.0, words::advice_spot(side, time)));
    }
    for (whose, length) in pays(report) {
        let at = (layout.across.at(length), layout.floor);
        spots.push(Spot::around(at, at, 8.0, words::pays_spot(whose, length)));
    }
    spots
}
