//! The wheel: its size, and how far it rolls.

mod bead_seat;
mod quantity;
mod roll_out;
mod tyre_size;

pub use bead_seat::BeadSeat;
pub use quantity::{EstimateError, NominalWidth, RollOutDeviation, WheelDiameter};
pub use roll_out::{MeasuredRollOut, RollOutEstimate, TyreKind, Wheel};
pub use tyre_size::{TyreSize, TyreSizeError};
