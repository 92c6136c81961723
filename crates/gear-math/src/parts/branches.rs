//! Looking for the best of many without looking at all: branch and bound.

use crate::order::places;
use crate::parts::bought::Bought;

/// Times closer than this are one, s: half of the finest step in which times are told.
pub(super) const ALIKE_S: f64 = 0.05;

/// The best purchases among laps of which each has a time that it does not come below, found by looking at the most promising
/// first and leaving out what can no longer be among the best (Land & Doig 1960, *Econometrica* 28:497–520).
#[derive(Debug, Clone)]
pub(super) struct Branches {
    /// Laps, the most promising first.
    order: Vec<usize>,
    bounds: Vec<f64>,
    /// The purchases by which each lap can be ridden.
    purchases: Vec<Vec<Bought>>,
    next: usize,
    /// The best lap of each purchase so far.
    best: Vec<Best>,
}

/// The best lap of a purchase.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Best {
    pub(super) bought: Bought,
    pub(super) lap: usize,
    pub(super) time_s: f64,
}

impl Branches {
    /// So many of the best purchases are surely found, by the look.
    pub(super) const SURE: usize = 24;

    pub(super) fn new(bounds: Vec<f64>, purchases: Vec<Vec<Bought>>) -> Self {
        Self { order: places(&bounds), bounds, purchases, next: 0, best: Vec::new() }
    }

    /// The next lap to look at; none when no other can be among the best.
    pub(super) fn next(&self) -> Option<usize> {
        let next = self.order.get(self.next).copied()?;
        (self.bounds[next] <= self.least_wanted_s() + ALIKE_S).then_some(next)
    }

    /// Takes the time of the [next](Self::next) lap.
    pub(super) fn take(&mut self, time_s: f64) {
        let lap = self.order[self.next];
        self.next += 1;
        for &bought in &self.purchases[lap] {
            match self.best.iter_mut().find(|it| it.bought == bought) {
                Some(best) if time_s < best.time_s => (best.lap, best.time_s) = (lap, time_s),
                Some(_) => {}
                None => self.best.push(Best { bought, lap, time_s }),
            }
        }
    }

    /// How many laps were looked at.
    pub(super) fn looked_at(&self) -> usize {
        self.next
    }

    /// The time of the last purchase that is wanted.
    fn least_wanted_s(&self) -> f64 {
        let mut times: Vec<f64> = self.best.iter().map(|it| it.time_s).collect();
        let is_enough = times.len() >= Self::SURE;
        if is_enough {
            *times.select_nth_unstable_by(Self::SURE - 1, f64::total_cmp).1
        } else {
            f64::INFINITY
        }
    }

    /// Purchases worth naming, the quickest first: none with a part without which it would be as quick, and with derailleurs that
    /// are all as good the one with the shortest cage.
    pub(super) fn worth_naming(&self) -> Vec<Best> {
        let is_needed = |one: &&Best| {
            let as_quick = |it: &Best| it.time_s <= one.time_s + ALIKE_S;
            !self.best.iter().any(|it| it.bought.is_less_than(one.bought) && as_quick(it))
        };
        let is_shortest = |one: &&Best| {
            let same = || {
                self.best
                    .iter()
                    .filter(|it| it.bought.but_for_derailleur() == one.bought.but_for_derailleur())
            };
            let least = same().map(|it| it.time_s).fold(f64::INFINITY, f64::min);
            let shortest = same().filter(|it| it.time_s <= least + ALIKE_S).map(|it| it.bought).min();
            shortest == Some(one.bought)
        };
        in_order(&self.best.iter().filter(is_needed).filter(is_shortest).copied().collect::<Vec<_>>())
    }
}

/// The quickest first; of equals what is least to buy.
pub(super) fn in_order(best: &[Best]) -> Vec<Best> {
    let by = |best: &[Best], key: fn(&Best) -> f64| -> Vec<Best> {
        places(&best.iter().map(key).collect::<Vec<_>>()).into_iter().map(|place| best[place]).collect()
    };
    by(&by(best, |it| it.bought.rank()), |it| it.time_s)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::parts::combination::Combination;
    use crate::parts::parts_box::PartsBox;
    use proptest::prelude::*;

    fn bought(chainset: usize, cassette: usize, derailleur: usize) -> Bought {
        Bought::of(&PartsBox::default(), Combination { chainset, cassette, derailleur: Some(derailleur) })
    }

    /// Every lap with its time, how far below it its bound lies, and by what it can be bought.
    fn laps() -> impl Strategy<Value = Vec<(f64, f64, Vec<Bought>)>> {
        let one = (0_usize..9, 0_usize..9, 0_usize..3).prop_map(|(a, b, c)| bought(a, b, c));
        proptest::collection::vec((0.0..20.0, 0.1..3.0, proptest::collection::vec(one, 1..4)), 1..150)
    }

    fn looked(laps: &[(f64, f64, Vec<Bought>)], width: f64) -> Branches {
        let bounds = laps.iter().map(|it| it.0 - width * it.1).collect();
        let mut branches = Branches::new(bounds, laps.iter().map(|it| it.2.clone()).collect());
        while let Some(next) = branches.next() {
            branches.take(laps[next].0);
        }
        branches
    }

    proptest! {
        /// With bounds that are none every lap is looked at.
        #[test]
        fn nothing_better_is_left_out(laps in laps()) {
            let (some, all) = (looked(&laps, 1.0), looked(&laps, 1e9));
            prop_assert_eq!(all.looked_at(), laps.len());
            let times = |of: &Branches| {
                let mut best: Vec<f64> = of.best.iter().map(|it| it.time_s).collect();
                best.sort_by(f64::total_cmp);
                best.truncate(Branches::SURE);
                best
            };
            prop_assert_eq!(times(&some), times(&all));
            prop_assert!(some.looked_at() <= laps.len());
        }
    }

    #[test]
    fn much_is_left_out() {
        let lap = |at: usize| (at as f64, 0.5, vec![bought(at, 0, 0)]);
        let laps: Vec<_> = (0..200).map(lap).collect();
        assert_eq!(looked(&laps, 1.0).looked_at(), Branches::SURE);
    }

    #[test]
    fn a_part_that_gains_nothing_is_not_named() {
        let own = PartsBox {
            chainsets: vec!["40".parse().unwrap()],
            cassettes: vec!["11-13-15".parse().unwrap()],
            derailleurs: vec![crate::parts::rear_derailleur::RearDerailleur::default()],
            ..PartsBox::default()
        };
        let of = |chainset, cassette, derailleur| {
            Bought::of(&own, Combination { chainset, cassette, derailleur: Some(derailleur) })
        };
        let laps = [
            (10.0, 0.0, vec![of(0, 1, 0)]),
            (9.98, 0.0, vec![of(0, 1, 1), of(0, 1, 2)]),
            (9.5, 0.0, vec![of(1, 1, 2)]),
            (9.52, 0.0, vec![of(1, 1, 1)]),
            (12.0, 0.0, vec![of(1, 0, 0)]),
        ];
        let named: Vec<_> = looked(&laps, 1.0).worth_naming().into_iter().map(|it| it.bought).collect();
        assert_eq!(named, [of(1, 1, 1), of(0, 1, 0), of(1, 0, 0)]);
        assert_eq!(named.iter().map(|it| it.count()).collect::<Vec<_>>(), [3, 1, 1]);
    }
}
