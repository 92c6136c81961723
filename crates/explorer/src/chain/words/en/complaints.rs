//! What is wrong with the measures of frame and cage.

use crate::bench::words::complaints::sentence;
use gear_math::chain::PathError;

/// What goes on in the place of a cage that cannot be built.
pub(crate) const MEASURES_BEFORE: &str = "the measures before";

/// Measures that make no path for the chain.
pub(crate) fn path(error: &PathError) -> String {
    sentence(&error.to_string())
}
