//! Pairing two sorted lists of gears.

use crate::GearStep;

/// Worth of a pairing: more pairs first, then less total difference.
#[derive(Clone, Copy, PartialEq)]
struct Worth {
    pairs: usize,
    difference: f64,
}

const NOTHING: Worth = Worth { pairs: 0, difference: 0.0 };

impl Worth {
    fn better(self, other: Self) -> Self {
        let is_worse =
            self.pairs < other.pairs || self.pairs == other.pairs && self.difference > other.difference;
        if is_worse { other } else { self }
    }

    fn with(self, step: GearStep) -> Self {
        Self { pairs: self.pairs + 1, difference: self.difference + step.percent() }
    }
}

/// Pairs `a` places of one list with `b` of another, both in rising order, and gives the pairs in that order.
///
/// `step` says how far two places are apart when they may be paired, `is_lower` whether the first is the lower.
/// Of all pairings that keep the order, the one with most pairs is taken, and of those the one with the least
/// total difference: dynamic programming over the ends of both lists. Exchanging the lists exchanges each pair.
pub(super) fn pair_up(
    (a, b): (usize, usize),
    step: impl Fn(usize, usize) -> Option<GearStep>,
    is_lower: impl Fn(usize, usize) -> bool,
) -> Vec<(usize, usize, GearStep)> {
    let width = b + 1;
    let mut best = vec![NOTHING; (a + 1) * width];
    for i in (0..a).rev() {
        for j in (0..b).rev() {
            let skipped = best[(i + 1) * width + j].better(best[i * width + j + 1]);
            let paired = step(i, j).map_or(NOTHING, |step| best[(i + 1) * width + j + 1].with(step));
            best[i * width + j] = paired.better(skipped);
        }
    }
    let mut pairs = Vec::with_capacity(best[0].pairs);
    let (mut i, mut j) = (0, 0);
    while i < a && j < b {
        let after = best[(i + 1) * width + j + 1];
        match step(i, j) {
            Some(step) if after.with(step) == best[i * width + j] => {
                pairs.push((i, j, step));
                (i, j) = (i + 1, j + 1);
            }
            // The lower of two that are not paired finds no better partner further up, so it is the one to leave.
            _ if is_lower(i, j) => i += 1,
            _ => j += 1,
        }
    }
    pairs
}
