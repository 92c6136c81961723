//! The lap of a rider who spends a reserve and has it back: the quickest by a price of a joule.

pub(super) mod back;
pub(super) mod cell;
pub(super) mod charge;
pub(super) mod control;
pub(super) mod field;
pub(super) mod fineness;
pub(super) mod forward;
pub(super) mod gearing;
pub(super) mod plan;
pub(super) mod setup;
pub(super) mod way;

#[cfg(test)]
mod trial;
