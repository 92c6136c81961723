//! The fastest even speed that a budget allows in a gear.

use crate::rider::account::EffortAccount;
use crate::rider::limits::Reason;
use crate::rider::resistance::Resistance;
use crate::solve::{halved, lowest};

/// Speeds are looked at from the fastest down, each this share of the one before. Estimate, because the speeds that a gear can be
/// held at lie in one stretch; where it is narrower than a step, its place is searched for.
const STEP: f64 = 0.96;
/// Halvings of such a step that leave rounding.
const HALVINGS: u32 = 48;
/// Thirds cut off two steps about the easiest speed: what is left is a millionth of it.
const THIRDS: u32 = 28;
/// Speeds at which the cost of a metre is looked at, in equal ratios, and how often the two about the least are cut: what is left is
/// a millionth of it.
const LOOKED_AT: i32 = 40;
const CUTS: u32 = 26;
/// Speeds that are held against a cost, each so much faster than the one before, which overlooks a few thousandths of the cost; and
/// the fastest of them, over the slowest that may do: nobody pays twice the time for a charge.
const FINE: f64 = 1.05;
const DEAREST: f64 = 3.0;

/// One slope, ridden evenly.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pace<'a> {
    pub(super) account: &'a EffortAccount,
    pub(super) resistance: Resistance,
    /// What may be charged for a metre, in J.
    pub(super) budget_per_m: f64,
    /// Slowest speed that counts as riding, and the fastest that grip allows, in m/s.
    pub(super) slowest: f64,
    pub(super) fastest: f64,
}

/// A metre at a speed.
#[derive(Debug, Clone, Copy)]
pub(super) struct Metre {
    /// The speed, in m/s.
    pub(super) speed: f64,
    /// Time and charge, this at its price, in s.
    pub(super) cost: f64,
    /// What of that is charge, in J.
    pub(super) charge_j: f64,
}

impl Pace<'_> {
    /// The same with so much to spend on a metre, in J.
    pub(super) const fn spending(self, budget_per_m: f64) -> Self {
        Self { budget_per_m, ..self }
    }

    /// Power at the crank that holds a speed, in W.
    pub(super) fn power(&self, speed: f64) -> f64 {
        (self.resistance.force(speed) * speed / self.resistance.efficiency).max(0.0)
    }

    /// What a second at a speed takes from the reserve, in W, in a gear of so many metres a turn.
    pub(super) fn charge(&self, speed: f64, metres: f64) -> f64 {
        self.account.charge_w(self.power(speed), 60.0 * speed / metres)
    }

    /// The fastest speed that the budget allows in a gear; `None` when it allows none that counts as riding.
    pub(super) fn fastest_in(&self, metres: f64) -> Option<f64> {
        let top = self.top(metres);
        let (mut above, mut easiest) = (top, (0.0, top));
        while above >= self.slowest {
            let room = self.room(above, metres);
            if room >= 1.0 {
                return Some(self.fastest_between(above, (above / STEP).min(top), metres));
            }
            if room > easiest.0 {
                easiest = (room, above);
            }
            above *= STEP;
        }
        self.fastest_about(easiest.1, top, metres)
    }

    /// A metre at the speed at which it costs least in a gear within the budget.
    pub(super) fn cheapest_in(&self, metres: f64, price: f64) -> Option<Metre> {
        self.cheapest(self.top(metres), price, |speed| self.charge(speed, metres))
    }

    /// The same in a gear that suits.
    pub(super) fn cheapest_suited(&self, price: f64) -> Option<Metre> {
        self.cheapest(self.fastest, price, |speed| self.charge_suited(speed))
    }

    /// What a second at a speed takes from the reserve in a gear that suits, in W.
    pub(super) fn charge_suited(&self, speed: f64) -> f64 {
        let power = self.power(speed);
        self.account.charge_w(power, self.account.suited_rpm(power))
    }

    fn cheapest(&self, top: f64, price: f64, charge: impl Fn(f64) -> f64) -> Option<Metre> {
        let cost = |speed: f64| match charge(speed) {
            charge if charge > self.budget_per_m * speed => f64::INFINITY,
            charge => (1.0 + price * charge.max(0.0)) / speed,
        };
        let speed = (self.slowest <= top).then(|| lowest((self.slowest, top), LOOKED_AT, CUTS, cost))?;
        let metre = Metre { speed, cost: cost(speed), charge_j: charge(speed) / speed };
        metre.cost.is_finite().then_some(metre)
    }

    /// Whether some speed in a gear costs less for a metre, in time and charge, than `cost`, within the budget.
    pub(super) fn is_worth_it_in(&self, metres: f64, price: f64, cost: f64) -> bool {
        let top = self.top(metres);
        let mut speed = self.slowest;
        while speed <= top.min(DEAREST * self.slowest) {
            let most = self.budget_per_m.min((cost - 1.0 / speed) / price);
            if self.charge(speed, metres) <= most * speed {
                return true;
            }
            speed *= FINE;
        }
        false
    }

    /// The fastest speed that grip and legs allow in a gear.
    fn top(&self, metres: f64) -> f64 {
        self.fastest.min(self.account.fastest_rpm() * metres / 60.0)
    }

    /// Whether the budget allows the slowest speed in a gear.
    pub(super) fn holds_slowest_in(&self, metres: f64) -> bool {
        let top = self.top(metres);
        self.slowest <= top && self.room(self.slowest, metres) >= 1.0
    }

    /// Whether it allows a faster one, where the slowest is not allowed: none where faster is harder already.
    pub(super) fn holds_faster_in(&self, metres: f64) -> bool {
        let is_easier = self.room(self.slowest / STEP, metres) > self.room(self.slowest, metres);
        is_easier && self.fastest_in(metres).is_some()
    }

    /// The fastest speed that the budget allows in a gear that suits it, whatever gears there are: at the preferred cadence, or at
    /// that of the peak power where it is lower.
    pub(super) fn fastest_suited(&self) -> Option<f64> {
        let suits = |speed: f64| {
            let power = self.power(speed);
            self.account.felt_w(self.budget_per_m * speed, self.account.suited_rpm(power)) >= power
        };
        let is_ridden = self.slowest <= self.fastest && suits(self.slowest);
        is_ridden.then(|| halved(self.slowest, self.fastest, HALVINGS, suits).0)
    }

    fn fastest_between(&self, held: f64, above: f64, metres: f64) -> f64 {
        halved(held, above, HALVINGS, |speed| self.room(speed, metres) >= 1.0).0
    }

    /// The same within a step of the easiest of the speeds looked at, none of which is held.
    fn fastest_about(&self, speed: f64, top: f64, metres: f64) -> Option<f64> {
        let above = (speed / STEP).min(top);
        let (mut low, mut high) = ((speed * STEP).max(self.slowest), above);
        for _ in 0..THIRDS {
            let third = (high - low) / 3.0;
            let is_rising = self.room(low + third, metres) < self.room(high - third, metres);
            (low, high) = if is_rising { (low + third, high) } else { (low, high - third) };
        }
        (low <= top && self.room(low, metres) >= 1.0).then(|| self.fastest_between(low, above, metres))
    }

    /// What allows no riding, where a gear that suits would or would not.
    pub(super) fn hindrance(&self, would_suit: bool) -> Reason {
        match would_suit {
            true => Reason::Gear,
            false if self.fastest < self.slowest => Reason::Grip,
            false => Reason::Balance,
        }
    }

    /// Power that the budget allows at a speed, over the power that it takes, what cadence costs included.
    fn room(&self, speed: f64, metres: f64) -> f64 {
        let (power, rpm) = (self.power(speed), 60.0 * speed / metres);
        self.account.felt_w(self.budget_per_m * speed, rpm) / (power * self.account.factor(power, rpm))
    }
}
