//! The inputs nobody knows exactly, moved one at a time.

use crate::course::lap::costs::Mounting;
use crate::course::quantity::MountTime;
use crate::quantity::Cadence;
use crate::rider::{
    Bike, FootCostFactor, FootFactor, GrossEfficiency, Ground, LoadFactor, Rider, RollingCoefficient,
};
use crate::rider::{CADENCE_RPM, EFFICIENCY, GROUND, LOAD, PERSON};

/// How far the time lost by getting off and on may be off, both together, s. Estimate.
pub(in crate::course) const MOUNTING_S: f64 = 1.0;

/// How the uncertain inputs are moved: those of the [`Band`](crate::rider::Band) of ride or run by the same amounts, and the two
/// that decide where a gear gives out and what that costs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(in crate::course) struct Moved {
    /// Added to gross efficiency.
    efficiency: f64,
    /// To the lower (−1) or the higher edge (1) of rolling resistance.
    rolling: f64,
    /// Added to the carried load factor.
    load: f64,
    /// Factor on what the ground adds on foot.
    ground: f64,
    /// Factor on a person's cost on foot.
    person: f64,
    /// Added to the lowest cadence, rpm.
    cadence: f64,
    /// Added to the time lost by getting off and on, both together, s.
    mounting: f64,
}

impl Moved {
    /// As given.
    pub(in crate::course) const NOT: Self = Self {
        efficiency: 0.0,
        rolling: 0.0,
        load: 0.0,
        ground: 1.0,
        person: 1.0,
        cadence: 0.0,
        mounting: 0.0,
    };

    /// Each input alone, both ways.
    pub(in crate::course) const EACH: [Self; 14] = [
        Self { efficiency: -EFFICIENCY, ..Self::NOT },
        Self { efficiency: EFFICIENCY, ..Self::NOT },
        Self { rolling: -1.0, ..Self::NOT },
        Self { rolling: 1.0, ..Self::NOT },
        Self { load: LOAD[0], ..Self::NOT },
        Self { load: LOAD[1], ..Self::NOT },
        Self { ground: GROUND[0], ..Self::NOT },
        Self { ground: GROUND[1], ..Self::NOT },
        Self { person: PERSON[0], ..Self::NOT },
        Self { person: PERSON[1], ..Self::NOT },
        Self { cadence: -CADENCE_RPM, ..Self::NOT },
        Self { cadence: CADENCE_RPM, ..Self::NOT },
        Self { mounting: -MOUNTING_S, ..Self::NOT },
        Self { mounting: MOUNTING_S, ..Self::NOT },
    ];

    pub(in crate::course) fn rider(&self, given: &Rider) -> Rider {
        Rider {
            efficiency: GrossEfficiency::nearest(given.efficiency.share() + self.efficiency),
            foot_cost: FootCostFactor::nearest(given.foot_cost.value() * self.person),
            lowest_cadence: self.lowest_cadence(given),
            ..*given
        }
    }

    /// No lower than a cadence may be, and no higher than the highest.
    fn lowest_cadence(&self, given: &Rider) -> Cadence {
        let rpm = (given.lowest_cadence.rpm() + self.cadence).min(given.highest_cadence.rpm());
        Cadence::new(rpm.max(Cadence::LIMITS.min)).unwrap_or(given.lowest_cadence)
    }

    /// Half of it falls to getting off and half to getting on; neither takes less than no time.
    pub(in crate::course) fn mounting(&self, given: &Mounting) -> Mounting {
        let moved =
            |time: MountTime| MountTime::new((time.s() + self.mounting / 2.0).max(0.0)).unwrap_or(time);
        Mounting { off: moved(given.off), on: moved(given.on), ..*given }
    }

    pub(in crate::course) fn bike(&self, given: &Bike) -> Bike {
        Bike { load: LoadFactor::nearest(given.load.value() + self.load), ..*given }
    }

    pub(in crate::course) fn ground(&self, given: &Ground) -> Ground {
        Ground {
            rolling: RollingCoefficient::nearest(given.rolling_moved(self.rolling)),
            foot: FootFactor::nearest(1.0 + (given.foot.value() - 1.0) * self.ground),
            ..*given
        }
    }
}
