//! Slack that the cage must take up in every gear, against its capacity.

use crate::chain::section::ChainSection;
use crate::chain::words::pictures::wrap as words;
use crate::drawing::drawing::Drawing;
use crate::drawing::letters::plain_width;
use crate::drawing::palette::Palette;
use crate::drawing::pen::Size;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::drawing::scale::Scale;
use crate::drawing::spot::Spot;
use crate::rings::setup::{GearLine, SetupReport};
use crate::side::Side;
use gear_math::order::ascending;

/// Slack to be taken up in every gear.
pub(crate) const WRAP: Drawing<ChainSection> = Drawing {
    name: "wrap",
    title: words::TITLE,
    caption: words::CAPTION,
    height,
    draw,
    says,
    spots,
    label,
    words: Spot::own_words,
};

const TOP: f64 = 34.0;
const PANEL: f64 = 210.0;
const FOOT: f64 = 40.0;
const LEFT: f64 = 34.0;
const GUTTER: f64 = 24.0;
const WIDE: f64 = 560.0;

/// What the cage takes up, if its maker's figure is known.
fn capacity(report: &ChainSection, side: Side) -> Option<u16> {
    report.chain.derailleur(side).total_capacity.map(gear_math::TotalCapacity::teeth)
}

struct Panel {
    side: Side,
    left: f64,
    right: f64,
    up: Scale,
    floor: f64,
}

impl Panel {
    fn at(&self, setup: &SetupReport, row: &GearLine) -> Point {
        let sprockets = setup.drivetrain.cassette.sprockets();
        let place = sprockets.iter().position(|&sprocket| sprocket == row.gear.sprocket).unwrap_or(0);
        let pitch = (self.right - self.left) / sprockets.len() as f64;
        (self.left + (place as f64 + 0.5) * pitch, self.up.at(f64::from(row.slack)))
    }
}

fn panels(report: &ChainSection, width: f64) -> [Panel; 2] {
    let side_by_side = width >= WIDE;
    let each = if side_by_side { (width - GUTTER) / 2.0 } else { width };
    let most = report.rings.setups.iter().map(|setup| setup.cage.check.needed).max().unwrap_or(0);
    let stated = Side::BOTH.iter().filter_map(|&side| capacity(report, side)).max().unwrap_or(0);
    let top = f64::from(most.max(stated)) + 3.0;
    let panel = |side, left: f64, above: f64| {
        let floor = above + TOP + PANEL;
        let up = Scale::even((0.0, top), (floor, above + TOP));
        Panel { side, left: left + LEFT, right: left + each - 4.0, up, floor }
    };
    let (left, above) = if side_by_side { (each + GUTTER, 0.0) } else { (0.0, TOP + PANEL + FOOT) };
    [panel(Side::A, 0.0, 0.0), panel(Side::B, left, above)]
}

fn height(_: &ChainSection, width: f64) -> f64 {
    let one = TOP + PANEL + FOOT;
    if width >= WIDE { one } else { 2.0 * one }
}

fn label(report: &ChainSection) -> String {
    let (needed, capacities) = levels(report);
    words::label(needed, capacities)
}

fn says(report: &ChainSection) -> String {
    let (needed, capacities) = levels(report);
    words::says(needed, capacities)
}

/// Teeth that A and B need, and what their makers state.
fn levels(report: &ChainSection) -> ([u16; 2], [Option<u16>; 2]) {
    let needed = Side::BOTH.map(|side| report.rings.setup(side).cage.check.needed);
    (needed, Side::BOTH.map(|side| capacity(report, side)))
}

fn draw(pen: &mut Pen, look: &Palette, report: &ChainSection, size: Size) {
    for panel in panels(report, size.0) {
        draw_panel(pen, look, report, &panel);
    }
}

fn draw_panel(pen: &mut Pen, look: &Palette, report: &ChainSection, panel: &Panel) {
    let setup = report.rings.setup(panel.side);
    let title = format!("{} · {}", panel.side, setup.drivetrain.chainset);
    let top = panel.floor - PANEL - TOP;
    pen.text(&title, (panel.left, top + 10.0), Type::new(panel.side.ink(look), Anchor::Start).bold());
    for tick in panel.up.ticks(&[0.0, 10.0, 20.0, 30.0, 40.0, 50.0, 60.0, 70.0, 80.0], 20.0) {
        pen.line((panel.left, panel.up.at(tick)), (panel.right, panel.up.at(tick)), look.rule, 1.0);
        pen.text(&tick.to_string(), (panel.left - 6.0, panel.up.at(tick)), Type::new(look.soft, Anchor::End));
    }
    draw_sprockets(pen, look, setup, panel);
    draw_capacity(pen, look, report, panel);
    for (rank, _) in setup.drivetrain.chainset.rings().iter().enumerate() {
        draw_ring(pen, look, setup, panel, rank);
    }
}

fn draw_sprockets(pen: &mut Pen, look: &Palette, setup: &SetupReport, panel: &Panel) {
    for row in setup.gears.iter().filter(|row| row.rank == 0) {
        let (x, _) = panel.at(setup, row);
        let label = row.gear.sprocket.to_string();
        pen.text(&label, (x, panel.floor + 11.0), Type::new(look.soft, Anchor::Middle));
    }
    pen.text(words::ACROSS, (panel.right, panel.floor + 26.0), Type::new(look.soft, Anchor::End));
}

fn draw_capacity(pen: &mut Pen, look: &Palette, report: &ChainSection, panel: &Panel) {
    let Some(capacity) = capacity(report, panel.side) else { return };
    let y = panel.up.at(f64::from(capacity));
    pen.dashes((panel.left, y), (panel.right, y), look.ink, 1.5, 4.0);
    let label = words::capacity(capacity);
    let room = plain_width(&label);
    pen.fill((panel.right - room, y - 16.0), (panel.right, y - 3.0), look.paper);
    pen.text(&label, (panel.right, y - 9.0), Type::new(look.ink, Anchor::End));
}

/// One ring's line: unbroken for the largest, broken for the others. Gears beyond the capacity are crossed out.
fn draw_ring(pen: &mut Pen, look: &Palette, setup: &SetupReport, panel: &Panel, rank: usize) {
    let ink = setup.side.ink(look);
    let mut rows: Vec<&GearLine> = setup.gears.iter().filter(|row| row.rank == rank).collect();
    ascending(&mut rows, |row| f64::from(row.gear.sprocket.teeth()));
    let points: Vec<Point> = rows.iter().map(|row| panel.at(setup, row)).collect();
    for pair in points.windows(2) {
        if rank == 0 {
            pen.line(pair[0], pair[1], ink, 1.5);
        } else {
            pen.dashes(pair[0], pair[1], ink, 1.5, 3.0);
        }
    }
    for (row, &at) in rows.iter().zip(&points) {
        if row.beyond_cage > 0 { cross(pen, look, at) } else { dot(pen, look, setup.side, at) }
    }
    let Some((row, &(x, y))) = rows.first().zip(points.first()) else { return };
    pen.text(&words::ring(row.gear.ring), (x - 4.0, y - 13.0), Type::new(ink, Anchor::Start));
}

/// A mark of one set-up: full for A, open for B.
fn dot(pen: &mut Pen, look: &Palette, side: Side, at: Point) {
    pen.dot(at, 4.0, side.ink(look));
    if side == Side::B {
        pen.dot(at, 2.5, look.paper);
    }
}

fn cross(pen: &mut Pen, look: &Palette, (x, y): Point) {
    pen.dot((x, y), 7.0, look.paper);
    pen.cross((x, y), 5.0, look.stop, 2.0);
}

fn spots(report: &ChainSection, size: Size) -> Vec<Spot> {
    panels(report, size.0)
        .iter()
        .flat_map(|panel| {
            let setup = report.rings.setup(panel.side);
            let mut rows: Vec<&GearLine> = setup.gears.iter().collect();
            ascending(&mut rows, |row| f64::from(row.gear.sprocket.teeth()));
            ascending(&mut rows, |row| row.rank as f64);
            rows.into_iter().map(move |row| {
                let at = panel.at(setup, row);
                Spot::around(at, at, 9.0, words::gear(panel.side, row, capacity(report, panel.side)))
            })
        })
        .collect()
}
