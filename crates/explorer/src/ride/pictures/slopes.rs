//! Speed against gradient: riding in A's and B's gears, running, walking, the band, and the limits by name.

use crate::drawing::drawing::Drawing;
use crate::drawing::letters::plain_width;
use crate::drawing::looks::{tube, wire};
use crate::drawing::palette::Palette;
use crate::drawing::pen::Size;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::drawing::scale::Scale;
use crate::drawing::spot::Spot;
use crate::number::plain;
use crate::ride::section::RideSection;
use crate::ride::side::RideSide;
use crate::ride::words::advice::in_short;
use crate::ride::words::figures::seconds;
use crate::ride::words::pictures::{SLOPE, slopes as words, this_climb};
use crate::side::Side;
use crate::units;
use gear_math::Speed;
use gear_math::order::ascending;
use gear_math::rider::{Answer, Gait, MarkKind, OnBike, Reason, Time};

/// Speed riding and on foot against gradient.
pub(crate) const SLOPES: Drawing<RideSection> = Drawing {
    name: "slopes",
    title: words::TITLE,
    caption: words::CAPTION,
    height,
    draw,
    says: words::says,
    spots,
    label: words::label,
    words: Spot::own_words,
};

const LEFT: f64 = 60.0;
const RIGHT: f64 = 20.0;
const TOP: f64 = 44.0;
const PLOT: f64 = 270.0;
const LINE: f64 = 16.0;
/// Axis, then the cadences of A and B.
const UNDER: f64 = 4.0 * LINE;
/// Narrower pictures than this have every second cadence.
const NARROW: f64 = 330.0;
/// Marks of A and B closer than this stand as one, per cent.
const SAME: f64 = 0.05;
/// Ticks of an axis of gradients.
pub(crate) const GRADIENTS: [f64; 10] = [0.0, 5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0];
const SPEEDS: [f64; 20] = [
    0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 60.0, 80.0,
    100.0,
];

/// A mark by name; `None` stands for both set-ups.
struct Named {
    side: Option<Side>,
    kind: Kind,
    gradient: f64,
    speed: Speed,
}

/// What is marked.
#[derive(PartialEq)]
enum Kind {
    /// A limit of slopes that go on and on.
    Limit(MarkKind),
    /// This climb on the bike, or on foot, and how long it takes.
    Climb(Option<OnBike>, String),
}

impl Named {
    fn text(&self) -> String {
        match &self.kind {
            Kind::Limit(kind) => words::mark(self.side, *kind, self.gradient),
            Kind::Climb(way, time) => words::own(self.side, *way, time),
        }
    }
}

/// This climb's own times as mean speeds: on the bike, where that can be done, and on foot.
fn own(report: &RideSection, side: &RideSide) -> Vec<Named> {
    let inputs = &report.ride.inputs;
    let bike = side.ascent.bike.map(|(how, time)| (Some(how), time));
    let ways = [Some((None, side.ascent.foot)), bike].into_iter().flatten();
    let named = |(way, time): (Option<OnBike>, Time)| Named {
        side: Some(side.side),
        kind: Kind::Climb(way, seconds(time)),
        gradient: inputs.climb.percent(),
        speed: inputs.length.speed_in(time),
    };
    ways.map(named).collect()
}

/// Every mark, the steepest first.
fn named(report: &RideSection) -> Vec<Named> {
    let [a, b] = &report.ride.sides;
    let mut all: Vec<Named> = Vec::new();
    for side in [a, b] {
        let limits = side.marks.iter().map(|mark| Named {
            side: Some(side.side),
            kind: Kind::Limit(mark.kind),
            gradient: mark.gradient.percent(),
            speed: mark.speed,
        });
        for mark in own(report, side).into_iter().chain(limits) {
            let twin = all.iter_mut().find(|known| {
                side.side == Side::B
                    && known.kind == mark.kind
                    && (known.gradient - mark.gradient).abs() < SAME
            });
            if let Some(twin) = twin {
                twin.side = None;
            } else {
                all.push(mark);
            }
        }
    }
    ascending(&mut all, |mark| -mark.gradient);
    all
}

/// Where an axis of gradients ends that shows all up to `steepest`, per cent: little is told of what lies beyond.
pub(crate) fn shown_up_to(steepest: f64) -> f64 {
    (((steepest + 1.0) / 5.0).ceil() * 5.0).clamp(20.0, 45.0)
}

/// As far as anything is marked, per cent.
fn end(report: &RideSection) -> f64 {
    let marked = report.ride.sides.iter().flat_map(|side| &side.marks).map(|mark| mark.gradient.percent());
    shown_up_to(marked.fold(report.ride.inputs.climb.percent(), f64::max))
}

/// The answers of a side as far as the axis goes.
fn shown(report: &RideSection, side: Side) -> &[Answer] {
    let (answers, end) = (&report.ride.sides[side as usize].answers, end(report));
    &answers[..answers.partition_point(|it| it.gradient.percent() <= end + SAME)]
}

struct Layout {
    across: Scale,
    up: Scale,
    right: f64,
}

impl Layout {
    fn new(report: &RideSection, width: f64) -> Self {
        let answers = shown(report, Side::A);
        let speeds = answers.iter().flat_map(|it| {
            let (low, high) = report.foot_band(it);
            [low, high, units::speed_value(it.ride), units::speed_value(it.run)]
        });
        let own = report
            .ride
            .sides
            .iter()
            .flat_map(|side| own(report, side))
            .map(|it| units::speed_value(it.speed));
        let (slowest, fastest) = speeds
            .chain(own)
            .fold((f64::MAX, 0.1), |(low, high), speed| (f64::min(low, speed), f64::max(high, speed)));
        let right = width - RIGHT;
        Self {
            across: Scale::even((0.0, end(report)), (LEFT, right)),
            up: Scale::ratio((slowest / 1.05, fastest * 1.1), (TOP + PLOT, TOP)),
            right,
        }
    }

    fn at(&self, gradient: f64, speed: f64) -> Point {
        (self.across.at(gradient), self.up.at(speed))
    }
}

fn height(report: &RideSection, _: f64) -> f64 {
    TOP + PLOT + UNDER + named(report).len() as f64 * LINE + 6.0
}

fn draw(pen: &mut Pen, look: &Palette, report: &RideSection, size: Size) {
    let layout = Layout::new(report, size.0);
    draw_band(pen, look, report, &layout);
    draw_grid(pen, look, &layout);
    draw_feet(pen, look, report, &layout);
    draw_riding(pen, look, report, &layout);
    draw_climb(pen, look, report, &layout);
    draw_cadences(pen, look, report, &layout);
    draw_marks(pen, look, report, &layout);
}

fn draw_band(pen: &mut Pen, look: &Palette, report: &RideSection, layout: &Layout) {
    let answers = shown(report, Side::A);
    let edge = |answer: &Answer, speed: f64| layout.at(answer.gradient.percent(), speed);
    let mut points: Vec<Point> = answers.iter().map(|it| edge(it, report.foot_band(it).1)).collect();
    points.extend(answers.iter().rev().map(|it| edge(it, report.foot_band(it).0)));
    pen.shape(&points, look.rule);
}

fn draw_grid(pen: &mut Pen, look: &Palette, layout: &Layout) {
    let floor = TOP + PLOT;
    for tick in layout.up.ticks(&SPEEDS, 22.0) {
        let y = layout.up.at(tick);
        pen.line((LEFT, y), (layout.right, y), look.rule, 1.0);
        let decimals = usize::from(tick.fract() != 0.0);
        pen.text(&plain(tick, decimals), (LEFT - 6.0, y), Type::new(look.soft, Anchor::End));
    }
    pen.text(units::speeds().symbol(), (0.0, TOP - 14.0), Type::new(look.soft, Anchor::Start));
    pen.line((LEFT, floor), (layout.right, floor), look.ink, 1.0);
    for tick in layout.across.ticks(&GRADIENTS, 22.0) {
        let x = layout.across.at(tick);
        pen.line((x, floor), (x, floor + 4.0), look.ink, 1.0);
        pen.text(&plain(tick, 0), (x, floor + 0.8 * LINE), Type::new(look.soft, Anchor::Middle));
    }
    pen.text(SLOPE, (0.0, floor + 0.8 * LINE), Type::new(look.soft, Anchor::Start));
}

/// Running as a broken line, walking as a dotted one.
fn draw_feet(pen: &mut Pen, look: &Palette, report: &RideSection, layout: &Layout) {
    let answers = shown(report, Side::A);
    let run = |it: &Answer| layout.at(it.gradient.percent(), units::speed_value(it.run));
    for pair in answers.chunks_exact(2) {
        pen.line(run(&pair[0]), run(&pair[1]), look.ink, 1.5);
    }
    let walked: Vec<Point> = answers
        .iter()
        .filter(|it| it.gait == Gait::Walk)
        .map(|it| layout.at(it.gradient.percent(), units::speed_value(it.foot)))
        .collect();
    for &point in walked.iter().step_by(2) {
        pen.dot(point, 1.8, look.ink);
    }
    let named = &answers[7];
    let ((x, y), (low, high)) = (run(named), report.foot_band(named));
    let (label, toward) = if named.run > named.ride {
        (layout.up.at(high) - 16.0, -1.0)
    } else {
        (layout.up.at(low) + 16.0, 1.0)
    };
    pen.line((x, y + 5.0 * toward), (x, label - 8.0 * toward), look.soft, 1.0);
    pen.text(words::RUNNING, (x, label), Type::new(look.ink, Anchor::Middle));
    if let Some(&(x, y)) = walked.get(walked.len() * 5 / 6) {
        pen.text(words::WALKING, (x, y - 26.0), Type::new(look.ink, Anchor::Middle));
        pen.line((x, y - 18.0), (x, y - 5.0), look.soft, 1.0);
    }
}

/// The ideal gear as a thin line; B as a tube along it as far as B rides, A as a wire inside.
fn draw_riding(pen: &mut Pen, look: &Palette, report: &RideSection, layout: &Layout) {
    let answers = shown(report, Side::A);
    let ideal: Vec<Point> =
        answers.iter().map(|it| layout.at(it.gradient.percent(), units::speed_value(it.ride))).collect();
    pen.path(&ideal, look.soft, 1.0);
    let [a, b] = &report.ride.sides;
    tube(pen, look, &ridden(report, layout, b));
    wire(pen, look, &ridden(report, layout, a));
    let (x, y) = ideal[8];
    pen.text(words::RIDING, (x + 10.0, y - 8.0), Type::new(look.ink, Anchor::Start).bold());
}

/// A side's riding as far as its gears, its rider's strength, balance and grip reach.
fn ridden(report: &RideSection, layout: &Layout, side: &RideSide) -> Vec<Point> {
    let end = side
        .marks
        .iter()
        .find(|mark| matches!(mark.kind, MarkKind::Ends(reason) if reason != Reason::Energy));
    let limit = end.map_or(45.0, |end| end.gradient.percent());
    let held = |it: &Answer| Some(layout.at(it.gradient.percent(), units::speed_value(it.riding.held?)));
    let before =
        shown(report, side.side).iter().take_while(|it| it.gradient.percent() < limit || limit >= 45.0);
    let mut points: Vec<Point> = before.filter_map(held).collect();
    if let Some(end) = end.filter(|end| end.gradient.percent() > 0.0) {
        points.push(layout.at(end.gradient.percent(), units::speed_value(end.speed)));
    }
    points
}

fn draw_climb(pen: &mut Pen, look: &Palette, report: &RideSection, layout: &Layout) {
    let gradient = report.ride.inputs.climb.percent();
    let x = layout.across.at(gradient);
    pen.dashes((x, TOP - 8.0), (x, TOP + PLOT), look.ink, 1.0, 3.0);
    name_climb(pen, look, report, (x, TOP - 30.0), layout.right);
}

/// This climb and its verdict, in two lines from `at` down, on the side of it where there is room.
pub(crate) fn name_climb(pen: &mut Pen, look: &Palette, report: &RideSection, (x, y): Point, right: f64) {
    let lines = [this_climb(report), in_short(report)];
    let wide = lines.iter().map(|line| plain_width(line)).fold(0.0, f64::max);
    let (anchor, x) = match (x + wide <= right, x >= wide) {
        (true, _) => (Anchor::Start, x),
        (false, true) => (Anchor::End, x),
        (false, false) => (Anchor::Start, (right - wide).max(0.0)),
    };
    for (row, line) in lines.iter().enumerate() {
        pen.text(line, (x, y + row as f64 * 14.0), Type::new(look.ink, anchor));
    }
}

/// Cadences under the axis; in red where the gear cannot be turned.
fn draw_cadences(pen: &mut Pen, look: &Palette, report: &RideSection, layout: &Layout) {
    for (row, side) in report.ride.sides.iter().enumerate() {
        let y = TOP + PLOT + (row as f64 + 1.9) * LINE;
        pen.text(&words::rpm(side.side), (0.0, y), Type::new(side.side.ink(look), Anchor::Start).bold());
        let every = if layout.right < NARROW { 20 } else { 10 };
        for answer in shown(report, side.side).iter().step_by(every) {
            let turns = answer.riding.held.is_some() && !answer.spins_out();
            let ink = if turns { look.ink } else { look.stop };
            let x = layout.across.at(answer.gradient.percent());
            pen.text(&words::cadence(answer), (x, y), Type::new(ink, Anchor::Middle));
        }
    }
}

fn mark_row(index: usize) -> f64 {
    TOP + PLOT + UNDER + (index as f64 + 0.3) * LINE
}

/// One line for each mark, the steepest on top, so that no line down from the axis crosses a name to its right.
fn draw_marks(pen: &mut Pen, look: &Palette, report: &RideSection, layout: &Layout) {
    let marks = named(report);
    for (index, mark) in marks.iter().enumerate() {
        let x = layout.across.at(mark.gradient);
        let top = layout.up.at(units::speed_value(mark.speed));
        match mark.kind {
            Kind::Limit(_) => pen.line((x, top), (x, TOP + PLOT), look.rule, 1.0),
            Kind::Climb(..) => mark_own(pen, look, mark, (x, top)),
        }
        pen.line((x, TOP + PLOT + UNDER - 0.7 * LINE), (x, mark_row(index)), look.rule, 1.0);
    }
    for (index, mark) in marks.iter().enumerate() {
        let (x, y) = (layout.across.at(mark.gradient), mark_row(index));
        let words = mark.text();
        let wide = plain_width(&words);
        let (left, right) = (x - 8.0, layout.right + RIGHT - x - 8.0);
        let to_the_right = right >= wide || right > left;
        let (anchor, at) = match (to_the_right, left >= wide) {
            (true, _) => (Anchor::Start, (x + 8.0).min(layout.right + RIGHT - wide)),
            (false, true) => (Anchor::End, x - 8.0),
            (false, false) => (Anchor::Start, 0.0),
        };
        if right < wide {
            pen.fill(((x - 8.0 - wide).max(0.0), y - 7.0), (x - 8.0, y + 7.0), look.paper);
        }
        match mark.kind {
            Kind::Limit(_) => pointer(pen, look, mark.side, (x, y)),
            Kind::Climb(..) => mark_own(pen, look, mark, (x, y)),
        }
        pen.text(&words, (at, y), Type::new(look.ink, anchor));
    }
}

/// A square for a time of this climb on the bike, small and full for A or both, wide and open for B, so that both are seen where they
/// nearly meet; a cross for one on foot.
fn mark_own(pen: &mut Pen, look: &Palette, mark: &Named, (x, y): Point) {
    let ink = mark.side.map_or(look.ink, |side| side.ink(look));
    if matches!(mark.kind, Kind::Climb(None, _)) {
        return pen.cross((x, y), 4.5, ink, 2.0);
    }
    let square = |half: f64| ((x - half, y - half), (x + half, y + half));
    match mark.side {
        Some(Side::B) => {
            let (from, to) = square(6.0);
            pen.frame(from, to, ink, 1.5);
        }
        _ => {
            let (from, to) = square(3.5);
            pen.fill(from, to, ink);
        }
    }
}

/// A full mark in A's colour, an open one in B's, a full one in ink for both.
fn pointer(pen: &mut Pen, look: &Palette, side: Option<Side>, at: Point) {
    match side {
        Some(Side::B) => {
            pen.dot(at, 4.0, look.paper);
            pen.ring(at, 4.0, look.b, 1.5);
        }
        Some(Side::A) => pen.dot(at, 4.0, look.a),
        None => pen.dot(at, 3.0, look.ink),
    }
}

fn spots(report: &RideSection, size: Size) -> Vec<Spot> {
    let layout = Layout::new(report, size.0);
    let half = (layout.across.at(1.0) - layout.across.at(0.0)) / 2.0;
    let column = |(a, b): (&Answer, &Answer)| {
        let gradient = a.gradient.percent();
        let x = layout.across.at(gradient);
        let text = words::slope_spot(report, a, b);
        (gradient, Spot::around((x - half, TOP), (x + half, TOP + PLOT), 0.0, text))
    };
    let columns = shown(report, Side::A).iter().zip(shown(report, Side::B)).step_by(2).map(column);
    let rows = named(report).into_iter().enumerate().map(|(index, mark)| {
        let (x, y) = (layout.across.at(mark.gradient), mark_row(index));
        let text = words::mark_spot(&mark.text(), mark.speed);
        (mark.gradient, Spot::around((x, y), (x, y), 8.0, text))
    });
    // From left to right, so that the keys lead from the level to the steepest slope.
    let mut spots: Vec<(f64, Spot)> = rows.chain(columns).collect();
    ascending(&mut spots, |(gradient, _)| *gradient);
    spots.into_iter().map(|(_, spot)| spot).collect()
}
