//! How finely the quickest lap is looked for.

/// How finely the quickest lap is looked for. The time is always that of the lap as it would be ridden by the plan found, so that
/// a coarser search finds a poorer plan, not a wrong time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fineness {
    /// Longest step, m.
    pub(super) step_m: f64,
    /// Speeds looked at in every place while gears are changed for nothing.
    pub(super) speeds: usize,
    /// Speeds looked at while gears are chosen.
    pub(super) near_speeds: usize,
    /// How far those lie from the plan found before, as a share; the whole range without.
    pub(super) reach: Option<f64>,
    /// Slowest and fastest crank in which a rider pedals, over that of the gear that suits best.
    pub(super) cranks: [f64; 2],
    /// Way looked ahead over before the first lap is planned, m.
    pub(super) ahead_m: f64,
    /// Most prices tried with free gears, and with gears chosen.
    pub(super) prices: [usize; 2],
    /// How far from the budget the charge may stay, as a share of time times sustainable power.
    pub(super) near: f64,
}

impl Fineness {
    /// By how much laps of the [quick](Self::QUICK) search were behind those of the [fine](Self::FINE) one, in the mean and at worst
    /// of 30 laps on which it was not made, in s. What lies between two such laps is off by less only as far as both miss the same.
    pub const QUICK_BEHIND_S: [f64; 2] = [0.6, 1.8];
    /// Steps of 5 m, for whoever waits: within 0.3 s of the [fine](Self::FINE) search on the courses that it was made on, and
    /// [behind it](Self::QUICK_BEHIND_S) by 0.6 s in the mean and 1.8 s at worst on 30 others.
    pub const QUICK: Self = Self {
        step_m: 5.0,
        speeds: 20,
        near_speeds: 8,
        reach: Some(0.25),
        cranks: [0.72, 1.45],
        ahead_m: 400.0,
        prices: [3, 4],
        near: 0.007,
    };
    /// Steps of 8 m, for laps of which only the spread counts: what one bike gains on another is as close to fine plans as in
    /// quick ones, in half the time.
    pub const DRAWN: Self = Self {
        step_m: 8.0,
        speeds: 16,
        near_speeds: 7,
        prices: [2, 3],
        near: 0.012,
        ahead_m: 300.0,
        ..Self::QUICK
    };
    /// Steps of 2 m, for checks.
    pub const FINE: Self = Self {
        step_m: 2.0,
        speeds: 40,
        near_speeds: 24,
        reach: Some(0.35),
        cranks: [0.5, 2.0],
        ahead_m: 1200.0,
        prices: [5, 6],
        near: 0.0008,
    };
    /// The same over every speed in every gear, which takes ten times as long, to see whether the others miss a plan.
    pub const WHOLE: Self = Self {
        speeds: 80,
        near_speeds: 80,
        reach: None,
        cranks: [0.4, 2.5],
        prices: [8, 7],
        near: 0.0005,
        ..Self::FINE
    };
}
