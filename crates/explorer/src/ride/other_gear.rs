//! Lowest gears that the rider might have instead.

use crate::ride::inputs::RideInputs;
use crate::side::Side;
use gear_math::rider::Slope;
use gear_math::{Gear, Speed};

/// What a rider might change about the lowest gear: teeth off the smallest ring, teeth on to the largest sprocket.
pub(crate) const OTHER_GEARS: [(u16, u16); 5] = [(0, 0), (2, 0), (0, 2), (0, 4), (2, 4)];

/// A lowest gear that the rider might have instead.
#[derive(Debug, Clone, Copy)]
pub struct OtherGear {
    /// The gear.
    pub gear: Gear,
    /// Its speed at the lowest cadence.
    pub speed: Speed,
    /// Where it runs out, zero for on the level already; `None` for not up to 45 %.
    pub gradient: Option<Slope>,
}

impl OtherGear {
    /// The lowest gear itself, and those that a rider might have in its place.
    pub(crate) fn beside(lowest: Gear, side: Side, inputs: &RideInputs) -> Vec<Self> {
        let (ring, sprocket) = (lowest.ring.teeth(), lowest.sprocket.teeth());
        let gear = |(off, on): (u16, u16)| Gear::new(ring.checked_sub(off)?, sprocket + on).ok();
        let gears = OTHER_GEARS.into_iter().filter_map(gear);
        gears.map(|gear| Self::new(gear, side, inputs)).collect()
    }

    fn new(gear: Gear, side: Side, inputs: &RideInputs) -> Self {
        let speed = gear.development(inputs.bike(side).wheel).speed_at(inputs.rider.lowest_cadence);
        Self { gear, speed, gradient: inputs.question(side).runs_out_at(inputs.ground(side), speed) }
    }
}
