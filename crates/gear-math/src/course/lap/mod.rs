//! One lap of a course: its plan, its time and how sure that is.

pub(super) mod account;
pub(super) mod band;
pub(super) mod braking;
pub(super) mod costs;
pub(super) mod follow;
pub(super) mod forced;
pub(super) mod gains;
pub(super) mod gearbox;
#[expect(clippy::module_inception, reason = "the file is named after the type it holds")]
pub(super) mod lap;
pub(super) mod modes;
pub(super) mod motion;
pub(super) mod remount;
pub(super) mod reserve_use;
pub(super) mod ride;
pub(super) mod sent;
pub(super) mod settled;
pub(super) mod setup;
pub(super) mod terrain;
pub(super) mod time_band;
pub(super) mod uncertainty;
