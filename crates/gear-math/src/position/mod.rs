//! The position carried over from the road bike: saddle, bar, stem, and toe overlap.
//!
//! # Example
//! ```
//! use gear_math::position::SaddleHeight;
//! assert!(SaddleHeight::new(728.0).is_ok());
//! assert_eq!(SaddleHeight::new(72.8).unwrap_err().to_string(), "saddle height must be 450 to 950 mm");
//! ```

mod bar_target;
mod limits;
mod point;
mod quantity;
mod saddle;
mod stem;
mod stem_search;
mod toe_clearance;
mod transfer;

pub use bar_target::{BarPlacement, BarShape, keep_hoods};
pub use limits::PositionCaution;
pub use point::BikePoint;
pub use quantity::{
    BarCloser, BarDepth, BarDrop, BarRaise, BarReach, BarTolerance, ClampHeight, ForkRake, FrameReach,
    FrameStack, FrontCentre, HeadAngle, PedalOffset, SaddleHeight, SaddleLowering, SeatAngle, Setback,
    SoleStack, Spacers, StemAngle, StemLength, TipToBar, TopCap,
};
pub use saddle::{Footing, Saddle};
pub use stem::{ExactStem, FrontEnd, FrontEndView, StemSetup};
pub use stem_search::{MissingPiece, StemFit, StemLack, StemSearch, StemSearchLimits, StemShortfall};
pub use toe_clearance::{ToeClearance, ToeRoom, ToeVerdict};
pub use transfer::{CarriedPosition, CrossBike, PositionChanges, PositionView, RoadPosition};
