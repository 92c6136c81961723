//! The chain’s path, length and angle, and the cage that keeps it tight.
//!
//! # Example
//! ```
//! use gear_math::chain::{Cage, ChainDefaults};
//! use gear_math::{ChainSetup, Drivetrain};
//! let drivetrain = Drivetrain { chainset: "44/32".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
//! let setup = ChainSetup {
//!     chainline: ChainDefaults::chainline(&drivetrain),
//!     drivetrain,
//!     frame: ChainDefaults::FRAME,
//!     cage: Cage::new(ChainDefaults::CAGE)?,
//! };
//! assert!(setup.window()?.shortest <= setup.window()?.longest);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod advice;
mod cage;
mod cage_answer;
mod cage_question;
mod cage_trial;
mod chainline;
mod defaults;
mod fit;
mod frame;
mod gear_state;
mod hanger;
mod measures;
mod path;
mod path_error;
mod pin_friction;
mod pitch_circle;
mod point;
mod remedy;
mod setup;
mod two_sprocket;
mod workshop_length;

pub use advice::{ChainAdvice, ChainVerdict};
pub use cage::{Cage, CageMeasures};
pub use cage_answer::{CageAnswer, CageDoubt, CageLength, CageNeed, CageOutcome, ClassTrial, DerailleurNeed};
pub use cage_question::CageQuestion;
pub use cage_trial::Standing;
pub use chainline::{ChainlineMeasures, HubMeasures};
pub use defaults::{Assumption, ChainDefaults, ChainMeasure};
pub use fit::{ChainFit, ChainWindow};
pub use frame::FrameMeasures;
pub use gear_state::{GearFit, GearState};
pub use hanger::{Hanger, cassette_slope_degrees};
pub use measures::{
    BottomBracketDrop, CageAngle, ChainLinks, ChainLinksError, Chainline, ChainstayLength, ForeStop,
    GuideAngle, HangerDrop, HangerSetback, PulleyCentres, PulleyGap, RearStop, RingSpacing, SprocketPitch,
};
pub use path::{ChainPath, PathWheel, StraightRun};
pub use path_error::{PathError, WheelRole};
pub use pin_friction::PinFriction;
pub use pitch_circle::{ChainPitch, PitchCircle};
pub use point::PathPoint;
pub use remedy::{Change, Effort, EffortPart, Remedy};
pub use setup::ChainSetup;
pub use two_sprocket::{CentreDistance, TwoSprocketDrive, TwoSprocketError};
