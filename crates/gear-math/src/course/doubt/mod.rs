//! What is doubtful about a lap on a reserve, moved all together.

pub(super) mod bending;
pub(super) mod crossover;
#[expect(clippy::module_inception, reason = "the file is named after the type it holds")]
pub(super) mod doubt;
pub(super) mod draw;
pub(super) mod drawn_band;
pub(super) mod draws;
pub(super) mod groups;
pub(super) mod lap_draw;
pub(super) mod open_span;
pub(super) mod percentile;
pub(super) mod rank;
pub(super) mod turner;
