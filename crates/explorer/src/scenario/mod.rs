//! The bench understood: validated values, and what could not be understood.

mod all;
mod cassettes;
mod chain;
mod complaint;
#[cfg(test)]
mod choices;
mod lap;
mod parse;
mod position;
mod ride;
mod tyre;

pub use all::{CadenceWindow, Probe, ReadBench, Scenario};
pub use cassettes::{TypedCassette, WhySoMany};
pub use complaint::Complaint;
pub use chain::ChainInputs;
pub use lap::{CourseChoice, LapInputs, Rings, SearchInputs};
pub use position::{BarShapes, PositionInputs, ToeInputs};
pub use ride::{OwnGround, RideInputs};
pub use tyre::TyreInputs;
