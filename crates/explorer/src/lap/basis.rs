//! What the lap and the search are worked out from.

use crate::bench::bench::Bench;
use crate::chain::cages::Cages;
use crate::chain::inputs::ChainInputs;
use crate::lap::inputs::LapInputs;
use crate::ride::inputs::RideInputs;
use crate::rings::inputs::RingsInputs;
use crate::side::Side;
use gear_math::LapSetup;
use gear_math::course::{Begin, MountTime, Mounting, Shifting};
use gear_math::rider::WheelInertia;

/// The bench as far as the lap goes.
#[derive(Debug, Clone, Copy)]
pub struct Basis<'b> {
    /// Gears, wheel and cadences.
    pub rings: &'b RingsInputs,
    /// Derailleur, frame, cage and chain.
    pub chain: &'b ChainInputs,
    /// Whether the cage takes A and B.
    pub cages: &'b Cages,
    /// Rider, bike and limits.
    pub ride: &'b RideInputs,
    /// The course and how it is ridden.
    pub lap: &'b LapInputs,
    /// What it was understood from.
    pub texts: &'b Bench,
}

impl Basis<'_> {
    /// Rider and bike of one set-up, as they go round the lap.
    #[must_use]
    pub fn setup(&self, side: Side) -> LapSetup {
        let (ride, inputs) = (self.ride, self.lap);
        let each = MountTime::new(ride.lost.s() / 2.0).unwrap_or(Mounting::USUAL.off);
        LapSetup {
            rider: ride.rider,
            bike: *ride.bike(side),
            air: ride.air,
            limits: ride.limits(),
            inertia: WheelInertia::USUAL,
            wheels: true,
            shifting: Shifting { preferred: self.rings.window.usual, ..inputs.shifting },
            mounting: Mounting { off: each, on: each, braking: inputs.braking },
            begin: Begin::Flying,
        }
    }
}
