//! What a rear derailleur takes, by its maker’s figures.

mod capacity;
mod check;
mod class;
mod derailleur;
mod front;

pub use check::{CageCheck, CageFinding, CageVerdict};
pub use class::CageClass;
pub use derailleur::{Derailleur, DerailleurFigure};
pub use front::{FrontConcern, FrontLimits};
