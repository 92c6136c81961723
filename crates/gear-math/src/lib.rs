//! Every number of a cyclo-cross bike's set-up: gears, chain and cage, and what they mean on the course.
//!
//! Quantities carry their unit in their type; constructors check, computations do not fail.
//! Public items name the source of their formula or constant, or say "common practice" or "estimate".
//!
//! The feature `gpx`, on by default, reads courses from GPX files; without it the crate depends on nothing.
//!
//! # Rooms
//! What is asked for most stands at the root; everything else in the room it belongs to: [`gears`], [`cage`], [`chain`],
//! [`wheel`], [`rider`], [`course`], [`position`], [`parts`]. A room uses only rooms named before it. Numbers as people type them are read in
//! [`typed`]; [`order`] sorts by a number.
//!
//! # Examples
//! Which of two set-ups climbs slower, and by how much:
//! ```
//! use gear_math::{Circumference, Drivetrain, DuplicateTolerance, Setup, Compared};
//! let wheel = Circumference::new(2155.0)?;
//! let set_up = |rings: &str, sprockets: &str| -> Result<Setup, Box<dyn std::error::Error>> {
//!     Ok(Setup::new(Drivetrain { chainset: rings.parse()?, cassette: sprockets.parse()? }, wheel))
//! };
//! let a = set_up("50/34", "11-13-15-17-19-21-24-27-30")?;
//! let b = set_up("44/32", "11-13-15-18-21-24-28-32")?;
//! let comparison = a.compare(&b, DuplicateTolerance::default());
//! assert_eq!(comparison.lowest.longer, Some(Compared::A));
//! assert!((comparison.lowest.step.percent() - 13.3).abs() < 0.1);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//! Whether a derailleur takes it:
//! ```
//! use gear_math::{CageVerdict, Derailleur, Drivetrain, Sprocket, TotalCapacity};
//! let bike = Drivetrain { chainset: "44/32".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
//! let derailleur = Derailleur {
//!     total_capacity: Some(TotalCapacity::new(35)?),
//!     largest_sprocket: Some(Sprocket::new(34)?),
//!     ..Derailleur::default()
//! };
//! assert_eq!(derailleur.check(&bike).verdict, CageVerdict::Fits);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

pub mod cage;
pub mod chain;
pub mod course;
pub mod gears;
mod likely;
pub mod order;
pub mod parts;
mod physics;
pub mod position;
mod quantity;
pub mod rider;
mod solve;
pub mod typed;
pub mod wheel;

pub use cage::{CageCheck, CageVerdict, Derailleur};
pub use chain::{ChainAdvice, ChainLinks, ChainSetup};
pub use course::{Course, Lap, LapSetup, Search};
pub use gears::{
    Cassette, Chainring, Chainset, Compared, Comparison, Drivetrain, DuplicateTolerance, Gear, Setup,
    Sprocket, TotalCapacity,
};
pub use likely::LIKELY_SHARE;
pub use position::{CrossBike, RoadPosition, StemSearch};
pub use quantity::{
    Cadence, Circumference, Development, GearInches, Limits, Measured, OutOfLimits, Ratio, Speed,
};
pub use rider::{Bike, Gradient, Ground, Power, RideOrRun, Rider, Surface};
pub use wheel::{Pressure, PressureCase, TyreSize, Wheel};

#[cfg(doctest)]
#[doc = include_str!("../../../README.md")]
struct ProjectReadme;

#[cfg(doctest)]
#[doc = include_str!("../README.md")]
struct Readme;
