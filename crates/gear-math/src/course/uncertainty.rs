//! The inputs nobody knows exactly, moved one at a time.

use crate::rider::{EFFICIENCY, GROUND, LOAD, PERSON, ROLLING};
use crate::{
    Bike, FootCostFactor, FootFactor, GrossEfficiency, Ground, LoadFactor, Rider, RollingCoefficient,
};

/// How the uncertain inputs are moved. The same inputs by the same amounts as in the [`Band`](crate::Band) of ride or run.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Moved {
    /// Added to gross efficiency.
    efficiency: f64,
    /// Factor on rolling resistance.
    rolling: f64,
    /// Added to the carried load factor.
    load: f64,
    /// Factor on what the ground adds on foot.
    ground: f64,
    /// Factor on a person's cost on foot.
    person: f64,
}

impl Moved {
    /// As given.
    pub(super) const NOT: Self = Self { efficiency: 0.0, rolling: 1.0, load: 0.0, ground: 1.0, person: 1.0 };

    /// Each input alone, both ways.
    pub(super) const EACH: [Self; 10] = [
        Self { efficiency: -EFFICIENCY, ..Self::NOT },
        Self { efficiency: EFFICIENCY, ..Self::NOT },
        Self { rolling: ROLLING[0], ..Self::NOT },
        Self { rolling: ROLLING[1], ..Self::NOT },
        Self { load: LOAD[0], ..Self::NOT },
        Self { load: LOAD[1], ..Self::NOT },
        Self { ground: GROUND[0], ..Self::NOT },
        Self { ground: GROUND[1], ..Self::NOT },
        Self { person: PERSON[0], ..Self::NOT },
        Self { person: PERSON[1], ..Self::NOT },
    ];

    pub(super) fn rider(&self, given: &Rider) -> Rider {
        Rider {
            efficiency: GrossEfficiency::nearest(given.efficiency.share() + self.efficiency),
            foot_cost: FootCostFactor::nearest(given.foot_cost.value() * self.person),
            ..*given
        }
    }

    pub(super) fn bike(&self, given: &Bike) -> Bike {
        Bike { load: LoadFactor::nearest(given.load.value() + self.load), ..*given }
    }

    pub(super) fn ground(&self, given: &Ground) -> Ground {
        Ground {
            rolling: RollingCoefficient::nearest(given.rolling.value() * self.rolling),
            foot: FootFactor::nearest(1.0 + (given.foot.value() - 1.0) * self.ground),
            ..*given
        }
    }
}
