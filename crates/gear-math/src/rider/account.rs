//! What an effort takes from the reserve, riding and on foot.

use crate::gears::PedalRate;
use crate::quantity::Cadence;
use crate::rider::effort::CriticalPower;
use crate::rider::quantity::{
    BodyMass, CadenceCost, ChargeRate, EffortBudget, EffortPrice, EffortTime, PeakPower, PowerDemand,
    RepaidShare, ReserveShare, StrengthShare,
};

/// [`EffortAccount::usual_price`] times the sustainable power.
const USUAL_PRICE: f64 = 0.68;
/// The least and the most that laps came to: the one round six courses, the other round short ones with a climb (both found with this
/// model).
const USUAL_PRICES: [f64; 2] = [0.64, 1.04];

/// One account of effort for climb and lap, riding and running: what is done above the sustainable power draws on a
/// reserve, what is done below repays it.
///
/// The shape is the published three-parameter model (Morton 1996, *Ergonomics* 39:611–619), read as a rate: a second at P
/// takes the part of the reserve that P uses up in a second when it is held to exhaustion. That is exact for even power. To
/// read it so while the power changes is a choice of this model, and so are the repaid share, the cost of cadence and the
/// share that lasts; each is a field that can be moved. A test on ten riders (2019, *Eur J Appl Physiol*) found the model a
/// good description of efforts down to some 20 s; shorter ones are extrapolated.
///
/// # Example
/// ```
/// use gear_math::{Cadence, Power};
/// use gear_math::rider::{BodyMass, CriticalPower, EffortAccount, PeakPower, WorkReserve};
/// let effort = CriticalPower::new(
///     Power::new(230.0)?,
///     WorkReserve::USUAL,
///     PeakPower::of_body(BodyMass::new(64.0)?),
/// )?;
/// let account = EffortAccount::new(effort);
/// let charge = |watts, rpm| -> Result<_, gear_math::OutOfLimits> {
///     Ok(account.charge(Power::new(watts)?.into(), Cadence::new(rpm)?.into()).map(|rate| rate.watts()))
/// };
/// assert!(charge(300.0, 85.0)?.is_some_and(|watts| (watts - 79.0).abs() < 1.0));
/// assert!(charge(300.0, 45.0)? > charge(300.0, 85.0)?, "a tall gear takes more");
/// assert!(charge(150.0, 65.0)? < Some(0.0), "below the sustainable power the reserve fills");
/// assert_eq!(charge(900.0, 85.0)?, None);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EffortAccount {
    /// Sustainable power, reserve and peak power.
    pub effort: CriticalPower,
    /// Cadence of the peak power: half of the fastest that the legs can follow without load.
    pub optimal: Cadence,
    /// Part of the strength at a cadence that lasts for minutes.
    pub lasting: StrengthShare,
    /// What is repaid of each joule below the sustainable power.
    pub repaid: RepaidShare,
    /// Cost of leaving the preferred cadence.
    pub cadence_cost: CadenceCost,
    /// The rider's own cadence at the sustainable power; `None` for the published line. Where it lies more than some 10 rpm
    /// below the line, cadences of twice it and more are charged less for more power, since the preferred one grows with it.
    pub own_cadence: Option<Cadence>,
}

impl RepaidShare {
    /// 0.5; 0.3 to 0.7 are likely. Estimate: the share of the reserve that is spent on the mean of a race, which is what the
    /// [differential form](crate::rider::Recovery::Differential) repays at that deficit.
    pub const USUAL: Self = Self::known(0.5);
}

impl EffortBudget {
    /// Nothing in the end: an effort that can be repeated for ever.
    pub const NONE: Self = Self::known(0.0);

    /// Part of a reserve: one fifth, [`ReserveShare::EACH_LAP`], for the climb of every lap.
    #[must_use]
    pub fn share(effort: &CriticalPower, share: ReserveShare) -> Self {
        Self::nearest(share.value() * effort.reserve().j())
    }
}

impl PeakPower {
    /// Peak power of a rider of this body, whatever they sustain: 14 W per kg, 11 to 18 being likely. Estimate.
    #[must_use]
    pub const fn of_body(body: BodyMass) -> Self {
        Self::nearest(Self::PER_KG * body.kg())
    }
}

impl EffortAccount {
    /// A rider with the model's values for what most do not know of themselves.
    #[must_use]
    pub const fn new(effort: CriticalPower) -> Self {
        Self {
            effort,
            optimal: Cadence::OF_PEAK_POWER,
            lasting: StrengthShare::MINUTES,
            repaid: RepaidShare::USUAL,
            cadence_cost: CadenceCost::USUAL,
            own_cadence: None,
        }
    }

    /// What a second of riding takes from the reserve; `None` where the legs cannot do it at all.
    ///
    /// # Formula
    /// With P_c = P (1 + κ u²) ([`cadence_factor`](Self::cadence_factor)), C ([`held_at`](Self::held_at)) and P_m
    /// ([`peak_at`](Self::peak_at)): h = (P_c − C)(P_m − C)/(P_m − P_c) above C, −ρ CP (1 − P_c/C) up to it, −ρ CP when
    /// coasting. It is convex and has no end below P_m, so that neither a highest power nor a price of jerks is needed.
    #[must_use]
    pub fn charge(&self, power: PowerDemand, cadence: PedalRate) -> Option<ChargeRate> {
        finite(self.charge_w(power.watts(), cadence.rpm()))
    }

    /// What a second on foot takes from it, at the crank power that costs the same metabolic power; `None` from the peak
    /// power on.
    ///
    /// # Formula
    /// h = (P − CP)(P_max − CP)/(P_max − P) above CP, −ρ (CP − P) up to it: no cadence.
    #[must_use]
    pub fn charge_on_foot(&self, power: PowerDemand) -> Option<ChargeRate> {
        finite(self.charge_on_foot_w(power.watts()))
    }

    /// Power that a budget holds for a time, at the best cadence: what an even effort is charged for.
    ///
    /// # Formula
    /// P = CP + B/(t + B/(P_max − CP)): that of [`CriticalPower::power`] with the budget for the whole reserve.
    #[must_use]
    pub fn power_for(&self, budget: EffortBudget, time: EffortTime) -> PowerDemand {
        self.effort.power_costing(budget.j(), time)
    }

    /// What a joule of the reserve is worth on a lap that can be repeated: the price at which what is spent comes back.
    ///
    /// # Formula
    /// λ = 0.68/CP. Laps [on a reserve](crate::Lap::on_reserve) came out at 0.64 to 0.75 on six courses.
    #[must_use]
    pub fn usual_price(&self) -> EffortPrice {
        EffortPrice::nearest(USUAL_PRICE / self.sustainable_w())
    }

    /// The lowest and the highest that a lap has been found to have: what [`usual_price`](Self::usual_price) may be off.
    ///
    /// # Formula
    /// λ = 0.64/CP to 1.04/CP.
    #[must_use]
    pub fn usual_prices(&self) -> [EffortPrice; 2] {
        USUAL_PRICES.map(|price| EffortPrice::nearest(price / self.sustainable_w()))
    }

    /// [`charge`](Self::charge) in W; infinite where it is impossible.
    pub(crate) fn charge_w(&self, power_w: f64, cadence_rpm: f64) -> f64 {
        if power_w <= 0.0 {
            return -self.repaid_w();
        }
        let peak = self.peak_w(cadence_rpm);
        let felt = power_w * self.factor(power_w, cadence_rpm);
        self.rate(felt, self.held_of(peak), peak)
    }

    /// [`charge_on_foot`](Self::charge_on_foot) in W; infinite where it is impossible.
    pub(crate) fn charge_on_foot_w(&self, power_w: f64) -> f64 {
        self.rate(power_w.max(0.0), self.sustainable_w(), self.effort.peak().watts())
    }

    fn rate(&self, power: f64, held: f64, peak: f64) -> f64 {
        if power <= held {
            self.repaid_w() * (power / held - 1.0)
        } else if power < peak {
            (power - held) * (peak - held) / (peak - power)
        } else {
            f64::INFINITY
        }
    }

    /// Power, what cadence costs of it included, that takes `charge_w` (0 or more) a second from the reserve at a cadence: the
    /// [charge](Self::charge) solved for P_c.
    pub(super) fn felt_w(&self, charge_w: f64, cadence_rpm: f64) -> f64 {
        let peak = self.peak_w(cadence_rpm);
        let held = self.held_of(peak);
        let room = peak - held;
        if charge_w > 0.0 { held + charge_w * room / (charge_w + room) } else { held }
    }

    /// What a second of coasting repays.
    pub(crate) fn repaid_w(&self) -> f64 {
        self.repaid.value() * self.sustainable_w()
    }

    pub(crate) const fn sustainable_w(&self) -> f64 {
        self.effort.sustainable().watts()
    }
}

fn finite(rate: f64) -> Option<ChargeRate> {
    rate.is_finite().then(|| ChargeRate::new(rate))
}
