//! The drivetrain of A beside that of B in a chosen gear, true to one scale, each over the map of its gears.

use crate::chain::pictures::gear_map;
use crate::chain::pictures::gear_map::{Map, Mark};
use crate::chain::pictures::side_view;
use crate::chain::pictures::side_view::{Room, View};
use crate::chain::report::{ChainReport, Station};
use crate::chain::section::ChainSection;
use crate::chain::words::names;
use crate::chain::words::pictures::drivetrain as words;
use crate::drawing::drawing::Drawing;
use crate::drawing::letters::plain_width;
use crate::drawing::palette::Palette;
use crate::drawing::pen::Size;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::drawing::spot::Spot;
use crate::side::Side;

/// Drivetrains in a chosen gear, true to scale.
pub(crate) const DRIVETRAIN: Drawing<ChainSection> = Drawing {
    name: "drivetrain",
    title: words::TITLE,
    caption: words::CAPTION,
    height,
    draw,
    says: |report| words::says(&Side::BOTH.map(|side| of_chain(report, side, words::finding))),
    spots,
    label,
    words: Spot::own_words,
};

const TITLE: f64 = 26.0;
const BELOW_DRAWING: f64 = 6.0;
const GUTTER: f64 = 28.0;
const BETWEEN_PANELS: f64 = 20.0;
/// From this width on the two stand side by side.
const WIDE: f64 = 600.0;
/// Most CSS pixels to the millimetre.
const LARGEST_SCALE: f64 = 0.9;
const KEY_ROW: f64 = 22.0;
/// Room that a mark of the key and the space behind its words take.
const KEY_MARK: f64 = 38.0;

struct Layout {
    room: Option<Room>,
    scale: f64,
    panel: f64,
    drawing: f64,
    map: f64,
    wide: bool,
}

impl Layout {
    fn new(report: &ChainSection, width: f64) -> Self {
        let wide = width >= WIDE;
        let panel = if wide { (width - GUTTER) / 2.0 } else { width };
        let room = report.chain.solved().map(Room::of).reduce(Room::joined);
        let scale = room.map_or(1.0, |room| (panel / room.width()).min(LARGEST_SCALE));
        let rings = report.rings.setups.iter().map(|setup| setup.drivetrain.chainset.rings().len()).max();
        Self {
            room,
            scale,
            panel,
            drawing: room.map_or(40.0, |room| room.height() * scale),
            map: gear_map::height(rings.unwrap_or(1)),
            wide,
        }
    }

    fn panel_height(&self) -> f64 {
        TITLE + self.drawing + BELOW_DRAWING + self.map
    }

    fn corner(&self, side: Side) -> Point {
        match (side, self.wide) {
            (Side::A, _) => (0.0, 0.0),
            (Side::B, true) => (self.panel + GUTTER, 0.0),
            (Side::B, false) => (0.0, self.panel_height() + BETWEEN_PANELS),
        }
    }

    fn foot(&self) -> f64 {
        self.corner(Side::B).1 + self.panel_height() + 12.0
    }

    fn view(&self, room: Room, side: Side) -> View {
        let (left, top) = self.corner(side);
        View::new(room, (left, top + TITLE), self.scale)
    }

    fn map(&self, chain: &ChainReport) -> Map {
        let (left, top) = self.corner(chain.side);
        Map::new(chain, (left, top + TITLE + self.drawing + BELOW_DRAWING), self.panel)
    }
}

fn height(report: &ChainSection, width: f64) -> f64 {
    Layout::new(report, width).foot() + key_rows(report, width) as f64 * KEY_ROW
}

fn label(report: &ChainSection) -> String {
    words::label(&Side::BOTH.map(|side| panel_in_words(report, side)))
}

fn panel_in_words(report: &ChainSection, side: Side) -> String {
    of_chain(report, side, words::panel)
}

fn of_chain(report: &ChainSection, side: Side, told: fn(&ChainReport) -> String) -> String {
    match &report.chain.chains[side as usize] {
        Ok(chain) => told(chain),
        Err(_) => words::overlap(side),
    }
}

fn draw(pen: &mut Pen, look: &Palette, report: &ChainSection, size: Size) {
    let layout = Layout::new(report, size.0);
    for side in Side::BOTH {
        let (left, top) = layout.corner(side);
        let title = panel_in_words(report, side);
        pen.text(&title, (left, top + 10.0), Type::new(side.ink(look), Anchor::Start).bold());
    }
    let Some(room) = layout.room else { return };
    for chain in report.chain.solved() {
        side_view::draw(pen, look, chain, &layout.view(room, chain.side));
        layout.map(chain).draw(pen, look, chain);
    }
    draw_key(pen, look, report, &layout, size.0);
}

/// Names of the marks in use on this page: the states and, where some gear has it, what is added to them.
fn key(report: &ChainSection) -> Vec<(Mark, &'static str)> {
    let states = gear_map::KEY.into_iter().map(|state| (Mark::State(state), names::state(state)));
    let any =
        |holds: fn(&Station) -> bool| report.chain.solved().flat_map(|chain| &chain.stations).any(holds);
    let to_try = any(|it| it.to_try).then_some((Mark::ToTry, words::TO_TRY));
    let beyond = any(|it| it.beyond_maker > 0).then_some((Mark::Beyond, words::BEYOND));
    states.chain(to_try).chain(beyond).collect()
}

/// Where each entry of the key begins: row and distance from the left.
fn key_places(report: &ChainSection, width: f64) -> Vec<(usize, f64)> {
    let (mut row, mut left) = (0, 0.0);
    let mut places = Vec::new();
    for (_, name) in key(report) {
        let needed = KEY_MARK + plain_width(name);
        if left > 0.0 && left + needed > width {
            (row, left) = (row + 1, 0.0);
        }
        places.push((row, left));
        left += needed;
    }
    places
}

fn key_rows(report: &ChainSection, width: f64) -> usize {
    key_places(report, width).last().map_or(0, |(row, _)| row + 1)
}

fn draw_key(pen: &mut Pen, look: &Palette, report: &ChainSection, layout: &Layout, width: f64) {
    for ((mark, name), (row, left)) in key(report).into_iter().zip(key_places(report, width)) {
        let at = (left + 12.0, layout.foot() + row as f64 * KEY_ROW + KEY_ROW / 2.0);
        gear_map::draw_mark(pen, look, Side::A, mark, at);
        pen.text(name, (at.0 + 14.0, at.1), Type::new(look.soft, Anchor::Start));
    }
}

/// The gears of A, those of B, then the wheels of both drawings.
fn spots(report: &ChainSection, size: Size) -> Vec<Spot> {
    let layout = Layout::new(report, size.0);
    let Some(room) = layout.room else { return Vec::new() };
    let mut spots: Vec<Spot> = report.chain.solved().flat_map(|chain| gear_spots(&layout, chain)).collect();
    for chain in report.chain.solved() {
        let view = layout.view(room, chain.side);
        spots.extend(chain.path.wheels.iter().map(|wheel| {
            let (from, to) = view.around(wheel);
            Spot::around(from, to, 1.0, words::wheel(chain.side, wheel))
        }));
    }
    spots
}

fn gear_spots(layout: &Layout, chain: &ChainReport) -> Vec<Spot> {
    let map = layout.map(chain);
    let spot = |(place, station): (usize, &Station)| {
        let (from, to) = map.cell(place);
        Spot::around(from, to, 0.0, words::gear(chain.side, station)).putting(chain.shown_field(), place + 1)
    };
    chain.stations.iter().enumerate().map(spot).collect()
}
