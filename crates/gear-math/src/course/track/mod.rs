//! A recorded track, and the course it becomes.

pub(super) mod elevation;
pub(super) mod gpx;
pub(super) mod headings;
pub(super) mod height_profile;
pub(super) mod laps;
pub(super) mod median;
pub(super) mod pauses;
pub(super) mod points;
pub(super) mod recorded_point;
pub(super) mod recording;
#[expect(clippy::module_inception, reason = "the file is named after the type it holds")]
pub(super) mod track;
pub(super) mod way;
