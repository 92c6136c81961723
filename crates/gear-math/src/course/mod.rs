//! The course: what it consists of, how it is read, and a lap of it.

mod cell;
mod coat;
#[expect(clippy::module_inception, reason = "the file is named after the type it holds")]
mod course;
mod demo;
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
pub use joined::JoinedCourse;
pub use lap::band::{BandedLap, GainPart, LapComparison, Span};
pub use lap::braking::Braked;
pub use lap::costs::{Mounting, Shifting};
pub use lap::forced::ForcedPlace;
pub use lap::lap::{EnergyBook, GearUse, Lap, PlanPart, TracePoint, WhyOnFoot};
pub use lap::modes::Mode;
pub use lap::remount::Remount;
pub use lap::setup::{Begin, LapSetup};
pub use lap::time_band::{Precision, Quicker, TimeBand};
pub use patch::{Patch, PatchError};
pub use quantity::{
    Braking, CornerSpeed, MountTime, ObstacleTime, ShiftTime, ShiftWindow, SmoothingLength, StartSpeed, Step,
    StretchLength, TrackPlace,
};
pub use reserve::fineness::Fineness;
pub use reserve::lap::{ReserveLap, ReservePoint};
pub use reserve::planned::PlannedLap;
pub use reserve::setup::{GroundFactors, ReserveSetup};
pub use search::ranking::{Ranked, Weighting, front, ranked};
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
pub use track::recording::TrackCleaning;
#[cfg(feature = "gpx")]
pub use track::track::{TrackCourse, TrackOptions, TrackReport};
pub use track_use::{TrackFault, TrackUse};
