//! How parts go together.

use crate::chain::ChainLinks;
use crate::gears::{Drivetrain, GearSet};

/// How parts go together on a bike.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fit {
    /// Rings and sprockets.
    pub drivetrain: Drivetrain,
    /// How sure it is.
    pub verdict: FitVerdict,
    /// Gears not to be used: by cage and chain, and those that the rider switched off.
    pub avoid: GearSet,
    /// Capacity of the cage left over, in teeth; none where it is not stated.
    pub spare: Option<i32>,
    /// The chain that goes on.
    pub links: ChainLinks,
    /// Which chain of the box it is, or is cut from; none where none is long enough.
    pub chain: Option<usize>,
}

/// How sure it is that parts go together: as [`CageOutcome`](crate::chain::CageOutcome) has it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum FitVerdict {
    /// They do.
    Fits,
    /// By the makers' figures they do, with so little to spare that the smallest gears have to be tried by hand.
    OnPaper,
    /// They do as long as [`Fit::avoid`] is never used.
    AvoidingGears,
    /// Something that was not measured or looked up could turn it.
    NotKnown,
}

impl Fit {
    /// What decides its lap: the gears it has and those that are not used.
    #[must_use]
    pub fn ridden(&self) -> (Drivetrain, GearSet) {
        (self.drivetrain, self.avoid.unless_all(&self.drivetrain))
    }
}
