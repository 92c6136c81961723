//! The lap of a rider who draws on a reserve and has it back: the quickest at a price of a joule.

pub(super) mod back;
pub(super) mod book;
pub(super) mod cell;
pub(super) mod doubt;
pub(super) mod entry;
pub(super) mod field;
pub(super) mod fineness;
pub(super) mod forcing;
pub(super) mod forward;
pub(super) mod gearing;
pub(super) mod hunt;
pub(super) mod laps;
pub(super) mod moment;
pub(super) mod near;
pub(super) mod pace;
pub(super) mod person;
pub(super) mod planner;
pub(super) mod range;
pub(super) mod rule;
pub(super) mod search;
pub(super) mod sent;
pub(super) mod setup;
pub(super) mod way;
pub(super) mod why;
