//! What moves the end of riding.

use crate::side::Side;
use gear_math::order::ascending;
use gear_math::rider::{TornadoBar, Uncertain};

/// Ends of riding closer than this are the same, points of gradient; so are speeds, km/h.
pub(crate) const STILL: f64 = 0.05;

/// One input moved, and what it does to both set-ups.
#[derive(Debug, Clone, Copy)]
pub struct Swing {
    /// The input.
    pub input: Uncertain,
    /// A and B.
    pub bars: [TornadoBar; 2],
}

impl Swing {
    /// Whether it moves the end of riding of a side at all.
    #[must_use]
    pub fn moves(&self, side: Side) -> bool {
        self.bars[side as usize].swing_points >= STILL
    }
}

/// A's and B's tornado bars side by side, the widest first.
pub(crate) fn swings([of_a, of_b]: &[Vec<TornadoBar>; 2]) -> Vec<Swing> {
    let swing = |a: &TornadoBar| {
        let b = of_b.iter().find(|b| b.input == a.input)?;
        Some(Swing { input: a.input, bars: [*a, *b] })
    };
    let mut swings: Vec<Swing> = of_a.iter().filter_map(swing).collect();
    let width = |swing: &Swing| swing.bars[0].swing_points.max(swing.bars[1].swing_points);
    ascending(&mut swings, |swing| -width(swing));
    swings
}
