//! Which of the two set-ups.

use std::fmt;

/// Set-up A or set-up B.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// The first set-up: solid, on the left.
    A,
    /// The second set-up: open, on the right.
    B,
}

impl Side {
    /// Both, in order.
    pub const BOTH: [Self; 2] = [Self::A, Self::B];

    /// The one this is compared with.
    #[must_use]
    pub const fn other(self) -> Self {
        match self {
            Self::A => Self::B,
            Self::B => Self::A,
        }
    }
}

impl From<gear_math::Compared> for Side {
    fn from(side: gear_math::Compared) -> Self {
        match side {
            gear_math::Compared::A => Self::A,
            gear_math::Compared::B => Self::B,
        }
    }
}

impl fmt::Display for Side {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::A => "A",
            Self::B => "B",
        })
    }
}
