//! The units and the decimal sign that everything is told in, as the reader chose them.
//!
//! They are in force for as long as something is written: whoever begins to write a report [enters](Units::enter) what was
//! chosen with it, and what tells a quantity asks `told` for it. Where nothing was entered all is metric, with points.

pub mod chosen;
pub(crate) mod gears;
pub(crate) mod lengths;
pub(crate) mod retold;
pub(crate) mod told;

pub use chosen::{GearScale, InForce, Units};
pub(crate) use gears::*;
pub(crate) use lengths::*;
pub(crate) use retold::*;
pub(crate) use told::*;
