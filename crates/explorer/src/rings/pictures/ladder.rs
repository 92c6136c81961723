//! The gear ladder: one upright rail of development, A's rungs to its left, B's to its right.

use crate::drawing::drawing::Drawing;
use crate::drawing::letters::plain_width;
use crate::drawing::palette::Palette;
use crate::drawing::pen::Size;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::drawing::scale::{Scale, spread};
use crate::drawing::spot::Spot;
use crate::number::{percent, trimmed};
use crate::rings::pictures::gear_looks::gear_bar;
use crate::rings::report::{Reach, Tie};
use crate::rings::section::RingsSection;
use crate::rings::setup::{GearLine, SetupReport};
use crate::rings::words;
use crate::side::Side;
use gear_math::order::ascending;

/// Rungs of A and B on one rail of development.
pub(crate) const LADDER: Drawing<RingsSection> = Drawing {
    name: "ladder",
    title: words::ladder::TITLE,
    caption: words::ladder::CAPTION,
    height,
    draw,
    says: words::ladder::says,
    spots,
    label,
    words: Spot::own_words,
};

const RUNG: f64 = 5.0;
const LABEL_GAP: f64 = 13.5;
/// Room for labels against what they fill, so that most of them stay near their rungs.
const ROOM_TO_SPREAD: f64 = 1.4;
const LABEL_ROOM: f64 = 62.0;
/// Narrower pictures than this have short titles.
const NARROW: f64 = 340.0;
const TOP: f64 = 40.0;
const FOOT: f64 = 16.0;
/// Room for the scale at the left edge.
const SCALE: f64 = 38.0;
/// From one label of the scale to the next at least.
const APART: f64 = 14.0;
/// Round developments, metres.
const ROUND: [f64; 18] =
    [0.3, 0.4, 0.5, 0.6, 0.8, 1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 25.0];
/// A scale that shows fewer than this many of those has multiples of the first of [`FINER`] that come to as many.
const FEW: usize = 4;
const FINER: [f64; 3] = [0.5, 0.2, 0.1];

fn height(report: &RingsSection, _: f64) -> f64 {
    let most = report.rings.setups.iter().map(|setup| setup.gears.len()).max().unwrap_or(0);
    (most as f64 * LABEL_GAP * ROOM_TO_SPREAD + TOP + FOOT).max(480.0)
}

fn label(report: &RingsSection) -> String {
    words::ladder::label(&report.rings)
}

struct Layout {
    middle: f64,
    rail: f64,
    longest: f64,
    scale: Scale,
    size: Size,
}

impl Layout {
    fn new(report: &RingsSection, size: Size) -> Self {
        let (width, height) = size;
        let rail = if width < 500.0 { 16.0 } else { 26.0 };
        let half = (width - SCALE) / 2.0;
        let longest = (half - rail - LABEL_ROOM - 12.0).max(20.0);
        let scale = Scale::ratio(report.rings.development_span(), (height - FOOT, TOP));
        Self { middle: SCALE + half, rail, longest, scale, size }
    }

    /// −1 to the left of the rail, +1 to the right.
    fn direction(side: Side) -> f64 {
        match side {
            Side::A => -1.0,
            Side::B => 1.0,
        }
    }

    /// Where `distance` outward from a side's rail edge lies.
    fn x(&self, side: Side, distance: f64) -> f64 {
        self.middle + Self::direction(side) * (self.rail + distance)
    }

    fn y(&self, row: &GearLine) -> f64 {
        self.scale.at(row.development.m())
    }

    fn rung(&self, side: Side, row: &GearLine, rings: usize) -> (Point, Point) {
        let y = self.y(row);
        let (near, far) = (self.x(side, 0.0), self.x(side, self.longest * rung_share(row.rank, rings)));
        ((near.min(far), y - RUNG / 2.0), (near.max(far), y + RUNG / 2.0))
    }
}

/// Length of a rung against the longest: the largest ring has the longest.
fn rung_share(rank: usize, rings: usize) -> f64 {
    1.0 - 0.42 * rank as f64 * if rings > 2 { 0.75 } else { 1.0 }
}

fn draw(pen: &mut Pen, look: &Palette, report: &RingsSection, size: Size) {
    let layout = Layout::new(report, size);
    draw_scale(pen, look, &layout);
    for reach in report.rings.reach.iter().flatten() {
        draw_reach(pen, look, &layout, reach);
    }
    draw_ties(pen, look, &layout, report);
    draw_rail(pen, look, &layout);
    for setup in &report.rings.setups {
        draw_side(pen, look, &layout, setup);
    }
}

/// Shades what one side alone reaches, and says so in the empty space opposite.
fn draw_reach(pen: &mut Pen, look: &Palette, layout: &Layout, reach: &Reach) {
    let (y1, y2) = (layout.scale.at(reach.span.to.m()), layout.scale.at(reach.span.from.m()));
    let (near, far) = (layout.x(reach.side, 0.0), layout.x(reach.side, layout.longest + LABEL_ROOM + 10.0));
    pen.fill((near.min(far), y1), (near.max(far), y2), reach.side.wash(look));
    let other = reach.side.other();
    let (anchor, x) = (outward_end(reach.side), layout.x(other, 8.0));
    if y2 - y1 > 15.0 {
        let whole = words::ladder::only_reaches(reach.side);
        let only = if plain_width(&whole) < layout.longest { whole } else { words::ladder::only(reach.side) };
        pen.text(&only, (x, (y1 + y2) / 2.0), Type::new(reach.side.ink(look), anchor));
    }
}

/// The anchor that makes text on the *other* side grow away from the rail.
fn outward_end(side: Side) -> Anchor {
    match side {
        Side::A => Anchor::Start,
        Side::B => Anchor::End,
    }
}

fn draw_ties(pen: &mut Pen, look: &Palette, layout: &Layout, report: &RingsSection) {
    for tie in &report.rings.common {
        let y = |side: Side, index: usize| layout.y(&report.rings.setup(side).gears[index]);
        let from = (layout.x(Side::A, 0.0), y(Side::A, tie.a));
        let to = (layout.x(Side::B, 0.0), y(Side::B, tie.b));
        pen.line(from, to, look.ink, 1.5);
    }
}

/// Round developments on a scale of their own, with a thin line from each across the rungs.
fn draw_scale(pen: &mut Pen, look: &Palette, layout: &Layout) {
    let (left, right) = (layout.x(Side::A, layout.longest), layout.x(Side::B, layout.longest));
    let edge = SCALE - 6.0;
    pen.line((edge, TOP - 8.0), (edge, layout.size.1 - FOOT + 8.0), look.soft, 1.0);
    pen.text(words::ladder::METRES, (edge, 12.0), Type::new(look.soft, Anchor::End));
    for tick in developments(&layout.scale) {
        let y = layout.scale.at(tick);
        pen.line((edge - 4.0, y), (edge, y), look.soft, 1.0);
        pen.line((left, y), (right, y), look.rule, 1.0);
        pen.text(&trimmed(tick), (edge - 6.0, y), Type::new(look.soft, Anchor::End));
    }
}

/// The developments on the scale, metres.
fn developments(scale: &Scale) -> Vec<f64> {
    let finer = FINER.into_iter().map(|step| (1..=250).map(|count| f64::from(count) * step).collect());
    let choices = core::iter::once(ROUND.to_vec()).chain(finer);
    let ticks: Vec<Vec<f64>> = choices.map(|choice: Vec<f64>| scale.ticks(&choice, APART)).collect();
    ticks.iter().find(|ticks| ticks.len() >= FEW).or(ticks.last()).cloned().unwrap_or_default()
}

fn draw_rail(pen: &mut Pen, look: &Palette, layout: &Layout) {
    for side in Side::BOTH {
        let x = layout.x(side, 0.0);
        pen.line((x, TOP - 8.0), (x, layout.size.1 - FOOT + 8.0), look.ink, 1.5);
    }
}

fn draw_side(pen: &mut Pen, look: &Palette, layout: &Layout, setup: &SetupReport) {
    let rings = setup.drivetrain.chainset.rings();
    let anchor = match setup.side {
        Side::A => Anchor::End,
        Side::B => Anchor::Start,
    };
    let title = format!("{} · {}", setup.side, ring_key(setup, layout.size.0));
    let ink = setup.side.ink(look);
    let title_x = layout.x(setup.side, 0.0);
    pen.text(&title, (title_x, 12.0), Type::new(ink, anchor).bold());
    let descending: Vec<&GearLine> = setup.gears.iter().rev().collect();
    let wanted: Vec<f64> = descending.iter().map(|row| layout.y(row)).collect();
    let placed = spread(&wanted, LABEL_GAP, TOP - 6.0, layout.size.1 - 8.0);
    for (row, label_y) in descending.iter().zip(placed) {
        let (from, to) = layout.rung(setup.side, row, rings.len());
        let end = layout.x(setup.side, layout.longest * rung_share(row.rank, rings.len()));
        let turn = layout.x(setup.side, layout.longest + 3.0);
        let start = layout.x(setup.side, layout.longest + 10.0);
        pen.line((end, layout.y(row)), (turn, layout.y(row)), look.rule, 1.0);
        pen.line((turn, layout.y(row)), (start, label_y), look.rule, 1.0);
        gear_bar(pen, look, setup.side, row, from, to);
        let ink = if row.crossed || row.avoid { look.soft } else { look.ink };
        let at = layout.x(setup.side, layout.longest + 12.0);
        pen.text(&words::gears::label(row), (at, label_y), Type::new(ink, anchor));
    }
}

/// Which rung length is which ring; with three rings, or little room, their order says it.
fn ring_key(setup: &SetupReport, width: f64) -> String {
    match setup.drivetrain.chainset.rings() {
        [one] => words::ladder::one_ring(&one.to_string()),
        [large, small] if width >= NARROW => words::ladder::two_rings(&large.to_string(), &small.to_string()),
        _ => setup.drivetrain.chainset.to_string(),
    }
}

fn spots(report: &RingsSection, size: Size) -> Vec<Spot> {
    let layout = Layout::new(report, size);
    let mut rows: Vec<(Side, usize)> = Side::BOTH
        .into_iter()
        .flat_map(|side| (0..report.rings.setup(side).gears.len()).map(move |i| (side, i)))
        .collect();
    let development = |&(side, index): &(Side, usize)| report.rings.setup(side).gears[index].development.m();
    ascending(&mut rows, |row| -development(row));
    rows.into_iter()
        .map(|(side, index)| {
            let setup = report.rings.setup(side);
            let (from, to) = layout.rung(side, &setup.gears[index], setup.drivetrain.chainset.rings().len());
            Spot::around(from, to, 4.0, describe(report, side, index))
        })
        .collect()
}

/// One gear in words, with its twins on the other side.
fn describe(report: &RingsSection, side: Side, index: usize) -> String {
    let (rings, other) = (&report.rings, side.other());
    let twin = |tie: &Tie| {
        let gear = rings.setup(other).gears[tie.index(other)].gear;
        words::ladder::twin(other, &gear.to_string(), &percent(tie.step.percent(), 1))
    };
    let twins: Vec<String> = rings.common.iter().filter(|tie| tie.index(side) == index).map(twin).collect();
    let line = &rings.setup(side).gears[index];
    words::ladder::gear(side, line, &words::gears::speeds(rings, line), &twins)
}
