//! English, a subject a file.

pub(crate) mod answer;
pub(crate) mod complaints;
pub(crate) mod decision;
pub(crate) mod gears;
pub(crate) mod ladder;
pub(crate) mod limit;
pub(crate) mod overlap;
pub(crate) mod probes;
pub(crate) mod question;
pub(crate) mod sheet;
pub(crate) mod speeds;
pub(crate) mod steps;
pub(crate) mod summary;
pub(crate) mod wheel;
pub(crate) mod working;
