//! What it is worth to be somewhere: cost to go by place, gear and speed.

/// A value that stands for what cannot be.
pub(super) const NEVER: f64 = 1e5;

/// Cost to go, linear in speed squared between nodes.
#[derive(Debug, Clone, Default)]
pub(super) struct Field {
    pub(super) nodes: usize,
    pub(super) gears: usize,
    pub(super) speeds: Vec<f64>,
    pub(super) values: Vec<f64>,
    pub(super) foot: Vec<f64>,
}

/// The values of one gear at one place.
#[derive(Debug, Clone, Copy)]
pub(super) struct View<'a> {
    pub(super) speeds: &'a [f64],
    pub(super) values: &'a [f64],
}

impl Field {
    pub(super) fn new(nodes: usize, gears: usize, ranges: &[(f64, f64)]) -> Self {
        let mut speeds = Vec::with_capacity(nodes * ranges.len());
        for &(low, high) in ranges {
            let ratio = (high / low).powf(1.0 / (nodes - 1) as f64);
            let mut speed = low;
            for _ in 1..nodes {
                speeds.push(speed);
                speed *= ratio;
            }
            speeds.push(high);
        }
        let places = ranges.len();
        Self { nodes, gears, speeds, values: vec![NEVER; nodes * gears * places], foot: vec![NEVER; places] }
    }

    #[inline(always)]
    pub(super) fn speeds(&self, at: usize) -> &[f64] {
        &self.speeds[at * self.nodes..(at + 1) * self.nodes]
    }

    #[inline(always)]
    pub(super) fn view(&self, at: usize, gear: usize) -> View<'_> {
        let from = (at * self.gears + gear) * self.nodes;
        View { speeds: self.speeds(at), values: &self.values[from..from + self.nodes] }
    }

    pub(super) fn last(&self) -> usize {
        self.foot.len() - 1
    }
}

impl View<'_> {
    /// The piece in which a speed lies, looked for from a guess.
    #[inline(always)]
    pub(super) fn piece(&self, speed: f64, mut piece: usize) -> usize {
        let last = self.speeds.len() - 2;
        piece = piece.min(last);
        while piece < last && speed > self.speeds[piece + 1] {
            piece += 1;
        }
        while piece > 0 && speed < self.speeds[piece] {
            piece -= 1;
        }
        piece
    }

    /// Change of value per m²/s².
    #[inline(always)]
    pub(super) fn slope(&self, piece: usize) -> f64 {
        let (low, high) = (self.speeds[piece], self.speeds[piece + 1]);
        (self.values[piece + 1] - self.values[piece]) / (high * high - low * low)
    }

    #[inline(always)]
    pub(super) fn at(&self, speed: f64, piece: usize) -> f64 {
        let low = self.speeds[piece];
        self.values[piece] + self.slope(piece) * (speed * speed - low * low)
    }

    pub(super) fn holds(&self, speed: f64) -> bool {
        speed >= self.speeds[0] - 1e-9 && speed <= self.speeds[self.speeds.len() - 1] + 1e-9
    }

    /// Value at any speed within.
    pub(super) fn value(&self, speed: f64, guess: usize) -> f64 {
        if self.holds(speed) { self.at(speed, self.piece(speed, guess)) } else { NEVER }
    }
}

impl Field {
    /// Values at the end of the first pass: speed for what it is worth.
    pub(super) fn begin(&mut self, price: f64, mass: f64) {
        let last = self.last();
        self.foot[last] = 0.0;
        for gear in 0..self.gears {
            for node in 0..self.nodes {
                let speed = self.speeds[last * self.nodes + node];
                let slot = (last * self.gears + gear) * self.nodes + node;
                self.values[slot] = -price * 0.5 * mass * speed * speed;
            }
        }
    }

    /// Puts the values at the line to the end, from nothing.
    pub(super) fn repeat(&mut self) {
        let (last, size) = (self.last(), self.gears * self.nodes);
        let base = self.values[..size].iter().copied().fold(NEVER, f64::min);
        for slot in 0..size {
            self.values[last * size + slot] = self.values[slot] - base;
        }
        self.foot[last] = self.foot[0] - base;
    }
}
