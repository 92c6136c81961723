//! Every number of a cyclo-cross bike's set-up: gears, chain and cage, and what they mean on the course.
//!
//! Quantities carry their unit in their type; constructors check, computations do not fail.
//! Public items name the source of their formula or constant, or say "common practice" or "estimate".

mod drivetrain;
mod position;
mod quantity;
mod wheel;

pub use drivetrain::{
    CageCheck, CageClass, CageFinding, CageVerdict, Cassette, CassetteError, Chainring, Chainset,
    ChainsetError, Comparison, CrossedRule, Derailleur, DerailleurFigure, DevelopmentSpan, Drivetrain,
    DuplicatePair, DuplicateTolerance, EndDifference, FrontChange, Gear, GearRange, GearRow, GearStep,
    LongestWheel, OwnReach, PedalRate, RidingOrder, RingDifference, RingOverlap, RingPasses, RollOutLimit,
    RollOutPreset, SetUp, SetUpSummary, SharedGear, Shift, ShiftKind, Side, Sprocket, SprocketStep,
    StepSpread, TotalCapacity,
};
pub use position::{
    BarCloser, BarDepth, BarDrop, BarPlacement, BarRaise, BarReach, BarShape, BarTolerance, BikePoint,
    CarriedPosition, ClampHeight, CrossBike, ExactStem, Footing, ForkRake,
    FrameReach, FrameStack, FrontCentre, FrontEnd, FrontEndView, HeadAngle, MissingPiece, PedalOffset,
    PositionCaution, PositionChanges, PositionView, RoadPosition, Saddle, SaddleHeight, SaddleLowering,
    SeatAngle, Setback, SoleStack, Spacers, StemAngle, StemFit, StemLength, StemSearch, StemSearchLimits,
    StemSetup, StemShortfall, TipToBar, ToeClearance, ToeRoom, ToeVerdict, TopCap, keep_hoods,
};
pub use quantity::{Cadence, Circumference, Development, GearInches, Limits, OutOfLimits, Ratio, Speed};
pub use wheel::{
    BeadSeat, EstimateError, MeasuredRollOut, NominalWidth, RollOutDeviation, RollOutEstimate, TyreKind,
    TyreSize, TyreSizeError, Wheel, WheelDiameter,
};
pub use wheel::{
    AirSpring, CeilingReason, Construction, FloorAboveCeiling, FloorReason, FrontShare,
    HOOKED_RIMS, HOOKLESS_RIMS, HOW_TO_MEASURE, LabelEdition, LimitedBy, LoadedTyre, MEASURING_RIMS_2020,
    MeasuringRimRow, MountedWidth, Pressure, PressureAdvice, PressureCase, PressureCaution, PressureCeiling,
    PressureFloor, PressureMarks, RACE_RULES, RaceLimit, RaceRule, RimCaution, RimInnerWidth, RimRange,
    RimRow, SectionArc, TyreFitError, TyreGround, TyreSection, TyreWidth, WheelLoad, WheelPressure,
    WheelRadius, WheelStyle, Wheels, WidthAccuracy, WidthVerdict, contact_area_cm2, rim_cautions,
};
