//! Every number of a cyclo-cross bike's set-up: gears, chain and cage, and what they mean on the course.
//!
//! Quantities carry their unit in their type; constructors check, computations do not fail.
//! Public items name the source of their formula or constant, or say "common practice" or "estimate".

mod drivetrain;
mod quantity;
mod rider;
mod wheel;

pub use drivetrain::{
    Cassette, CassetteError, Chainring, Chainset, ChainsetError, Drivetrain, Gear, PedalRate, Sprocket,
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
pub use wheel::{BeadSeat, NominalWidth, TyreSize, WheelDiameter};
