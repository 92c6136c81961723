//! What a search found: time behind the best against lowest gear; the front as a line with names, A and B ringed, the rest faint.

use crate::drawing::drawing::Drawing;
use crate::drawing::letters::plain_width;
use crate::drawing::palette::Palette;
use crate::drawing::pen::Size;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::drawing::scale::Scale;
use crate::drawing::spot::Spot;
use crate::lap::found::Found;
use crate::lap::section::LapSection;
use crate::lap::words::pictures::found as words;
use crate::number::with_unit;
use gear_math::course::Candidate;

/// What a search found.
pub(crate) const FOUND: Drawing<LapSection> = Drawing {
    name: "found",
    title: words::TITLE,
    caption: words::CAPTION,
    height,
    draw,
    says: |report| found(report).map_or_else(String::new, words::says),
    spots,
    label,
    words: Spot::own_words,
};

const LEFT: f64 = 52.0;
const RIGHT: f64 = 16.0;
const TOP: f64 = 20.0;
const HEIGHT: f64 = 320.0;
const FLOOR: f64 = HEIGHT - 40.0;
/// Slower than the best by more than this share is drawn on the upper edge.
const SLOWEST: f64 = 0.15;
/// Least extent upward, s.
const LEAST_S: f64 = 1.0;
const DEVELOPMENTS: [f64; 12] = [0.8, 1.0, 1.2, 1.4, 1.6, 1.8, 2.0, 2.5, 3.0, 3.5, 4.0, 5.0];

struct Layout {
    across: Scale,
    up: Scale,
    best_s: f64,
    limit_s: f64,
    right: f64,
}

impl Layout {
    fn new(found: &Found, width: f64) -> Self {
        let best_s = found.order[0].candidate.time_s;
        let limit_s = best_s * SLOWEST;
        let (mut low, mut high, mut quickest, mut slowest) = (f64::INFINITY, 0.0, 0.0, LEAST_S);
        // The better half is seen too, so that the front stands among others.
        for place in found.shown().into_iter().chain(0..found.order.len() / 2) {
            let it = &found.order[place].candidate;
            low = f64::min(low, it.lowest_development_m);
            high = f64::max(high, it.lowest_development_m);
            quickest = f64::min(quickest, it.time_s - best_s);
            slowest = f64::max(slowest, (it.time_s - best_s).min(limit_s));
        }
        Self {
            across: Scale::ratio((0.98 * low, 1.02 * high), (LEFT + 8.0, width - RIGHT)),
            up: Scale::even((quickest, slowest), (FLOOR - 24.0, TOP + 6.0)),
            best_s,
            limit_s,
            right: width - RIGHT,
        }
    }

    /// Whether a set-up lies on the picture without being moved to its edge.
    fn holds(&self, it: &Candidate) -> bool {
        let (x, y) = (self.across.at(it.lowest_development_m), self.up.at(it.time_s - self.best_s));
        (LEFT..=self.right).contains(&x) && (TOP..=FLOOR).contains(&y)
    }

    /// The corners that a name takes.
    fn around(&self, name: &str, (x, y): Point, anchor: Anchor) -> (Point, Point) {
        let wide = plain_width(name);
        let from = if anchor == Anchor::Start { x } else { x - wide };
        ((from, y - 7.0), (from + wide, y + 7.0))
    }

    /// A place for a name beside a point, right of it or left, level, lower or higher, where nothing is written yet.
    fn room_for(&self, name: &str, (x, y): Point, taken: &[(Point, Point)]) -> Option<(Point, Anchor)> {
        let lower = [0.0, 13.0, -13.0];
        let sides = [(10.0, Anchor::Start), (-10.0, Anchor::End)];
        let places = lower.into_iter().flat_map(|dy| sides.map(|(dx, anchor)| ((x + dx, y + dy), anchor)));
        places.into_iter().find(|&(at, anchor)| {
            let (from, to) = self.around(name, at, anchor);
            let inside = from.0 > LEFT && to.0 <= self.right && from.1 > TOP && to.1 < FLOOR - 1.0;
            let clear = taken
                .iter()
                .all(|(start, end)| to.0 < start.0 || end.0 < from.0 || to.1 < start.1 || end.1 < from.1);
            inside && clear
        })
    }

    fn at(&self, it: &Candidate) -> Point {
        let behind = (it.time_s - self.best_s).min(self.limit_s);
        (self.across.at(it.lowest_development_m), self.up.at(behind))
    }
}

fn found(report: &LapSection) -> Option<&Found> {
    report.lap.found.as_deref().filter(|found| !found.order.is_empty())
}

fn height(report: &LapSection, _: f64) -> f64 {
    if found(report).is_some() { HEIGHT } else { 0.0 }
}

fn label(report: &LapSection) -> String {
    found(report).map_or_else(String::new, words::label)
}

fn draw(pen: &mut Pen, look: &Palette, report: &LapSection, size: Size) {
    let Some(found) = found(report) else { return };
    let layout = Layout::new(found, size.0);
    draw_axes(pen, look, &layout, size.0);
    let at = |place: usize| layout.at(&found.order[place].candidate);
    for place in (0..found.order.len()).filter(|&place| layout.holds(&found.order[place].candidate)) {
        pen.dot(at(place), 1.6, look.rule);
    }
    let front: Vec<Point> = found.front.iter().map(|&place| at(place)).collect();
    pen.path(&front, look.good, 2.0);
    for point in front {
        pen.dot(point, 3.5, look.good);
    }
    pen.cross(at(0), 5.0, look.ink, 2.0);
    draw_names(pen, look, found, &layout);
    for place in found.shown() {
        let (x, y) = at(place);
        for (index, side) in found.sides_at(place).enumerate() {
            pen.ring((x, y), 7.0 + 3.0 * index as f64, side.ink(look), 2.0);
            let name = Type::new(side.ink(look), Anchor::Middle).bold();
            pen.text(&side.to_string(), mark(x, y, index), name);
        }
    }
}

/// Where the letter of the first or the second side at a place stands.
fn mark(x: f64, y: f64, index: usize) -> Point {
    (x - 9.0 + 18.0 * index as f64, y - 15.0)
}

/// Names beside the marks of the front, of the best and of A and B, as far as they keep clear of one another: first the best
/// and what is on the bench, then the front from both ends inward, so that its ends are named.
fn draw_names(pen: &mut Pen, look: &Palette, found: &Found, layout: &Layout) {
    let at = |place: usize| layout.at(&found.order[place].candidate);
    let mut taken: Vec<(Point, Point)> = Vec::new();
    for place in found.shown() {
        let (x, y) = at(place);
        taken.push(((x - 5.0, y - 5.0), (x + 5.0, y + 5.0)));
        for (index, _) in found.sides_at(place).enumerate() {
            let (x, y) = mark(x, y, index);
            taken.push(((x - 6.0, y - 8.0), (x + 6.0, y + 8.0)));
        }
    }
    let mut order: Vec<usize> = found
        .shown()
        .into_iter()
        .filter(|&place| place == 0 || found.sides_at(place).next().is_some())
        .collect();
    for index in 0..found.front.len() {
        let place = if index % 2 == 0 {
            found.front[index / 2]
        } else {
            found.front[found.front.len() - 1 - index / 2]
        };
        if !order.contains(&place) {
            order.push(place);
        }
    }
    for place in order {
        let name = words::name(found, place);
        let Some((from, anchor)) = layout.room_for(&name, at(place), &taken) else { continue };
        taken.push(layout.around(&name, from, anchor));
        pen.text(&name, from, Type::new(look.ink, anchor));
    }
}

fn draw_axes(pen: &mut Pen, look: &Palette, layout: &Layout, width: f64) {
    for tick in layout.up.even_ticks(26.0) {
        let y = layout.up.at(tick);
        pen.line((LEFT, y), (width - RIGHT, y), look.rule, 1.0);
        pen.text(&words::tick(tick), (LEFT - 6.0, y), Type::new(look.soft, Anchor::End));
    }
    pen.line((LEFT, FLOOR), (width - RIGHT, FLOOR), look.ink, 1.0);
    for tick in layout.across.ticks(&DEVELOPMENTS, 44.0) {
        let x = layout.across.at(tick);
        pen.text(&with_unit(tick, 1, "m"), (x, FLOOR + 13.0), Type::new(look.soft, Anchor::Middle));
    }
    let set = |anchor| Type::new(look.soft, anchor);
    pen.text(words::UP, (0.0, 8.0), set(Anchor::Start));
    pen.text(words::ACROSS, (width - RIGHT, FLOOR + 29.0), set(Anchor::End));
}

fn spots(report: &LapSection, size: Size) -> Vec<Spot> {
    let Some(found) = found(report) else { return Vec::new() };
    let layout = Layout::new(found, size.0);
    let spot = |place: usize| {
        let at = layout.at(&found.order[place].candidate);
        Spot::around(at, at, 6.0, words::spot(found, place))
    };
    found.shown().into_iter().map(spot).collect()
}
