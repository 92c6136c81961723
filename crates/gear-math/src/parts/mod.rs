//! The box of parts: what of it goes together on a bike, and what is quickest of that round a course.

mod bare_bike;
mod bought;
mod branches;
mod buying;
mod combination;
mod combining;
mod condition;
mod fit;
mod front_derailleur;
mod lack;
mod parts_box;
mod rear_derailleur;
mod rides;
mod robust;
mod sorted;
mod text;
mod usual;

pub use bare_bike::BareBike;
pub use buying::{Buying, Purchase};
pub use combination::Combination;
pub use combining::{Combined, Combining, RiddenLap};
pub use condition::Condition;
pub use fit::{Fit, FitVerdict};
pub use front_derailleur::FrontDerailleur;
pub use lack::Lack;
pub use parts_box::PartsBox;
pub use rear_derailleur::RearDerailleur;
pub use rides::{BoxRider, BoxRides};
pub use robust::{CourseWeight, Regret, Robust};
pub use sorted::SortedBox;
pub use text::{NotUnderstood, PartFault, PartKind, ReadBox};
pub use usual::UsualPart;
