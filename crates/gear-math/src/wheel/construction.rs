//! How a tyre holds its air and its rim.

use core::fmt;

/// How a tyre holds its air and its rim.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Construction {
    /// Casing sewn round its tube and glued to the rim.
    Tubular,
    /// Open tyre with a tube inside.
    Clincher,
    /// Open tyre that seals on the rim without a tube.
    Tubeless,
}

impl Construction {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Tubular, Self::Clincher, Self::Tubeless];
}

impl fmt::Display for Construction {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Tubular => "tubular",
            Self::Clincher => "clincher with tube",
            Self::Tubeless => "tubeless",
        })
    }
}
