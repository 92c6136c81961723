//! Rings, sprockets and the gears they make.

mod bracket;
mod cage;
mod cassette;
mod chain_defaults;
mod chain_fit;
mod chain_path;
mod chain_setup;
mod chainline;
mod chainset;
mod development;
#[expect(clippy::module_inception, reason = "the file is named after the type it holds")]
mod drivetrain;
mod few;
mod front;
mod gear;
mod gear_state;
mod hanger;
mod measures;
mod path_error;
mod pitch_circle;
mod quantity;
mod ratio;
mod tooth_list;
mod toothed;
mod two_sprocket;
mod workshop_length;

pub use cage::{Cage, CageMeasures};
pub use cassette::{Cassette, CassetteError};
pub use chain_defaults::{Assumption, ChainDefaults, ChainMeasure};
pub use chain_fit::{ChainFit, ChainWindow};
pub use chain_path::{ChainPath, FrameMeasures, PathPoint, PathWheel, StraightRun};
pub use chain_setup::ChainSetup;
pub use chainline::{ChainlineMeasures, HubMeasures};
pub use chainset::{Chainset, ChainsetError};
pub use drivetrain::Drivetrain;
pub use front::{FrontConcern, FrontLimits};
pub use gear::Gear;
pub use gear_state::{GearFit, GearState};
pub use hanger::{Hanger, cassette_slope_degrees};
pub use measures::{
    BottomBracketDrop, CageAngle, ChainLinks, ChainLinksError, Chainline, ChainstayLength, ForeStop,
    GuideAngle, HangerDrop, HangerSetback, PulleyCentres, PulleyGap, RearStop, RingSpacing, SprocketPitch,
};
pub use path_error::{PathError, WheelRole};
pub use pitch_circle::{ChainPitch, PitchCircle};
pub use quantity::{ChainAngle, PedalRate};
pub use toothed::{Chainring, Pulley, Sprocket};
pub use two_sprocket::{CentreDistance, TwoSprocketDrive, TwoSprocketError};
