//! The laps found at the prices tried.

use crate::course::reserve::hunt::{Hunt, Tried};
use crate::course::reserve::moment::Ridden;

/// Costs that differ by less are one, s: rounding.
const TIE_S: f64 = 1e-6;

/// The laps found at the prices tried.
#[derive(Debug)]
pub(super) struct Laps {
    pub(super) laps: Vec<Ridden>,
    /// Laps that gears might make the best.
    pub(super) doubted: Vec<Ridden>,
    hunt: Hunt,
    budget: f64,
}

impl Laps {
    pub(super) fn new(hunt: Hunt, budget: f64) -> Self {
        Self { laps: Vec::new(), doubted: Vec::new(), hunt, budget }
    }

    /// Takes a lap and says which price to try next.
    pub(super) fn take(&mut self, lap: Ridden) -> Option<f64> {
        let next = self.hunt.next(self.tried(&lap));
        self.laps.push(lap);
        next
    }

    /// How the price changes with the charge.
    pub(super) fn slope(&self) -> f64 {
        self.hunt.slope()
    }

    /// The price at which a lap should take the budget.
    pub(super) fn price(&self) -> f64 {
        self.hunt.price()
    }

    /// Of the laps that are best at the price found, the one nearest to the budget.
    pub(super) fn nearest(&self) -> Ridden {
        let last = self.laps.last().map_or(0.0, |lap| lap.price);
        let price = self.hunt.even().unwrap_or(last);
        let least = self.hunt.cost(price) + TIE_S;
        let among = self.laps.iter().filter(|lap| self.tried(lap).cost(price) <= least);
        let beyond = |lap: &Ridden| self.tried(lap).beyond.abs();
        let nearest = among.min_by(|a, b| beyond(a).total_cmp(&beyond(b)));
        nearest.map_or(Ridden::NONE, |lap| Ridden { price, ..lap.clone() })
    }

    fn tried(&self, lap: &Ridden) -> Tried {
        let beyond = lap.net_charge() - self.budget;
        Tried { price: lap.price, time: lap.time() + lap.unclosed, beyond, reluctance: lap.reluctance }
    }
}
