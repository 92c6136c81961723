//! One drivetrain from the drive side, true to scale: rings, sprockets, cage, stops and chain.

use crate::chain::report::ChainReport;
use crate::drawing::letters::plain_width;
use crate::drawing::palette::Palette;
use crate::drawing::pen::{Anchor, Pen, Point, Type};
use crate::side::Side;
use gear_math::chain::{ChainPath, ChainPitch, GearState, PathPoint, PathWheel, PitchCircle};
use std::f64::consts::PI;

/// Clear room round the parts, millimetres.
const MARGIN: f64 = 8.0;
/// How far the stops are drawn beyond the tension pulley, millimetres.
const STOP_BEYOND: f64 = 12.0;
/// Room for the angle of the rest position, millimetres.
const STOP_LABEL: f64 = 44.0;
/// Depth to which slack chain may make the picture grow, millimetres.
const DEEPEST_SAG: f64 = 70.0;
/// Smallest gap that is seen as one, CSS pixels.
const LEAST_GAP: f64 = 10.0;
const RAD: f64 = PI / 180.0;

/// The stretch of the side view that holds the parts in every gear, millimetres from the rear axle, y upward.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Room {
    left: f64,
    right: f64,
    top: f64,
    bottom: f64,
}

impl Room {
    pub(crate) fn of(chain: &ChainReport) -> Self {
        let drivetrain = &chain.setup.drivetrain;
        let cage = chain.setup.cage.measures();
        let ring = tip_radius(drivetrain.chainset.largest().teeth());
        let sprocket = tip_radius(drivetrain.cassette.largest().teeth());
        let axle = chain.path.wheels[0].centre;
        let swing = cage.pulley_centres.mm() + tip_radius(cage.tension.teeth()) + STOP_BEYOND;
        let guides = chain.ends.map(|path| path.wheels[2].centre);
        let least = |of: fn(&PathPoint) -> f64| guides.iter().map(of).fold(f64::INFINITY, f64::min);
        Self {
            left: (-sprocket).min(least(|guide| guide.x_mm) - swing - STOP_LABEL) - MARGIN,
            right: axle.x_mm + ring + MARGIN,
            top: sprocket.max(axle.y_mm + ring) + MARGIN,
            bottom: (axle.y_mm - ring).min(least(|guide| guide.y_mm) - swing).min(deepest(chain)) - MARGIN,
        }
    }

    pub(crate) fn joined(self, other: Self) -> Self {
        Self {
            left: self.left.min(other.left),
            right: self.right.max(other.right),
            top: self.top.max(other.top),
            bottom: self.bottom.min(other.bottom),
        }
    }

    pub(crate) fn width(&self) -> f64 {
        self.right - self.left
    }

    pub(crate) fn height(&self) -> f64 {
        self.top - self.bottom
    }
}

/// How deep the slackest gear hangs, within reason.
fn deepest(chain: &ChainReport) -> f64 {
    let (run, station) = (&chain.ends[1].runs[0], &chain.stations[chain.stations.len() - 1]);
    let sag = if station.fit.state == GearState::Slack { run.sag_mm(station.fit.links_over) } else { 0.0 };
    f64::midpoint(run.from.y_mm, run.to.y_mm) - sag.min(DEEPEST_SAG)
}

fn circle(teeth: u16) -> Option<PitchCircle> {
    PitchCircle::new(teeth, ChainPitch::BICYCLE).ok()
}

fn tip_radius(teeth: u16) -> f64 {
    circle(teeth).map_or(0.0, |circle| circle.tip_diameter_mm() / 2.0)
}

fn pitch_radius(teeth: u16) -> f64 {
    circle(teeth).map_or(0.0, PitchCircle::radius_mm)
}

/// Where millimetres land.
#[derive(Debug, Clone, Copy)]
pub(crate) struct View {
    scale: f64,
    left: f64,
    top: f64,
    room: Room,
}

impl View {
    /// `room` with its upper left corner at a point, at `scale` CSS pixels to the millimetre.
    pub(crate) const fn new(room: Room, (left, top): Point, scale: f64) -> Self {
        Self { scale, left, top, room }
    }

    fn at(&self, place: PathPoint) -> Point {
        self.point(place.x_mm, place.y_mm)
    }

    fn point(&self, x: f64, y: f64) -> Point {
        (self.left + (x - self.room.left) * self.scale, self.top + (self.room.top - y) * self.scale)
    }

    /// The point `length` millimetres from `from`, `forward` degrees forward of straight down.
    fn below(&self, from: PathPoint, forward: f64, length: f64) -> Point {
        let (sin, cos) = (forward * RAD).sin_cos();
        self.point(from.x_mm + length * sin, from.y_mm - length * cos)
    }

    /// Corners of the square round a wheel.
    pub(crate) fn around(&self, wheel: &PathWheel) -> (Point, Point) {
        let ((x, y), radius) = (self.at(wheel.centre), wheel.circle.radius_mm() * self.scale);
        ((x - radius, y - radius), (x + radius, y + radius))
    }

    fn floor(&self) -> f64 {
        self.top + self.room.height() * self.scale
    }
}

/// Draws the gear that is shown.
pub(crate) fn draw(pen: &mut Pen, look: &Palette, chain: &ChainReport, view: &View) {
    let side = chain.side;
    let [ring, tension, guide, sprocket] = &chain.path.wheels;
    for wheel in [ring, sprocket] {
        body(pen, look, side, view, wheel);
    }
    other_wheels(pen, look, chain, view);
    for wheel in [ring, sprocket] {
        let at = view.at(wheel.centre);
        let teeth = Type::new(look.ink, Anchor::Middle).bold();
        pen.text(&wheel.circle.teeth().to_string(), at, teeth);
    }
    stops(pen, look, chain, view);
    let hanger = view.at(chain.hanger);
    pen.line(hanger, view.at(guide.centre), look.soft, 3.0);
    pen.dot(hanger, 3.5, look.soft);
    pen.line(view.at(guide.centre), view.at(tension.centre), look.ink, 5.0);
    for wheel in [guide, tension] {
        let (at, radius) = (view.at(wheel.centre), wheel.circle.radius_mm() * view.scale);
        pen.dot(at, radius, look.paper);
        pen.ring(at, radius, look.ink, 1.0);
        pen.dot(at, 2.5, look.ink);
    }
    draw_chain(pen, look, chain, view);
}

/// A wheel in use: filled for A, outlined for B.
fn body(pen: &mut Pen, look: &Palette, side: Side, view: &View, wheel: &PathWheel) {
    let (at, radius) = (view.at(wheel.centre), wheel.circle.radius_mm() * view.scale);
    pen.dot(at, radius, if side == Side::A { side.wash(look) } else { look.paper });
    pen.ring(at, radius, side.ink(look), 1.5);
}

fn other_wheels(pen: &mut Pen, look: &Palette, chain: &ChainReport, view: &View) {
    let [ring, .., sprocket] = &chain.path.wheels;
    let drivetrain = &chain.setup.drivetrain;
    let rings = drivetrain.chainset.rings().iter().map(|other| (ring, other.teeth()));
    let sprockets = drivetrain.cassette.sprockets().iter().map(|other| (sprocket, other.teeth()));
    for (wheel, teeth) in rings.chain(sprockets).filter(|(wheel, teeth)| wheel.circle.teeth() != *teeth) {
        pen.ring(view.at(wheel.centre), pitch_radius(teeth) * view.scale, look.rule, 1.0);
    }
}

/// Both stops as broken lines from the guide pulley, the swing between them, and their angles.
fn stops(pen: &mut Pen, look: &Palette, chain: &ChainReport, view: &View) {
    let (cage, guide) = (chain.setup.cage.measures(), chain.path.wheels[2].centre);
    let reach = cage.pulley_centres.mm() + tip_radius(cage.tension.teeth()) + STOP_BEYOND * 0.6;
    let (rear, fore) = (cage.rear_stop.degrees(), cage.fore_stop.degrees());
    let swing: Vec<Point> = steps(rear, fore).map(|angle| view.below(guide, angle, reach)).collect();
    pen.path(&swing, look.rule, 1.0);
    for (angle, anchor, raise) in [(rear, Anchor::End, 5.0), (fore, Anchor::Start, 9.0)] {
        pen.dashes(view.at(guide), view.below(guide, angle, reach), look.soft, 1.0, 3.0);
        let (x, y) = view.below(guide, angle, reach + STOP_BEYOND * 0.4);
        let words = format!("{}°", crate::number::plain(angle, 0));
        let x = if anchor == Anchor::End { x.max(view.left + plain_width(&words)) } else { x };
        pen.text(&words, (x, y - raise), Type::new(look.soft, anchor));
    }
}

/// Angles from one to another in small, equal steps.
fn steps(from: f64, to: f64) -> impl Iterator<Item = f64> {
    const STEP: f64 = 5.0;
    let count = ((to - from).abs() / STEP).ceil().clamp(1.0, 80.0);
    (0..=count as u32).map(move |index| from + (to - from) * f64::from(index) / count)
}

/// The chain: whole where it lies, sagging where it is slack, drawn with a gap of what is missing where it is too tight.
fn draw_chain(pen: &mut Pen, look: &Palette, chain: &ChainReport, view: &View) {
    let station = chain.station();
    let (ink, width) = match station.fit.state {
        GearState::TooTight => (look.stop, 3.0),
        GearState::TightButUsual => (look.care, 4.0),
        GearState::Comfortable | GearState::Slack => (chain.side.ink(look), 3.0),
    };
    let mut line = wrapped(&chain.path, view);
    let lower = &chain.path.runs[0];
    let (from, to) = (view.at(lower.from), view.at(lower.to));
    match station.fit.state {
        GearState::TooTight => {
            pen.path(&line, ink, width);
            let gap = -station.fit.links_over * ChainPitch::BICYCLE.mm() * view.scale;
            with_gap(pen, look, (from, to), gap);
        }
        GearState::Slack => {
            let sag = lower.sag_mm(station.fit.links_over) * view.scale;
            line.extend(hanging((from, to), sag.min(view.floor() - f64::midpoint(from.1, to.1))));
            pen.path(&line, ink, width);
        }
        GearState::Comfortable | GearState::TightButUsual => {
            line.push(to);
            pen.path(&line, ink, width);
        }
    }
}

/// The chain from where it meets the tension pulley round all wheels to where it leaves the ring.
fn wrapped(path: &ChainPath, view: &View) -> Vec<Point> {
    (0..4).map(|step| (step + 1) % 4).flat_map(|wheel| arc(path, wheel, view)).collect()
}

/// The chain on one wheel, from the run before to the run behind.
fn arc(path: &ChainPath, index: usize, view: &View) -> Vec<Point> {
    let wheel = &path.wheels[index];
    let start = path.runs[(index + 3) % 4].to;
    let begin = (start.y_mm - wheel.centre.y_mm).atan2(start.x_mm - wheel.centre.x_mm) / RAD;
    let turn = if wheel.clockwise { -wheel.wrap_degrees } else { wheel.wrap_degrees };
    let radius = wheel.circle.radius_mm();
    steps(begin, begin + turn)
        .map(|angle| {
            let (sin, cos) = (angle * RAD).sin_cos();
            view.point(wheel.centre.x_mm + radius * cos, wheel.centre.y_mm + radius * sin)
        })
        .collect()
}

/// A run that hangs `sag` below its straight line.
fn hanging((from, to): (Point, Point), sag: f64) -> impl Iterator<Item = Point> {
    const PIECES: u32 = 16;
    (0..=PIECES).map(move |piece| {
        let share = f64::from(piece) / f64::from(PIECES);
        let (x, y) = between(from, to, share);
        (x, y + 4.0 * sag * share * (1.0 - share))
    })
}

/// A run whose ends do not meet: broken lines with a gap as wide as what is missing, and a bar at each end.
fn with_gap(pen: &mut Pen, look: &Palette, (from, to): (Point, Point), gap: f64) {
    let length = (to.0 - from.0).hypot(to.1 - from.1).max(1.0);
    let half = gap.max(LEAST_GAP).min(0.6 * length) / 2.0 / length;
    let (dx, dy) = ((to.0 - from.0) / length, (to.1 - from.1) / length);
    for (end, share) in [(from, 0.5 - half), (to, 0.5 + half)] {
        let (x, y) = between(from, to, share);
        pen.dashes(end, (x, y), look.stop, 3.0, 5.0);
        pen.line((x - 7.0 * dy, y + 7.0 * dx), (x + 7.0 * dy, y - 7.0 * dx), look.stop, 2.0);
    }
}

fn between(from: Point, to: Point, share: f64) -> Point {
    (from.0 + (to.0 - from.0) * share, from.1 + (to.1 - from.1) * share)
}
