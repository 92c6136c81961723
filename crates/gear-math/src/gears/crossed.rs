//! Gears that run the chain askew from one side of the bicycle to the other.

use crate::gears::drivetrain::Drivetrain;
use crate::gears::gear::Gear;
use core::fmt;

/// Which gears count as crossed in one drivetrain: common practice, scaled to the number of sprockets.
///
/// Of two or three rings, the largest is kept off the largest sprockets: one in five of them, so one of 8 or 9
/// sprockets and two of 10 to 14. The smallest is kept off the smallest sprockets: one in four, so two of 8 to 11
/// and three of 12 to 14. It loses more because there the chain may also rub the next ring. A single ring and the
/// middle one of three stand in line with the middle of the cassette and cross nothing.
///
/// Crossed gears still have to be safe: sooner or later each is engaged by mistake.
///
/// # Example
/// ```
/// use gear_math::{Drivetrain, Gear};
/// let bike = Drivetrain { chainset: "44/31".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
/// assert_eq!(bike.crossed_rule().to_string(), "44 with 32; 31 with 11 and 13");
/// assert!(bike.is_crossed(Gear::new(44, 32)?));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CrossedRule {
    drivetrain: Drivetrain,
    /// How many of the largest sprockets are crossed on the largest ring.
    pub on_largest_ring: usize,
    /// How many of the smallest sprockets are crossed on the smallest ring.
    pub on_smallest_ring: usize,
}

/// One sprocket in so many is crossed on the largest ring (common practice: the one or two largest).
const SPROCKETS_PER_CROSSED_ON_LARGEST: usize = 5;
/// One sprocket in so many is crossed on the smallest ring (common practice: the two or three smallest).
const SPROCKETS_PER_CROSSED_ON_SMALLEST: usize = 4;

impl CrossedRule {
    /// Whether `gear` is crossed.
    #[must_use]
    pub fn covers(&self, gear: Gear) -> bool {
        let Drivetrain { chainset, cassette } = &self.drivetrain;
        let at = cassette.sprockets().partition_point(|&sprocket| sprocket < gear.sprocket);
        let is_large = gear.ring == chainset.largest();
        let is_small = gear.ring == chainset.smallest();
        is_large && at + self.on_largest_ring >= cassette.sprockets().len()
            || is_small && at < self.on_smallest_ring
    }

    /// The crossed gears, those of the largest ring first.
    pub fn gears(&self) -> impl Iterator<Item = Gear> + '_ {
        self.drivetrain.gears().filter(|&gear| self.covers(gear))
    }
}

impl Drivetrain {
    /// Which of its gears count as crossed.
    #[must_use]
    pub fn crossed_rule(&self) -> CrossedRule {
        let sprockets = if self.chainset.rings().len() > 1 { self.cassette.sprockets().len() } else { 0 };
        CrossedRule {
            drivetrain: *self,
            on_largest_ring: sprockets / SPROCKETS_PER_CROSSED_ON_LARGEST,
            on_smallest_ring: sprockets / SPROCKETS_PER_CROSSED_ON_SMALLEST,
        }
    }

    /// Whether `gear` is crossed by [`crossed_rule`](Self::crossed_rule).
    #[must_use]
    pub fn is_crossed(&self, gear: Gear) -> bool {
        self.crossed_rule().covers(gear)
    }

    /// Whether `gear` may be given up where the chain hangs in it: a crossed gear of the smallest ring.
    #[must_use]
    pub fn may_be_avoided(&self, gear: Gear) -> bool {
        gear.ring == self.chainset.smallest() && self.is_crossed(gear)
    }
}

/// The rule for this drivetrain in words, such as `44 with 32; 31 with 11 and 13`, or `none`.
/// “44 with 28 and 32; 31 with 11 and 13”, or “none”.
impl fmt::Display for CrossedRule {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let gears: Vec<Gear> = self.gears().collect();
        let mut on_ring = gears.chunk_by(|a, b| a.ring == b.ring).peekable();
        if on_ring.peek().is_none() {
            return f.write_str("none");
        }
        while let Some(gears) = on_ring.next() {
            write!(f, "{} with ", gears[0].ring)?;
            for (index, gear) in gears.iter().enumerate() {
                let joint = match gears.len() - index {
                    1 => "",
                    2 => " and ",
                    _ => ", ",
                };
                write!(f, "{}{joint}", gear.sprocket)?;
            }
            f.write_str(if on_ring.peek().is_some() { "; " } else { "" })?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rule(chainset: &str, sprockets: u16) -> (usize, usize) {
        let cassette = crate::gears::cassette::Cassette::new((0..sprockets).map(|i| 11 + i)).unwrap();
        let rule = Drivetrain { chainset: chainset.parse().unwrap(), cassette }.crossed_rule();
        assert_eq!(rule.gears().count(), rule.on_largest_ring + rule.on_smallest_ring);
        (rule.on_largest_ring, rule.on_smallest_ring)
    }

    #[test]
    fn the_rule_scales_with_the_cassette() {
        assert_eq!([1, 3, 4, 5].map(|n| rule("44/31", n)), [(0, 0), (0, 0), (0, 1), (1, 1)]);
        assert_eq!([8, 9, 10, 11].map(|n| rule("44/31", n)), [(1, 2), (1, 2), (2, 2), (2, 2)]);
        assert_eq!([12, 14].map(|n| rule("44/31", n)), [(2, 3), (2, 3)]);
    }

    #[test]
    fn the_rule_reads_as_a_list() {
        let cassette = crate::gears::cassette::Cassette::new(11..=22).unwrap();
        let rule = Drivetrain { chainset: "44/31".parse().unwrap(), cassette }.crossed_rule();
        assert_eq!(rule.to_string(), "44 with 21 and 22; 31 with 11, 12 and 13");
    }

    #[test]
    fn only_the_outer_rings_cross() {
        assert_eq!(rule("42", 11), (0, 0));
        assert_eq!(rule("44/34/24", 11), (2, 2));
    }
}
