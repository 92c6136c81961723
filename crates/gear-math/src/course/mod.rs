//! The course: what it consists of, how it is read, and a lap of it.
//!
//! # Example
//! ```
//! use gear_math::Course;
//! let course: Course = "300; 0; firm grass\n60; 12; mud\n60; -12; mud".parse()?;
//! assert_eq!(course.length_m(), 420.0);
//! # Ok::<(), gear_math::course::SketchError>(())
//! ```

mod cell;
mod coat;
#[expect(clippy::module_inception, reason = "the file is named after the type it holds")]
mod course;
mod demo;
mod doubt;
mod joined;
mod lap;
mod patch;
mod quantity;
mod reserve;
mod search;
mod segment;
mod sketch;
#[cfg(feature = "gpx")]
mod track;
mod track_use;

pub use cell::SketchFault;
pub use coat::Coat;
pub use course::{Course, CourseError, ProfilePoint};
pub use demo::Demo;
pub use doubt::crossover::CrossoverBand;
pub use doubt::doubt::Doubt;
pub use doubt::draw::Draw;
pub use doubt::drawn_band::{DrawnBand, DrawnVerdict};
pub use doubt::draws::Draws;
pub use doubt::groups::DrawnGroup;
pub use doubt::lap_draw::LapDraw;
pub use doubt::open_span::OpenSpan;
pub use doubt::turner::{Turn, TurnedSide, Turner};
pub use joined::JoinedCourse;
pub use lap::band::{BandedLap, LapComparison, LapSettling};
pub use lap::braking::Braked;
pub use lap::costs::{Mounting, Shifting};
pub use lap::forced::ForcedPlace;
pub use lap::gains::{GainPart, LapGains, Span};
pub use lap::lap::{EnergyBook, GearUse, Lap, PlanPart, TracePoint, WhyOnFoot};
pub use lap::modes::Mode;
pub use lap::remount::Remount;
pub use lap::reserve_use::{ReservePoint, ReserveUse};
pub use lap::setup::{Begin, LapSetup};
pub use lap::time_band::{Precision, Quicker, TimeBand};
pub use patch::{Patch, PatchError};
pub use quantity::{
    Braking, CornerSpeed, MountTime, ObstacleTime, ShiftTime, ShiftWindow, SmoothingLength, StartSpeed, Step,
    StretchLength, TrackPlace,
};
pub use reserve::fineness::Fineness;
pub use reserve::forcing::ReserveForcing;
pub use reserve::sent::ReservePlan;
pub use reserve::setup::{GroundFactors, ReserveSetup};
pub use search::neighbours::Neighbours;
pub use search::ranking::{Ranked, Weighting, front, ranked};
pub use search::reserve::ReserveSearch;
pub use search::search::{Candidate, Finalist, Finals, Misfit, Search, SearchSpace};
pub use segment::{Obstacle, Segment};
pub use sketch::SketchError;
#[cfg(feature = "gpx")]
pub use track::gpx::GpxError;
#[cfg(feature = "gpx")]
pub use track::height_profile::TrackElevation;
#[cfg(feature = "gpx")]
pub use track::laps::TrackLaps;
#[cfg(feature = "gpx")]
pub use track::pauses::TrackPauses;
#[cfg(feature = "gpx")]
pub use track::points::TrackPoints;
#[cfg(feature = "gpx")]
pub use track::recording::{Recording, TrackCleaning};
#[cfg(feature = "gpx")]
pub use track::track::{TrackCourse, TrackOptions, TrackReport};
pub use track_use::{TrackFault, TrackUse};
