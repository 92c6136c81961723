//! How fast one goes on foot at a price of a charged joule.

use crate::course::reserve::rule::Rule;
use crate::rider::{FASTEST_ON_FOOT, FootDemand};

/// The slowest pace looked at, m/s. Estimate.
const SLOWEST: f64 = 0.2;
/// Speeds looked at in equal ratios, close enough to tell a walk from a run, and how often the stretch about the best is cut.
const LOOKED_AT: u32 = 96;
const CUTS: u32 = 20;
/// Shorter part of a golden section.
const SHORTER: f64 = 0.381_966;

/// How fast one goes on foot over a stretch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Pace {
    /// m/s.
    pub(super) speed: f64,
    /// Power at the crank that would cost the muscles as much, W.
    pub(super) power: f64,
    /// W.
    pub(super) charge: f64,
}

impl Pace {
    /// The pace at which a metre takes least of time and price together.
    ///
    /// # Formula
    /// (1 + λ h)/v least.
    pub(super) fn at(rule: &Rule<'_>, demand: &FootDemand) -> Self {
        let charge = |speed: f64| rule.account.charge_on_foot_w(demand.crank_w(speed));
        let speed = lowest(|speed| (1.0 + rule.price * charge(speed)) / speed);
        Self { speed, power: demand.crank_w(speed), charge: charge(speed) }
    }
}

fn lowest(cost: impl Fn(f64) -> f64) -> f64 {
    let ratio = (FASTEST_ON_FOOT / SLOWEST).powf(1.0 / f64::from(LOOKED_AT));
    let speeds = (0..=LOOKED_AT).map(|step| SLOWEST * ratio.powi(step as i32));
    let best = speeds.min_by(|a, b| cost(*a).total_cmp(&cost(*b))).unwrap_or(SLOWEST);
    let (mut low, mut high) = (best / ratio, (best * ratio).min(FASTEST_ON_FOOT));
    for _ in 0..CUTS {
        let part = SHORTER * (high - low);
        if cost(low + part) < cost(high - part) { high -= part } else { low += part }
    }
    low.midpoint(high)
}
