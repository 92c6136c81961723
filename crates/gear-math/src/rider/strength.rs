//! What legs give at a cadence, at most and for minutes.

use crate::gears::PedalRate;
use crate::rider::account::EffortAccount;
use crate::rider::pedalling::LegStrength;
use crate::rider::quantity::PowerDemand;

impl EffortAccount {
    /// Highest power at a cadence.
    ///
    /// # Formula
    /// P_m = 4 P_max (n/n₀)(1 − n/n₀), n₀ twice the [cadence of the peak](Self::optimal): torque falls in a straight line with
    /// cadence (Driss & Vandewalle 2013, *BioMed Res Int* 589361).
    #[must_use]
    pub fn peak_at(&self, cadence: PedalRate) -> PowerDemand {
        PowerDemand::new(self.peak_w(cadence.rpm()))
    }

    /// Power that lasts at a cadence without drawing on the reserve, cadence costing nothing.
    ///
    /// # Formula
    /// C = min(CP, f P_m(n)). That a share f lasts for minutes is an estimate.
    #[must_use]
    pub fn held_at(&self, cadence: PedalRate) -> PowerDemand {
        PowerDemand::new(self.held_w(cadence.rpm()))
    }

    /// Lowest cadence at which the legs hold a power for minutes; `None` when they do at no cadence. Below it riding goes on
    /// and draws on the reserve: force for seconds, not for a minute.
    ///
    /// # Formula
    /// n_min = (n₀/2)(1 − √(1 − P/(f P_max))).
    #[must_use]
    pub fn lowest_cadence(&self, power: PowerDemand) -> Option<PedalRate> {
        self.legs().cadences_at(power.watts()).map(|(slowest, _)| PedalRate::new(slowest))
    }

    /// [`peak_at`](Self::peak_at) in W.
    pub(crate) fn peak_w(&self, cadence_rpm: f64) -> f64 {
        self.legs().power_at(cadence_rpm)
    }

    /// [`held_at`](Self::held_at) in W.
    pub(crate) fn held_w(&self, cadence_rpm: f64) -> f64 {
        self.held_of(self.peak_w(cadence_rpm))
    }

    /// The same where the highest power at the cadence is known.
    pub(crate) fn held_of(&self, peak_w: f64) -> f64 {
        self.sustainable_w().min(self.lasting.share() * peak_w)
    }

    /// Cadence at which the legs can no longer follow.
    pub(crate) fn fastest_rpm(&self) -> f64 {
        self.legs().fastest_rpm()
    }

    const fn legs(&self) -> LegStrength {
        LegStrength { peak: self.effort.peak(), optimal: self.optimal, usable: self.lasting }
    }
}
