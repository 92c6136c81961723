//! What the scenario comes to: plain data, worked out by gear-math, read by every view and picture.

mod all;
mod chain;
mod found;
mod lap;
pub(crate) mod position;
mod ride;
mod rings;
mod search;
mod setup;
mod side;
mod tyre;

pub use all::{Reach, Report, Tie};
pub use chain::{ChainReport, Doubt, Station, direction, state_name};
pub use found::{Found, ROW, Standing, TESTED_S, row};
pub use lap::{LapQuestion, LapReport, LapRoom, OwnCourse, Settled, saved_s};
pub use position::PositionReport;
pub use ride::{
    Difference, GroundRow, OtherGear, RideReport, RideSide, RunningFrom, Stretch, Swing, surface_name,
};
pub use rings::{StepVerdict, WholeSteps};
pub use search::{Hunt, LeftOut};
pub use setup::{GearLine, RideStep, SetupReport};
pub use side::Side;
pub use tyre::{Gauge, GearOnBoth, OtherTyre, TyreFit, TyreReport, WidthLine};
