//! Pairing two sorted lists of gears.

use crate::gears::quantity::GearStep;

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
    let ends = Ends::new(a, b, &step);
    let mut pairs = Vec::with_capacity(ends.at(0, 0).pairs);
    let (mut i, mut j) = (0, 0);
    while i < a && j < b {
        match step(i, j) {
            Some(step) if ends.at(i + 1, j + 1).with(step) == ends.at(i, j) => {
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

/// The worth of the best pairing of what remains of both lists from each two places on.
struct Ends {
    best: Vec<Worth>,
    width: usize,
}

impl Ends {
    fn new(a: usize, b: usize, step: impl Fn(usize, usize) -> Option<GearStep>) -> Self {
        let width = b + 1;
        let mut ends = Self { best: vec![NOTHING; (a + 1) * width], width };
        for i in (0..a).rev() {
            for j in (0..b).rev() {
                let skipped = ends.at(i + 1, j).better(ends.at(i, j + 1));
                let paired = step(i, j).map_or(NOTHING, |step| ends.at(i + 1, j + 1).with(step));
                ends.best[i * width + j] = paired.better(skipped);
            }
        }
        ends
    }

    fn at(&self, i: usize, j: usize) -> Worth {
        self.best[i * self.width + j]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn pairs(a: &[f64], b: &[f64], within: f64) -> Vec<(usize, usize)> {
        let step =
            |i: usize, j: usize| Some(GearStep::new((a[i] - b[j]).abs())).filter(|s| s.percent() <= within);
        pair_up((a.len(), b.len()), step, |i, j| a[i] < b[j]).iter().map(|&(i, j, _)| (i, j)).collect()
    }

    #[test]
    fn pairs_do_not_cross() {
        assert_eq!(pairs(&[1.0, 3.0], &[0.0, 2.0], 3.0), [(0, 0), (1, 1)]);
    }

    #[test]
    fn the_closest_of_several_is_taken() {
        assert_eq!(pairs(&[1.0], &[0.2, 1.1, 1.9], 1.0), [(0, 1)]);
    }

    #[test]
    fn two_pairs_beat_one_closer_pair() {
        assert_eq!(pairs(&[1.0, 2.0], &[1.8, 2.9], 0.9), [(0, 0), (1, 1)]);
    }
}
