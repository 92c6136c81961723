//! One bike of the comparison, in numbers.

use crate::side::Side;
use gear_math::chain::CageOutcome;
use gear_math::course::{DrawnBand, ReserveSetup};
use gear_math::gears::StepSpread;
use gear_math::rider::{Reason, Slope};
use gear_math::{Development, Gear, Pressure, Speed};

/// Which bike a row is of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Whose {
    /// The one on a side of the bench.
    Bench(Side),
    /// The one kept under this name, at this place of the rack, counted from 0.
    Kept {
        /// Its name.
        name: String,
        /// Its place.
        place: usize,
    },
}

impl Whose {
    /// What stands for it in a picture: A, B, or its place on the rack counted from 1.
    #[must_use]
    pub fn mark(&self) -> String {
        match self {
            Self::Bench(side) => side.to_string(),
            Self::Kept { place, .. } => (place + 1).to_string(),
        }
    }
}

/// A gear at one end of the range.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EndGear {
    /// Ring and sprocket.
    pub gear: Gear,
    /// Its development.
    pub development: Development,
    /// Its speed at the rider's lowest or highest cadence.
    pub speed: Speed,
}

/// One bike, worked out by itself.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// Which one.
    pub whose: Whose,
    /// The bench with it on both sides, as a link.
    pub link: String,
    /// The same as it is understood, by which workers ride it: of a field in error the last good text.
    pub errand: String,
    /// Whether all of the bench was understood, so that the link alone says what the bike comes to.
    pub is_sure: bool,
    /// The lowest gear that may be used, at the lowest cadence; below that speed no gear is low enough.
    pub lowest: EndGear,
    /// The highest gear that may be used, at the highest cadence.
    pub highest: EndGear,
    /// The steps on the way up; a single gear has none.
    pub steps: Option<StepSpread>,
    /// Gears neither crossed nor to be avoided, duplicates counted once.
    pub useful: usize,
    /// Whether the cage takes it.
    pub cage: CageOutcome,
    /// Links of the chain to fit, where one does.
    pub links: Option<u16>,
    /// Where riding ends on this ground, and why; nowhere when `None`.
    pub ends: Option<(Slope, Reason)>,
    /// Pressures to start from, front and rear; none where tyre and rim do not go together.
    pub pressures: Option<[Pressure; 2]>,
    /// Every gear that may be used: its development in metres, and 0 on the largest ring, 1 on the next.
    pub gears: Vec<(f64, usize)>,
    /// All that its lap is ridden with, which tells one lap from another; nothing where it is ridden at an even power.
    pub rides: Option<ReserveSetup>,
    /// Time of the lap, once it is ridden, in seconds.
    pub lap_s: Option<f64>,
    /// The same in each draw of what is doubtful that is done, in their order.
    pub drawn_s: Vec<f64>,
}

impl Row {
    /// Whether enough is drawn to say how sure its time is.
    #[must_use]
    pub fn is_banded(&self) -> bool {
        self.drawn_s.len() >= DrawnBand::LEAST
    }

    /// Whether it is at least as good as another in the lowest and the highest gear, in the largest step and round the lap, and
    /// better in one.
    #[must_use]
    pub fn beats(&self, other: &Self) -> bool {
        let merits = |row: &Self| {
            let largest = row.steps.map_or(0.0, |steps| steps.largest.percent());
            let lap = row.lap_s.unwrap_or(0.0);
            [-row.lowest.speed.km_per_h(), row.highest.speed.km_per_h(), -largest, -lap]
        };
        let (own, others) = (merits(self), merits(other));
        let pairs = || own.iter().zip(&others);
        pairs().all(|(own, other)| own >= other) && pairs().any(|(own, other)| own > other)
    }
}
