//! Every number of a cyclo-cross bike's set-up: gears, chain and cage, and what they mean on the course.
//!
//! Quantities carry their unit in their type; constructors check, computations do not fail.
//! Public items name the source of their formula or constant, or say "common practice" or "estimate".

mod drivetrain;
mod quantity;
mod wheel;

pub use drivetrain::{
    Assumption, BottomBracketDrop, Cage, CageAngle, CageMeasures, CentreDistance, ChainAngle, ChainDefaults,
    ChainFit, ChainLinks, ChainLinksError, ChainMeasure, ChainPath, ChainPitch, ChainSetup, ChainWindow,
    Chainline, ChainlineMeasures, ChainstayLength, ForeStop, FrameMeasures, FrontConcern, FrontLimits,
    GearFit, GearState, GuideAngle, Hanger, HangerDrop, HangerSetback, HubMeasures, PathError, PathPoint,
    PathWheel, PitchCircle, Pulley, PulleyCentres, PulleyGap, RearStop, RingSpacing, SprocketPitch,
    StraightRun, TwoSprocketDrive, TwoSprocketError, WheelRole, cassette_slope_degrees,
};
pub use drivetrain::{
    Cassette, CassetteError, Chainring, Chainset, ChainsetError, Drivetrain, Gear, PedalRate, Sprocket,
};
pub use quantity::{Cadence, Circumference, Development, GearInches, Limits, OutOfLimits, Ratio, Speed};
pub use wheel::{BeadSeat, NominalWidth, TyreSize, WheelDiameter};
