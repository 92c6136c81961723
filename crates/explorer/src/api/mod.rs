//! The JavaScript module: plain objects in, plain objects out, the unit in every name.

mod all;
pub mod cage;
pub mod chain;
pub mod gears;
pub mod lap;
pub mod position;
pub mod ride;
mod strict;
pub mod tyre;
pub mod wheel;

pub use all::{GearPair, RingAndSprocket, SetUpInput};
pub(crate) use all::{drivetrain, input, output, thrown};
