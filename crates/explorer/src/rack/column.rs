//! What the bikes can be ordered by.

use crate::rack::row::{Row, Whose};

/// A column of the table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Column {
    /// The bench and the rack, as they stand.
    Bike,
    /// Speed in the lowest gear.
    Lowest,
    /// Speed in the highest gear.
    Highest,
    /// Mean step.
    Mean,
    /// Largest step.
    Largest,
    /// Useful gears.
    Useful,
    /// Links of the chain.
    Links,
    /// The slope at which riding ends.
    Ends,
    /// Time of the lap.
    Lap,
    /// Pressure in front.
    Pressure,
}

impl Column {
    /// All, in the order of the table.
    pub const ALL: [Self; 10] = [
        Self::Bike,
        Self::Lowest,
        Self::Highest,
        Self::Mean,
        Self::Largest,
        Self::Useful,
        Self::Links,
        Self::Ends,
        Self::Lap,
        Self::Pressure,
    ];

    /// Its name in the page's buttons.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Bike => "bike",
            Self::Lowest => "lowest",
            Self::Highest => "highest",
            Self::Mean => "mean",
            Self::Largest => "largest",
            Self::Useful => "useful",
            Self::Links => "links",
            Self::Ends => "ends",
            Self::Lap => "lap",
            Self::Pressure => "pressure",
        }
    }

    /// The column of this name.
    #[must_use]
    pub fn by_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|column| column.key() == key)
    }

    /// What a bike is ordered by there; nothing where that is not known.
    #[must_use]
    pub fn rank(self, row: &Row) -> Option<f64> {
        match self {
            Self::Bike => Some(match &row.whose {
                Whose::Bench(side) => *side as usize as f64,
                Whose::Kept { place, .. } => 2.0 + *place as f64,
            }),
            Self::Lowest => Some(row.lowest.speed.km_per_h()),
            Self::Highest => Some(row.highest.speed.km_per_h()),
            Self::Mean => row.steps.map(|steps| steps.mean.percent()),
            Self::Largest => row.steps.map(|steps| steps.largest.percent()),
            Self::Useful => Some(row.useful as f64),
            Self::Links => row.links.map(f64::from),
            Self::Ends => Some(row.ends.map_or(f64::MAX, |(slope, _)| slope.percent())),
            Self::Lap => row.lap_s,
            Self::Pressure => row.pressures.map(|[front, _]| front.bar()),
        }
    }
}
