//! What lies in the box.

use crate::chain::ChainLinks;
use crate::gears::{Cassette, Chainset, Drivetrain};
use crate::parts::box_tyre::BoxTyre;
use crate::parts::combination::Combination;
use crate::parts::front_derailleur::FrontDerailleur;
use crate::parts::rear_derailleur::RearDerailleur;

/// A box of parts. Whatever compatibility teeth and millimetres cannot tell, such as how a ring is bolted on or what a shifter
/// pulls, is the mechanic's question.
///
/// # Example
/// ```
/// use gear_math::Cassette;
/// use gear_math::parts::PartsBox;
/// let parts = PartsBox {
///     chainsets: vec!["44/31".parse()?, "40".parse()?],
///     cassettes: Cassette::common().take(3).collect(),
///     ..PartsBox::default()
/// };
/// assert_eq!(parts.combinations().count(), 6);
/// # Ok::<(), gear_math::gears::ChainsetError>(())
/// ```
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PartsBox {
    /// Cranks with the rings that are on them.
    pub chainsets: Vec<Chainset>,
    /// Cassettes.
    pub cassettes: Vec<Cassette>,
    /// Rear derailleurs; with none, one of which nothing is known.
    pub derailleurs: Vec<RearDerailleur>,
    /// Front derailleurs, for chainsets of more than one ring; with none, the front is not checked.
    pub front_derailleurs: Vec<FrontDerailleur>,
    /// Chains by their links.
    pub chains: Vec<ChainLinks>,
    /// Tyres, which go on whatever is combined: they make no combinations of their own.
    pub tyres: Vec<BoxTyre>,
}

impl PartsBox {
    /// How many combinations of a chainset, a cassette and a rear derailleur there are.
    #[must_use]
    pub fn count(&self) -> usize {
        self.chainsets.len() * self.cassettes.len() * self.derailleurs.len().max(1)
    }

    /// Every combination of a chainset, a cassette and a rear derailleur.
    pub fn combinations(&self) -> impl Iterator<Item = Combination> + '_ {
        (0..self.count()).map(|number| self.combination(number))
    }

    /// The combination of a number below [`count`](Self::count).
    pub(super) fn combination(&self, number: usize) -> Combination {
        let (derailleurs, cassettes) = (self.derailleurs.len().max(1), self.cassettes.len());
        Combination {
            chainset: number / derailleurs / cassettes,
            cassette: number / derailleurs % cassettes,
            derailleur: (!self.derailleurs.is_empty()).then_some(number % derailleurs),
        }
    }

    /// The gears of a combination.
    #[must_use]
    pub fn drivetrain(&self, combination: Combination) -> Drivetrain {
        let (chainset, cassette) =
            (self.chainsets[combination.chainset], self.cassettes[combination.cassette]);
        Drivetrain { chainset, cassette }
    }

    /// The rear derailleur of a combination.
    #[must_use]
    pub fn derailleur(&self, combination: Combination) -> RearDerailleur {
        combination.derailleur.map_or_else(RearDerailleur::default, |place| self.derailleurs[place])
    }

    /// This box with another one emptied into it, behind what is there. Where this box has no rear derailleur one of which nothing
    /// is known is used, beside which those of the other would say nothing.
    #[must_use]
    pub(super) fn with(&self, more: &Self) -> Self {
        let derailleurs = if self.derailleurs.is_empty() { &[] } else { &more.derailleurs[..] };
        Self {
            chainsets: [&self.chainsets[..], &more.chainsets].concat(),
            cassettes: [&self.cassettes[..], &more.cassettes].concat(),
            derailleurs: [&self.derailleurs[..], derailleurs].concat(),
            front_derailleurs: [&self.front_derailleurs[..], &more.front_derailleurs].concat(),
            chains: [&self.chains[..], &more.chains].concat(),
            tyres: [&self.tyres[..], &more.tyres].concat(),
        }
    }
}
