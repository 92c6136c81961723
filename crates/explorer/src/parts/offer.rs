//! What is worth buying beside a box.

use crate::number::is_level;
use gear_math::Circumference;
use gear_math::course::TimeBand;
use gear_math::parts::Purchase;

/// A part to buy, put in words where it was found, and what comes of it.
#[derive(Debug, Clone, PartialEq)]
pub struct Offer {
    /// Which part, and what it goes together with.
    pub said: String,
    /// Time of the lap, s.
    pub time_s: f64,
    /// What it gains over the best of the box; none where nothing in the box goes together.
    pub gained: Option<TimeBand>,
    /// Development of the lowest gear that is used then, m.
    pub lowest_m: f64,
}

impl Offer {
    /// How many [`numbers`](Self::numbers) there are.
    pub const NUMBERS: usize = 5;

    /// A purchase that was put in words.
    #[must_use]
    pub fn of(purchase: &Purchase, said: String, wheel: Circumference) -> Self {
        let fit = &purchase.fit;
        Self {
            said,
            time_s: purchase.time_s,
            gained: purchase.gained,
            lowest_m: fit.avoid.lowest(&fit.drivetrain).development(wheel).m(),
        }
    }

    /// What is no text of it, as numbers.
    #[must_use]
    pub fn numbers(&self) -> [f64; Self::NUMBERS] {
        let [low, best, high] = self.gained.map_or([f64::NAN; 3], |it| [it.low_s, it.time_s, it.high_s]);
        [self.time_s, low, best, high, self.lowest_m]
    }

    /// From its text and its numbers; none of other numbers than those.
    #[must_use]
    pub fn from_parts(said: String, numbers: &[f64]) -> Option<Self> {
        let &[time_s, low_s, best_s, high_s, lowest_m] = numbers else { return None };
        let gained = best_s.is_finite().then_some(TimeBand { low_s, time_s: best_s, high_s });
        Some(Self { said, time_s, gained, lowest_m })
    }

    /// Whether it gains more than the doubt.
    #[must_use]
    pub fn is_worth_it(&self) -> bool {
        self.gained.is_none_or(|it| !it.is_tie() && !is_level(it.low_s, it.precision()))
    }
}
