//! English.

pub(crate) mod choices;
pub(crate) mod complaints;
pub(crate) mod fields;
pub(crate) mod link;

/// A unit of rings, sprockets and cages.
pub(crate) const TEETH: &str = "teeth";
