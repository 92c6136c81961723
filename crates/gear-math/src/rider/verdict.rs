//! Ride or run, on one slope.

use crate::quantity::Speed;
use crate::rider::energy::Band;
use crate::rider::gearing::Riding;
use crate::rider::limits::LimitsHeld;
use crate::rider::on_foot::Gait;
use crate::rider::quantity::Climb;

/// Ride or run, as far as can be told.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Verdict {
    /// Riding is faster even at the edge that favours going on foot.
    Ride,
    /// On foot is faster even at the edge that favours riding.
    Foot,
    /// A limit leaves no choice.
    FootForced,
    /// The uncertainty covers both.
    TooClose,
}

impl Verdict {
    /// Judges a ratio of foot over the full power's speed `ride`, on the speed that is left in the gear.
    pub(super) fn of(ratio: Band, limits: LimitsHeld, riding: &Riding, ride: f64) -> Self {
        let slowed = riding.held.map_or(1.0, |held| ride / held.m_per_s());
        let ratio = ratio.times(slowed);
        if limits.any() {
            Self::FootForced
        } else if ratio.high < 1.0 {
            Self::Ride
        } else if ratio.low > 1.0 {
            Self::Foot
        } else {
            Self::TooClose
        }
    }
}

/// The answer on one slope.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Answer {
    /// The slope.
    pub gradient: Climb,
    /// Speed of the full power in an ideal gear, whether or not the bike has it.
    pub ride: Speed,
    /// What the gears make of it.
    pub riding: Riding,
    /// The faster way on foot.
    pub foot: Speed,
    /// Whether that is running or walking.
    pub gait: Gait,
    /// Speed of running, also where walking is faster.
    pub run: Speed,
    /// Foot over [`ride`](Self::ride), gears left aside.
    pub ratio: Band,
    /// Limits that hold.
    pub limits: LimitsHeld,
    /// The rear wheel slips at the peak of a heavy pedal stroke: a warning, not a limit.
    pub slips_in_jerks: bool,
    /// The front wheel lifts at the peak of a heavy pedal stroke: a warning, not a limit.
    pub front_lifts: bool,
    /// The judgement; where the legs cannot spin fast enough, on the speed that is left.
    pub verdict: Verdict,
}

impl Answer {
    /// Whether the legs cannot spin fast enough for the full power, even in the tallest gear.
    #[must_use]
    pub fn spins_out(&self) -> bool {
        self.riding.held.is_some_and(|held| held < self.ride)
    }
}
