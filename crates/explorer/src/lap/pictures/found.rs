//! What a search found: time behind the best against lowest gear; the front as a line of dots, A and B ringed.

use crate::drawing::drawing::Drawing;
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
    spots,
    label,
    words: Spot::own_words,
};

const LEFT: f64 = 52.0;
const RIGHT: f64 = 16.0;
const TOP: f64 = 20.0;
const HEIGHT: f64 = 280.0;
/// Height while there is nothing to draw.
const EMPTY: f64 = 32.0;
const FLOOR: f64 = HEIGHT - 26.0;
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
}

impl Layout {
    fn new(found: &Found, width: f64) -> Self {
        let best_s = found.order[0].candidate.time_s;
        let limit_s = best_s * SLOWEST;
        let (mut low, mut high, mut quickest, mut slowest) = (f64::INFINITY, 0.0, 0.0, LEAST_S);
        for place in found.shown() {
            let it = &found.order[place].candidate;
            low = f64::min(low, it.lowest_development_m);
            high = f64::max(high, it.lowest_development_m);
            quickest = f64::min(quickest, it.time_s - best_s);
            slowest = f64::max(slowest, (it.time_s - best_s).min(limit_s));
        }
        Self {
            across: Scale::ratio((0.98 * low, 1.02 * high), (LEFT + 8.0, width - RIGHT)),
            up: Scale::even((quickest, slowest), (FLOOR - 10.0, TOP + 6.0)),
            best_s,
            limit_s,
        }
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
    if found(report).is_some() { HEIGHT } else { EMPTY }
}

fn label(report: &LapSection) -> String {
    found(report).map_or_else(|| words::NOTHING_YET.to_owned(), words::label)
}

fn draw(pen: &mut Pen, look: &Palette, report: &LapSection, size: Size) {
    let Some(found) = found(report) else {
        pen.text(words::DRAWN_HERE, (4.0, 20.0), Type::new(look.soft, Anchor::Start));
        return;
    };
    let layout = Layout::new(found, size.0);
    draw_axes(pen, look, &layout, size.0);
    let at = |place: usize| layout.at(&found.order[place].candidate);
    let front: Vec<Point> = found.front.iter().map(|&place| at(place)).collect();
    pen.path(&front, look.soft, 1.5);
    for point in front {
        pen.dot(point, 4.0, look.good);
    }
    pen.cross(at(0), 5.0, look.ink, 2.0);
    for place in found.shown() {
        let (x, y) = at(place);
        for (index, side) in found.sides_at(place).enumerate() {
            pen.ring((x, y), 7.0 + 3.0 * index as f64, side.ink(look), 2.0);
            let name = Type::new(side.ink(look), Anchor::Middle).bold();
            pen.text(&side.to_string(), (x - 9.0 + 18.0 * index as f64, y - 14.0), name);
        }
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
    pen.text(words::ACROSS, (width - RIGHT, 8.0), set(Anchor::End));
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
