//! What a maker states of a rear derailleur and the front derailleur with it.

use crate::gears::{RingDifference, Sprocket, TotalCapacity};
use core::fmt;

/// The makers' figures. What is not known stays out, is not checked, and is named as unknown.
///
/// # Example
/// ```
/// use gear_math::{Derailleur, TotalCapacity};
/// use gear_math::cage::DerailleurFigure;
/// let derailleur = Derailleur { total_capacity: Some(TotalCapacity::new(35)?), ..Derailleur::default() };
/// assert_eq!(derailleur.unknown().next(), Some(DerailleurFigure::LargestSprocket));
/// # Ok::<(), gear_math::OutOfLimits>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Derailleur {
    /// Total capacity.
    pub total_capacity: Option<TotalCapacity>,
    /// Largest sprocket the guide pulley clears. Independent of the cage's length.
    pub largest_sprocket: Option<Sprocket>,
    /// Fewest teeth allowed on the smallest sprocket.
    pub smallest_sprocket: Option<Sprocket>,
    /// Largest difference between rings for the front derailleur.
    pub ring_difference: Option<RingDifference>,
}

/// One of the figures of a [`Derailleur`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DerailleurFigure {
    /// Total capacity.
    TotalCapacity,
    /// Largest sprocket.
    LargestSprocket,
    /// Smallest sprocket.
    SmallestSprocket,
    /// Chainring difference.
    RingDifference,
}

impl Derailleur {
    /// Chainring difference that front derailleurs for two rings usually span, least to most, in teeth (common
    /// practice: 14 in print, 16 from workshop memory).
    pub const USUAL_DOUBLE_DIFFERENCE: (u16, u16) = (14, 16);
    /// The same for three rings (common practice, as in published text).
    pub const USUAL_TRIPLE_DIFFERENCE: u16 = 22;

    /// The figures that are not known.
    pub fn unknown(&self) -> impl Iterator<Item = DerailleurFigure> + use<> {
        [
            (DerailleurFigure::TotalCapacity, self.total_capacity.is_none()),
            (DerailleurFigure::LargestSprocket, self.largest_sprocket.is_none()),
            (DerailleurFigure::SmallestSprocket, self.smallest_sprocket.is_none()),
            (DerailleurFigure::RingDifference, self.ring_difference.is_none()),
        ]
        .into_iter()
        .filter_map(|(figure, is_unknown)| is_unknown.then_some(figure))
    }
}

impl fmt::Display for DerailleurFigure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::TotalCapacity => "total capacity",
            Self::LargestSprocket => "largest sprocket",
            Self::SmallestSprocket => "smallest sprocket",
            Self::RingDifference => "chainring difference",
        })
    }
}
