//! What it is worth to be somewhere: the cost to go by place, gear and speed.

use crate::course::reserve::moment::State;
use crate::course::reserve::range::Range;

/// Stands for what cannot be, s.
pub(super) const NEVER: f64 = 1e5;
/// A speed that is off a node by no more is at it, m/s.
const SAME: f64 = 1e-9;

/// The lesser of two numbers. Written out because the library's looks for what is no number, which takes longer than a step may.
#[inline]
pub(super) fn lesser(a: f64, b: f64) -> f64 {
    if b < a { b } else { a }
}

/// The greater of two numbers.
#[inline]
pub(super) fn greater(a: f64, b: f64) -> f64 {
    if b > a { b } else { a }
}

/// The cost to go by place, gear and speed, in straight lines over the square of speed between nodes: energy is what the value
/// nearly follows. At each place the nodes lie in equal ratios between the slowest and the fastest speed looked at there.
#[derive(Debug, Clone)]
pub(super) struct Field {
    pub(super) nodes: usize,
    pub(super) gears: usize,
    pub(super) knots: Vec<Knot>,
    pub(super) values: Vec<f64>,
    /// The values of riding on without a shift.
    pub(super) riding: Vec<f64>,
    pub(super) foot: Vec<f64>,
}

/// A speed that is looked at, with what a straight line from it to the next over the square of speed takes.
#[derive(Debug, Clone, Copy)]
pub(super) struct Knot {
    /// m/s.
    pub(super) speed: f64,
    square: f64,
    /// One over the square of the next speed less that of this one.
    inverse: f64,
}

/// The values in one gear at one place.
#[derive(Debug, Clone, Copy)]
pub(super) struct Line<'a> {
    pub(super) knots: &'a [Knot],
    values: &'a [f64],
}

/// A speed between two nodes: the piece in which it lies, and what part of that lies below it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Within {
    pub(super) piece: usize,
    part: f64,
}

impl Field {
    pub(super) fn new(nodes: usize, gears: usize, ranges: &[Range]) -> Self {
        let mut speeds = Vec::with_capacity(nodes);
        let mut knots = Vec::with_capacity(nodes * ranges.len());
        for range in ranges {
            speeds.clear();
            speeds.extend(range.nodes(nodes));
            let above = speeds.iter().skip(1).chain(speeds.last());
            knots.extend(speeds.iter().zip(above).map(|(&speed, &above)| Knot::below(speed, above)));
        }
        let places = ranges.len();
        let never = vec![NEVER; nodes * gears * places];
        Self { nodes, gears, knots, values: never.clone(), riding: never, foot: vec![NEVER; places] }
    }

    #[inline]
    pub(super) fn knots(&self, at: usize) -> &[Knot] {
        &self.knots[at * self.nodes..(at + 1) * self.nodes]
    }

    #[inline]
    pub(super) fn range(&self, at: usize) -> [f64; 2] {
        let knots = self.knots(at);
        [knots[0].speed, knots[self.nodes - 1].speed]
    }

    #[inline]
    pub(super) fn line(&self, at: usize, gear: usize) -> Line<'_> {
        let from = (at * self.gears + gear) * self.nodes;
        Line { knots: self.knots(at), values: &self.values[from..from + self.nodes] }
    }

    /// The values of riding on in one gear at one place.
    pub(super) fn riding(&self, at: usize, gear: usize) -> Line<'_> {
        let from = (at * self.gears + gear) * self.nodes;
        Line { knots: self.knots(at), values: &self.riding[from..from + self.nodes] }
    }

    /// The end of the lap.
    pub(super) fn end(&self) -> usize {
        self.foot.len() - 1
    }

    /// Sets the values at a place: speed for its energy at a price, without mass for being on foot.
    pub(super) fn begin(&mut self, at: usize, joule_price: f64, mass: f64) {
        self.foot[at] = 0.0;
        self.set(at, |_, speed| -joule_price * 0.5 * mass * speed * speed);
    }

    /// The value of crossing the line in a state.
    pub(super) fn at_line(&self, state: State) -> f64 {
        match state {
            State::OnFoot => self.foot[0],
            State::Riding(speed, gear) => self.line(0, gear).nearest(speed),
        }
    }

    /// Puts the values at the line to the end, counted from the best of them.
    pub(super) fn repeat(&mut self) {
        let (end, size) = (self.end(), self.gears * self.nodes);
        let (first, rest) = self.values.split_at_mut(end * size);
        let base = first[..size].iter().copied().fold(NEVER, f64::min);
        rest.iter_mut().zip(first).for_each(|(last, value)| *last = *value - base);
        self.foot[end] = self.foot[0] - base;
    }

    /// Takes the values at the line of a field with free gears for those at the end.
    pub(super) fn continue_from(&mut self, free: &Self) {
        let end = self.end();
        self.foot[end] = free.foot[0];
        let line = free.line(0, 0);
        self.set(end, |_, speed| line.nearest(speed));
    }

    fn set(&mut self, at: usize, value: impl Fn(usize, f64) -> f64) {
        for gear in 0..self.gears {
            for node in 0..self.nodes {
                let speed = self.knots[at * self.nodes + node].speed;
                self.values[(at * self.gears + gear) * self.nodes + node] = value(gear, speed);
            }
        }
    }
}

impl Knot {
    fn below(speed: f64, above: f64) -> Self {
        let square = speed * speed;
        Self { speed, square, inverse: 1.0 / (above * above - square) }
    }
}

impl Line<'_> {
    #[inline]
    pub(super) fn speed(&self, node: usize) -> f64 {
        self.knots[node].speed
    }

    /// The last piece between two nodes.
    #[inline]
    pub(super) fn last(&self) -> usize {
        self.knots.len() - 2
    }

    /// The piece in which a speed lies, or which is nearest, looked for from a guess.
    #[inline]
    pub(super) fn piece(&self, speed: f64, guess: usize) -> usize {
        let last = self.last();
        let mut piece = guess.min(last);
        while piece < last && speed > self.knots[piece + 1].speed {
            piece += 1;
        }
        while piece > 0 && speed < self.knots[piece].speed {
            piece -= 1;
        }
        piece
    }

    /// Change of value per m²/s².
    #[inline]
    pub(super) fn slope(&self, piece: usize) -> f64 {
        (self.values[piece + 1] - self.values[piece]) * self.knots[piece].inverse
    }

    /// Where a speed lies in a piece, or beyond it.
    #[inline]
    pub(super) fn at(&self, speed: f64, piece: usize) -> Within {
        let Knot { square, inverse, .. } = self.knots[piece];
        Within { piece, part: (speed * speed - square) * inverse }
    }

    /// The value where a speed lies.
    #[inline]
    pub(super) fn within(&self, Within { piece, part }: Within) -> f64 {
        let (low, high) = (self.values[piece], self.values[piece + 1]);
        low + part * (high - low)
    }

    /// Where a speed lies, looked for from a guess of its piece; none where it lies outside.
    #[inline]
    pub(super) fn place(&self, speed: f64, guess: usize) -> Option<Within> {
        let [slowest, fastest] = [0, self.last() + 1].map(|node| self.speed(node));
        let holds = speed >= slowest - SAME && speed <= fastest + SAME;
        holds.then(|| self.at(speed, self.piece(speed, guess)))
    }

    /// The value at a speed, or at the nearest that is looked at.
    pub(super) fn nearest(&self, speed: f64) -> f64 {
        self.value(speed.clamp(self.speed(0), self.speed(self.last() + 1)), 0)
    }

    /// The value at a speed, looked for from a guess of its piece.
    #[inline]
    pub(super) fn value(&self, speed: f64, guess: usize) -> f64 {
        self.place(speed, guess).map_or(NEVER, |place| self.within(place))
    }
}
