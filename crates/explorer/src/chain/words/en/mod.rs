//! English.

pub(crate) mod answer;
pub(crate) mod bench;
pub(crate) mod beside_lap;
pub(crate) mod body;
pub(crate) mod complaints;
pub(crate) mod decision;
pub(crate) mod doubt;
pub(crate) mod findings;
pub(crate) mod geometry;
pub(crate) mod names;
pub(crate) mod pictures;
pub(crate) mod remedies;
pub(crate) mod sheet;
pub(crate) mod tables;
pub(crate) mod verdict;
pub(crate) mod working;
