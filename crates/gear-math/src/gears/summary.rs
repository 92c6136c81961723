//! What one set-up offers, in a few figures.

use crate::gears::front_change::FrontChange;
use crate::gears::overlap::RingOverlap;
use crate::gears::quantity::{DuplicateTolerance, GearRange};
use crate::gears::riding_order::RidingOrder;
use crate::gears::setup::{GearRow, Setup};

/// The figures by which set-ups are judged.
#[derive(Debug, Clone, PartialEq)]
pub struct SetupSummary {
    /// The lowest gear that may be used.
    pub lowest: GearRow,
    /// The highest gear that may be used.
    pub highest: GearRow,
    /// Highest ÷ lowest.
    pub range: GearRange,
    /// Rings × sprockets.
    pub gears: usize,
    /// How many of them are crossed.
    pub crossed: usize,
    /// The order with the fewest changes of ring.
    pub riding_order: RidingOrder,
    /// Every gear that is neither crossed, nor to be avoided, nor a duplicate of one before.
    pub useful_order: RidingOrder,
    /// The changes between neighbouring rings, from the smallest ring up.
    pub front_changes: Vec<FrontChange>,
    /// How much the rings repeat each other.
    pub overlap: RingOverlap,
}

impl SetupSummary {
    /// How many gears are useful: neither crossed nor to be avoided, and duplicates counted once.
    #[must_use]
    pub fn useful(&self) -> usize {
        self.useful_order.gear_count()
    }
}

impl Setup {
    /// Sums the set-up up; gears within `tolerance` of each other count as the same.
    ///
    /// # Example
    /// ```
    /// use gear_math::{Circumference, Drivetrain, Setup};
    /// let drivetrain = Drivetrain { chainset: "44/31".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
    /// let summary = Setup::new(drivetrain, Circumference::new(2150.0)?).summary(Default::default());
    /// assert_eq!((summary.gears, summary.crossed, summary.useful()), (16, 3, 12));
    /// assert_eq!(summary.range.percent().round(), 413.0);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn summary(&self, tolerance: DuplicateTolerance) -> SetupSummary {
        let drivetrain = &self.drivetrain;
        let (lowest, highest) =
            (self.row(self.avoid.lowest(drivetrain)), self.row(self.avoid.highest(drivetrain)));
        SetupSummary {
            lowest,
            highest,
            range: GearRange::between(lowest.ratio.value(), highest.ratio.value()),
            gears: drivetrain.gear_count(),
            crossed: drivetrain.crossed_rule().gears().count(),
            riding_order: RidingOrder::ring_by_ring(drivetrain, self.avoid, tolerance),
            useful_order: RidingOrder::every_useful_gear(drivetrain, self.avoid, tolerance),
            front_changes: drivetrain.front_changes().collect(),
            overlap: drivetrain.overlap_without(self.avoid, tolerance),
        }
    }
}
