//! Where running itself wins, whatever the gears.

use crate::quantity::Speed;
use crate::rider::ascent::Ascent;
use crate::rider::climb_plan::ClimbPlan;
use crate::rider::crossover::{STEEPEST, STEP, STEPS, first_slope};
use crate::rider::energy::Band;
use crate::rider::ground::Ground;
use crate::rider::on_foot::Incline;
use crate::rider::quantity::{Climb, ClimbLength, SecondsLost, Slope, Time};
use crate::rider::ride_or_run::RideOrRun;
use crate::solve::first_at_or_above_zero;

/// The gradients on which running a climb of some length, dismount and remount included, takes no longer than riding it
/// in a gear that is low enough. `None` stands for "not up to 45 %". Balance and grip are left aside as well.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RunningWins {
    /// Riding is likely quicker on every slope below; from here on it is too close to call.
    pub earliest: Option<Slope>,
    /// The crossover by the best guess. Where there is no [`latest`](Self::latest) the two curves run side by side, and it
    /// means little.
    pub gradient: Option<Slope>,
    /// Running is likely quicker on every slope from here to 45 %.
    pub latest: Option<Slope>,
}

/// A speed with its likely edges.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpeedBand {
    /// Slow edge.
    pub low: Speed,
    /// Best guess.
    pub best: Speed,
    /// Fast edge.
    pub high: Speed,
}

impl RideOrRun {
    /// Where running a climb of this length wins, with its likely edges.
    ///
    /// # Formula
    /// L/v_foot + t₀ ≤ L/v_ride, with the edges of the [`Band`] put in for v_foot.
    #[must_use]
    pub fn running_wins(&self, ground: &Ground, length: ClimbLength, lost: SecondsLost) -> RunningWins {
        let slowed = lost.s() / length.m();
        let gain = |incline: &Incline, edge: fn(Band) -> f64| {
            let speeds = self.energy.speeds(ground, incline);
            let ratio = edge(self.energy.band(&speeds, ground, incline));
            (1.0 - 1.0 / ratio) / speeds.ride - slowed
        };
        let gained = |edge: fn(Band) -> f64| first_slope(STEPS, |incline| gain(incline, edge));
        let lost_again = first_at_or_above_zero(STEP, STEPS, |down| {
            let incline = Incline::new(Climb::nearest(100.0 * (STEEPEST - down)));
            -gain(&incline, |ratio| ratio.low)
        });
        let latest = STEEPEST - lost_again.unwrap_or(STEEPEST);
        RunningWins {
            earliest: gained(|ratio| ratio.high),
            gradient: gained(|ratio| ratio.reference),
            latest: (latest < STEEPEST).then(|| Slope::new(latest)),
        }
    }
}

impl ClimbPlan {
    /// The speed over this climb on foot, dismount and remount included: who rides more slowly than that is quicker
    /// running.
    #[must_use]
    pub fn running_wins_below(&self) -> SpeedBand {
        SpeedBand::over(self.length, [self.foot_at_worst, self.foot, self.foot_at_best])
    }
}

impl Ascent {
    /// The same over a climb of this length.
    #[must_use]
    pub fn running_wins_below(&self, length: ClimbLength) -> SpeedBand {
        SpeedBand::over(length, [self.foot_at_worst, self.foot, self.foot_at_best])
    }
}

impl SpeedBand {
    fn over(length: ClimbLength, slowest_first: [Time; 3]) -> Self {
        let [low, best, high] = slowest_first.map(|time| Speed::new(length.m() / time.s()));
        Self { low, best, high }
    }
}
