//! The wheels of the chain's path, and which of them are in each other's way.

use crate::quantity::OutOfLimits;
use core::fmt;

/// A wheel's part in the chain's path.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum WheelRole {
    /// The ring on the crank.
    Chainring,
    /// The lower pulley.
    TensionPulley,
    /// The upper pulley.
    GuidePulley,
    /// The sprocket on the rear wheel.
    Sprocket,
}

impl fmt::Display for WheelRole {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Chainring => "chainring",
            Self::TensionPulley => "tension pulley",
            Self::GuidePulley => "guide pulley",
            Self::Sprocket => "sprocket",
        })
    }
}

/// Why measures make no chain path.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum PathError {
    /// A measure is none that a bicycle has.
    OutOfLimits(OutOfLimits),
    /// Two wheels would run into each other.
    WheelsOverlap {
        /// One of them.
        first: WheelRole,
        /// The other.
        second: WheelRole,
    },
}

impl fmt::Display for PathError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::OutOfLimits(limits) => limits.fmt(f),
            Self::WheelsOverlap { first, second } => {
                write!(f, "{first} and {second} run into each other: check their measures")
            }
        }
    }
}

impl core::error::Error for PathError {}

impl From<OutOfLimits> for PathError {
    fn from(error: OutOfLimits) -> Self {
        Self::OutOfLimits(error)
    }
}
