//! The wheel: its size, and how far it rolls.
//!
//! # Example
//! ```
//! use gear_math::TyreSize;
//! let tyre: TyreSize = "700×33C".parse()?;
//! assert_eq!(tyre.to_string(), "33-622");
//! # Ok::<(), gear_math::wheel::TyreSizeError>(())
//! ```

mod air_spring;
mod bead_seat;
mod both_units;
mod clearance;
mod construction;
mod contact_patch;
mod measuring_rim;
mod mounted_width;
mod pressure;
mod pressure_case;
mod pressure_caution;
mod pressure_ceiling;
mod pressure_floor;
mod pressure_limits;
mod quantity;
mod race_limit;
mod rim_combination;
mod roll_out;
mod section;
mod soft_ground;
mod tyre_size;
mod wheels;

pub use air_spring::{AirSpring, LoadedTyre};
pub use bead_seat::BeadSeat;
pub use clearance::CLEARANCE_CHECK;
pub use construction::Construction;
pub use contact_patch::contact_area_cm2;
pub use measuring_rim::{LabelEdition, MEASURING_RIMS_2020, MeasuringRimRow};
pub use mounted_width::{TyreWidth, WidthAccuracy};
pub use pressure::{PressureAdvice, PressureReading, WheelPressure};
pub use pressure_case::{PressureCase, TyreGround, WheelStyle};
pub use pressure_caution::PressureCaution;
pub use pressure_ceiling::{CeilingReason, PressureCeiling, PressureMarks};
pub use pressure_floor::{FloorReason, PressureFloor};
pub use pressure_limits::{FloorAboveCeiling, LimitedBy};
pub use quantity::{
    EstimateError, FrontShare, MountedWidth, NominalWidth, Pressure, RaceLimit, RimInnerWidth,
    RollOutDeviation, WheelDiameter, WheelLoad, WheelRadius,
};
pub use race_limit::{CalliperVerdict, HOW_TO_MEASURE, RACE_RULES, RaceRule, WidthVerdict};
pub use rim_combination::{HOOKED_RIMS, HOOKLESS_RIMS, RimCaution, RimRange, RimRow, rim_cautions};
pub use roll_out::{MeasuredRollOut, RollOutEstimate, TyreKind, Wheel};
pub use section::{SectionArc, TyreFitError, TyreSection};
pub use soft_ground::{ConeIndex, SinkingWheel, WidthFactor};
pub use tyre_size::{TyreSize, TyreSizeError};
pub use wheels::Wheels;
