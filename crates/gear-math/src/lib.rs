//! Every number of a cyclo-cross bike's set-up: gears, chain and cage, and what they mean on the course.
//!
//! Quantities carry their unit in their type; constructors check, computations do not fail.
//! Public items name the source of their formula or constant, or say "common practice" or "estimate".
//!
//! The feature `gpx`, on by default, reads courses from GPX files; without it the crate depends on nothing.
//!
//! # Examples
//! Which of two set-ups climbs slower, and by how much:
//! ```
//! use gear_math::{Circumference, Drivetrain, DuplicateTolerance, SetUp, Side};
//! let wheel = Circumference::new(2155.0)?;
//! let set_up = |rings: &str, sprockets: &str| -> Result<SetUp, Box<dyn std::error::Error>> {
//!     Ok(SetUp::new(Drivetrain { chainset: rings.parse()?, cassette: sprockets.parse()? }, wheel))
//! };
//! let a = set_up("50/34", "11-13-15-17-19-21-24-27-30")?;
//! let b = set_up("44/32", "11-13-15-18-21-24-28-32")?;
//! let comparison = a.compare(&b, DuplicateTolerance::default());
//! assert_eq!(comparison.lowest.longer, Some(Side::A));
//! assert!((comparison.lowest.step.percent() - 13.3).abs() < 0.1);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//! Whether a derailleur takes it:
//! ```
//! use gear_math::{CageVerdict, Derailleur, Drivetrain, Sprocket, TotalCapacity};
//! let bike = Drivetrain { chainset: "44/32".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
//! let derailleur = Derailleur {
//!     total_capacity: Some(TotalCapacity::new(35)?),
//!     largest_sprocket: Some(Sprocket::new(34)?),
//!     ..Derailleur::default()
//! };
//! assert_eq!(derailleur.check(&bike).verdict, CageVerdict::Fits);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod course;
mod decimal;
mod drivetrain;
mod likely;
mod meant;
mod order;
mod physics;
mod position;
mod quantity;
mod rider;
mod unit;
mod wheel;

pub use course::{
    BandedLap, Begin, Braking, CadenceWindow, Candidate, Coat, CornerSpeed, Course, CourseError, Demo,
    EnergyBook, Finalist, Finals, ForcedPlace, GainPart, GearUse, JoinedCourse, Lap, LapComparison, LapSetup,
    Misfit, Mode, MountTime, Mounting, Obstacle, ObstacleTime, Patch, PatchError, PlanPart, Precision,
    ProfilePoint, Quicker, Ranked, Search, SearchSpace, Segment, ShiftTime, Shifting, SketchError,
    SketchFault, SmoothingLength, Span, StartSpeed, Step, StretchLength, TimeBand, TracePoint, TrackFault,
    TrackPlace, TrackUse, Weighting, WhyOnFoot, front, ranked,
};
#[cfg(feature = "gpx")]
pub use course::{GpxError, TrackCourse, TrackOptions, TrackReport};
pub use decimal::decimal;
pub use drivetrain::{
    Assumption, BottomBracketDrop, Cage, CageAngle, CageAnswer, CageDoubt, CageLength, CageMeasures,
    CageNeed, CageOutcome, CageQuestion, CentreDistance, ChainAdvice, ChainAngle, ChainDefaults, ChainFit,
    ChainLinks, ChainLinksError, ChainMeasure, ChainPath, ChainPitch, ChainSetup, ChainVerdict, ChainWindow,
    Chainline, ChainlineMeasures, ChainstayLength, Change, ClassTrial, DerailleurNeed, Effort, EffortPart,
    ForeStop, FrameMeasures, FrontConcern, FrontLimits, GearFit, GearSet, GearSetError, GearState,
    GuideAngle, Hanger, HangerDrop, HangerSetback, HubMeasures, PathError, PathPoint, PathWheel, PitchCircle,
    Pulley, PulleyCentres, PulleyGap, RearStop, Remedy, RingSpacing, SprocketPitch, Standing, StraightRun,
    TwoSprocketDrive, TwoSprocketError, WheelRole, cassette_slope_degrees,
};
pub use drivetrain::{
    CageCheck, CageClass, CageFinding, CageVerdict, Cassette, CassetteError, CassetteName, CassetteNameError,
    Chainring, Chainset, ChainsetError, Comparison, CrossedRule, Derailleur, DerailleurFigure,
    DevelopmentSpan, Drivetrain, DuplicatePair, DuplicateTolerance, EndDifference, FrontChange, Gear,
    GearRange, GearRow, GearStep, LongestWheel, OwnReach, PedalRate, RidingOrder, RingDifference,
    RingOverlap, RingPasses, RollOutLimit, RollOutPreset, SetUp, SetUpSummary, SharedGear, Shift, ShiftKind,
    Side, Sprocket, SprocketStep, StepSpread, TotalCapacity,
};
pub use likely::LIKELY_SHARE;
pub use meant::meant;
pub use order::ascending;
pub use position::{
    BarCloser, BarDepth, BarDrop, BarPlacement, BarRaise, BarReach, BarShape, BarTolerance, BikePoint,
    CarriedPosition, ClampHeight, CrossBike, ExactStem, Footing, ForkRake, FrameReach, FrameStack,
    FrontCentre, FrontEnd, FrontEndView, HeadAngle, MissingPiece, PedalOffset, PositionCaution,
    PositionChanges, PositionView, RoadPosition, Saddle, SaddleHeight, SaddleLowering, SeatAngle, Setback,
    SoleStack, Spacers, StemAngle, StemFit, StemLack, StemLength, StemSearch, StemSearchLimits, StemSetup,
    StemShortfall, TipToBar, ToeClearance, ToeRoom, ToeVerdict, TopCap, keep_hoods,
};
pub use quantity::{
    Cadence, Circumference, Development, GearInches, Limits, Measured, OutOfLimits, Ratio, Speed,
};
pub use rider::{
    Advice, Air, AirDensity, AirPressure, AirTemperature, Altitude, Answer, Ascent, BalanceSpeed, Band,
    Basis, Bike, BikeMass, BodyMass, Carry, Cell, Climb, ClimbLength, ClimbPlan, Compass, CrankLength,
    CriticalPower, Crossover, Distance, DragArea, DrivetrainEfficiency, EffectiveMass, EffortTime, Flip,
    FlipChange, FootCost, FootCostFactor, FootDrag, FootFactor, Friction, Gait, Gaits, Gradient,
    GrossEfficiency, Ground, Headwind, Humidity, Incline, KitMass, LegStrength, Level, LimitsHeld,
    LoadFactor, LowerGear, Mark, MarkKind, MassHeight, MetabolicPower, OnBike, OverGear, PeakFactor,
    PeakPower, PeakTooLow, Power, PowerBelowStanding, PowerDemand, PowerTerms, Range, Reach, RearShare,
    Reason, ReserveShare, Resistance, RideOrRun, Rider, Riding, RidingLimits, RoadLoad, RollingCoefficient,
    RunningWins, SecondsLost, Shortfall, Slope, SlopeBand, SlopeShare, Slowing, SpeedBand, Stance,
    StandingMetabolism, StrengthShare, Surface, Time, TornadoBar, Torque, TotalMass, Uncertain, Verdict,
    Watched, WheelInertia, Wheelbase, Wind, WindSpeed, WorkReserve, body_weight_gradient, break_even_length,
    running_cost, verdict_map, walking_cost,
};
pub use unit::{decimal_in, slope_percent};
pub use wheel::{
    AirSpring, BeadSeat, CLEARANCE_CHECK, CalliperVerdict, CeilingReason, ConeIndex, Construction,
    EstimateError, FloorAboveCeiling, FloorReason, FrontShare, HOOKED_RIMS, HOOKLESS_RIMS, HOW_TO_MEASURE,
    LabelEdition, LimitedBy, LoadedTyre, MEASURING_RIMS_2020, MeasuredRollOut, MeasuringRimRow, MountedWidth,
    NominalWidth, Pressure, PressureAdvice, PressureCase, PressureCaution, PressureCeiling, PressureFloor,
    PressureMarks, PressureReading, RACE_RULES, RaceLimit, RaceRule, RimCaution, RimInnerWidth, RimRange,
    RimRow, RollOutDeviation, RollOutEstimate, SectionArc, SinkingWheel, TyreFitError, TyreGround, TyreKind,
    TyreSection, TyreSize, TyreSizeError, TyreWidth, Wheel, WheelDiameter, WheelLoad, WheelPressure,
    WheelRadius, WheelStyle, Wheels, WidthAccuracy, WidthFactor, WidthVerdict, contact_area_cm2,
    rim_cautions,
};

#[cfg(doctest)]
#[doc = include_str!("../../../README.md")]
struct ProjectReadme;

#[cfg(doctest)]
#[doc = include_str!("../README.md")]
struct Readme;
