//! Many set-ups by time behind the best against lowest gear: the front as a line with names, A and B ringed, the rest faint.

use crate::drawing::letters::plain_width;
use crate::drawing::palette::Palette;
use crate::drawing::pen::{Anchor, Pen, Point, Size, Type};
use crate::drawing::scale::Scale;
use crate::drawing::spot::Spot;
use crate::number::with_unit;
use crate::side::Side;
use crate::units;

const LEFT: f64 = 52.0;
const RIGHT: f64 = 16.0;
const TOP: f64 = 20.0;
/// Height of the picture, CSS pixels.
pub(crate) const HEIGHT: f64 = 320.0;
const FLOOR: f64 = HEIGHT - 40.0;
/// Slower than the best by more than this share is drawn on the upper edge.
const SLOWEST: f64 = 0.15;
/// Least extent upward, s.
const LEAST_S: f64 = 1.0;
const DEVELOPMENTS: [f64; 12] = [0.8, 1.0, 1.2, 1.4, 1.6, 1.8, 2.0, 2.5, 3.0, 3.5, 4.0, 5.0];

/// What stands along the axes.
pub(crate) struct Axes {
    /// Upward.
    pub(crate) up: &'static str,
    /// Across.
    pub(crate) across: String,
    /// A time behind the best.
    pub(crate) tick: fn(f64) -> String,
}

/// A set-up that is marked.
pub(crate) struct Marked {
    /// Its place.
    pub(crate) place: usize,
    /// The set-ups of the bench that it is.
    pub(crate) sides: Vec<Side>,
    /// Its name beside the mark.
    pub(crate) name: String,
    /// What is said of it when it is looked at.
    pub(crate) says: String,
}

/// Something beside the set-ups: one that was not ridden, in outline on the upper edge, or one that could be had, with a time.
pub(crate) struct Beside {
    /// Development of its lowest gear, m.
    pub(crate) lowest_m: f64,
    /// Time behind the best, s; none where it was not ridden.
    pub(crate) behind_s: Option<f64>,
    /// Its name beside the mark.
    pub(crate) name: &'static str,
    /// What is said of it when it is looked at.
    pub(crate) says: String,
}

/// Set-ups by their places, the best first.
pub(crate) struct Cloud {
    /// Development of the lowest gear, m, and time behind the best, s.
    pub(crate) points: Vec<(f64, f64)>,
    /// Time of the best, s.
    pub(crate) best_s: f64,
    /// Places of those on the line.
    pub(crate) front: Vec<usize>,
    /// Those that are marked, by their places; the best among them.
    pub(crate) marked: Vec<Marked>,
    /// What is marked beside them.
    pub(crate) beside: Vec<Beside>,
    /// What stands along the axes.
    pub(crate) axes: Axes,
}

struct Layout<'c> {
    cloud: &'c Cloud,
    across: Scale,
    up: Scale,
    limit_s: f64,
    right: f64,
}

impl<'c> Layout<'c> {
    fn new(cloud: &'c Cloud, width: f64) -> Self {
        let limit_s = cloud.best_s * SLOWEST;
        let (mut low, mut high, mut quickest, mut slowest) = (f64::INFINITY, 0.0, 0.0, LEAST_S);
        let mut holds = |(lowest_m, behind_s): (f64, f64)| {
            low = f64::min(low, lowest_m);
            high = f64::max(high, lowest_m);
            quickest = f64::min(quickest, behind_s);
            slowest = f64::max(slowest, behind_s.min(limit_s));
        };
        // The better half is seen too, so that the front stands among others.
        let marked = cloud.marked.iter().map(|it| it.place);
        marked.chain(0..cloud.points.len() / 2).for_each(|place| holds(cloud.points[place]));
        cloud.beside.iter().for_each(|it| holds((it.lowest_m, it.behind_s.unwrap_or(0.0))));
        Self {
            cloud,
            across: Scale::ratio((0.98 * low, 1.02 * high), (LEFT + 8.0, width - RIGHT)),
            up: Scale::even((quickest, slowest), (FLOOR - 24.0, TOP + 6.0)),
            limit_s,
            right: width - RIGHT,
        }
    }

    fn place(&self, (lowest_m, behind_s): (f64, f64)) -> Point {
        (self.across.at(lowest_m), self.up.at(behind_s.min(self.limit_s)))
    }

    fn at(&self, place: usize) -> Point {
        self.place(self.cloud.points[place])
    }

    fn beside(&self, it: &Beside) -> Point {
        it.behind_s.map_or((self.across.at(it.lowest_m), TOP), |behind_s| self.place((it.lowest_m, behind_s)))
    }

    /// Whether a set-up lies on the picture without being moved to its edge.
    fn holds(&self, (lowest_m, behind_s): (f64, f64)) -> bool {
        let (x, y) = (self.across.at(lowest_m), self.up.at(behind_s));
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
}

impl Cloud {
    pub(crate) fn draw(&self, pen: &mut Pen, look: &Palette, size: Size) {
        let layout = Layout::new(self, size.0);
        draw_axes(pen, look, &layout, size.0);
        for (place, _) in self.points.iter().enumerate().filter(|(_, it)| layout.holds(**it)) {
            pen.dot(layout.at(place), 1.6, look.rule);
        }
        let front: Vec<Point> = self.front.iter().map(|&place| layout.at(place)).collect();
        pen.path(&front, look.good, 2.0);
        for point in front {
            pen.dot(point, 3.5, look.good);
        }
        pen.cross(layout.at(0), 5.0, look.ink, 2.0);
        for it in &self.beside {
            pen.ring(layout.beside(it), 4.0, if it.behind_s.is_some() { look.ink } else { look.soft }, 1.0);
        }
        draw_names(pen, look, &layout);
        for it in &self.marked {
            let (x, y) = layout.at(it.place);
            for (index, side) in it.sides.iter().enumerate() {
                pen.ring((x, y), 7.0 + 3.0 * index as f64, side.ink(look), 2.0);
                let name = Type::new(side.ink(look), Anchor::Middle).bold();
                pen.text(&side.to_string(), mark(x, y, index), name);
            }
        }
    }

    pub(crate) fn spots(&self, size: Size) -> Vec<Spot> {
        let layout = Layout::new(self, size.0);
        let marked = self.marked.iter().map(|it| (layout.at(it.place), &it.says));
        let beside = self.beside.iter().map(|it| (layout.beside(it), &it.says));
        marked.chain(beside).map(|(at, says)| Spot::around(at, at, 6.0, says.clone())).collect()
    }

    /// Those whose names come first: the best and what is on the bench, then the front from both ends inward, so that its ends are
    /// named.
    fn named(&self) -> Vec<&Marked> {
        let first = |it: &&Marked| it.place == 0 || !it.sides.is_empty();
        let mut order: Vec<&Marked> = self.marked.iter().filter(first).collect();
        for index in 0..self.front.len() {
            let place = if index % 2 == 0 {
                self.front[index / 2]
            } else {
                self.front[self.front.len() - 1 - index / 2]
            };
            let is_new = order.iter().all(|it| it.place != place);
            order.extend(self.marked.iter().find(|it| it.place == place && is_new));
        }
        order
    }
}

/// Where the letter of the first or the second side at a place stands.
fn mark(x: f64, y: f64, index: usize) -> Point {
    (x - 9.0 + 18.0 * index as f64, y - 15.0)
}

/// Names beside the marks of the front, of the best, of A and B and beside them, as far as they keep clear of one another.
fn draw_names(pen: &mut Pen, look: &Palette, layout: &Layout<'_>) {
    let mut taken: Vec<(Point, Point)> = Vec::new();
    for it in &layout.cloud.marked {
        let (x, y) = layout.at(it.place);
        taken.push(((x - 5.0, y - 5.0), (x + 5.0, y + 5.0)));
        for index in 0..it.sides.len() {
            let (x, y) = mark(x, y, index);
            taken.push(((x - 6.0, y - 8.0), (x + 6.0, y + 8.0)));
        }
    }
    let marked = layout.cloud.named().into_iter().map(|it| (it.name.as_str(), layout.at(it.place)));
    let beside = layout.cloud.beside.iter().map(|it| (it.name, layout.beside(it)));
    for (name, at) in beside.filter(|it| !it.0.is_empty()).chain(marked) {
        let Some((from, anchor)) = layout.room_for(name, at, &taken) else { continue };
        taken.push(layout.around(name, from, anchor));
        pen.text(name, from, Type::new(look.ink, anchor));
    }
}

fn draw_axes(pen: &mut Pen, look: &Palette, layout: &Layout<'_>, width: f64) {
    let axes = &layout.cloud.axes;
    for tick in layout.up.even_ticks(26.0) {
        let y = layout.up.at(tick);
        pen.line((LEFT, y), (width - RIGHT, y), look.rule, 1.0);
        pen.text(&(axes.tick)(tick), (LEFT - 6.0, y), Type::new(look.soft, Anchor::End));
    }
    pen.line((LEFT, FLOOR), (width - RIGHT, FLOOR), look.ink, 1.0);
    let unit = units::developments();
    for (tick, x) in layout.across.developments(&DEVELOPMENTS, 44.0) {
        let decimals = usize::from(!unit.is_other() || tick.fract() != 0.0);
        pen.text(
            &with_unit(tick, decimals, unit.symbol()),
            (x, FLOOR + 13.0),
            Type::new(look.soft, Anchor::Middle),
        );
    }
    let set = |anchor| Type::new(look.soft, anchor);
    pen.text(axes.up, (0.0, 8.0), set(Anchor::Start));
    pen.text(&axes.across, (width - RIGHT, FLOOR + 29.0), set(Anchor::End));
}
