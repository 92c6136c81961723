//! Which of the usual parts a set-up needs.

use crate::parts::combination::Combination;
use crate::parts::parts_box::PartsBox;
use crate::parts::usual::UsualPart;

/// Parts to buy, by their places in a box with the usual ones behind its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Bought([Option<usize>; 3]);

/// More than there are places of one kind.
const PLACES: f64 = 1e5;
/// Place of the derailleur.
const REAR: usize = 2;

impl Bought {
    /// What a combination needs beside what is in its own box.
    pub(super) fn of(own: &PartsBox, combination: Combination) -> Self {
        let Combination { chainset, cassette, derailleur } = combination;
        let beyond = |place: Option<usize>, count: usize| place.filter(|place| *place >= count);
        Self([
            beyond(Some(chainset), own.chainsets.len()),
            beyond(Some(cassette), own.cassettes.len()),
            beyond(derailleur, own.derailleurs.len()),
        ])
    }

    pub(super) fn count(self) -> usize {
        self.0.iter().flatten().count()
    }

    /// A number in the order of how many parts there are, and then of their places.
    pub(super) fn rank(self) -> f64 {
        let place = |it: Option<usize>| it.map_or(0.0, |place| place as f64 + 1.0);
        self.0.into_iter().fold(self.count() as f64, |rank, it| rank * PLACES + place(it))
    }

    /// Whether it is another one without some of its parts, and not nothing.
    pub(super) fn is_less_than(self, other: Self) -> bool {
        let within = self.0.iter().zip(other.0).all(|(own, other)| own.is_none() || *own == other);
        within && self != other && self.count() > 0
    }

    /// The same with any derailleur that is bought.
    pub(super) fn but_for_derailleur(self) -> Self {
        let mut same = self;
        same.0[REAR] = same.0[REAR].map(|_| 0);
        same
    }

    pub(super) fn parts(self, own: &PartsBox, all: &PartsBox) -> Vec<UsualPart> {
        let [chainset, cassette, derailleur] = self.0;
        let chainset = chainset.map(|place| all.chainsets[place]);
        let chainset = chainset.map(|it| UsualPart::Chainset { chainset: it, ring: own.ring_for(&it) });
        let cassette = cassette.map(|place| UsualPart::Cassette(all.cassettes[place]));
        let derailleur = derailleur.map(|place| UsualPart::Derailleur(all.derailleurs[place]));
        [chainset, cassette, derailleur].into_iter().flatten().collect()
    }
}
