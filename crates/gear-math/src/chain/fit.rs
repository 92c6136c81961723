//! Which chains suit a drivetrain, and how every gear runs with one of them.

use crate::chain::gear_state::{GearFit, GearState};
use crate::chain::measures::ChainLinks;
use crate::gears::{Gear, GearSet};

/// The chains that keep the cage between its stops in every gear.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ChainWindow {
    /// Links of the path in big ring and largest sprocket with the cage at its forward limit.
    pub shortest_exact: f64,
    /// Links of the path in small ring and smallest sprocket with the cage at its rest position.
    pub longest_exact: f64,
    /// The shortest workable chain: `shortest_exact` rounded up to an even count.
    pub shortest: ChainLinks,
    /// The longest workable chain: `longest_exact` rounded down to an even count.
    pub longest: ChainLinks,
}

impl ChainWindow {
    pub(super) fn new(shortest_exact: f64, longest_exact: f64) -> Self {
        Self {
            shortest_exact,
            longest_exact,
            shortest: ChainLinks::even_up(shortest_exact),
            longest: ChainLinks::even_down(longest_exact),
        }
    }

    /// Whether at least one even number of links suits every gear.
    #[must_use]
    pub fn is_open(&self) -> bool {
        self.shortest <= self.longest
    }

    /// Whether a chain of `links` keeps the cage between its stops in every gear.
    #[must_use]
    pub fn suits(&self, links: ChainLinks) -> bool {
        (self.shortest..=self.longest).contains(&links)
    }

    /// Links between the exact ends; negative when no chain, whatever its length, suits every gear.
    #[must_use]
    pub fn spare_links(&self) -> f64 {
        self.longest_exact - self.shortest_exact
    }
}

/// Chain length, capacity and every gear of one set-up.
#[derive(Debug, Clone, PartialEq)]
pub struct ChainFit {
    /// The chains that suit every gear.
    pub window: ChainWindow,
    /// The workshop rule: round big ring and largest sprocket without the derailleur, up to the next even count,
    /// plus two links.
    pub big_big_plus_two: ChainLinks,
    /// The chain to fit: the shortest that keeps big ring with largest sprocket behind the forward limit, and never
    /// shorter than the workshop rule. When the cage cannot take it all up, the surplus hangs in the smallest
    /// gears, where it does no harm; a chain too short for the largest breaks the derailleur.
    pub recommended: ChainLinks,
    /// Total capacity by geometry, in teeth: the simple sum plus twice the spare links. Its level is fitted
    /// through the rest position; the maker's figure comes first.
    pub capacity_teeth: f64,
    /// Total capacity the parts ask for by the trade's sum: ring difference plus cassette spread, in teeth.
    pub simple_sum_teeth: u16,
    /// The chain that `gears` are solved for.
    pub links: ChainLinks,
    /// Every gear, in the order of [`Drivetrain::gears`](crate::gears::Drivetrain::gears).
    pub gears: Vec<GearFit>,
}

impl ChainFit {
    /// The gears in one state.
    pub fn in_state(&self, state: GearState) -> impl Iterator<Item = Gear> + '_ {
        self.gears.iter().filter(move |fit| fit.state == state).map(|fit| fit.gear)
    }

    /// The same as a set.
    pub(super) fn set(&self, state: GearState) -> GearSet {
        GearSet::by_place(self.gears.iter().map(|fit| fit.state == state))
    }

    /// Whether every gear is comfortable, or tight but usual.
    #[must_use]
    pub fn all_usable(&self) -> bool {
        self.gears.iter().all(|fit| fit.state.is_usable())
    }
}
