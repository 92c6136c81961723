//! What the frame gives the chain.

use crate::chain::measures::{BottomBracketDrop, ChainstayLength};
use crate::chain::point::PathPoint;

/// What the frame gives the chain's path.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FrameMeasures {
    /// Bottom bracket to rear axle.
    pub chainstay: ChainstayLength,
    /// Bottom bracket below the rear axle.
    pub bottom_bracket_drop: BottomBracketDrop,
}

impl FrameMeasures {
    pub(super) fn bottom_bracket(&self) -> PathPoint {
        let [stay, drop] = [self.chainstay.mm(), self.bottom_bracket_drop.mm()];
        PathPoint { x_mm: (stay * stay - drop * drop).sqrt(), y_mm: -drop }
    }
}
