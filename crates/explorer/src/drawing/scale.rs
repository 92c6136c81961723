//! From values to CSS pixels, and labels that keep clear of one another.

use crate::units::{self, Told};

/// A scale along one direction of a picture. Its range is finite and never empty.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Scale {
    low: f64,
    high: f64,
    from: f64,
    to: f64,
    logarithmic: bool,
}

impl Scale {
    /// A scale with even spacing that puts `low` at pixel `from` and `high` at pixel `to`.
    #[must_use]
    pub(crate) fn even((low, high): (f64, f64), (from, to): (f64, f64)) -> Self {
        let (low, high) = opened(low, high, 1e-6);
        Self { low, high, from, to, logarithmic: false }
    }

    /// The same with equal ratios at equal distances; for positive values.
    #[must_use]
    pub(crate) fn ratio((low, high): (f64, f64), (from, to): (f64, f64)) -> Self {
        let (low, high) = opened(low.max(1e-6).ln(), high.max(1e-6).ln(), 1e-6);
        Self { low, high, from, to, logarithmic: true }
    }

    /// The pixel that its highest value stands at.
    #[must_use]
    pub(crate) const fn end(&self) -> f64 {
        self.to
    }

    /// Where `value` stands, unclipped.
    #[must_use]
    pub(crate) fn at(&self, value: f64) -> f64 {
        let value = if self.logarithmic { value.max(1e-9).ln() } else { value };
        self.from + (value - self.low) / (self.high - self.low) * (self.to - self.from)
    }

    /// The round values of `choices` that lie on this scale, at least `apart` pixels from one another.
    #[must_use]
    pub(crate) fn ticks(&self, choices: &[f64], apart: f64) -> Vec<f64> {
        let (start, end) = (self.from.min(self.to) - 0.5, self.from.max(self.to) + 0.5);
        let mut last: Option<f64> = None;
        choices
            .iter()
            .copied()
            .filter(|&value| {
                let at = self.at(value);
                let clear = last.is_none_or(|last| (at - last).abs() >= apart);
                let kept = clear && (start..=end).contains(&at);
                if kept {
                    last = Some(at);
                }
                kept
            })
            .collect()
    }

    /// The same scale for values told in another unit.
    #[must_use]
    pub(crate) fn told(&self, unit: Told) -> Self {
        let value = |end: f64| if self.logarithmic { unit.value(end.exp()).ln() } else { unit.value(end) };
        Self { low: value(self.low), high: value(self.high), ..*self }
    }

    /// Developments in the unit that tells them, and where they stand: those of `metres`, or round ones in another unit.
    #[must_use]
    pub(crate) fn developments(&self, metres: &[f64], apart: f64) -> Vec<(f64, f64)> {
        let unit = units::developments();
        let scale = self.told(unit);
        let ticks =
            if unit.is_other() { scale.ticks(&round_values(), apart) } else { scale.ticks(metres, apart) };
        ticks.into_iter().map(|tick| (tick, scale.at(tick))).collect()
    }

    /// Round values at even distances of at least `apart` pixels: multiples of 1, 2 or 5 of a power of ten.
    #[must_use]
    pub(crate) fn even_ticks(&self, apart: f64) -> Vec<f64> {
        let least = apart * (self.high - self.low) / (self.to - self.from).abs().max(1.0);
        let decade = 10_f64.powf(least.log10().floor());
        let step = [1.0, 2.0, 5.0, 10.0]
            .map(|round| round * decade)
            .into_iter()
            .find(|&step| step >= least)
            .unwrap_or(least);
        let (first, last) =
            ((self.low / step - 1e-9).ceil() as i64, (self.high / step + 1e-9).floor() as i64);
        (first..=last.min(first + MOST_TICKS)).map(|count| count as f64 * step).collect()
    }
}

/// Round values for a scale with equal ratios, ascending.
pub(crate) fn round_values() -> Vec<f64> {
    let decades = [1.0, 10.0, 100.0, 1000.0].into_iter();
    decades.flat_map(|decade| ROUND.map(|round| round * decade / 10.0)).collect()
}

/// Within one decade.
const ROUND: [f64; 8] = [1.0, 1.5, 2.0, 3.0, 4.0, 5.0, 6.0, 8.0];

/// More ticks than any picture has room for.
const MOST_TICKS: i64 = 200;

/// Makes an empty or broken range a real one, so that every picture can be drawn.
fn opened(low: f64, high: f64, least: f64) -> (f64, f64) {
    if !low.is_finite() || !high.is_finite() {
        return (1.0, 2.0);
    }
    let pad = if high - low > least { 0.0 } else { 0.05 * low.abs().max(high.abs()) + least };
    (low.min(high) - pad, low.max(high) + pad)
}

/// Moves label positions apart, each as little as may be, so that neighbours are `gap` away from one another and all
/// stay between `low` and `high` as long as they fit. Positions must be ascending.
#[must_use]
pub(crate) fn spread(positions: &[f64], gap: f64, low: f64, high: f64) -> Vec<f64> {
    // Pool neighbours that collide into blocks and centre each block on the mean of what its members wanted.
    let mut blocks: Vec<(f64, usize)> = Vec::with_capacity(positions.len());
    for (index, &position) in positions.iter().enumerate() {
        blocks.push((position - index as f64 * gap, 1));
        while let [.., before, after] = blocks.as_slice() {
            if before.0 <= after.0 {
                break;
            }
            let count = before.1 + after.1;
            let mean = (before.0 * before.1 as f64 + after.0 * after.1 as f64) / count as f64;
            blocks.truncate(blocks.len() - 2);
            blocks.push((mean, count));
        }
    }
    let last = positions.len().saturating_sub(1) as f64 * gap;
    let (low, high) = (low, (high - last).max(low));
    let starts = blocks.iter().flat_map(|&(start, count)| std::iter::repeat_n(start.clamp(low, high), count));
    starts.enumerate().map(|(index, start)| start + index as f64 * gap).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_broken_range_is_opened() {
        for (low, high) in [(2.0, 2.0), (f64::NAN, 1.0), (1.0, f64::INFINITY), (3.0, 1.0), (0.0, 0.0)] {
            assert!(Scale::even((low, high), (0.0, 100.0)).at(1.5).is_finite());
            assert!(Scale::ratio((low, high), (0.0, 100.0)).at(1.5).is_finite());
        }
    }

    #[test]
    fn ends_land_on_the_pixels_given() {
        let scale = Scale::ratio((2.0, 8.0), (300.0, 0.0));
        assert!((scale.at(2.0) - 300.0).abs() < 1e-9);
        assert!((scale.at(4.0) - 150.0).abs() < 1e-9);
        assert!((scale.at(8.0)).abs() < 1e-9);
    }

    #[test]
    fn even_ticks_are_round_and_evenly_spaced() {
        assert_eq!(
            Scale::even((0.0, 80.0), (0.0, 400.0)).even_ticks(38.0),
            [0.0, 10.0, 20.0, 30.0, 40.0, 50.0, 60.0, 70.0, 80.0]
        );
        assert_eq!(Scale::even((3.2, 9.1), (500.0, 0.0)).even_ticks(90.0), [4.0, 6.0, 8.0]);
    }

    proptest! {
        #[test]
        fn even_ticks_keep_their_distance(low in -1e4..1e4f64, span in 1e-3..1e5f64, apart in 5.0..200.0f64) {
            let scale = Scale::even((low, low + span), (0.0, 700.0));
            for pair in scale.even_ticks(apart).windows(2) {
                prop_assert!(scale.at(pair[1]) - scale.at(pair[0]) >= apart - 1e-3);
            }
        }

        #[test]
        fn spread_labels_keep_their_order_and_distance(mut wanted in prop::collection::vec(0.0..500.0f64, 1..40)) {
            wanted.sort_by(f64::total_cmp);
            let placed = spread(&wanted, 13.0, 0.0, 600.0);
            for pair in placed.windows(2) {
                prop_assert!(pair[1] - pair[0] >= 13.0 - 1e-6);
            }
            prop_assert!(placed[0] >= -1e-9);
        }
    }
}
