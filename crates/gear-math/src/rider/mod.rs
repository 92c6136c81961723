//! Riding, running and walking uphill, and which is the faster.
//!
//! # Example
//! ```
//! use gear_math::rider::{Air, BikeMass, BodyMass, Climb, KitMass, RidingLimits, Verdict};
//! use gear_math::{Bike, Circumference, Drivetrain, Power, RideOrRun, Rider, Surface};
//! let rider = Rider::new(BodyMass::new(64.0)?, KitMass::new(2.0)?, Power::new(230.0)?);
//! let drivetrain = Drivetrain { chainset: "40".parse()?, cassette: "11-13-15-17-20-23-27-32".parse()? };
//! let bike = Bike::new(BikeMass::new(9.0)?, drivetrain, Circumference::new(2100.0)?);
//! let question = RideOrRun::new(rider, bike, Air::STILL, RidingLimits::all(&rider))?;
//! assert_eq!(question.answer(&Surface::FirmGrass.ground(), Climb::new(5.0)?).verdict, Verdict::Ride);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod account;
mod air;
mod ascent;
mod burden;
mod climb_plan;
mod crossover;
mod doubt;
mod effort;
mod energy;
mod foot_bike;
mod foot_demand;
mod gearing;
mod ground;
mod limits;
mod metabolic;
mod obstacle;
mod on_foot;
mod pace;
mod paced_ascent;
mod paced_climb;
mod paced_crossover;
mod pedalling;
mod preference;
mod quantity;
mod recovery;
mod resistance;
mod ride_or_run;
#[expect(clippy::module_inception, reason = "the file is named after the type it holds")]
mod rider;
mod road_load;
mod running;
mod sensitivity;
mod sinkage;
mod slope_band;
mod spending;
mod strength;
mod traction;
mod verdict;
mod verdict_map;
mod worth;

pub use account::EffortAccount;
pub use air::{Air, Wind};
pub use ascent::{Advice, Ascent, LowerGear, OnBike};
pub use climb_plan::{Carry, CarryReach, ClimbPlan, OverGear, Shortfall};
pub use crossover::{Crossover, Flip, Mark, MarkKind};
pub(crate) use doubt::{EFFICIENCY, GROUND, LOAD, PERSON};
pub use effort::{CriticalPower, Level, PeakTooLow};
pub use energy::Band;
pub use foot_bike::FootBike;
pub(crate) use foot_demand::FootDemand;
pub use gearing::Riding;
pub use ground::{Basis, Ground, Range, Surface};
pub use limits::{LimitsHeld, Reason, RidingLimits};
pub use obstacle::{Slowing, break_even_length};
pub(crate) use on_foot::FASTEST_ON_FOOT;
pub use on_foot::{Gait, Gaits, Incline, running_cost, walking_cost};
pub use paced_climb::{PacedClimb, PacedFoot, PacedRide, SuitedRide};
pub use pedalling::{LegStrength, body_weight_gradient};
pub use quantity::{
    AirDensity, AirPressure, AirTemperature, Altitude, BalanceSpeed, BikeMass, BodyMass, CadenceCost,
    ChargeRate, Climb, ClimbLength, Compass, CrankLength, Deficit, Distance, DragArea, DrivetrainEfficiency,
    EffectiveMass, EffortBudget, EffortPrice, EffortTime, FootCost, FootCostFactor, FootDrag, FootFactor,
    Friction, Gradient, GrossEfficiency, Headwind, Humidity, KitMass, LoadFactor, MassHeight, MetabolicPower,
    PeakFactor, PeakPower, Power, PowerDemand, RearShare, RepaidShare, ReserveShare, RollingCoefficient,
    SecondsLost, Slope, SlopeShare, StandingMetabolism, StrengthShare, Time, Torque, TotalMass, WheelInertia,
    Wheelbase, WindSpeed, WorkReserve,
};
pub use recovery::{Bout, Recovery};
pub use resistance::{PowerTerms, Resistance};
pub use ride_or_run::{PowerBelowStanding, RideOrRun};
pub use rider::{Bike, Rider};
pub use road_load::RoadLoad;
pub use running::{RunningWins, SpeedBand};
pub(crate) use sensitivity::CADENCE_RPM;
pub use sensitivity::{TornadoBar, Uncertain, Watched};
pub use sinkage::Sinkage;
pub use slope_band::SlopeBand;
pub use spending::Spending;
pub use traction::Stance;
pub use verdict::{Answer, Verdict};
pub use verdict_map::{Cell, verdict_map};
