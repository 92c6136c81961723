//! The laps found at the prices tried.

use crate::course::reserve::hunt::{Hunt, SAME_S, Tried};
use crate::course::reserve::moment::{Ridden, State};

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

    /// How the last one ends.
    pub(super) fn end(&self) -> State {
        self.laps.last().map_or(State::OnFoot, |lap| lap.end)
    }

    /// One more price where the nearest lap is off by more than a power, in W, over its time: that at which both sides of a jump
    /// cost the same would find one of them again.
    pub(super) fn once_more(&self, open: f64) -> Option<f64> {
        let nearest = self.nearest();
        let is_open = self.tried(&nearest).beyond.abs() > open * nearest.time();
        is_open.then(|| self.hunt.halfway()).flatten()
    }

    /// Of the laps that are as good as the best at the price found, the one nearest to the budget.
    pub(super) fn nearest(&self) -> Ridden {
        let last = self.laps.last().map_or(0.0, |lap| lap.price);
        let price = self.hunt.even().unwrap_or(last);
        let least = self.hunt.cost(price) + SAME_S;
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
