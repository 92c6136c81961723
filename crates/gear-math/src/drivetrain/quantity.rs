//! Quantities that belong to the drivetrain alone.

use crate::quantity::derived;

derived! {
    /// Crank turns per minute that a speed asks for. Unlike a typed [`Cadence`](crate::Cadence) it may be
    /// slower or faster than anyone pedals.
    PedalRate(rpm);
    /// Sideways angle of the chain's upper run, in degrees; 0 when ring and sprocket stand in one plane.
    ///
    /// Published evidence disagrees on what it costs, so no loss is made of it.
    ChainAngle(degrees);
}
