//! Every number of a cyclo-cross bike's set-up: gears, chain and cage, and what they mean on the course.
//!
//! Quantities carry their unit in their type; constructors check, computations do not fail.
//! Public items name the source of their formula or constant, or say "common practice" or "estimate".

mod drivetrain;
mod quantity;
mod wheel;

pub use drivetrain::{
    Assumption, BottomBracketDrop, Cage, CageAngle, CageMeasures, CentreDistance, ChainAdvice, ChainAngle,
    ChainDefaults, ChainFit, ChainLinks, ChainLinksError, ChainMeasure, ChainPath, ChainPitch, ChainSetup,
    ChainVerdict, ChainWindow, Chainline, ChainlineMeasures, ChainstayLength, Change, Effort, EffortPart,
    ForeStop, FrameMeasures, FrontConcern, FrontLimits, GearFit, GearState, GuideAngle, Hanger, HangerDrop,
    HangerSetback, HubMeasures, PathError, PathPoint, PathWheel, PitchCircle, Pulley, PulleyCentres,
    PulleyGap, RearStop, Remedy, RingSpacing, SprocketPitch, StraightRun, TwoSprocketDrive, TwoSprocketError,
    WheelRole, cassette_slope_degrees,
};
pub use drivetrain::{
    CageCheck, CageClass, CageFinding, CageVerdict, Cassette, CassetteError, Chainring, Chainset,
    ChainsetError, Comparison, CrossedRule, Derailleur, DerailleurFigure, DevelopmentSpan, Drivetrain,
    DuplicatePair, DuplicateTolerance, EndDifference, FrontChange, Gear, GearRange, GearRow, GearStep,
    LongestWheel, OwnReach, PedalRate, RidingOrder, RingDifference, RingOverlap, RingPasses, RollOutLimit,
    RollOutPreset, SetUp, SetUpSummary, SharedGear, Shift, ShiftKind, Side, Sprocket, SprocketStep,
    StepSpread, TotalCapacity,
};
pub use quantity::{Cadence, Circumference, Development, GearInches, Limits, OutOfLimits, Ratio, Speed};
pub use wheel::{
    BeadSeat, EstimateError, MeasuredRollOut, NominalWidth, RollOutDeviation, RollOutEstimate, TyreKind,
    TyreSize, TyreSizeError, Wheel, WheelDiameter,
};
