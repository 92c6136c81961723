//! What a lap makes of a reserve.

use crate::rider::{EffortPrice, WorkReserve};

const JOULES_IN_KJ: f64 = 1e3;

/// What a lap takes from the rider's reserve, and what it leaves there.
///
/// Made by [`Lap::on_reserve`](crate::Lap::on_reserve).
#[derive(Debug, Clone, PartialEq)]
pub struct ReserveUse {
    /// What it takes from the reserve above the sustainable power, in joules.
    pub charged_j: f64,
    /// What it repays below, in joules.
    pub repaid_j: f64,
    /// Work above the sustainable power, at the crank and as much on foot, in joules.
    pub above_j: f64,
    /// What one more joule would gain, in seconds.
    pub price_s_per_j: f64,
    /// Highest power at the crank, in W.
    pub highest_power_w: f64,
    /// Time riding without pedalling, in seconds.
    pub coasting_s: f64,
    /// Power and reserve at every point of the lap's trace.
    pub trace: Vec<ReservePoint>,
}

/// Power and reserve at the end of one step.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReservePoint {
    /// Power at the crank over this step, or the power that would cost the muscles as much, in W.
    pub power_w: f64,
    /// What the reserve has been drawn down by since the line, in joules.
    pub spent_j: f64,
}

impl ReserveUse {
    /// Before the first step, at a price.
    pub(in crate::course) fn begun(price_s_per_j: f64, steps: usize) -> Self {
        Self {
            charged_j: 0.0,
            repaid_j: 0.0,
            above_j: 0.0,
            price_s_per_j,
            highest_power_w: 0.0,
            coasting_s: 0.0,
            trace: Vec::with_capacity(steps),
        }
    }

    /// What one more joule would gain, as what one climb of this lap may be [paced](crate::RideOrRun::paced_at) at.
    #[must_use]
    pub fn price(&self) -> EffortPrice {
        EffortPrice::nearest(self.price_s_per_j)
    }

    /// Up to this share of the reserve drawn at a time one price for the whole lap is safe; beyond it the order of efforts counts.
    /// Estimate: a third of the reserve changes what comes back by as much.
    pub const SAFE_SHARE: f64 = 1.0 / 3.0;

    /// Whether so much of this reserve is drawn at a time that the order of efforts, which is left aside, counts.
    #[must_use]
    pub fn is_deep(&self, reserve: WorkReserve) -> bool {
        self.deepest_j() > Self::SAFE_SHARE * JOULES_IN_KJ * reserve.kj()
    }

    /// What the lap takes from the reserve in the end, in joules.
    #[must_use]
    pub fn net_j(&self) -> f64 {
        self.charged_j - self.repaid_j
    }

    /// What the reserve is drawn down by at every point of the trace, in joules, against where it is fullest on this lap: never below
    /// zero, also where more has come back than was drawn since the line.
    pub fn drawn_j(&self) -> impl Iterator<Item = f64> + '_ {
        let fullest = self.trace.iter().fold(0.0, |least, it| f64::min(least, it.spent_j));
        self.trace.iter().map(move |it| it.spent_j - fullest)
    }

    /// The most that the reserve is drawn down by at any place of the lap beyond what it was drawn down by before, in joules.
    ///
    /// # Formula
    /// The greatest rise of what is spent from a lowest point to a later highest one, twice round, because the lap is one of many.
    #[must_use]
    pub fn deepest_j(&self) -> f64 {
        let net = self.net_j();
        let twice =
            self.trace.iter().map(|it| it.spent_j).chain(self.trace.iter().map(|it| it.spent_j + net));
        let (_, deepest) = twice
            .fold((0.0_f64, 0.0_f64), |(low, deepest), spent| (low.min(spent), deepest.max(spent - low)));
        deepest
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_drawn_is_counted_from_the_fullest_point_of_the_lap() {
        let used = |spent: &[f64]| {
            let point = |&spent_j| ReservePoint { power_w: 200.0, spent_j };
            ReserveUse { trace: spent.iter().map(point).collect(), ..ReserveUse::begun(0.0, spent.len()) }
        };
        let drawn = |spent: &[f64]| used(spent).drawn_j().collect::<Vec<f64>>();
        assert_eq!(drawn(&[-2.0, -5.0, 3.0, 0.0]), [3.0, 0.0, 8.0, 5.0]);
        assert_eq!(drawn(&[2.0, 5.0, 0.0]), [2.0, 5.0, 0.0], "fullest at the line");
        assert!(drawn(&[]).is_empty());
    }
}
