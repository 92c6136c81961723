//! The wheel: its size, and how far it rolls.

mod bead_seat;
mod quantity;
mod tyre_size;

pub use bead_seat::BeadSeat;
pub use quantity::{NominalWidth, WheelDiameter};
pub use tyre_size::TyreSize;
