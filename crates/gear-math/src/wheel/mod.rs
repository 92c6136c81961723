//! The wheel: its size, and how far it rolls.

mod air_spring;
mod bead_seat;
mod bisection;
mod clearance;
mod construction;
mod contact_patch;
mod measuring_rim;
mod mounted_width;
mod pressure;
mod pressure_limits;
mod quantity;
mod race_limit;
mod rim_combination;
mod roll_out;
mod section;
mod tyre_size;
mod wheels;

pub use air_spring::{AirSpring, LoadedTyre};
pub use bead_seat::BeadSeat;
pub use construction::Construction;
pub use contact_patch::contact_area_cm2;
pub use measuring_rim::{LabelEdition, MEASURING_RIMS_2020, MeasuringRimRow};
pub use mounted_width::{TyreWidth, WidthAccuracy};
pub use pressure::{PressureAdvice, PressureCase, PressureReading, TyreGround, WheelPressure, WheelStyle};
pub use pressure_limits::{
    CeilingReason, FloorAboveCeiling, FloorReason, LimitedBy, PressureCaution, PressureCeiling,
    PressureFloor, PressureMarks,
};
pub use quantity::{EstimateError, NominalWidth, RollOutDeviation, WheelDiameter};
pub use quantity::{FrontShare, MountedWidth, Pressure, RaceLimit, RimInnerWidth, WheelLoad, WheelRadius};
pub use race_limit::{CalliperVerdict, HOW_TO_MEASURE, RACE_RULES, RaceRule, WidthVerdict};
pub use rim_combination::{HOOKED_RIMS, HOOKLESS_RIMS, RimCaution, RimRange, RimRow, rim_cautions};
pub use roll_out::{MeasuredRollOut, RollOutEstimate, TyreKind, Wheel};
pub use section::{SectionArc, TyreFitError, TyreSection};
pub use tyre_size::{TyreSize, TyreSizeError};
pub use wheels::Wheels;
