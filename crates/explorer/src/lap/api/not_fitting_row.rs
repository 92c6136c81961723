//! Parts of a box that do not go together.

use gear_math::parts::{Combination, Lack};
use serde::Serialize;
use tsify::Tsify;

/// Parts that do not go together.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "camelCase")]
#[tsify(missing_as_null)]
pub struct NotFittingRow {
    chainset: usize,
    cassette: usize,
    derailleur: Option<usize>,
    why: LackName,
}

impl NotFittingRow {
    pub(super) fn of(Combination { chainset, cassette, derailleur }: Combination, lack: Lack) -> Self {
        Self { chainset, cassette, derailleur, why: lack.into() }
    }
}

/// The first thing that keeps parts from going together, in this order.
#[derive(Debug, Serialize, Tsify)]
#[serde(rename_all = "kebab-case")]
pub enum LackName {
    /// The largest ring does not clear the frame.
    Frame,
    /// The shifter is made for another number of sprockets.
    SprocketCount,
    /// No front derailleur shifts these rings.
    Rings,
    /// The largest sprocket is too large for the derailleur.
    LargestSprocket,
    /// The smallest sprocket is too small for it.
    SmallestSprocket,
    /// The cage is too short.
    Cage,
    /// Wheels would run into each other.
    Wheels,
}

impl From<Lack> for LackName {
    fn from(lack: Lack) -> Self {
        match lack {
            Lack::Frame => Self::Frame,
            Lack::SprocketCount => Self::SprocketCount,
            Lack::Rings => Self::Rings,
            Lack::LargestSprocket => Self::LargestSprocket,
            Lack::SmallestSprocket => Self::SmallestSprocket,
            Lack::Cage => Self::Cage,
            Lack::Wheels => Self::Wheels,
        }
    }
}
