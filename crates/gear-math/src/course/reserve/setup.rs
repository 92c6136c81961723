//! Who rides a lap on a reserve.

use crate::course::lap::setup::LapSetup;
use crate::course::reserve::charge::Charge;
use crate::rider::{FootFactor, Friction, Ground, RollingCoefficient, Wind};

/// How ground differs from what is typical of it, as factors.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GroundFactors {
    /// On rolling resistance.
    pub rolling: f64,
    /// On what it adds on foot.
    pub foot: f64,
    /// On friction.
    pub grip: f64,
}

impl GroundFactors {
    /// As typical.
    pub const TYPICAL: Self = Self { rolling: 1.0, foot: 1.0, grip: 1.0 };

    pub(super) fn ground(&self, typical: &Ground) -> Ground {
        Ground {
            rolling: RollingCoefficient::nearest(typical.rolling.value() * self.rolling),
            foot: FootFactor::nearest(1.0 + (typical.foot.value() - 1.0) * self.foot),
            friction: Friction::nearest(typical.friction.mu() * self.grip),
            ..*typical
        }
    }
}

/// Everything a lap on a reserve depends on besides the course.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ReserveSetup {
    /// Rider, bike, air, limits and costs.
    pub lap: LapSetup,
    /// What power and cadence take from the reserve.
    pub(crate) charge: Charge,
    /// What may be spent each lap, in J.
    pub budget_j: f64,
    /// Wind over the ground.
    pub wind: Option<Wind>,
    /// How the ground differs from what is typical.
    pub ground: GroundFactors,
}
