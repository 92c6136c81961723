//! Up to which slope riding pays on a climb of some length and a budget of effort.

use crate::rider::account::EffortAccount;
use crate::rider::ground::Ground;
use crate::rider::quantity::{Climb, ClimbLength, EffortBudget, SecondsLost, Slope};
use crate::rider::ride_or_run::RideOrRun;
use crate::rider::spending::Spending;
use crate::solve::halved;

/// Halvings of the model's gradients that leave a twentieth of a per cent, a fifth of what a page shows.
const HALVINGS: u32 = 10;

impl RideOrRun {
    /// The slope up to which riding a climb of this length is quicker than going up on foot, getting off and on included, both on
    /// the same [budget](Self::paced): zero where it is not on the level already, `None` where it is up to 45 %.
    ///
    /// # Formula
    /// The i at which t_ride(i) = t_foot(i) + t₀; where strength, grip or balance allow no riding, t_ride is endless.
    #[must_use]
    pub fn paced_crossover(
        &self,
        account: &EffortAccount,
        ground: &Ground,
        length: ClimbLength,
        budget: EffortBudget,
        lost: SecondsLost,
    ) -> Option<Slope> {
        self.paced_crossover_at(account, ground, length, &budget.into(), lost)
    }

    /// The same with what a joule is worth [spent](Self::paced_at) on either way.
    #[must_use]
    pub fn paced_crossover_at(
        &self,
        account: &EffortAccount,
        ground: &Ground,
        length: ClimbLength,
        spending: &Spending,
        lost: SecondsLost,
    ) -> Option<Slope> {
        let pays = |percent: f64| self.pays(account, ground, Climb::nearest(percent), length, spending, lost);
        let (level, steepest) = (Climb::LEVEL.percent(), Climb::LIMITS.max);
        if !pays(level) {
            return Some(Slope::new(0.0));
        }
        let is_crossed = !pays(steepest);
        is_crossed.then(|| Slope::new(halved(level, steepest, HALVINGS, pays).0 / 100.0))
    }
}
