//! Every gear of one set-up, rings down and sprockets across, by how its chain lies: in form as well as colour.

use crate::chain::report::{ChainReport, Station};
use crate::drawing::palette::Palette;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::side::Side;
use gear_math::chain::GearState;

const LEFT: f64 = 50.0;
const HEAD: f64 = 20.0;
const ROW: f64 = 24.0;
const WIDEST_CELL: f64 = 44.0;

/// The states in the order of the key.
pub(crate) const KEY: [GearState; 4] =
    [GearState::Comfortable, GearState::TightButUsual, GearState::TooTight, GearState::Slack];

/// The grid of one set-up.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Map {
    left: f64,
    top: f64,
    cell: f64,
    across: usize,
}

pub(crate) fn height(rings: usize) -> f64 {
    HEAD + ROW * rings as f64
}

impl Map {
    pub(crate) fn new(chain: &ChainReport, (left, top): Point, width: f64) -> Self {
        let across = chain.setup.drivetrain.cassette.sprockets().len();
        let cell = ((width - LEFT) / across as f64).min(WIDEST_CELL);
        Self { left: left + LEFT, top: top + HEAD, cell, across }
    }

    /// Corners of the cell of a station.
    pub(crate) fn cell(&self, place: usize) -> (Point, Point) {
        let (row, column) = ((place / self.across) as f64, (place % self.across) as f64);
        let from = (self.left + column * self.cell, self.top + row * ROW);
        (from, (from.0 + self.cell, from.1 + ROW))
    }

    pub(crate) fn draw(&self, pen: &mut Pen, look: &Palette, chain: &ChainReport) {
        for (place, station) in chain.stations.iter().enumerate() {
            let ((left, top), to) = self.cell(place);
            let centre = (f64::midpoint(left, to.0), f64::midpoint(top, to.1));
            let small = |anchor| Type::new(look.soft, anchor);
            if place < self.across {
                let teeth = station.fit.gear.sprocket.to_string();
                pen.text(&teeth, (centre.0, top - 8.0), small(Anchor::Middle));
            }
            if place % self.across == 0 {
                pen.text(&format!("{} ×", station.fit.gear.ring), (left - 6.0, centre.1), small(Anchor::End));
            }
            pen.line((left, to.1), to, look.rule, 1.0);
            draw_station(pen, look, chain.side, station, centre);
        }
        let (from, to) = self.cell(chain.shown);
        pen.frame((from.0 + 1.0, from.1 + 1.0), (to.0 - 1.0, to.1 - 1.0), look.ink, 2.0);
    }
}

/// What is drawn of a gear.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Mark {
    /// How it runs.
    State(GearState),
    /// In its place, where that is to be looked at by hand.
    ToTry,
    /// Round either, where the maker's capacity is broken.
    Beyond,
}

fn draw_station(pen: &mut Pen, look: &Palette, side: Side, station: &Station, at: Point) {
    let how = if station.to_try { Mark::ToTry } else { Mark::State(station.fit.state) };
    draw_mark(pen, look, side, how, at);
    if station.beyond_maker > 0 {
        draw_mark(pen, look, side, Mark::Beyond, at);
    }
}

pub(crate) fn draw_mark(pen: &mut Pen, look: &Palette, side: Side, mark: Mark, at: Point) {
    match mark {
        Mark::State(state) => draw_state(pen, look, side, state, at),
        Mark::ToTry => pen.text("!", at, Type::new(look.care, Anchor::Middle).bold().size(16.0)),
        Mark::Beyond => draw_beyond(pen, look, at),
    }
}

/// The mark of a state: a point, a taut bar, a cross, a hanging line.
fn draw_state(pen: &mut Pen, look: &Palette, side: Side, state: GearState, (x, y): Point) {
    match (state, side) {
        (GearState::Comfortable, Side::A) => pen.dot((x, y), 3.5, side.ink(look)),
        (GearState::Comfortable, Side::B) => pen.ring((x, y), 3.5, side.ink(look), 1.5),
        (GearState::TightButUsual, _) => {
            pen.line((x - 6.0, y), (x + 6.0, y), look.care, 3.0);
            for end in [x - 6.0, x + 6.0] {
                pen.line((end, y - 4.0), (end, y + 4.0), look.care, 2.0);
            }
        }
        (GearState::TooTight, _) => pen.cross((x, y), 5.0, look.stop, 2.5),
        (GearState::Slack, _) => {
            let hang = |share: f64| (x - 7.0 + 14.0 * share, y - 3.0 + 32.0 * share * (1.0 - share));
            let points: Vec<Point> = (0..=8).map(|piece| hang(f64::from(piece) / 8.0)).collect();
            pen.path(&points, look.care, 2.0);
        }
    }
}

/// The mark of a gear beyond the maker's capacity: corners round its state.
fn draw_beyond(pen: &mut Pen, look: &Palette, (x, y): Point) {
    for (sx, sy) in [(-1.0, -1.0), (1.0, -1.0), (-1.0, 1.0), (1.0, 1.0)] {
        let corner = (x + 9.0 * sx, y + 8.0 * sy);
        pen.path(&[(corner.0 - 4.0 * sx, corner.1), corner, (corner.0, corner.1 - 4.0 * sy)], look.ink, 1.0);
    }
}
