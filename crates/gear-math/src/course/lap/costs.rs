//! What shifting, getting off and getting on cost, and the rider's habits with them.

use crate::course::quantity::{Braking, MountTime, ShiftTime, ShiftWindow};
use crate::quantity::{Cadence, Speed};
use crate::rider::{DrivetrainEfficiency, EffectiveMass, Power};

/// The cadences a rider keeps to and what a shift costs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shifting {
    /// The cadence gears are chosen for.
    pub preferred: Cadence,
    /// How far the cadence may leave it before the rider shifts.
    pub window: ShiftWindow,
    /// Time without drive of a shift at the rear.
    pub rear: ShiftTime,
    /// Time without drive of a shift at the front.
    pub front: ShiftTime,
}

impl Shifting {
    /// 80 rpm preferred ([`Cadence::PREFERRED`]); a window of 15 %, 0.2 s without drive at the rear and 0.6 s at the
    /// front are estimates.
    pub const USUAL: Self = Self {
        preferred: Cadence::PREFERRED,
        window: ShiftWindow::known(0.15),
        rear: ShiftTime::known(0.2),
        front: ShiftTime::known(0.6),
    };
}

/// What getting off and on again costs, and how the rider brakes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mounting {
    /// Time lost by getting off. Speed beyond that of going on foot is lost with it.
    pub off: MountTime,
    /// Time lost by getting on, at the speed of going on foot.
    pub on: MountTime,
    /// How hard the rider brakes before a corner.
    pub braking: Braking,
}

impl Mounting {
    /// 1.5 s each way, a practised amateur by common practice, and 3 m/s² of braking, an estimate for grass.
    pub const USUAL: Self =
        Self { off: MountTime::known(1.5), on: MountTime::known(1.5), braking: Braking::known(3.0) };
}

impl ShiftTime {
    /// The speed after a shift that takes no time of its own: the work of its seconds without drive is missing.
    ///
    /// # Formula
    /// v′² = v² − 2 η P t/m_e. That neither time nor distance passes is a choice of the lap's model.
    #[must_use]
    pub fn speed_after(
        self,
        speed: Speed,
        power: Power,
        efficiency: DrivetrainEfficiency,
        mass: EffectiveMass,
    ) -> Speed {
        let work = efficiency.share() * power.watts() * self.s();
        Speed::new((speed.m_per_s().powi(2) - 2.0 * work / mass.kg()).max(0.0).sqrt())
    }
}
