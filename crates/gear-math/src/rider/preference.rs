//! The cadence a rider likes at a power, and what leaving it costs.

use crate::gears::PedalRate;
use crate::rider::account::EffortAccount;
use crate::rider::quantity::{CadenceCost, PowerDemand};

/// The line of preferred cadence, rpm and rpm per W: 57, 71, 85 and 99 rpm at 100, 200, 300 and 400 W where MacIntosh,
/// Neptune & Horton (2000, *Med Sci Sports Exerc* 32:1281–1287) measured 57, 70, 86 and 99 with least muscle activity, one
/// rider 3 to 8 rpm away from another.
const AT_NO_POWER_RPM: f64 = 42.5;
const RPM_PER_W: f64 = 0.142;
/// Nobody prefers to turn slower. Estimate, because no measurement goes below 57 rpm.
const SLOWEST_RPM: f64 = 40.0;

impl CadenceCost {
    /// 0.4: half as fast again as preferred costs a tenth more power. Estimate: the efficiencies that Stebbins et al. (2014)
    /// measured at 80 and 100 rpm give 0.15 to 1.1 by a parabola about 60 to 80 rpm, so it is bracketed, not measured. Least
    /// muscle activity is not least energy: Brennan et al. (2019) found that at 60 rpm where riders preferred 81.
    pub const USUAL: Self = Self::known(0.4);
}

impl EffortAccount {
    /// The cadence preferred at a power.
    ///
    /// # Formula
    /// n_pref = max(40, n_own + 0.142 (P − CP)), n_own = 42.5 + 0.142 CP unless the rider has [one](Self::own_cadence).
    #[must_use]
    pub fn preferred_cadence(&self, power: PowerDemand) -> PedalRate {
        PedalRate::new(self.preferred_rpm(power.watts()))
    }

    /// What a power counts for at a cadence, as a multiple: the close steps of a cassette are worth what this spares.
    ///
    /// # Formula
    /// 1 + κ u², u = n/n_pref − 1. A choice of this model.
    #[must_use]
    pub fn cadence_factor(&self, power: PowerDemand, cadence: PedalRate) -> f64 {
        self.factor(power.watts(), cadence.rpm())
    }

    /// The preferred cadence, or that of the peak power where it is lower, in rpm.
    pub(super) fn suited_rpm(&self, power_w: f64) -> f64 {
        self.preferred_rpm(power_w).min(self.optimal.rpm())
    }

    /// [`cadence_factor`](Self::cadence_factor) of W and rpm.
    pub(crate) fn factor(&self, power_w: f64, cadence_rpm: f64) -> f64 {
        let off = cadence_rpm / self.preferred_rpm(power_w) - 1.0;
        1.0 + self.cadence_cost.value() * off * off
    }

    /// Cadence over the preferred one, and by what share that grows with a watt.
    pub(super) fn ratio_and_growth(&self, power_w: f64, cadence_rpm: f64) -> (f64, f64) {
        let preferred = self.preferred_rpm(power_w);
        let growth = if preferred > SLOWEST_RPM { RPM_PER_W } else { 0.0 };
        (cadence_rpm / preferred, growth / preferred)
    }

    fn preferred_rpm(&self, power_w: f64) -> f64 {
        let at_no_power =
            self.own_cadence.map_or(AT_NO_POWER_RPM, |own| own.rpm() - RPM_PER_W * self.sustainable_w());
        (at_no_power + RPM_PER_W * power_w).max(SLOWEST_RPM)
    }
}
