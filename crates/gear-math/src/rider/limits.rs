//! What puts a rider on foot whatever the energy says.

use crate::rider::pedalling::LegStrength;
use crate::rider::quantity::{BalanceSpeed, PeakPower};
use crate::rider::rider::Rider;
use crate::rider::traction::Stance;

/// The limits that put a rider on foot whatever the energy says; `None` switches one off. The lowest gear always
/// counts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RidingLimits {
    /// Slowest speed in balance.
    pub balance: Option<BalanceSpeed>,
    /// How the rider sits, for the grip of the rear wheel.
    pub grip: Option<Stance>,
    /// Leg strength.
    pub force: Option<LegStrength>,
}

impl RidingLimits {
    /// Every limit, each with the model's default; leg strength as estimated from body and power.
    #[must_use]
    pub const fn all(rider: &Rider) -> Self {
        Self {
            balance: Some(BalanceSpeed::USUAL),
            grip: Some(Stance::SEATED),
            force: Some(LegStrength {
                peak: PeakPower::estimated(rider.power, rider.body),
                ..LegStrength::ENDURING
            }),
        }
    }
    /// Gear and energy only.
    pub const GEAR_ONLY: Self = Self { balance: None, grip: None, force: None };
}

impl BalanceSpeed {
    /// 1.2 m/s; 1.0 for a skilled rider on smooth ground, 1.8 in rutted mud. Estimate, from the 1 m/s that Cain,
    /// Ashton-Miller & Perkins (2016, *PLoS ONE* 11:e0149340) saw on rollers.
    pub const USUAL: Self = Self::known(1.2);
}

/// What turns a rider into a runner.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Reason {
    /// The lowest gear turns slower than the rider can use.
    Gear,
    /// The legs are too weak for the power at the cadence of the lowest gear.
    Force,
    /// Too slow to keep the bike upright.
    Balance,
    /// The rear wheel slips.
    Grip,
    /// Being on foot is faster for the same energy.
    Energy,
}

/// Which limits hold on a slope.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct LimitsHeld {
    /// The lowest gear is too tall.
    pub gear: bool,
    /// The legs are too weak.
    pub force: bool,
    /// Too slow for balance.
    pub balance: bool,
    /// The rear wheel slips.
    pub grip: bool,
}

impl LimitsHeld {
    /// Those that hold.
    pub fn reasons(self) -> impl Iterator<Item = Reason> {
        let all = [
            (self.gear, Reason::Gear),
            (self.force, Reason::Force),
            (self.balance, Reason::Balance),
            (self.grip, Reason::Grip),
        ];
        all.into_iter().filter_map(|(holds, reason)| holds.then_some(reason))
    }

    /// Whether one holds.
    #[must_use]
    pub fn any(self) -> bool {
        self != Self::default()
    }

    /// Whether nothing but the legs is too weak.
    #[must_use]
    pub fn is_force_alone(self) -> bool {
        self == Self { force: true, ..Self::default() }
    }
}
