//! Rings, sprockets and the gears they make.
//!
//! # Example
//! ```
//! use gear_math::Drivetrain;
//! let bike = Drivetrain { chainset: "44/32".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
//! assert_eq!((bike.gear_count(), bike.lowest().to_string()), (16, "32×32".to_owned()));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod cassette;
mod cassette_name;
mod chainset;
mod common_cassettes;
mod common_chainsets;
mod comparison;
mod crossed;
mod development;
mod drivetrain;
mod few;
mod front_change;
mod gear;
mod gear_set;
mod matching;
mod named_cassette;
mod overlap;
mod quantity;
mod ratio;
mod riding_order;
mod roll_out_limit;
mod roll_out_presets;
mod setup;
mod step;
mod summary;
mod tooth_list;
mod toothed;

pub use cassette::{Cassette, CassetteError};
pub use cassette_name::CassetteName;
pub use chainset::{Chainset, ChainsetError};
pub use comparison::{Compared, Comparison, DevelopmentSpan, EndDifference, OwnReach, SharedGear};
pub use crossed::CrossedRule;
pub use drivetrain::Drivetrain;
pub use front_change::FrontChange;
pub use gear::Gear;
pub use gear_set::{GearSet, GearSetError};
pub use named_cassette::CassetteNameError;
pub use overlap::{DuplicatePair, RingOverlap};
pub use quantity::{ChainAngle, DuplicateTolerance, GearRange, GearStep, PedalRate};
pub use riding_order::{RidingOrder, Shift, ShiftKind, StepSpread};
pub use roll_out_limit::{LongestWheel, RingPasses, RollOutLimit};
pub use roll_out_presets::RollOutPreset;
pub use setup::{GearRow, Setup};
pub use step::SprocketStep;
pub use summary::SetupSummary;
pub use toothed::{Chainring, Pulley, RingDifference, Sprocket, TotalCapacity};
