//! The draws by which a band is found.

use crate::course::doubt::draw::{DOUBTS, Draw};

/// Where the sequence of numbers begins: of the first thousand seeds the one whose doubts hang together least, no two of them
/// with a correlation above 0.24.
const SEED: u64 = 390;

/// The draws by which a band is found: always the same ones, and the same for every bike, so that two of them differ by their
/// gears alone.
///
/// # Formula
/// A Latin hypercube (McKay, Beckman & Conover 1979, *Technometrics* 21:239–245, from memory): the range of every doubt is cut into as many
/// equal parts as there are draws, each draw has the middle of one part of each, and every part is drawn once. Which goes with
/// which is shuffled by splitmix64 (Steele, Lea & Flood 2014, *OOPSLA*, from memory), so that the first few draws are a sample as well.
///
/// # Example
/// ```
/// use gear_math::course::Draws;
/// let draws = Draws::usual();
/// let mean = draws.all().map(|draw| draw.rolling).sum::<f64>() / Draws::COUNT as f64;
/// assert!((mean - 1.0).abs() < 1e-12);
/// assert!(draws.draw(0) != draws.draw(1) && draws.draw(0) == Draws::usual().draw(0));
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Draws {
    parts: [[u8; Self::COUNT]; DOUBTS],
    width: f64,
}

impl Draws {
    /// 64: their 5th percentile lies between the 2nd and the 8th of as many plain draws, and workers do them in seconds.
    pub const COUNT: usize = 64;

    /// The usual draws.
    #[must_use]
    pub fn usual() -> Self {
        Self::as_wide(1.0)
    }

    /// The same draws with every range so many times as wide about its middle: 0 for none.
    #[must_use]
    pub fn as_wide(width: f64) -> Self {
        let mut numbers = Numbers(SEED);
        Self { parts: core::array::from_fn(|_| numbers.shuffled()), width }
    }

    /// A draw by its number, counted from 0; numbers from [`COUNT`](Self::COUNT) on begin again.
    #[must_use]
    pub fn draw(&self, number: usize) -> Draw {
        let middle = |part: u8| (f64::from(part) + 0.5) / Self::COUNT as f64;
        Draw::at(&self.parts.map(|parts| middle(parts[number % Self::COUNT])), self.width)
    }

    /// All draws, in order.
    pub fn all(&self) -> impl Iterator<Item = Draw> + '_ {
        (0..Self::COUNT).map(|number| self.draw(number))
    }
}

/// A sequence of numbers that looks like chance.
#[derive(Debug)]
struct Numbers(u64);

impl Numbers {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// The parts of a range, each once, in a new order.
    fn shuffled(&mut self) -> [u8; Draws::COUNT] {
        let mut parts = core::array::from_fn(|part| part as u8);
        for last in (1..Draws::COUNT).rev() {
            parts.swap(last, (self.next() % (last as u64 + 1)) as usize);
        }
        parts
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The first numbers from 0, as the method's authors give them.
    #[test]
    fn numbers_are_those_of_the_method() {
        let mut numbers = Numbers(0);
        assert_eq!([numbers.next(), numbers.next()], [0xe220_a839_7b1d_cdaf, 0x6e78_9e6a_a1b9_65f4]);
    }

    #[test]
    fn every_part_of_every_range_is_drawn_once() {
        for parts in Draws::usual().parts {
            let mut sorted = parts;
            sorted.sort_unstable();
            assert!(sorted.iter().enumerate().all(|(at, part)| at == usize::from(*part)));
        }
    }

    #[test]
    fn draws_stay_as_they_are() {
        let parts = Draws::usual().parts;
        assert_eq!(parts[0][..6], [32, 39, 54, 21, 58, 11]);
        assert_eq!(parts[DOUBTS - 1][..6], [59, 61, 25, 57, 42, 50]);
    }

    #[test]
    fn no_two_doubts_hang_together() {
        let parts = Draws::usual().parts.map(|parts| parts.map(|part| f64::from(part) - 31.5));
        let product = |a: &[f64], b: &[f64]| a.iter().zip(b).map(|(a, b)| a * b).sum::<f64>();
        for (at, one) in parts.iter().enumerate() {
            for other in &parts[..at] {
                assert!(product(one, other).abs() < 0.24 * product(one, one));
            }
        }
    }

    /// A range about the model's own values: of efficiency 0.21 to 0.25, and so on.
    #[test]
    fn ranges_are_as_wide_as_is_said() {
        type Of = fn(&Draw) -> f64;
        let edges = |of: Of| {
            let values = || Draws::usual().all().map(|draw| of(&draw)).collect::<Vec<_>>();
            [values().into_iter().fold(f64::INFINITY, f64::min), values().into_iter().fold(-9.0, f64::max)]
        };
        let usual: [(Of, f64, f64); DOUBTS] = [
            (|it| 0.23 + it.efficiency, 0.21, 0.25),
            (|it| it.rolling, 0.7, 1.3),
            (|it| it.foot, 0.5, 1.5),
            (|it| 1.2 + it.load, 1.0, 1.5),
            (|it| it.person, 0.92, 1.08),
            (|it| 0.96 + it.drivetrain, 0.94, 0.976),
            (|it| 14.0 * it.peak, 11.0, 18.0),
            (|it| 0.4 * it.cadence_cost, 0.2, 1.0),
            (|it| 0.5 + it.repaid, 0.3, 0.7),
            (|it| 0.5 + it.lasting, 0.4, 0.6),
            (|it| 3.0 * it.mounting, 1.0, 6.0),
            (|it| it.grip, 0.8, 1.2),
            (|it| it.sustained, 0.97, 1.03),
            (|it| it.pins.mm(), 0.1, 0.3),
        ];
        for (at, (of, low, high)) in usual.into_iter().enumerate() {
            let half_a_part = 0.5 * (high - low) / 64.0;
            let [least, most] = edges(of);
            assert!((least - half_a_part - low).abs() < 1e-9, "{at}: {least}");
            assert!((most + half_a_part - high).abs() < 1e-9, "{at}: {most}");
        }
    }

    #[test]
    fn widths_multiply_about_the_middle() {
        let [none, usual, twice] = [0.0, 1.0, 2.0].map(|width| Draws::as_wide(width).draw(5));
        assert!(Draws::as_wide(0.0).all().all(|draw| draw == none));
        assert!((twice.mounting + none.mounting - 2.0 * usual.mounting).abs() < 1e-12);
        assert!((none.mounting - 3.5 / 3.0).abs() < 1e-12);
    }
}
