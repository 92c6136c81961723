//! Two side views laid over one another, road and cross, and three places enlarged.

use crate::drawing::drawing::Drawing;
use crate::drawing::palette::Palette;
use crate::drawing::pen::Size;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::drawing::spot::Spot;
use crate::position::report::PositionReport;
use crate::position::section::PositionSection;
use crate::position::words::picture as words;
use crate::units::lengths;
use gear_math::position::{BikePoint, PositionView};

/// Road and cross position laid over one another.
pub(crate) const POSITION: Drawing<PositionSection> = Drawing {
    name: "position",
    title: words::TITLE,
    caption: words::CAPTION,
    height,
    draw,
    says: |report| words::says(&report.position),
    spots,
    label,
    words: Spot::own_words,
};

/// Millimetres that only the drawing needs.
const SADDLE_LENGTH: f64 = 270.0;
const SOLE_LENGTH: f64 = 130.0;
/// What the scale may be as long as.
const MILLIMETRES: [f64; 5] = [50.0, 20.0, 10.0, 5.0, 2.0];
const INCHES: [f64; 5] = [2.0, 1.0, 0.5, 0.2, 0.1];
/// CSS pixels.
const TOP: f64 = 46.0;
const EDGE: f64 = 12.0;
const LABEL_ROOM: f64 = 36.0;
const TALLEST: f64 = 470.0;
const GAP: f64 = 12.0;
const WIDE: f64 = 560.0;
const INSET_CAPTION: f64 = 18.0;
const LINE: f64 = 15.0;
const DASH: f64 = 5.0;

struct Layout {
    scale: f64,
    origin: Point,
    foot: f64,
    wide: bool,
    inset: f64,
    inset_scale: f64,
    width: f64,
}

impl Layout {
    fn new(position: &PositionReport, width: f64) -> Self {
        let wide = width >= WIDE;
        let inset = if wide { 148.0 } else { (width - 2.0 * GAP) / 3.0 };
        let room = if wide { width - inset - 2.0 * GAP } else { width } - 2.0 * EDGE - LABEL_ROOM;
        let (low, high) = extent(position);
        let scale = (room / (high.x_mm - low.x_mm)).min(TALLEST / (high.y_mm - low.y_mm));
        let slack = room - (high.x_mm - low.x_mm) * scale;
        let origin = (EDGE + slack / 2.0 - low.x_mm * scale, TOP + high.y_mm * scale);
        let foot = origin.1 - low.y_mm * scale + EDGE;
        let inset_scale = inset * 0.3 / (furthest(position) / 2.0).max(4.0);
        Self { scale, origin, foot, wide, inset, inset_scale, width }
    }

    fn at(&self, point: BikePoint) -> Point {
        (self.origin.0 + point.x_mm * self.scale, self.origin.1 - point.y_mm * self.scale)
    }

    /// The upper left corner of an enlarged place.
    fn inset_corner(&self, index: usize) -> Point {
        let step = index as f64;
        if self.wide {
            (self.width - self.inset, TOP + step * (self.inset + INSET_CAPTION + LINE + 2.0 * GAP))
        } else {
            (step * (self.inset + GAP), self.foot + GAP + INSET_CAPTION)
        }
    }

    fn height(&self) -> f64 {
        let insets = self.inset_corner(2).1 + self.inset + INSET_CAPTION + LINE;
        if self.wide { insets.max(self.foot) } else { insets }
    }
}

/// Lowest and highest place of both bikes.
fn extent(position: &PositionReport) -> (BikePoint, BikePoint) {
    let bikes = [&position.road, &position.cross.view];
    let points = bikes.iter().flat_map(|bike| {
        [
            bike.saddle_tip,
            moved(bike.saddle_tip, -SADDLE_LENGTH),
            bike.bar,
            bike.pedal,
            moved(bike.pedal, SOLE_LENGTH),
        ]
    });
    let points = points.chain([
        position.target(),
        position.front.bar,
        position.front.clamp_top,
        BikePoint { x_mm: 0.0, y_mm: 0.0 },
    ]);
    points.fold(
        (BikePoint { x_mm: 0.0, y_mm: 0.0 }, BikePoint { x_mm: 0.0, y_mm: 0.0 }),
        |(low, high), point| {
            (
                BikePoint { x_mm: low.x_mm.min(point.x_mm), y_mm: low.y_mm.min(point.y_mm) },
                BikePoint { x_mm: high.x_mm.max(point.x_mm), y_mm: high.y_mm.max(point.y_mm) },
            )
        },
    )
}

fn moved(point: BikePoint, forward_mm: f64) -> BikePoint {
    BikePoint { x_mm: point.x_mm + forward_mm, ..point }
}

/// One place on both bikes, and what is said under it.
struct Place {
    name: &'static str,
    road: BikePoint,
    cross: BikePoint,
    measure: &'static str,
    from_to: String,
}

fn places(position: &PositionReport) -> [Place; 3] {
    let (road, cross) = (&position.inputs.road, &position.cross);
    let ([tip, bar, sole], [high, low, thick]) = (words::PLACES, words::MEASURES);
    let place = |name, road, cross, measure, from_to| Place { name, road, cross, measure, from_to };
    let height = both(road.saddle.height.mm(), cross.saddle_height_mm);
    let drop = both(road.bar_drop.mm(), cross.bar_drop_mm);
    let stacks = [road.footing, position.inputs.cross.footing].map(|footing| footing.sole_stack.mm());
    let stack = words::from_to(stacks.map(|stack| lengths().typed(stack)).each_ref().map(String::as_str));
    [
        place(tip, position.road.saddle_tip, cross.view.saddle_tip, high, height),
        place(bar, position.road.bar, position.target(), low, drop),
        place(sole, position.road.sole, cross.view.sole, thick, stack),
    ]
}

/// A measure of both bikes in words: that of the road bike as it was typed, that of the cross bike as a tape shows it.
fn both(road: f64, cross: f64) -> String {
    words::from_to([&lengths().typed(road), &lengths().number(cross, 0)])
}

/// How far the places move at most, in millimetres.
fn furthest(position: &PositionReport) -> f64 {
    places(position).iter().map(|place| place.road.distance_mm(place.cross)).fold(0.0, f64::max)
}

fn height(report: &PositionSection, width: f64) -> f64 {
    if report.position.knows_stem() { Layout::new(&report.position, width).height() } else { 0.0 }
}

fn label(report: &PositionSection) -> String {
    words::label(&report.position)
}

fn draw(pen: &mut Pen, look: &Palette, report: &PositionSection, size: Size) {
    let position = &report.position;
    let layout = Layout::new(position, size.0);
    draw_key(pen, look);
    draw_front(pen, look, &layout, position);
    draw_road(pen, look, &layout, &position.road);
    draw_cross(pen, look, &layout, position);
    draw_names(pen, look, &layout, position);
    for (index, place) in places(position).iter().enumerate() {
        draw_inset(pen, look, &layout, index, place);
    }
}

fn draw_key(pen: &mut Pen, look: &Palette) {
    pen.dashes((0.0, 10.0), (26.0, 10.0), look.soft, 2.0, DASH);
    pen.text(words::ROAD, (32.0, 10.0), Type::new(look.soft, Anchor::Start));
    pen.line((76.0, 10.0), (102.0, 10.0), look.ink, 3.0);
    pen.text(words::CROSS, (108.0, 10.0), Type::new(look.ink, Anchor::Start).bold());
}

/// Head tube, spacers and stem of the cross bike.
fn draw_front(pen: &mut Pen, look: &Palette, layout: &Layout, position: &PositionReport) {
    let front = &position.front;
    let line = |pen: &mut Pen, from, to, width| pen.line(layout.at(from), layout.at(to), look.ink, width);
    pen.line(layout.at(BikePoint { x_mm: 0.0, y_mm: 0.0 }), layout.at(front.head_tube_top), look.rule, 2.0);
    line(pen, front.head_tube_top, front.spacers_foot, 2.0);
    line(pen, front.spacers_foot, front.clamp_foot, 6.0);
    line(pen, front.clamp_foot, front.clamp_top, 2.0);
    line(pen, front.stem_on_steerer, front.bar, 4.0);
}

fn draw_road(pen: &mut Pen, look: &Palette, layout: &Layout, bike: &PositionView) {
    let mut dashes = |from, to, width| pen.dashes(layout.at(from), layout.at(to), look.soft, width, DASH);
    dashes(bike.saddle_tip, moved(bike.saddle_tip, -SADDLE_LENGTH), 2.0);
    dashes(bike.saddle_top, bike.pedal, 1.0);
    dashes(bike.saddle_tip, bike.bar, 1.0);
    dashes(moved(bike.sole, -SOLE_LENGTH / 2.0), moved(bike.sole, SOLE_LENGTH / 2.0), 2.0);
    pen.ring(layout.at(bike.bar), 6.0, look.soft, 2.0);
    pen.ring(layout.at(bike.pedal), 4.0, look.soft, 2.0);
}

fn draw_cross(pen: &mut Pen, look: &Palette, layout: &Layout, position: &PositionReport) {
    let bike = &position.cross.view;
    let mut line = |from, to, width| pen.line(layout.at(from), layout.at(to), look.ink, width);
    line(bike.saddle_tip, moved(bike.saddle_tip, -SADDLE_LENGTH), 4.0);
    line(bike.saddle_top, bike.pedal, 1.0);
    line(bike.saddle_tip, position.target(), 1.0);
    line(moved(bike.sole, -SOLE_LENGTH / 2.0), moved(bike.sole, SOLE_LENGTH / 2.0), 3.0);
    pen.dot(layout.at(position.target()), 5.0, look.ink);
    pen.dot(layout.at(bike.pedal), 4.0, look.ink);
    let bracket = layout.at(BikePoint { x_mm: 0.0, y_mm: 0.0 });
    pen.dot(bracket, 5.0, look.paper);
    pen.ring(bracket, 5.0, look.ink, 1.5);
}

fn draw_names(pen: &mut Pen, look: &Palette, layout: &Layout, position: &PositionReport) {
    let bike = &position.cross.view;
    let mut name = |words, at: BikePoint, (dx, dy): Point, anchor| {
        let (x, y) = layout.at(at);
        pen.text(words, (x + dx, y + dy), Type::new(look.ink, anchor));
    };
    let higher = if position.road.saddle_tip.y_mm > bike.saddle_tip.y_mm {
        position.road.saddle_tip
    } else {
        bike.saddle_tip
    };
    name(words::SADDLE, moved(higher, -SADDLE_LENGTH / 2.0), (0.0, -12.0), Anchor::Middle);
    let ahead =
        if position.road.bar.x_mm > position.target().x_mm { position.road.bar } else { position.target() };
    name(words::BAR, ahead, (11.0, 0.0), Anchor::Start);
    name(words::BOTTOM_BRACKET, BikePoint { x_mm: 0.0, y_mm: 0.0 }, (-12.0, 0.0), Anchor::End);
    name(words::PEDAL, bike.pedal, (SOLE_LENGTH / 2.0 * layout.scale + 8.0, 0.0), Anchor::Start);
}

/// One place enlarged, its middle half-way between the two bikes.
fn draw_inset(pen: &mut Pen, look: &Palette, layout: &Layout, index: usize, place: &Place) {
    let (left, top) = layout.inset_corner(index);
    let (side, middle) = (layout.inset, (left + layout.inset / 2.0, top + layout.inset / 2.0));
    pen.fill((left, top), (left + side, top + side), look.paper);
    pen.frame((left, top), (left + side, top + side), look.rule, 1.0);
    let centre = ((place.road.x_mm + place.cross.x_mm) / 2.0, (place.road.y_mm + place.cross.y_mm) / 2.0);
    let at = |point: BikePoint| {
        (
            middle.0 + (point.x_mm - centre.0) * layout.inset_scale,
            middle.1 - (point.y_mm - centre.1) * layout.inset_scale,
        )
    };
    let (road, cross) = (at(place.road), at(place.cross));
    pen.line(road, cross, look.rule, 1.5);
    pen.dot(cross, 5.0, look.ink);
    pen.ring(road, 8.0, look.soft, 2.0);
    pen.text(place.name, (left, top - 9.0), Type::new(look.ink, Anchor::Start).bold());
    let foot = [place.measure, &place.from_to];
    for (row, line) in foot.into_iter().enumerate() {
        let y = top + side + 9.0 + row as f64 * LINE;
        pen.text(line, (left, y), Type::new(look.soft, Anchor::Start));
    }
    let length = scale_bar(side / layout.inset_scale);
    let (x, y) = (left + 6.0, top + side - 7.0);
    pen.line((x, y), (x + lengths().metric(length) * layout.inset_scale, y), look.soft, 3.0);
    pen.text(&words::scale(length), (x, y - 9.0), Type::new(look.soft, Anchor::Start));
}

/// A round length in the unit in force that is at most a third of `across`, millimetres.
fn scale_bar(across: f64) -> f64 {
    let rounds = if lengths().is_other() { INCHES } else { MILLIMETRES };
    let fits = |length: &f64| *length <= lengths().value(across) / 3.0;
    rounds.into_iter().find(fits).unwrap_or(rounds[4])
}

fn spots(report: &PositionSection, size: Size) -> Vec<Spot> {
    let position = &report.position;
    let layout = Layout::new(position, size.0);
    let bike = &position.cross.view;
    let around = |at: BikePoint, by: f64, text: String| Spot::around(layout.at(at), layout.at(at), by, text);
    vec![
        around(bike.saddle_tip, 12.0, words::saddle(position)),
        around(position.target(), 12.0, words::bar(position)),
        around(position.front.stem_on_steerer, 10.0, words::stem(position)),
        around(bike.pedal, 12.0, words::pedal(position)),
    ]
}
