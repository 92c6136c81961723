//! Quantities that belong to the drivetrain alone.

use crate::quantity::derived;

derived! {
    /// Crank turns per minute that a speed asks for. Unlike a typed [`Cadence`](crate::Cadence) it may be
    /// slower or faster than anyone pedals.
    PedalRate(rpm);
}
