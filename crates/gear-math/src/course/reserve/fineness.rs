//! How finely a plan is looked for.

/// How finely a plan is looked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fineness {
    /// Longest step, m.
    pub step_m: f64,
    /// Speeds at every place while gears are free.
    pub speeds: usize,
    /// Speeds at every place while gears are chosen.
    pub near_speeds: usize,
    /// How far those reach from the last plan, as a share.
    pub reach: f64,
    /// Passes with gears.
    pub passes: usize,
    /// How far N may stay from B, as a share of T CP.
    pub near_budget: f64,
    /// Most prices tried.
    pub prices: usize,
}

impl Fineness {
    /// For a page.
    pub const QUICK: Self =
        Self { step_m: 5.0, speeds: 40, near_speeds: 13, reach: 0.3, passes: 2, near_budget: 0.004, prices: 6 };
    /// For a check.
    pub const FINE: Self =
        Self { step_m: 2.0, speeds: 100, near_speeds: 80, reach: 1.0, passes: 3, near_budget: 0.0005, prices: 14 };
}
