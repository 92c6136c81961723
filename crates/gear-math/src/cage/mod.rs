//! What a rear derailleur takes, by its maker’s figures.
//!
//! # Example
//! ```
//! use gear_math::{Derailleur, Drivetrain, TotalCapacity};
//! let bike = Drivetrain { chainset: "44/31".parse()?, cassette: "11-13-15-18-21-24-28-32".parse()? };
//! let derailleur = Derailleur { total_capacity: Some(TotalCapacity::new(33)?), ..Derailleur::default() };
//! assert_eq!(derailleur.check(&bike).spare, Some(-1));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod capacity;
mod check;
mod class;
mod derailleur;
mod front;

pub use check::{CageCheck, CageFinding, CageVerdict};
pub use class::CageClass;
pub use derailleur::{Derailleur, DerailleurFigure};
pub use front::{FrontConcern, FrontLimits};
