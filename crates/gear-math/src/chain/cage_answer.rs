//! The answer to “will the cage take it?”: makers' figures and geometry in one verdict with one next step.

use crate::cage::{CageCheck, CageClass, DerailleurFigure};
use crate::chain::cage_trial::Standing;
use crate::chain::defaults::ChainMeasure;
use crate::chain::measures::{ChainLinks, PulleyCentres};
use crate::chain::path_error::PathError;
use crate::gears::{GearSet, Sprocket, TotalCapacity};

/// Whether the rear derailleur takes a set-up, and what to do next.
///
/// Made by [`CageQuestion::answer`](crate::chain::cage_question::CageQuestion::answer), the only place where this is decided.
#[derive(Debug, Clone, PartialEq)]
pub struct CageAnswer {
    /// The verdict, with what its next step needs.
    pub outcome: CageOutcome,
    /// What the makers' figures say, gear sums and findings.
    pub check: CageCheck,
    /// Gears not to be used: the chain hangs in them or is too short for them, they are beyond the capacity, or the
    /// rider switched them off. While it is not known whether a gear hangs it is not among them.
    pub avoid: GearSet,
    /// Those of them that the rider switched off.
    pub switched_off: GearSet,
    /// Gears to look at by hand, whether the chain hangs in them: the figures allow them with little to spare.
    pub to_try: GearSet,
    /// The chain to fit; none where wheels would run into each other.
    pub links: Option<ChainLinks>,
    /// The chain now fitted, if its links were counted.
    pub fitted: Option<ChainLinks>,
    /// Gears that the fitted chain is too short for: forcing it breaks something.
    pub too_short: GearSet,
    /// What the length of the cage was taken from.
    pub length: CageLength,
}

/// The verdict on one set-up.
#[derive(Debug, Clone, PartialEq)]
pub enum CageOutcome {
    /// Every figure is kept and every gear runs, whatever was not measured.
    Fits,
    /// Every figure is kept, but with so little to spare that a chain, which comes in whole pairs of links, may hang in
    /// [`CageAnswer::to_try`].
    FitsOnPaper,
    /// It fits as long as [`CageAnswer::avoid`] is never used.
    FitsAvoidingGears,
    /// The cage can stay as far as is known, the fitted chain cannot: it is too short for [`CageAnswer::too_short`], or hangs in these.
    OtherChain {
        /// Gears in which the fitted chain hangs and the one to fit does not.
        hangs: GearSet,
        /// What keeps it from being known whether the cage can stay with the chain to fit, where something does.
        doubt: Option<CageDoubt>,
    },
    /// Something that was not measured or looked up could turn the verdict.
    NotKnown(CageDoubt),
    /// It does not fit as it is.
    DoesNotFit(CageNeed),
}

/// What keeps a verdict from being known.
#[derive(Debug, Clone, PartialEq)]
pub enum CageDoubt {
    /// Neither the total capacity nor the pulley centres are known, and cages of usual lengths differ: each of them.
    CageLength(Vec<ClassTrial>),
    /// A maker's figure that is asked more of than every derailleur gives.
    Figure(DerailleurFigure),
    /// Measures left empty that could turn the verdict within their usual range, the most decisive first.
    Measures(Vec<ChainMeasure>),
    /// Stated capacity and measured pulley centres do not go together.
    Disagree {
        /// Teeth that the maker states.
        stated: TotalCapacity,
        /// Teeth that a cage of this length takes by geometry.
        by_centres: f64,
    },
    /// Wheels would run into each other by these measures.
    Path(PathError),
}

/// What a cage of one usual length would do.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClassTrial {
    /// The length; the shortest of the class was tried, of the last class the longest.
    pub class: CageClass,
    /// How it went.
    pub standing: Standing,
    /// Gears in which the chain would hang.
    pub hangs: GearSet,
}

/// What has to be changed for a set-up to fit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct CageNeed {
    /// A rear derailleur that takes this.
    pub derailleur: Option<DerailleurNeed>,
    /// Rings closer together, or derailleurs that span this many teeth of difference.
    pub ring_difference: Option<u16>,
}

/// What a rear derailleur has to take.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DerailleurNeed {
    /// The largest sprocket.
    pub largest: Sprocket,
    /// The smallest one, where the one there now does not take it.
    pub smallest: Option<Sprocket>,
    /// Total capacity, in teeth.
    pub capacity: u16,
}

/// What the length of the cage was taken from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum CageLength {
    /// It was measured.
    Measured(PulleyCentres),
    /// From the capacity its maker states: see [`CageMeasures::centres_for`](crate::chain::cage::CageMeasures::centres_for).
    ByCapacity(PulleyCentres),
    /// Neither is known; links and drawings are those of a medium cage.
    Assumed(PulleyCentres),
}

impl CageLength {
    /// The pulley centres.
    #[must_use]
    pub const fn centres(self) -> PulleyCentres {
        match self {
            Self::Measured(centres) | Self::ByCapacity(centres) | Self::Assumed(centres) => centres,
        }
    }
}

impl CageAnswer {
    /// Whether the set-up does not fit as it is: another part or another chain is needed first.
    #[must_use]
    pub const fn does_not_fit(&self) -> bool {
        matches!(self.outcome, CageOutcome::DoesNotFit(_) | CageOutcome::OtherChain { .. })
    }

    /// Whether it is not known if the derailleur takes every gear.
    #[must_use]
    pub const fn is_not_known(&self) -> bool {
        matches!(self.outcome, CageOutcome::NotKnown(_))
    }

    /// Gears to avoid because of cage or chain, not by the rider's choice alone.
    #[must_use]
    pub const fn avoid_by_cage(&self) -> GearSet {
        self.avoid.without(self.switched_off)
    }
}
