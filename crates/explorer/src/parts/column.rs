//! By what the table of a box may be put in order.

use crate::parts::choice::Choice;

/// A column by which the table may be put in order.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Column {
    /// The largest ring.
    Parts,
    /// The lap.
    Lap,
    /// The lowest gear.
    Lowest,
    /// The links of the chain.
    Chain,
    /// How many gears are avoided.
    Avoided,
}

impl Column {
    /// Every one by its place among the columns of figures, with the parts in front.
    pub(crate) const fn at(place: usize) -> Option<Self> {
        match place {
            0 => Some(Self::Parts),
            1 | 2 => Some(Self::Lap),
            3 => Some(Self::Lowest),
            4 => Some(Self::Chain),
            5 => Some(Self::Avoided),
            _ => None,
        }
    }

    pub(crate) fn figure(self, choice: &Choice) -> f64 {
        let fit = &choice.parts.fit;
        match self {
            Self::Parts => f64::from(fit.drivetrain.chainset.largest().teeth()),
            Self::Lap => choice.parts.lap.time_s,
            Self::Lowest => choice.lowest_m,
            Self::Chain => f64::from(fit.links.count()),
            Self::Avoided => fit.avoid.count() as f64,
        }
    }
}
