//! What can be changed when the chain does not suit every gear.

use crate::chain::fit::ChainFit;
use crate::chain::measures::{ChainLinks, PulleyCentres};
use crate::gears::{Chainset, Gear, Sprocket};

/// One change, with the chain and every gear solved again after it.
#[derive(Debug, Clone, PartialEq)]
pub struct Remedy {
    /// What to change.
    pub change: Change,
    /// How little that is; remedies are listed from the least effort.
    pub effort: Effort,
    /// Chain length and gears after the change.
    pub fit: ChainFit,
}

/// A change to a set-up.
#[derive(Debug, Clone, PartialEq)]
pub enum Change {
    /// Keep the cage, and never use these gears: the chain hangs slack in them. All are crossed gears of the
    /// smallest ring. The chain is the one the gears are [solved for](Remedy::fit).
    AvoidGears(Vec<Gear>),
    /// Fit a chain of this length.
    OtherLinks(ChainLinks),
    /// Lower the derailleur's mounting point by so many millimetres, so that it clears the largest sprocket.
    LongerHanger {
        /// How far, in millimetres.
        extension_mm: f64,
    },
    /// Fit rings that lie closer together: these.
    CloserRings(Chainset),
    /// Fit a cassette whose largest sprocket is no larger than this.
    SmallerSprocket(Sprocket),
    /// Fit a cage whose pulley centres are at least so far apart.
    LongerCage(PulleyCentres),
}

/// How little is changed: first by what is bought or given up, then by the share of it that changes.
///
/// The order of parts is common practice; no price is in it.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub struct Effort {
    /// What is bought or given up.
    pub part: EffortPart,
    /// The share that changes: of gears, links, teeth or millimetres, 0 to 1 and more.
    pub share: f64,
}

/// What is bought or given up for a change, from least to most.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum EffortPart {
    /// Nothing.
    Nothing,
    /// A longer chain; or links cut off for good.
    Chain,
    /// One part beside the derailleur: a hanger, a ring or a cassette.
    OnePart,
    /// A rear derailleur, or a cage for it.
    Derailleur,
}
