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
#[cfg(feature = "gpx")]
mod track;
mod uncertainty;
#[cfg(feature = "gpx")]
mod way;

pub use band::{BandedLap, GainPart, LapComparison, Quicker, Span, TimeBand};
pub use costs::{Mounting, Shifting};
pub use course::{Course, CourseError, ProfilePoint};
pub use demo::Demo;
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
pub use ranking::{Ranked, Weighting, ranked};
pub use search::{Candidate, Finalist, Finals, Search, SearchSpace};
pub use segment::{Obstacle, Segment};
pub use setup::{Begin, LapSetup};
pub use sketch::{SketchError, SketchFault};
#[cfg(feature = "gpx")]
pub use track::{TrackCourse, TrackOptions, TrackReport};
