//! What a climb may take from the reserve.

use crate::rider::quantity::{ClimbLength, Deficit, EffortBudget, EffortPrice, Time};

/// What one climb may take from the reserve: as much as is worth its price, and no more than a budget.
///
/// # Example
/// ```
/// use gear_math::Power;
/// use gear_math::rider::{BodyMass, CriticalPower, EffortAccount, EffortBudget, Spending, WorkReserve};
/// let effort = CriticalPower::of_body(Power::new(230.0)?, WorkReserve::USUAL, BodyMass::new(64.0)?);
/// let most = EffortBudget::new(3000.0)?;
/// let on_every_lap = Spending { price: EffortAccount::new(effort).usual_price(), most };
/// assert!((1000.0 * on_every_lap.price.s_per_j() - 2.96).abs() < 0.01, "three seconds for a kilojoule");
/// assert_eq!(Spending::from(most).most, on_every_lap.most);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spending {
    /// What a joule is worth; for nothing the whole budget is spent, since every joule saves some time.
    pub price: EffortPrice,
    /// What may be spent at most.
    pub most: EffortBudget,
}

impl EffortPrice {
    /// For nothing.
    pub const NONE: Self = Self::known(0.0);

    /// What a time is worth from the reserve; nothing where a joule costs nothing.
    #[must_use]
    pub fn buys(self, time: Time) -> Deficit {
        Deficit::new(if self == Self::NONE { 0.0 } else { time.s() / self.s_per_j() })
    }
}

impl From<EffortBudget> for Spending {
    fn from(most: EffortBudget) -> Self {
        Self { price: EffortPrice::NONE, most }
    }
}

impl Spending {
    /// What may be spent on a metre, in J, where so much is worth a price, if anything is. Nobody goes more slowly than for nothing.
    pub(super) fn per_m(&self, length: ClimbLength, worth: impl FnOnce(f64) -> Option<f64>) -> f64 {
        let most = self.most.j() / length.m();
        if self.price == EffortPrice::NONE {
            return most;
        }
        worth(self.price.s_per_j()).map_or(most, |joules| joules.clamp(0.0, most))
    }
}
