//! What to type instead of rings and sprockets that cannot be understood.

use crate::bench::words::complaints::sentence;
use crate::rings::no_cassette::NoCassette;
use gear_math::gears::{CassetteError, CassetteNameError, ChainsetError};

/// No rings.
pub(crate) fn chainset(error: &ChainsetError) -> String {
    sentence(&error.to_string())
}

/// No sprockets.
pub(crate) fn cassette(error: &CassetteError) -> String {
    sentence(&error.to_string())
}

/// A name that no usual cassette has.
pub(crate) fn cassette_name(error: &CassetteNameError) -> String {
    sentence(&error.to_string())
}

/// No cassette, within the sentence that names its line.
pub(crate) fn no_cassette(fault: &NoCassette) -> String {
    match fault {
        NoCassette::Sprockets(error) => error.to_string(),
        NoCassette::Name(error) => error.to_string(),
    }
}
