//! How hard and how fast legs can turn a crank.

use crate::gears::PedalRate;
use crate::physics::GRAVITY;
use crate::quantity::Cadence;
use crate::rider::quantity::{
    BodyMass, CrankLength, KitMass, PeakPower, Power, PowerDemand, RollingCoefficient, Slope, StrengthShare,
    Time, Torque,
};
use crate::rider::rider::{Bike, Rider};
use crate::rider::road_load::gradient_overcome;
use core::f64::consts::{FRAC_2_PI, TAU};

/// Leg strength: torque falls in a straight line with cadence, so power is a parabola.
///
/// Driss & Vandewalle (2013, *BioMed Res Int* 589361).
///
/// # Example
/// ```
/// use gear_math::Cadence;
/// use gear_math::rider::LegStrength;
/// let legs = LegStrength::ENDURING;
/// assert!((legs.torque(Cadence::new(60.0)?).n_m() - 122.75).abs() < 0.01);
/// assert!((legs.power(Cadence::new(60.0)?).watts() - 771.3).abs() < 0.1);
/// # Ok::<(), gear_math::OutOfLimits>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LegStrength {
    /// Highest power of one pedal turn.
    pub peak: PeakPower,
    /// Cadence at which it is reached.
    pub optimal: Cadence,
    /// Part of the strength that lasts through the effort.
    pub usable: StrengthShare,
}

impl PeakPower {
    /// What a rider of no known sprint may reach, in W per kg of body. Estimate: 11 for those who ride now and then, 18
    /// for sprinters.
    pub const PER_KG: f64 = 14.0;
    /// The least it is taken for, as a multiple of the power kept up for minutes. Estimate.
    pub const OVER_POWER: f64 = 4.0;

    /// What a rider of this body who keeps up `power` for minutes may reach: 14 W/kg, and four times the power where that
    /// is more, so that half of it lasts at the same cadence however strong the rider is. Estimate.
    #[must_use]
    pub const fn estimated(power: Power, body: BodyMass) -> Self {
        Self::nearest((Self::OVER_POWER * power.watts()).max(Self::of_body(body).watts()))
    }
}

/// Seconds, and the share of the strength that lasts as long; shares of other times lie on straight lines between.
/// Minutes are taken to begin at two of them. Estimates.
const LASTING: [(f64, StrengthShare); 4] = [
    (5.0, StrengthShare::SECONDS_5),
    (15.0, StrengthShare::SECONDS_15),
    (30.0, StrengthShare::SECONDS_30),
    (120.0, StrengthShare::MINUTES),
];

impl StrengthShare {
    /// The share that lasts for a time.
    fn lasting(time: Time) -> f64 {
        let after = LASTING.iter().position(|&(seconds, _)| time.s() <= seconds);
        match after {
            Some(0) => Self::SECONDS_5.share(),
            None => Self::MINUTES.share(),
            Some(after) => {
                let [(from, high), (to, low)] = [LASTING[after - 1], LASTING[after]];
                high.share() + (time.s() - from) / (to - from) * (low.share() - high.share())
            }
        }
    }

    /// 1.0: up to 5 s. Estimate.
    pub const SECONDS_5: Self = Self::known(1.0);
    /// 0.8: about 15 s. Estimate.
    pub const SECONDS_15: Self = Self::known(0.8);
    /// 0.65: about 30 s. Estimate.
    pub const SECONDS_30: Self = Self::known(0.65);
    /// 0.5: minutes. Estimate.
    pub const MINUTES: Self = Self::known(0.5);
}

impl CrankLength {
    /// 170 mm (common practice).
    pub const USUAL: Self = Self::known(170.0);
}

impl LegStrength {
    /// 1000 W at 115 rpm, half of it lasting for minutes. Estimates, below Martin, Wagner & Coyle (1997, *Med Sci
    /// Sports Exerc* 29:1505–1512).
    pub const ENDURING: Self = Self {
        peak: PeakPower::known(1000.0),
        optimal: Cadence::OF_PEAK_POWER,
        usable: StrengthShare::MINUTES,
    };

    /// Highest mean torque of one pedal turn at a cadence; zero where the legs can no longer follow.
    ///
    /// # Formula
    /// T = T₀ (1 − n/n₀), n₀ = 2 n_opt, T₀ = 4 P_max/(2π n₀/60).
    #[must_use]
    pub fn torque(&self, cadence: Cadence) -> Torque {
        let fastest = self.fastest_rpm();
        let stalled = 4.0 * self.peak.watts() / (TAU * fastest / 60.0);
        Torque::new(stalled * (1.0 - cadence.rpm() / fastest).max(0.0))
    }

    /// Highest power of one pedal turn at a cadence.
    ///
    /// # Formula
    /// P = 4 P_max (n/n₀)(1 − n/n₀).
    #[must_use]
    pub fn power(&self, cadence: Cadence) -> PowerDemand {
        PowerDemand::new(self.power_at(cadence.rpm()))
    }

    pub(super) fn power_at(&self, rpm: f64) -> f64 {
        let share = rpm / self.fastest_rpm();
        4.0 * self.peak.watts() * share * (1.0 - share).max(0.0)
    }

    /// Highest power at a cadence in an effort of a given time, whatever [`usable`](Self::usable) says of another one.
    #[must_use]
    pub fn power_for(&self, time: Time, cadence: PedalRate) -> PowerDemand {
        PowerDemand::new(StrengthShare::lasting(time) * self.power_at(cadence.rpm()))
    }

    /// Highest power that the usable strength gives at any cadence.
    #[must_use]
    pub fn lasting_power(&self) -> PowerDemand {
        PowerDemand::new(self.usable.share() * self.peak.watts())
    }

    /// The slowest and the fastest crank, in rpm, at which the usable strength gives `power`; `None` when no
    /// cadence does.
    #[must_use]
    pub fn cadences_for(&self, power: Power) -> Option<(f64, f64)> {
        self.cadences_at(power.watts())
    }

    pub(super) fn cadences_at(&self, watts: f64) -> Option<(f64, f64)> {
        let asked = watts / self.lasting_power().watts();
        let half = self.optimal.rpm();
        (asked <= 1.0).then(|| {
            let reach = (1.0 - asked).sqrt();
            (half * (1.0 - reach), half * (1.0 + reach))
        })
    }

    pub(super) fn fastest_rpm(&self) -> f64 {
        2.0 * self.optimal.rpm()
    }
}

impl Torque {
    /// Mean torque of one full body weight pressed straight down through every down-stroke.
    ///
    /// # Formula
    /// T = (2/π) m g L.
    #[must_use]
    pub fn of_body_weight(body: BodyMass, kit: KitMass, crank: CrankLength) -> Self {
        Self::new(FRAC_2_PI * (body.kg() + kit.kg()) * GRAVITY * crank.mm() / 1000.0)
    }

    /// Mean force square to the crank, both legs together, in newtons.
    #[must_use]
    pub fn pedal_force_n(self, crank: CrankLength) -> f64 {
        self.n_m() / (crank.mm() / 1000.0)
    }
}

/// The gradient from which holding speed in the lowest gear takes more than one full body weight on every pedal
/// stroke, air left out; `None` when even a wall does not.
///
/// # Formula
/// sin(θ + φ) = 4 (m_rider + m_kit) L η cos φ/(M D), tan φ = C_rr.
///
/// # Example
/// ```
/// use gear_math::{Bike, Rider, Surface};
/// use gear_math::rider::body_weight_gradient;
/// # use gear_math::{Circumference, Drivetrain, Power};
/// # use gear_math::rider::{BikeMass, BodyMass, KitMass};
/// # let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
/// # let drivetrain = Drivetrain { chainset: "40".parse()?, cassette: "11-13-15-17-20-23-27-32".parse()? };
/// # let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
/// let steepest = body_weight_gradient(&rider, &bike, Surface::FirmGrass.ground().rolling);
/// assert!(steepest.is_some_and(|slope| (slope.percent() - 19.0).abs() < 0.5));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[must_use]
pub fn body_weight_gradient(rider: &Rider, bike: &Bike, rolling: RollingCoefficient) -> Option<Slope> {
    let torque = Torque::of_body_weight(rider.body, rider.kit, rider.crank);
    let force = torque.n_m() * TAU * bike.efficiency.share() / bike.lowest_development().m();
    gradient_overcome(force, rider.with(bike), rolling)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// All of it for 5 s, 0.8 at 15, 0.65 at 30, half from two minutes on; straight lines between.
    #[test]
    fn strength_fades_along_straight_lines() {
        let shares = [
            (1.0, 1.0),
            (5.0, 1.0),
            (10.0, 0.9),
            (15.0, 0.8),
            (24.0, 0.71),
            (30.0, 0.65),
            (75.0, 0.575),
            (120.0, 0.5),
            (900.0, 0.5),
        ];
        for (seconds, share) in shares {
            assert!((StrengthShare::lasting(Time::new(seconds)) - share).abs() < 1e-12, "{seconds} s");
        }
    }
}
