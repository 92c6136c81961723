//! A time with its likely edges: how finely it is told, and who is quicker by it.

/// A time with its likely edges, in seconds: of a lap, or what one set-up gains on another.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TimeBand {
    /// Fast edge, or least gain.
    pub low_s: f64,
    /// Best estimate.
    pub time_s: f64,
    /// Slow edge, or largest gain.
    pub high_s: f64,
}

/// How finely a time is told, from the finest.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Precision {
    /// To a tenth of a second.
    Tenth,
    /// To a second.
    Second,
    /// To ten seconds.
    TenSeconds,
}

impl Precision {
    /// For a lap whose band is not worked out: that of a few minutes is wider than ten seconds either way.
    pub const WITHOUT_BAND: Self = Self::Second;

    /// The step it is told in, in seconds.
    #[must_use]
    pub const fn step_s(self) -> f64 {
        match self {
            Self::Tenth => 0.1,
            Self::Second => 1.0,
            Self::TenSeconds => 10.0,
        }
    }
}

/// How the difference between two set-ups came out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Quicker {
    /// The first, by more than the uncertainty.
    First,
    /// The second, by more than the uncertainty.
    Second,
    /// Neither: the difference lies within the uncertainty.
    TooClose,
}

/// Below this share of the best guess the nearer edge of a difference is hardly off zero. Estimate.
const NARROW: f64 = 0.1;

/// Differences below this are none, in seconds: the half of the finest step in which times are told.
pub(in crate::course) const NOTHING_S: f64 = 0.05;

impl TimeBand {
    /// Whether its best estimate, as a difference, is told as none.
    #[must_use]
    pub fn is_nothing_at_best(&self) -> bool {
        self.time_s.abs() < NOTHING_S
    }

    /// Whether, as a difference, it is none whichever edge holds.
    #[must_use]
    pub fn is_nothing(&self) -> bool {
        self.is_nothing_at_best() && self.high_s - self.low_s < 2.0 * NOTHING_S
    }

    /// How finely it may be told: to the second significant digit of half its width. An uncertainty is worth two digits at
    /// most, and a value is told to the same place (JCGM 100:2008, *Guide to the expression of uncertainty in measurement*,
    /// 7.2.6).
    ///
    /// # Example
    /// ```
    /// use gear_math::course::{Precision, TimeBand};
    /// let lap = TimeBand { low_s: 583.1, time_s: 637.5, high_s: 693.0 };
    /// assert_eq!(lap.precision(), Precision::Second);
    /// ```
    #[must_use]
    pub fn precision(&self) -> Precision {
        match (self.high_s - self.low_s) / 2.0 {
            half if half < 10.0 => Precision::Tenth,
            half if half < 100.0 => Precision::Second,
            _ => Precision::TenSeconds,
        }
    }

    /// Who is quicker, where this is what the second gains on the first: whoever gains over the whole of the band.
    #[must_use]
    pub fn quicker(&self) -> Quicker {
        match self {
            gained if gained.low_s > 0.0 => Quicker::Second,
            gained if gained.high_s < 0.0 => Quicker::First,
            _ => Quicker::TooClose,
        }
    }

    /// Whether it lies on both sides of zero: as a gain, a tie.
    #[must_use]
    pub fn is_tie(&self) -> bool {
        self.quicker() == Quicker::TooClose
    }

    /// Whether the likely edge near zero is hardly off it: less than a tenth of the best guess. Estimate.
    #[must_use]
    pub fn only_just(&self) -> bool {
        let near = self.low_s.abs().min(self.high_s.abs());
        !self.is_tie() && near < NARROW * self.time_s.abs()
    }

    /// The same band around another best estimate.
    #[must_use]
    pub fn moved(&self, by_s: f64) -> Self {
        Self { low_s: self.low_s + by_s, time_s: self.time_s + by_s, high_s: self.high_s + by_s }
    }

    /// Another best estimate between the same edges, which give way where it lies beyond them.
    ///
    /// # Example
    /// ```
    /// use gear_math::course::TimeBand;
    /// let drawn = TimeBand { low_s: 561.0, time_s: 590.0, high_s: 612.0 };
    /// assert_eq!(drawn.with_best(588.0), TimeBand { time_s: 588.0, ..drawn });
    /// assert_eq!(drawn.with_best(614.0).high_s, 614.0);
    /// ```
    #[must_use]
    pub fn with_best(&self, time_s: f64) -> Self {
        Self { low_s: self.low_s.min(time_s), time_s, high_s: self.high_s.max(time_s) }
    }

    /// The band of an estimate with changes that each move it alone: those in one direction add in quadrature.
    pub(in crate::course) fn around(time_s: f64, changes: impl Iterator<Item = f64>) -> Self {
        let (down, up) = in_quadrature(changes);
        Self { low_s: time_s - down, time_s, high_s: time_s + up }
    }
}

/// Sums of the squares of changes, downwards and upwards, each under its root.
pub(in crate::course) fn in_quadrature(changes: impl Iterator<Item = f64>) -> (f64, f64) {
    let (down, up) = changes.fold((0.0, 0.0), |(down, up): (f64, f64), change: f64| {
        if change < 0.0 { (down.hypot(change), up) } else { (down, up.hypot(change)) }
    });
    (down, up)
}

#[cfg(test)]
mod tests {
    use super::*;

    const fn band(low_s: f64, time_s: f64, high_s: f64) -> TimeBand {
        TimeBand { low_s, time_s, high_s }
    }

    #[test]
    fn whoever_gains_over_the_whole_band_is_quicker() {
        let quicker = |low_s, high_s| band(low_s, 0.5 * (low_s + high_s), high_s).quicker();
        assert_eq!(quicker(0.1, 8.0), Quicker::Second);
        assert_eq!(quicker(-8.0, -0.1), Quicker::First);
        for (low_s, high_s) in [(0.0, 8.0), (-0.1, 8.0), (-8.0, 0.0), (-8.0, 0.1), (0.0, 0.0)] {
            assert_eq!(quicker(low_s, high_s), Quicker::TooClose, "{low_s} to {high_s}");
            assert!(band(low_s, 0.0, high_s).is_tie());
        }
    }

    #[test]
    fn what_is_told_as_zero_is_nothing() {
        let nothing = |low_s, time_s, high_s| {
            let gained = band(low_s, time_s, high_s);
            (gained.is_nothing_at_best(), gained.is_nothing())
        };
        assert_eq!(nothing(-0.04, 0.01, 0.04), (true, true));
        assert_eq!(nothing(-0.04, -0.049, 0.07), (true, false));
        assert_eq!(nothing(0.04, 0.06, 0.08), (false, false));
    }

    #[test]
    fn a_time_is_told_no_finer_than_two_digits_of_its_doubt() {
        let told = |half: f64| band(600.0 - half, 600.0, 600.0 + half).precision();
        assert_eq!([0.0, 9.9].map(told), [Precision::Tenth; 2]);
        assert_eq!([10.0, 50.0, 99.9].map(told), [Precision::Second; 3]);
        assert_eq!([100.0, 800.0].map(told), [Precision::TenSeconds; 2]);
        assert_eq!(band(0.0, 0.0, 19.0).precision(), Precision::Tenth, "half the width counts");
        for precision in [Precision::Tenth, Precision::Second, Precision::TenSeconds] {
            let half = 99.0 * precision.step_s();
            assert!(told(half) <= precision || half > 100.0 * precision.step_s());
        }
    }

    #[test]
    fn changes_add_in_quadrature_by_direction() {
        assert_eq!(in_quadrature([3.0, -1.0, 4.0].into_iter()), (1.0, 5.0));
        assert_eq!(TimeBand::around(20.0, [3.0, -1.0, 4.0].into_iter()), band(19.0, 20.0, 25.0));
        assert_eq!(TimeBand::around(20.0, core::iter::empty()), band(20.0, 20.0, 20.0));
    }

    #[test]
    fn an_edge_close_to_zero_is_only_just_off_it() {
        assert!(band(0.49, 5.0, 9.0).only_just() && band(-9.0, -5.0, -0.49).only_just());
        assert!(!band(0.5, 5.0, 9.0).only_just() && !band(-9.0, -5.0, -0.5).only_just());
        assert!(!band(-0.1, 5.0, 9.0).only_just(), "a tie is not more than the uncertainty at all");
    }

    #[test]
    fn a_band_moves_as_a_whole() {
        assert_eq!(band(-1.0, 2.0, 5.0).moved(-3.0), band(-4.0, -1.0, 2.0));
    }
}
