//! Every number of a cyclo-cross bike's set-up: gears, chain and cage, and what they mean on the course.
//!
//! Quantities carry their unit in their type; constructors check, computations do not fail.
//! Public items name the source of their formula or constant, or say "common practice" or "estimate".
//!
//! The feature `gpx`, on by default, reads courses from GPX files; without it the crate depends on nothing.

mod course;
mod drivetrain;
mod quantity;
mod rider;
mod wheel;

pub use course::{
    BandedLap, Begin, Braking, CadenceWindow, Candidate, CornerSpeed, Course, CourseError, Demo, EnergyBook,
    Finalist, Finals, GainPart, GearUse, Lap, LapComparison, LapSetup, Mode, MountTime, Mounting, Obstacle,
    ObstacleTime, PlanPart, ProfilePoint, Quicker, Ranked, Search, SearchSpace, Segment, ShiftTime, Shifting,
    SketchError, SketchFault, SmoothingLength, Span, StartSpeed, Step, StretchLength, TimeBand, TracePoint,
    Weighting, WhyOnFoot, ranked,
};
#[cfg(feature = "gpx")]
pub use course::{GpxError, TrackCourse, TrackOptions, TrackReport};
pub use drivetrain::{
    CageCheck, CageClass, CageFinding, CageVerdict, Cassette, CassetteError, Chainring, Chainset,
    ChainsetError, Comparison, CrossedRule, Derailleur, DerailleurFigure, DevelopmentSpan, Drivetrain,
    DuplicatePair, DuplicateTolerance, EndDifference, FrontChange, Gear, GearRange, GearRow, GearStep,
    LongestWheel, OwnReach, PedalRate, RidingOrder, RingDifference, RingOverlap, RingPasses, RollOutLimit,
    RollOutPreset, SetUp, SetUpSummary, SharedGear, Shift, ShiftKind, Side, Sprocket, SprocketStep,
    StepSpread, TotalCapacity,
};
pub use quantity::{Cadence, Circumference, Development, GearInches, Limits, OutOfLimits, Ratio, Speed};
pub use rider::{
    Air, AirDensity, AirPressure, AirTemperature, Altitude, Answer, BalanceSpeed, Band, BaselineMetabolism,
    Basis, Bike, BikeMass, BodyMass, Carry, Cell, Climb, ClimbLength, ClimbPlan, Compass, CrankLength,
    CriticalPower, Crossover, DeltaEfficiency, Distance, DragArea, DrivetrainEfficiency, EffectiveMass,
    EffortTime, Flip, FlipChange, FootCost, FootCostFactor, FootDrag, FootFactor, Friction, Gait, Gaits,
    Gradient, GrossEfficiency, Ground, Headwind, Humidity, Incline, KitMass, LegStrength, Level, LimitsHeld,
    LoadFactor, Mark, MarkKind, MassHeight, MetabolicPower, OverGear, PeakFactor, PeakPower, PeakTooLow,
    Power, PowerBelowStanding, PowerDemand, PowerTerms, Range, RearShare, Reason, ReserveShare, Resistance,
    RideOrRun, Rider, Riding, RidingLimits, RoadLoad, RollingCoefficient, SecondsLost, Slope, SlopeShare,
    Stance, StandingMetabolism, StrengthShare, Surface, Time, TornadoBar, Torque, TotalMass, Uncertain,
    Verdict, Watched, WheelInertia, Wheelbase, Wind, WindSpeed, WorkReserve, body_weight_gradient,
    break_even_length, running_cost, verdict_map, walking_cost,
};
pub use wheel::{
    BeadSeat, EstimateError, MeasuredRollOut, NominalWidth, RollOutDeviation, RollOutEstimate, TyreKind,
    TyreSize, TyreSizeError, Wheel, WheelDiameter,
};
