//! Which rings and cassettes are quickest on a course.

pub(super) mod along;
pub(super) mod candidate;
pub(super) mod cranks;
pub(super) mod neighbour;
pub(super) mod neighbours;
pub(super) mod piece;
pub(super) mod ranking;
pub(super) mod reserve;
#[expect(clippy::module_inception, reason = "the file is named after the type it holds")]
pub(super) mod search;
