//! The gear ladder: one upright rail of development, A's rungs to its left, B's to its right.

use crate::drawing::drawing::Drawing;
use crate::drawing::letters::plain_width;
use crate::drawing::palette::Palette;
use crate::drawing::pen::Size;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::drawing::scale::{Scale, round_values, spread};
use crate::drawing::spot::Spot;
use crate::number::{percent, trimmed};
use crate::rings::pictures::gear_looks::gear_bar;
use crate::rings::report::{Reach, Tie};
use crate::rings::section::RingsSection;
use crate::rings::setup::{GearLine, SetupReport};
use crate::rings::words;
use crate::side::Side;
use crate::units;
use gear_math::order::ascending;
use gear_math::{Circumference, Development, Wheel};

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
const ROOM_TO_SPREAD: f64 = 1.3;
const LABEL_ROOM: f64 = 62.0;
/// The same from [`WIDE`] on, for two gears in a label.
const WIDE_LABEL_ROOM: f64 = 104.0;
const WIDE: f64 = 500.0;
/// Rungs closer than this lie on one another.
const COINCIDE: f64 = RUNG + 1.0;
/// What the scale is stretched by at most, so that the gear that the climb asks for stands on it.
const STRETCHED: f64 = 0.8;
/// Narrower pictures than this have short titles.
const NARROW: f64 = 340.0;
const TOP: f64 = 56.0;
const FOOT: f64 = 34.0;
/// Room for the scale at the left edge.
const SCALE: f64 = 38.0;
/// From one label of the scale to the next at least.
const APART: f64 = 14.0;
/// A scale that shows fewer than this many of those has multiples of the first of [`FINER`] that come to as many.
const FEW: usize = 4;
const FINER: [f64; 6] = [5.0, 2.0, 1.0, 0.5, 0.2, 0.1];

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
    label_room: f64,
    scale: Scale,
    wheels: [Circumference; 2],
    size: Size,
}

impl Layout {
    fn new(report: &RingsSection, size: Size) -> Self {
        let (width, height) = size;
        let (rail, label_room) = if width < WIDE { (16.0, LABEL_ROOM) } else { (26.0, WIDE_LABEL_ROOM) };
        let half = (width - SCALE) / 2.0;
        let longest = (half - rail - label_room - 12.0).max(20.0);
        let (low, high) = report.rings.gear_span();
        let asked = Side::BOTH
            .into_iter()
            .filter_map(|side| report.asked[side as usize].map(|asked| report.rings.gear_value(side, asked)));
        let low = asked.filter(|&value| value >= STRETCHED * low).fold(low, f64::min);
        let scale = Scale::ratio((low, high), (height - FOOT, TOP));
        let wheels = report.rings.wheels.each_ref().map(Wheel::roll_out);
        Self { middle: SCALE + half, rail, longest, label_room, scale, wheels, size }
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

    /// Upper and lower edge.
    fn heights(&self, reach: &Reach) -> (f64, f64) {
        (self.height_of(reach.side, reach.span.to), self.height_of(reach.side, reach.span.from))
    }

    fn height_of(&self, side: Side, development: Development) -> f64 {
        self.scale.at(units::gear_value(development, self.wheels[side as usize]))
    }

    fn y(&self, side: Side, row: &GearLine) -> f64 {
        self.height_of(side, row.development)
    }

    fn rung(&self, side: Side, row: &GearLine, rings: usize) -> (Point, Point) {
        let y = self.y(side, row);
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
    for (setup, asked) in report.rings.setups.iter().zip(report.asked) {
        draw_bank(pen, look, &layout, setup, asked);
    }
    for reach in report.rings.reach.iter().flatten() {
        name_reach(pen, look, &layout, reach);
    }
    draw_ties(pen, look, &layout, report);
    draw_rail(pen, look, &layout);
    for setup in &report.rings.setups {
        draw_side(pen, look, &layout, setup, report.asked[setup.side as usize]);
        draw_end_speeds(pen, look, &layout, setup);
    }
}

/// Shades what one side alone reaches.
fn draw_reach(pen: &mut Pen, look: &Palette, layout: &Layout, reach: &Reach) {
    let (y1, y2) = layout.heights(reach);
    let (near, far) =
        (layout.x(reach.side, 0.0), layout.x(reach.side, layout.longest + layout.label_room + 10.0));
    pen.fill((near.min(far), y1), (near.max(far), y2), reach.side.wash(look));
}

/// Says so in the empty space opposite.
fn name_reach(pen: &mut Pen, look: &Palette, layout: &Layout, reach: &Reach) {
    let (y1, y2) = layout.heights(reach);
    let other = reach.side.other();
    let (anchor, x) = (outward_end(reach.side), layout.x(other, 8.0));
    if y2 - y1 > 15.0 {
        let whole = words::ladder::only_reaches(reach.side);
        let only = if plain_width(&whole) < layout.longest { whole } else { words::ladder::only(reach.side) };
        let (middle, wide) = ((y1 + y2) / 2.0, plain_width(&only) * Layout::direction(other));
        pen.fill((x.min(x + wide), middle - 7.0), (x.max(x + wide), middle + 7.0), look.paper);
        pen.text(&only, (x, middle), Type::new(reach.side.ink(look), anchor));
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
        let y = |side: Side, index: usize| layout.y(side, &report.rings.setup(side).gears[index]);
        let from = (layout.x(Side::A, 0.0), y(Side::A, tie.a));
        let to = (layout.x(Side::B, 0.0), y(Side::B, tie.b));
        pen.line(from, to, look.ink, 1.5);
    }
}

/// Round values on a scale of their own, with a thin line from each across the rungs.
fn draw_scale(pen: &mut Pen, look: &Palette, layout: &Layout) {
    let (left, right) = (layout.x(Side::A, layout.longest), layout.x(Side::B, layout.longest));
    let edge = SCALE - 6.0;
    pen.line((edge, TOP - 8.0), (edge, layout.size.1 - FOOT + 8.0), look.soft, 1.0);
    pen.text(units::gear_unit(), (edge, 12.0), Type::new(look.soft, Anchor::End));
    for tick in ticks(&layout.scale) {
        let y = layout.scale.at(tick);
        pen.line((edge - 4.0, y), (edge, y), look.soft, 1.0);
        pen.line((left, y), (right, y), look.rule, 1.0);
        pen.text(&trimmed(tick), (edge - 6.0, y), Type::new(look.soft, Anchor::End));
    }
}

/// The values on the scale.
fn ticks(scale: &Scale) -> Vec<f64> {
    let finer = FINER.into_iter().map(|step| (1..=250).map(|count| f64::from(count) * step).collect());
    let choices = core::iter::once(round_values()).chain(finer);
    let ticks: Vec<Vec<f64>> = choices.map(|choice: Vec<f64>| scale.ticks(&choice, APART)).collect();
    ticks.iter().find(|ticks| ticks.len() >= FEW).or(ticks.last()).cloned().unwrap_or_default()
}

fn draw_rail(pen: &mut Pen, look: &Palette, layout: &Layout) {
    for side in Side::BOTH {
        let x = layout.x(side, 0.0);
        pen.line((x, TOP - 8.0), (x, layout.size.1 - FOOT + 8.0), look.ink, 1.5);
    }
}

/// A label beside the ladder, and where the rungs that it names end.
struct Label {
    rungs: Vec<Point>,
    text: String,
    is_soft: bool,
    is_bank: bool,
}

impl Label {
    fn y(&self) -> f64 {
        self.rungs.iter().map(|rung| rung.1).sum::<f64>() / self.rungs.len() as f64
    }
}

/// Labels of one side from the top down; gears whose rungs lie on one another have one, where it has room.
fn labels(layout: &Layout, setup: &SetupReport, asked: Option<Development>) -> Vec<Label> {
    let rings = setup.drivetrain.chainset.rings().len();
    let mut labels: Vec<Label> = Vec::new();
    for row in setup.gears.iter().rev() {
        let end = layout.x(setup.side, layout.longest * rung_share(row.rank, rings));
        let (rung, text) = ((end, layout.y(setup.side, row)), words::gears::label(row));
        let is_soft = row.crossed || row.avoid;
        let twin = labels.last_mut().filter(|above| {
            let joined = words::ladder::both(&above.text, &text);
            above.is_soft == is_soft
                && rung.1 - above.rungs[0].1 < COINCIDE
                && plain_width(&joined) <= layout.label_room - 6.0
        });
        match twin {
            Some(above) => {
                above.text = words::ladder::both(&above.text, &text);
                above.rungs.push(rung);
            }
            None => labels.push(Label { rungs: vec![rung], text, is_soft, is_bank: false }),
        }
    }
    if let Some(bank) = asked.and_then(|asked| bank(layout, setup, asked)) {
        labels.insert(labels.partition_point(|above| above.y() < bank.y()), bank);
    }
    labels
}

/// The label of the lowest gear that the climb asks for; none where any gear is low enough.
fn bank(layout: &Layout, setup: &SetupReport, asked: Development) -> Option<Label> {
    let (y, foot) = (layout.height_of(setup.side, asked), layout.size.1 - FOOT);
    let is_below = y > foot + 0.5;
    let text = if is_below { words::ladder::BANK_BELOW } else { words::ladder::BANK };
    let rung = (layout.x(setup.side, 0.0), y.min(foot));
    let label = Label { rungs: vec![rung], text: text.to_owned(), is_soft: false, is_bank: true };
    (asked <= setup.highest().development).then_some(label)
}

/// The line of that label across the rungs.
fn draw_bank(
    pen: &mut Pen,
    look: &Palette,
    layout: &Layout,
    setup: &SetupReport,
    asked: Option<Development>,
) {
    let Some(label) = asked.and_then(|asked| bank(layout, setup, asked)) else { return };
    let (start, y) = label.rungs[0];
    pen.dashes((start, y), (layout.x(setup.side, layout.longest), y), look.ink, 1.5, 4.0);
}

/// The slowest speed at the lowest cadence beneath the rail, the fastest at the highest over it.
fn draw_end_speeds(pen: &mut Pen, look: &Palette, layout: &Layout, setup: &SetupReport) {
    let (slow, fast) = (setup.lowest().speed_low, setup.highest().speed_high);
    let [from, to] = words::ladder::FROM_TO;
    for (end, speed, y) in [(from, slow, layout.size.1 - 9.0), (to, fast, 28.0)] {
        let at = (layout.x(setup.side, 0.0), y);
        let text = words::ladder::end(end, &units::speed(speed));
        pen.text(&text, at, Type::new(look.soft, outward_end(setup.side.other())));
    }
}

fn draw_side(
    pen: &mut Pen,
    look: &Palette,
    layout: &Layout,
    setup: &SetupReport,
    asked: Option<Development>,
) {
    let rings = setup.drivetrain.chainset.rings();
    let anchor = outward_end(setup.side.other());
    let title = format!("{} · {}", setup.side, ring_key(setup, layout.size.0));
    let ink = setup.side.ink(look);
    let title_x = layout.x(setup.side, 0.0);
    pen.text(&title, (title_x, 12.0), Type::new(ink, anchor).bold());
    for row in setup.gears.iter().rev() {
        let (from, to) = layout.rung(setup.side, row, rings.len());
        gear_bar(pen, look, setup.side, row, from, to);
    }
    let labels = labels(layout, setup, asked);
    let wanted: Vec<f64> = labels.iter().map(Label::y).collect();
    let placed = spread(&wanted, LABEL_GAP, TOP - 6.0, layout.size.1 - FOOT + 8.0);
    let [turn, start, at] = [3.0, 10.0, 12.0].map(|beyond| layout.x(setup.side, layout.longest + beyond));
    for (label, label_y) in labels.iter().zip(placed) {
        for &(end, y) in &label.rungs {
            if !label.is_bank {
                pen.line((end, y), (turn, y), look.rule, 1.0);
            }
            pen.line((turn, y), (start, label_y), look.rule, 1.0);
        }
        let set = Type::new(if label.is_soft { look.soft } else { look.ink }, anchor);
        pen.text(&label.text, (at, label_y), if label.is_bank { set.bold() } else { set });
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
    let height = |&(side, index): &(Side, usize)| layout.y(side, &report.rings.setup(side).gears[index]);
    ascending(&mut rows, height);
    let spot = |(side, index): (Side, usize)| {
        let setup = report.rings.setup(side);
        let (from, to) = layout.rung(side, &setup.gears[index], setup.drivetrain.chainset.rings().len());
        Spot::around(from, to, 4.0, describe(report, side, index))
    };
    rows.into_iter().map(spot).collect()
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
    words::ladder::gear(rings, side, line, &words::gears::speeds(rings, line), &twins)
}
