//! Where the handlebar must be.

use crate::position::point::BikePoint;
use crate::position::quantity::{BarDepth, BarReach};

/// The shape of a drop handlebar, as far as the hands notice it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BarShape {
    /// Bar centre forward to the hoods.
    pub reach: BarReach,
    /// Bar centre down to the drops, where it is known.
    pub depth: Option<BarDepth>,
}

impl BarShape {
    /// Height of the drops above the bottom bracket, in millimetres, with the bar's centre at `centre`.
    #[must_use]
    pub fn drops_y_mm(&self, centre: BikePoint) -> Option<f64> {
        self.depth.map(|depth| centre.y_mm - depth.mm())
    }
}

/// Where a handlebar of another shape must be so that the hands on the hoods stay where they were.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BarPlacement {
    /// Centre of the new bar at the stem.
    pub centre: BikePoint,
    /// The hoods, taken one bar reach ahead of the centre and level with it (estimate).
    pub hoods: BikePoint,
    /// Height of the drops above the bottom bracket, in millimetres, where the new bar's depth is known.
    pub drops_y_mm: Option<f64>,
}

/// Centre of the bar relative to the saddle's tip: `X = x_tip + √(G² − D²)`, `Y = y_tip − D`.
pub(crate) fn bar_from_saddle(tip: BikePoint, tip_to_bar_mm: f64, bar_drop_mm: f64) -> BikePoint {
    let forward = (tip_to_bar_mm.powi(2) - bar_drop_mm.powi(2)).sqrt();
    BikePoint { x_mm: tip.x_mm + forward, y_mm: tip.y_mm - bar_drop_mm }
}

/// Moves a bar target that was made for a bar of shape `old` so that a bar of shape `new` has its hoods in the same
/// place: the centre goes back by the difference in reach.
///
/// # Example
/// ```
/// use gear_math::position::{BarDepth, BarReach, BarShape, BikePoint, keep_hoods};
/// let old = BarShape { reach: BarReach::new(80.0)?, depth: None };
/// let new = BarShape { reach: BarReach::new(72.0)?, depth: Some(BarDepth::new(118.0)?) };
/// let placed = keep_hoods(BikePoint { x_mm: 480.0, y_mm: 640.0 }, &old, &new);
/// assert_eq!(placed.centre.x_mm, 488.0);
/// assert_eq!(placed.hoods.x_mm, 560.0);
/// assert_eq!(placed.drops_y_mm, Some(522.0));
/// # Ok::<(), gear_math::OutOfLimits>(())
/// ```
#[must_use]
pub fn keep_hoods(target: BikePoint, old: &BarShape, new: &BarShape) -> BarPlacement {
    let hoods = BikePoint { x_mm: target.x_mm + old.reach.mm(), ..target };
    let centre = BikePoint { x_mm: hoods.x_mm - new.reach.mm(), ..target };
    BarPlacement { centre, hoods, drops_y_mm: new.drops_y_mm(centre) }
}
