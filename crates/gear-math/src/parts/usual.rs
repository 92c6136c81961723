//! Usual parts that a box may lack.

use crate::cage::Derailleur;
use crate::gears::{Cassette, Chainring, Chainset, Sprocket, TotalCapacity};
use crate::parts::parts_box::PartsBox;
use crate::parts::rear_derailleur::RearDerailleur;

/// Rings of pairs that are bought differ by so many teeth. Common practice on cyclo-cross, road and all-road bicycles.
const DIFFERENCES: core::ops::RangeInclusive<u16> = 8..=16;
/// Total capacity and largest sprocket of rear derailleurs that are sold, by the most that each
/// [class](crate::cage::CageClass) of cages usually takes; what the two longest reach over is common practice, from workshop memory.
const REAR: [[u16; 2]; 4] = [[35, 30], [39, 36], [45, 42], [47, 46]];

/// A part that can be bought, by its teeth alone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum UsualPart {
    /// A chainset, and the one ring that makes it of a chainset in the box, where one does.
    Chainset {
        /// With its rings.
        chainset: Chainset,
        /// The ring to buy; none where more than one would be new.
        ring: Option<Chainring>,
    },
    /// A cassette.
    Cassette(Cassette),
    /// A rear derailleur that takes at least this.
    Derailleur(RearDerailleur),
}

impl PartsBox {
    /// Usual parts that are not in this box: chainsets that are [made](Chainset::made), [usual](Cassette::common) cassettes with
    /// as many sprockets as the shifter is made for, or else as those of the box, and rear derailleurs of the usual lengths.
    #[must_use]
    pub fn usual_beside(&self, sprockets: Option<usize>) -> Self {
        let count = |it: &Cassette| it.sprockets().len();
        let is_shifted = |it: &Cassette| match sprockets {
            Some(wanted) => count(it) == wanted,
            None => self.cassettes.iter().any(|own| count(own) == count(it)),
        };
        Self {
            chainsets: Chainset::made(DIFFERENCES).filter(|it| !self.chainsets.contains(it)).collect(),
            cassettes: Cassette::common()
                .filter(|it| is_shifted(it) && !self.cassettes.contains(it))
                .collect(),
            derailleurs: REAR
                .into_iter()
                .filter_map(rear)
                .filter(|it| !self.derailleurs.contains(it))
                .collect(),
            ..Self::default()
        }
    }

    /// The ring that makes a chainset of one in the box: a single goes on any crank.
    pub(super) fn ring_for(&self, chainset: &Chainset) -> Option<Chainring> {
        let rings = chainset.rings();
        let new_beside = |own: &Chainset| -> Option<Chainring> {
            let mut new = rings.iter().filter(|ring| !own.rings().contains(ring));
            let first = new.next().copied();
            let is_like = rings.len() == 1 || own.rings().len() == rings.len();
            first.filter(|_| is_like && new.next().is_none())
        };
        self.chainsets.iter().find_map(new_beside)
    }
}

fn rear([capacity, largest]: [u16; 2]) -> Option<RearDerailleur> {
    let figures = Derailleur {
        total_capacity: Some(TotalCapacity::new(capacity).ok()?),
        largest_sprocket: Some(Sprocket::new(largest).ok()?),
        ..Derailleur::default()
    };
    Some(RearDerailleur { figures, pulley_centres: None })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cage::CageClass;

    #[test]
    fn derailleurs_are_those_of_the_usual_cages() {
        for ([capacity, largest], class) in REAR.into_iter().zip(CageClass::ALL) {
            assert_eq!(capacity, class.total_capacity.1);
            let (least, most) = class.largest_sprocket;
            assert!(largest >= least && most.is_none_or(|most| largest == most), "{}", class.name);
        }
        assert!(REAR.into_iter().all(|it| rear(it).is_some()));
    }

    #[test]
    fn what_is_in_the_box_is_not_bought() {
        let parts = PartsBox {
            chainsets: Chainset::made(DIFFERENCES).skip(3).collect(),
            cassettes: vec![Cassette::named(11, 34, 9).unwrap()],
            ..PartsBox::default()
        };
        let usual = parts.usual_beside(None);
        assert_eq!((usual.chainsets.len(), usual.derailleurs.len()), (3, 4));
        assert!(usual.cassettes.iter().all(|it| it.sprockets().len() == 9 && *it != parts.cassettes[0]));
        assert!(parts.usual_beside(Some(12)).cassettes.iter().all(|it| it.sprockets().len() == 12));
    }

    #[test]
    fn one_ring_makes_a_pair_of_a_pair() {
        let parts = PartsBox { chainsets: vec!["50/34".parse().unwrap()], ..PartsBox::default() };
        let ring = |text: &str| parts.ring_for(&text.parse().unwrap()).map(Chainring::teeth);
        assert_eq!(
            ["44/34", "50/36", "40", "44/32", "52/42/34"].map(ring),
            [Some(44), Some(36), Some(40), None, None]
        );
    }
}
