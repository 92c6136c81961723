//! The course: what it consists of, how it is read, and a lap of it.

mod account;
mod band;
mod costs;
#[expect(clippy::module_inception, reason = "the file is named after the type it holds")]
mod course;
mod demo;
#[cfg(feature = "gpx")]
mod elevation;
mod follow;
mod forced;
mod gearbox;
#[cfg(feature = "gpx")]
mod gpx;
#[cfg(feature = "gpx")]
mod height_profile;
mod joined;
mod lap;
#[cfg(feature = "gpx")]
mod laps;
mod modes;
mod motion;
mod patch;
#[cfg(feature = "gpx")]
mod pauses;
mod quantity;
mod ranking;
mod ride;
mod search;
mod segment;
mod setup;
mod sketch;
mod terrain;
mod time_band;
#[cfg(feature = "gpx")]
mod track;
mod track_use;
mod uncertainty;
#[cfg(feature = "gpx")]
mod way;

pub use band::{BandedLap, GainPart, LapComparison, Span};
pub use costs::{Mounting, Shifting};
pub use course::{Course, CourseError, ProfilePoint};
pub use demo::Demo;
pub use forced::ForcedPlace;
#[cfg(feature = "gpx")]
pub use gpx::GpxError;
pub use joined::JoinedCourse;
pub use lap::{EnergyBook, GearUse, Lap, PlanPart, TracePoint, WhyOnFoot};
pub use modes::Mode;
pub use patch::{Coat, Patch, PatchError};
pub use quantity::{
    Braking, CadenceWindow, CornerSpeed, MountTime, ObstacleTime, ShiftTime, SmoothingLength, StartSpeed,
    Step, StretchLength, TrackPlace,
};
pub use ranking::{Ranked, Weighting, front, ranked};
pub use search::{Candidate, Finalist, Finals, Misfit, Search, SearchSpace};
pub use segment::{Obstacle, Segment};
pub use setup::{Begin, LapSetup};
pub use sketch::{SketchError, SketchFault};
pub use time_band::{Precision, Quicker, TimeBand};
#[cfg(feature = "gpx")]
pub use track::{TrackCourse, TrackOptions, TrackReport};
pub use track_use::{TrackFault, TrackUse};
