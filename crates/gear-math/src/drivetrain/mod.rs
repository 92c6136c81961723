//! Rings, sprockets and the gears they make.

mod cassette;
mod chainset;
mod development;
#[expect(clippy::module_inception, reason = "the file is named after the type it holds")]
mod drivetrain;
mod few;
mod gear;
mod quantity;
mod ratio;
mod tooth_list;
mod toothed;

pub use cassette::{Cassette, CassetteError};
pub use chainset::{Chainset, ChainsetError};
pub use drivetrain::Drivetrain;
pub use gear::Gear;
pub use quantity::PedalRate;
pub use toothed::{Chainring, Sprocket};
