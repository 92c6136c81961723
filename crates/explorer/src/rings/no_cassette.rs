//! Further cassettes that are none.

use gear_math::gears::{CassetteError, CassetteNameError};

/// Why a line of further cassettes is none.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum NoCassette {
    /// The sprockets are not in order.
    Sprockets(CassetteError),
    /// Nothing usual goes by the name.
    Name(CassetteNameError),
}
