//! Capacity against the length of the cage: what A and B ask for, what geometry gives, what makers usually state.

use crate::chain::report::ChainReport;
use crate::chain::section::ChainSection;
use crate::chain::words::names;
use crate::chain::words::pictures::capacity as words;
use crate::drawing::drawing::Drawing;
use crate::drawing::palette::Palette;
use crate::drawing::pen::Size;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::drawing::scale::{Scale, spread};
use crate::drawing::spot::Spot;
use crate::number::{plain, with_unit};
use crate::side::Side;
use gear_math::cage::CageClass;
use gear_math::chain::PulleyCentres;

/// Capacity against cage length.
pub(crate) const CAPACITY: Drawing<ChainSection> = Drawing {
    name: "capacity",
    title: words::TITLE,
    caption: words::CAPTION,
    height,
    draw,
    says,
    spots,
    label,
    words: Spot::own_words,
};

const HEIGHT: f64 = 290.0;
const TOP: f64 = 26.0;
const FOOT: f64 = 40.0;
const LEFT: f64 = 34.0;
const GUTTER: f64 = 116.0;
/// Cage lengths that are always shown, millimetres.
const USUAL_MM: (f64, f64) = (45.0, 105.0);
const MM_TICKS: [f64; 15] =
    [20.0, 30.0, 40.0, 50.0, 60.0, 70.0, 80.0, 90.0, 100.0, 110.0, 120.0, 130.0, 140.0, 150.0, 160.0];
const TEETH_TICKS: [f64; 10] = [10.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 60.0, 80.0];

fn height(_: &ChainSection, _: f64) -> f64 {
    HEIGHT
}

struct Layout {
    across: Scale,
    up: Scale,
    right: f64,
    floor: f64,
    curve: Vec<(f64, f64)>,
}

impl Layout {
    fn new(report: &ChainSection, width: f64) -> Self {
        let (right, floor) = (width - GUTTER, HEIGHT - FOOT);
        let cages = || report.chain.solved().map(centres_mm);
        let from = cages().fold(USUAL_MM.0, f64::min);
        let to = cages().fold(USUAL_MM.1, f64::max);
        let curve = report.chain.solved().next().map_or_else(Vec::new, |chain| curve(chain, from, to));
        let usual = CageClass::ALL.iter().flat_map(|class| <[u16; 2]>::from(class.total_capacity));
        let (low, high) = curve
            .iter()
            .map(|&(_, teeth)| teeth)
            .chain(lines(report).into_iter().map(|line| line.teeth))
            .chain(usual.map(f64::from))
            .fold((f64::INFINITY, 0.0), |(low, high): (f64, f64), teeth| (low.min(teeth), high.max(teeth)));
        Self {
            across: Scale::even((from, to), (LEFT, right)),
            up: Scale::even((low - 2.0, high + 2.0), (floor, TOP)),
            right,
            floor,
            curve,
        }
    }

    fn class(&self, class: &CageClass) -> (Point, Point) {
        let ((from, to), (least, most)) = (class.pulley_centres_mm, class.total_capacity);
        let corner = |mm, teeth: u16| (self.across.at(mm), self.up.at(f64::from(teeth)));
        (corner(from, most), corner(to, least))
    }

    fn cage(&self, chain: &ChainReport) -> Point {
        (self.across.at(centres_mm(chain)), self.up.at(chain.advice.fit.capacity_teeth))
    }
}

fn centres_mm(chain: &ChainReport) -> f64 {
    chain.setup.cage.measures().pulley_centres.mm()
}

/// Capacity of the same cage at other lengths.
fn curve(chain: &ChainReport, from: f64, to: f64) -> Vec<(f64, f64)> {
    const PIECES: u32 = 24;
    let point = |piece: u32| {
        let mm = from + (to - from) * f64::from(piece) / f64::from(PIECES);
        let cage = chain.setup.cage.with_pulley_centres(PulleyCentres::new(mm).ok()?).ok()?;
        Some((mm, cage.capacity_estimate_teeth()))
    };
    (0..=PIECES).filter_map(point).collect()
}

/// A level that is asked for or stated; the side is that of a set-up.
struct Line {
    side: Option<Side>,
    teeth: f64,
    words: String,
}

fn lines(report: &ChainSection) -> Vec<Line> {
    let asked = |side: Side| {
        let needed = report.rings.setup(side).cage.check.needed;
        Line { side: Some(side), teeth: f64::from(needed), words: words::needs(side, needed) }
    };
    let stated = Side::BOTH.into_iter().filter_map(|side| {
        let teeth = report.chain.derailleur(side).total_capacity?.teeth();
        let side = (!report.chain.has_one_derailleur()).then_some(side);
        Some(Line { side, teeth: f64::from(teeth), words: words::states(side, teeth) })
    });
    let stated = stated.take(if report.chain.has_one_derailleur() { 1 } else { 2 });
    let mut lines: Vec<Line> = Vec::new();
    for line in [asked(Side::A), asked(Side::B)].into_iter().chain(stated) {
        lines.insert(lines.partition_point(|other| other.teeth >= line.teeth), line);
    }
    lines
}

fn label(report: &ChainSection) -> String {
    let levels: Vec<String> = lines(report).into_iter().map(|line| line.words).collect();
    words::label(&levels, report.chain.solved().next().map(geometry))
}

fn says(report: &ChainSection) -> String {
    let needed = Side::BOTH.map(|side| report.rings.setup(side).cage.check.needed);
    words::says(needed, report.chain.chains.each_ref().map(|chain| chain.as_ref().ok().map(geometry)))
}

/// The length of a cage, and the teeth that it takes.
fn geometry(chain: &ChainReport) -> [String; 2] {
    [with_unit(centres_mm(chain), 0, "mm"), plain(chain.advice.fit.capacity_teeth, 1)]
}

fn draw(pen: &mut Pen, look: &Palette, report: &ChainSection, size: Size) {
    let layout = Layout::new(report, size.0);
    draw_axes(pen, look, &layout);
    for class in &CageClass::ALL {
        let (from, to) = layout.class(class);
        pen.fill(from, to, look.rule);
        // Under its field; the highest one's over it and to the left, where the rising curve leaves room.
        let (at, anchor) = if class.total_capacity.0 > 40 {
            ((to.0, from.1 - 9.0), Anchor::End)
        } else {
            ((f64::midpoint(from.0, to.0), to.1 + 9.0), Anchor::Middle)
        };
        pen.text(names::class(class), at, Type::new(look.soft, anchor));
    }
    draw_lines(pen, look, report, &layout);
    let curve: Vec<Point> =
        layout.curve.iter().map(|&(mm, teeth)| (layout.across.at(mm), layout.up.at(teeth))).collect();
    pen.path(&curve, look.ink, 2.0);
    for chain in report.chain.solved() {
        draw_cage(pen, look, &layout, chain);
    }
}

fn draw_axes(pen: &mut Pen, look: &Palette, layout: &Layout) {
    let small = |anchor| Type::new(look.soft, anchor);
    for tick in layout.up.ticks(&TEETH_TICKS, 20.0) {
        let y = layout.up.at(tick);
        pen.line((LEFT, y), (layout.right, y), look.rule, 1.0);
        pen.text(&plain(tick, 0), (LEFT - 6.0, y), small(Anchor::End));
    }
    for tick in layout.across.ticks(&MM_TICKS, 24.0) {
        pen.text(&plain(tick, 0), (layout.across.at(tick), layout.floor + 11.0), small(Anchor::Middle));
    }
    pen.line((LEFT, layout.floor), (layout.right, layout.floor), look.ink, 1.0);
    pen.text(words::ACROSS, (layout.right, layout.floor + 28.0), small(Anchor::End));
    pen.text(words::UP, (0.0, 10.0), small(Anchor::Start));
}

fn draw_lines(pen: &mut Pen, look: &Palette, report: &ChainSection, layout: &Layout) {
    let lines = lines(report);
    let wanted: Vec<f64> = lines.iter().map(|line| layout.up.at(line.teeth)).collect();
    let placed = spread(&wanted, 15.0, TOP - 8.0, layout.floor);
    for ((line, &y), label_y) in lines.iter().zip(&wanted).zip(placed) {
        let ink = line.side.map_or(look.ink, |side| side.ink(look));
        let end = (layout.right, y);
        match line.side {
            Some(Side::A) => pen.line((LEFT, y), end, ink, 1.5),
            Some(Side::B) => pen.dashes((LEFT, y), end, ink, 1.5, 7.0),
            None => pen.dashes((LEFT, y), end, ink, 1.5, 2.5),
        }
        pen.line(end, (layout.right + 8.0, label_y), look.rule, 1.0);
        pen.text(&line.words, (layout.right + 10.0, label_y), Type::new(ink, Anchor::Start));
    }
}

/// A full point for A, a wider ring for B, so that both are seen where they nearly meet.
fn draw_cage(pen: &mut Pen, look: &Palette, layout: &Layout, chain: &ChainReport) {
    let at = layout.cage(chain);
    match chain.side {
        Side::A => pen.dot(at, 4.5, look.a),
        Side::B => pen.ring(at, 8.0, look.b, 2.0),
    }
}

fn spots(report: &ChainSection, size: Size) -> Vec<Spot> {
    let layout = Layout::new(report, size.0);
    let classes = CageClass::ALL.iter().map(|class| {
        let (from, to) = layout.class(class);
        Spot::around(from, to, 2.0, words::class(class))
    });
    let cages = report.chain.solved().map(|chain| {
        let at = layout.cage(chain);
        Spot::around(at, at, 11.0, describe(report, chain))
    });
    cages.chain(classes).collect()
}

fn describe(report: &ChainSection, chain: &ChainReport) -> String {
    let needed = report.rings.setup(chain.side).cage.check.needed;
    words::cage(chain.side, &geometry(chain), needed)
}
