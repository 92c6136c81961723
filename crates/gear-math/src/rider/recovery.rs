//! How a drawn reserve fills again: three forms, because which one holds is a choice, not a fact.

use crate::rider::effort::CriticalPower;
use crate::rider::quantity::{Deficit, EffortTime, PowerDemand, RepaidShare};

impl Deficit {
    /// A full reserve.
    pub const NONE: Self = Self::new(0.0);
}

/// A stretch of time at one power.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bout {
    /// The power.
    pub power: PowerDemand,
    /// How long.
    pub time: EffortTime,
}

/// How the reserve fills below the sustainable power. After a few bouts the forms differ by thousands of joules.
///
/// # Example
/// ```
/// use gear_math::Power;
/// use gear_math::rider::{
///     Bout, CriticalPower, Deficit, EffortTime, PeakPower, Recovery, RepaidShare, WorkReserve,
/// };
/// let rider = CriticalPower::new(Power::new(230.0)?, WorkReserve::USUAL, PeakPower::new(900.0)?)?;
/// let bout = |watts, s| -> Result<_, gear_math::OutOfLimits> {
///     Ok(Bout { power: Power::new(watts)?.into(), time: EffortTime::new(s)? })
/// };
/// let (hard, easy) = (bout(400.0, 30.0)?, bout(130.0, 30.0)?);
/// let left = |form: Recovery| {
///     [hard, easy].iter().fold(Deficit::NONE, |before, bout| form.after(&rider, before, bout)).j()
/// };
/// assert!((left(Recovery::Linear(RepaidShare::USUAL)) - 3600.0).abs() < 1e-9);
/// assert!((left(Recovery::Differential) - 4317.0).abs() < 1.0);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Recovery {
    /// In proportion to what is missing: dD/dt = −(CP − P) D/W′. Skiba et al. (2015), as public software uses it.
    Differential,
    /// In proportion to what the power falls short by: dD/dt = −ρ (CP − P), not beyond a full reserve. The form of the
    /// [account of effort](crate::rider::EffortAccount): the differential one about a mean deficit ρ W′, which gives a joule
    /// one price all round a lap. What is lost is the order of efforts within it.
    Linear(RepaidShare),
    /// By exponential decay of each joule spent, whatever the power now: the integral form of Skiba et al. (2012, *Med Sci
    /// Sports Exerc* 44:1526–1532), τ = 546 exp(−0.01 D_CP) + 316 s, D_CP the mean that the power falls short of the
    /// sustainable one by, over all the time below it.
    Integral {
        /// D_CP.
        mean_short: PowerDemand,
    },
}

impl Recovery {
    /// What is missing after a bout.
    ///
    /// # Formula
    /// Above the sustainable power D grows by (P − CP) t in the first two forms; below it D exp(−(CP − P) t/W′) or
    /// D − ρ (CP − P) t is left. By the integral form D e + max(P − CP, 0) τ (1 − e), e = exp(−t/τ).
    #[must_use]
    pub fn after(self, rider: &CriticalPower, before: Deficit, bout: &Bout) -> Deficit {
        let (before, time) = (before.j(), bout.time.s());
        let above = bout.power.watts() - rider.sustainable().watts();
        Deficit::new(match self {
            Self::Integral { mean_short } => {
                let tau = decay_s(mean_short.watts());
                before + (above.max(0.0) * tau - before) * -(-time / tau).exp_m1()
            }
            _ if above >= 0.0 => before + above * time,
            Self::Differential => before * (above * time / rider.reserve().j()).exp(),
            Self::Linear(repaid) => (before + repaid.value() * above * time).max(0.0),
        })
    }
}

/// Time constant of the integral form, in s, by a mean shortfall in W.
fn decay_s(mean_short: f64) -> f64 {
    546.0 * (-0.01 * mean_short).exp() + 316.0
}
