//! The box of parts: what of it goes together on a bike, and what is quickest of that round a course.
//!
//! # Example
//! ```
//! use gear_math::parts::PartsBox;
//! let read = PartsBox::read("44/31, 40 / 11-30 11s, 11-34 11s / 39/36", None);
//! assert_eq!((read.parts.chainsets.len(), read.parts.cassettes.len(), read.not_understood.len()), (2, 2, 0));
//! ```

mod bare_bike;
mod bought;
mod box_laps;
mod box_tyre;
mod branches;
mod buying;
mod combination;
mod combining;
mod condition;
mod cranks;
mod fit;
mod found_lap;
mod front_derailleur;
mod lack;
mod outing;
mod parts_box;
mod rear_derailleur;
mod rides;
mod robust;
mod sorted;
mod text;
mod usual;

pub use bare_bike::BareBike;
pub use box_laps::{BoxLaps, Combined};
pub use box_tyre::BoxTyre;
pub use buying::{Buying, Purchase};
pub use combination::Combination;
pub use combining::Combining;
pub use condition::Condition;
pub use fit::{Fit, FitVerdict};
pub use found_lap::FoundLap;
pub use front_derailleur::FrontDerailleur;
pub use lack::Lack;
pub use outing::Outing;
pub use parts_box::PartsBox;
pub use rear_derailleur::RearDerailleur;
pub use rides::{BoxRider, BoxRides};
pub use robust::{CourseWeight, Regret, Robust};
pub use sorted::SortedBox;
pub use text::{NotUnderstood, PartFault, PartKind, ReadBox};
pub use usual::UsualPart;
