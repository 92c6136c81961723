//! Every gear of A against every gear of B: where they are the same.

use crate::drawing::drawing::Drawing;
use crate::drawing::palette::Palette;
use crate::drawing::pen::Size;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::drawing::spot::Spot;
use crate::number::percent;
use crate::rings::report::Tie;
use crate::rings::section::RingsSection;
use crate::rings::words;
use crate::side::Side;

/// Gears of A against gears of B.
pub(crate) const OVERLAP: Drawing<RingsSection> = Drawing {
    name: "overlap",
    title: words::overlap::TITLE,
    caption: words::overlap::CAPTION,
    height,
    draw,
    says: words::overlap::says,
    spots,
    label,
    words: Spot::own_words,
};

const LEFT: f64 = 46.0;
const TOP: f64 = 66.0;
const LARGEST_CELL: f64 = 22.0;

/// The grid: B's gears across, A's gears down, both from low to high.
struct Grid {
    cell: f64,
    left: f64,
    across: usize,
    down: usize,
}

impl Grid {
    fn new(report: &RingsSection, width: f64) -> Self {
        let (down, across) =
            (report.rings.setup(Side::A).gears.len(), report.rings.setup(Side::B).gears.len());
        let cell = ((width - LEFT - 4.0) / across as f64).min(LARGEST_CELL);
        Self { cell, left: LEFT, across, down }
    }

    fn centre(&self, a: usize, b: usize) -> Point {
        (self.left + (b as f64 + 0.5) * self.cell, TOP + (a as f64 + 0.5) * self.cell)
    }

    fn right(&self) -> f64 {
        self.left + self.across as f64 * self.cell
    }

    fn bottom(&self) -> f64 {
        TOP + self.down as f64 * self.cell
    }
}

/// None where there is no pair to be seen, or every gear is its own.
fn height(report: &RingsSection, width: f64) -> f64 {
    if report.rings.near.is_empty() || report.rings.has_one_set_up() {
        return 0.0;
    }
    Grid::new(report, width).bottom() + 8.0
}

fn label(report: &RingsSection) -> String {
    let (rings, tolerance) = (&report.rings, report.rings.tolerance);
    let same = rings.near.iter().filter(|near| near.step.is_within(tolerance)).count();
    let gears = rings.setups.each_ref().map(|setup| setup.gears.len());
    words::overlap::label(gears, same, &percent(tolerance.percent(), 1))
}

fn draw(pen: &mut Pen, look: &Palette, report: &RingsSection, size: Size) {
    let grid = Grid::new(report, size.0);
    draw_names(pen, look, report, &grid);
    for a in 0..=grid.down {
        let y = TOP + a as f64 * grid.cell;
        pen.line((grid.left, y), (grid.right(), y), look.rule, 1.0);
    }
    for b in 0..=grid.across {
        let x = grid.left + b as f64 * grid.cell;
        pen.line((x, TOP), (x, grid.bottom()), look.rule, 1.0);
    }
    for near in &report.rings.near {
        draw_pair(pen, look, report, &grid, near);
    }
}

/// Every second name is left out where the cells are too small for type.
fn draw_names(pen: &mut Pen, look: &Palette, report: &RingsSection, grid: &Grid) {
    let every = (13.0 / grid.cell).ceil().max(1.0) as usize;
    for (side, count) in [(Side::A, grid.down), (Side::B, grid.across)] {
        let gears = &report.rings.setup(side).gears;
        for index in (0..count).step_by(every) {
            let (x, y) = grid.centre(index, index);
            let name = gears[index].gear.to_string();
            match side {
                Side::A => pen.text(&name, (grid.left - 5.0, y), Type::new(look.ink, Anchor::End)),
                Side::B => {
                    pen.text(&name, (x, TOP - 5.0), Type::new(look.ink, Anchor::Start).upright());
                }
            }
        }
    }
    pen.text("A", (4.0, TOP - 12.0), Type::new(look.a, Anchor::Start).bold());
    pen.text("B", (grid.left - 14.0, 12.0), Type::new(look.b, Anchor::Start).bold());
}

fn draw_pair(pen: &mut Pen, look: &Palette, report: &RingsSection, grid: &Grid, near: &Tie) {
    let (centre, radius) = (grid.centre(near.a, near.b), (grid.cell * 0.32).max(2.0));
    if near.step.is_within(report.rings.tolerance) {
        pen.dot(centre, radius, look.ink);
    } else {
        pen.ring(centre, radius * 0.8, look.soft, 1.0);
    }
}

fn spots(report: &RingsSection, size: Size) -> Vec<Spot> {
    let grid = Grid::new(report, size.0);
    let spot = |near: &Tie| {
        let ((x, y), half) = (grid.centre(near.a, near.b), grid.cell / 2.0);
        Spot::around((x - half, y - half), (x + half, y + half), 0.0, describe(report, near))
    };
    report.rings.near.iter().map(spot).collect()
}

fn describe(report: &RingsSection, near: &Tie) -> String {
    let [a, b] = Side::BOTH.map(|side| report.rings.setup(side).gears[near.index(side)].gear.to_string());
    let is_same = near.step.is_within(report.rings.tolerance);
    words::overlap::pair(&a, &b, is_same, &percent(near.step.percent(), 2))
}
