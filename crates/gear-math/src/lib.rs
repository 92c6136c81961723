//! Every number of a cyclo-cross bike's set-up: gears, chain and cage, and what they mean on the course.
//!
//! Quantities carry their unit in their type; constructors check, computations do not fail.
//! Public items name the source of their formula or constant, or say "common practice" or "estimate".

mod quantity;

pub use quantity::{Cadence, Circumference, Development, GearInches, Limits, OutOfLimits, Ratio, Speed};
