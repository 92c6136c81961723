//! A search for the set-up that is quickest round the lap: what is tried, by whom, and what was found.

use crate::lap::basis::Basis;
use crate::side::Side;
use gear_math::chain::{CageLength, PathError};
use gear_math::course::{Candidate, Finalist, Finals, Misfit, ReserveSearch, SearchSpace, TimeBand};
use gear_math::gears::GearSet;
use gear_math::rider::PowerBelowStanding;
use gear_math::{Cassette, ChainSetup, Chainset, Course, Drivetrain, Search};
/// Pairs of rings that a search tries differ by so many teeth.
const DIFFERENCES: std::ops::RangeInclusive<u16> = 8..=16;

/// How many set-ups are left out of a search, and why.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct LeftOut {
    /// Usual cassettes with another number of sprockets: not set-ups, but cassettes.
    pub cassettes: usize,
    /// Set-ups whose largest ring does not clear the frame.
    pub frame: usize,
    /// Those that a derailleur does not take.
    pub derailleur: usize,
    /// Those it takes only if some gears are never used.
    pub avoid: usize,
    /// Those without a chain that suits.
    pub chain: usize,
}

impl Basis<'_> {
    /// Set-ups that a search tries: see [`Self::search_plan`].
    #[must_use]
    pub fn search_space(&self) -> Vec<Drivetrain> {
        self.search_plan().0
    }

    /// Set-ups that a search tries, and what it leaves out: chainsets that are made within the rings of its fields and those of
    /// the bench among them, with every usual cassette of the number of sprockets asked for, those typed and those of the
    /// bench; and A and B as they are. Frame, derailleur and chain must take them.
    #[must_use]
    pub fn search_plan(&self) -> (Vec<Drivetrain>, LeftOut) {
        let bench = self.rings.drivetrains();
        let space = self.wanted(&bench);
        let pairs = space.chainsets.iter().flat_map(|&chainset| {
            space.cassettes.iter().map(move |&cassette| Drivetrain { chainset, cassette })
        });
        let (mut all, mut seen) = (pairs.collect::<Vec<_>>(), LeftOut::default());
        add(&mut all, bench.into_iter());
        all.retain(|&drivetrain| {
            let counted = match space.misfit(&drivetrain) {
                Some(Misfit::Frame) => &mut seen.frame,
                Some(Misfit::Derailleur) => &mut seen.derailleur,
                Some(Misfit::GearsToAvoid) => &mut seen.avoid,
                None if self.has_chain(drivetrain) => return true,
                None => &mut seen.chain,
            };
            *counted += 1;
            false
        });
        seen.cassettes = Cassette::common().filter(|it| !space.cassettes.contains(it)).count();
        (all, seen)
    }

    /// What is wanted before anything is held against it.
    fn wanted(&self, bench: &[Drivetrain; 2]) -> SearchSpace {
        let search = &self.lap.search;
        let [least, most] = search.rings;
        let within = |it: &Chainset| it.rings().iter().all(|ring| (least..=most).contains(ring));
        let mut chainsets: Vec<Chainset> = Chainset::made(DIFFERENCES).collect();
        add(&mut chainsets, bench.iter().map(|it| it.chainset));
        chainsets.retain(|it| within(it) && search.kinds.wants(it.difference() > 0));
        let counts = search.sprockets.counts(bench);
        let mut cassettes: Vec<Cassette> = Cassette::common().collect();
        add(&mut cassettes, bench.iter().map(|it| it.cassette));
        cassettes.retain(|it| counts.is_none_or(|counts| counts.contains(&it.sprockets().len())));
        add(&mut cassettes, search.cassettes.iter().map(|it| it.1.cassette));
        SearchSpace {
            chainsets,
            cassettes,
            derailleur: *self.chain.derailleur(Side::A),
            largest_ring: search.frame_ring,
            with_gears_to_avoid: false,
        }
    }

    /// Whether a chain can run there. The wheels must clear; the chain counted on the bike must suit, and where the maker
    /// does not state what the cage takes up, some chain: with the cage that was measured, or the longest that is made.
    fn has_chain(&self, drivetrain: Drivetrain) -> bool {
        let Ok(window) = self.chain_to_search(drivetrain).and_then(|setup| setup.window()) else {
            return false;
        };
        let suits = |links| (window.shortest..=window.longest.max(window.shortest)).contains(&links);
        let by_maker = self.chain.derailleur(Side::A).total_capacity.is_some();
        (by_maker || window.is_open()) && self.chain.links[Side::A as usize].is_none_or(suits)
    }

    fn chain_to_search(&self, drivetrain: Drivetrain) -> Result<ChainSetup, PathError> {
        let (setup, _) = self.chain.setup(Side::A, drivetrain)?;
        match self.cages.answer(Side::A).length {
            CageLength::Assumed(_) => setup.with_longest_cage(),
            _ => Ok(setup),
        }
    }
}

/// Adds what is not yet there.
fn add<T: PartialEq>(all: &mut Vec<T>, more: impl Iterator<Item = T>) {
    for one in more {
        if !all.contains(&one) {
            all.push(one);
        }
    }
}

/// One worker's part of a search.
#[derive(Debug)]
pub struct Hunt {
    rider: Rider,
    all: Vec<(Drivetrain, GearSet)>,
    next: usize,
    every: usize,
}

/// Who rides the laps of a search.
#[derive(Debug)]
enum Rider {
    /// At an even power every set-up rides in full.
    Even { search: Box<Search>, finals: Box<Finals> },
    /// On a reserve all get a first look, and the best are planned in full.
    Reserve(Box<ReserveSearch>),
}

impl Hunt {
    /// Takes every `every`th set-up from number `first` on, so that all workers have the same mixture.
    ///
    /// # Errors
    /// When the rider does not even move on foot.
    pub fn new(
        basis: &Basis<'_>,
        course: &Course,
        first: usize,
        every: usize,
    ) -> Result<Self, PowerBelowStanding> {
        let all: Vec<_> = basis.search_space().into_iter().map(|it| (it, basis.cages.avoid(&it))).collect();
        let every = every.max(1);
        let rider = match basis.on_reserve(Side::A) {
            Some(setup) => Rider::Reserve(Box::new(ReserveSearch::new(
                course,
                &setup,
                *basis.chain.derailleur(Side::A),
                &all,
            ))),
            None => {
                Rider::even(basis, course, all.iter().skip(first).step_by(every).map(|it| it.0).collect())?
            }
        };
        Ok(Self { rider, all, next: first, every })
    }

    /// The next few, each with its number; none when all are done.
    pub fn advance(&mut self, count: usize) -> Vec<(usize, Candidate)> {
        let numbers = (self.next..self.all.len()).step_by(self.every).take(count);
        let found: Vec<(usize, Candidate)> = match &mut self.rider {
            Rider::Even { search, .. } => numbers.zip(search.advance(count)).collect(),
            Rider::Reserve(search) => numbers.map(|it| (it, search.look(&self.all[it]))).collect(),
        };
        self.next += found.len() * self.every;
        found
    }

    /// The set-ups of these numbers planned in full; none where all have been.
    #[must_use]
    pub fn plans(&self, numbers: &[usize]) -> Vec<(usize, Candidate)> {
        let Rider::Reserve(search) = &self.rider else { return Vec::new() };
        let known = numbers.iter().filter_map(|&number| Some((number, self.all.get(number)?)));
        known.map(|(number, setup)| (number, search.plan(setup))).collect()
    }

    /// What each of the set-ups of these numbers, with their times in seconds, gains over the first of them.
    #[must_use]
    pub fn finals(&self, numbers: &[usize], times_s: &[f64]) -> Vec<TimeBand> {
        let known: Vec<_> = numbers.iter().filter_map(|&number| self.all.get(number)).copied().collect();
        match &self.rider {
            Rider::Reserve(search) => search.gains(&known, times_s),
            Rider::Even { finals, .. } => {
                let ridden: Vec<Finalist> =
                    known.iter().map(|(drivetrain, avoid)| finals.ride(drivetrain, *avoid)).collect();
                ridden.iter().map(|finalist| finalist.gained_over(&ridden[0])).collect()
            }
        }
    }
}

impl Rider {
    fn even(basis: &Basis<'_>, course: &Course, mine: Vec<Drivetrain>) -> Result<Self, PowerBelowStanding> {
        let setup = basis.setup(Side::A);
        let search = Search::new(course, &setup, *basis.chain.derailleur(Side::A), mine)?;
        let finals = Finals::new(course, &setup)?;
        Ok(Self::Even {
            search: Box::new(search.avoiding(|it| basis.cages.avoid(it))),
            finals: Box::new(finals),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bench::bench::Bench;
    use crate::bench::field::Field;
    use crate::lap::found::{Found, row};
    use crate::page::scenario::Scenario;
    use gear_math::course::Demo;

    #[test]
    fn workers_share_the_search_without_leaving_one_out() {
        let scenario = Scenario::default();
        let total = scenario.basis().search_space().len();
        assert!(total > 100, "{total}");
        let mut seen = vec![0; total];
        for worker in 0..2 {
            let mut hunt = Hunt::new(&scenario.basis(), &Demo::Meadow.course(), worker, 2).unwrap();
            let found = hunt.advance(4);
            assert_eq!(found.len(), 4);
            for (number, candidate) in found {
                assert_eq!(candidate.drivetrain, scenario.basis().search_space()[number]);
                seen[number] += 1;
            }
        }
        assert!(seen[..8].iter().all(|&count| count == 1));
    }

    fn space(edits: &[(Field, &str)]) -> (Scenario, Vec<String>) {
        let mut bench = Bench::default();
        edits.iter().for_each(|(field, text)| bench.write(*field, text));
        let read = Scenario::read(&bench, &Scenario::default());
        assert!(read.complaints.is_empty(), "{:?}", read.complaints);
        let all = read.scenario.basis().search_space();
        let names = all.iter().map(|it| format!("{} {}", it.chainset, it.cassette)).collect();
        (read.scenario, names)
    }

    #[test]
    fn a_search_keeps_to_the_rings_and_tries_typed_cassettes() {
        const TYPED: &str = "11-13-15-17-19-22-25-29-34";
        let few = [(Field::SearchSmall, "38"), (Field::SearchLarge, "40"), (Field::MoreCassettes, TYPED)];
        let (scenario, all) = space(&few);
        let [a, b] = scenario.rings.drivetrains();
        let beyond = |it: &&String| !["38 ", "39 ", "40 "].iter().any(|ring| it.starts_with(ring));
        let own = [a, b].map(|it| format!("{} {}", it.chainset, it.cassette));
        assert_eq!(
            all.iter().filter(beyond).collect::<Vec<_>>(),
            [&own[1]],
            "the derailleur does not take A"
        );
        assert!(all.contains(&format!("40 {TYPED}")) && all.contains(&format!("38 {}", b.cassette)));
        let (_, cleared) = space(&[&few[..], &[(Field::FrameRing, "39")]].concat());
        assert!(cleared.contains(&format!("39 {TYPED}")) && !cleared.iter().any(|it| it.starts_with("40 ")));
        assert!(!cleared.contains(&own[1]), "B's ring is larger than the frame clears");
    }

    #[test]
    fn a_search_tries_as_many_sprockets_as_are_asked_for() {
        let counts = |edits: &[(Field, &str)]| -> Vec<usize> {
            let (_, all) = space(edits);
            let mut counts: Vec<usize> =
                all.iter().map(|it| it.split_once(' ').unwrap().1.split('-').count()).collect();
            counts.sort_unstable();
            counts.dedup();
            counts
        };
        const NINE: (Field, &str) = (Field::CassetteB, "11-13-15-17-20-23-26-30-34");
        assert_eq!(counts(&[]), [11]);
        assert_eq!(counts(&[NINE]), [9, 11]);
        assert_eq!(counts(&[NINE, (Field::SearchSprockets, "b")]), [9], "A does not fit its derailleur");
        assert!(counts(&[NINE, (Field::SearchSprockets, "any")]).len() > 4);
        let typed = (Field::MoreCassettes, "11-13-16-19-23-28-34");
        assert_eq!(counts(&[typed, (Field::SearchSprockets, "a")]), [7, 11], "typed ones are tried anyway");
    }

    #[test]
    fn only_rings_that_are_made_are_tried() {
        let (scenario, all) = space(&[(Field::SearchSprockets, "any")]);
        let made: Vec<String> = Chainset::made(DIFFERENCES).map(|it| it.to_string()).collect();
        let own = scenario.rings.drivetrains().map(|it| it.chainset.to_string());
        let rings = |it: &String| it.split_once(' ').unwrap().0.to_owned();
        assert!(all.iter().map(rings).all(|it| made.contains(&it) || own.contains(&it)));
    }

    #[test]
    fn what_is_left_out_is_counted_by_its_reason() {
        let counted = |edits: &[(Field, &str)]| {
            let (scenario, _) = space(edits);
            let (all, left) = scenario.basis().search_plan();
            (all.len() + left.frame + left.derailleur + left.avoid + left.chain, left)
        };
        let (total, left) = counted(&[]);
        assert!(left.cassettes > 20 && left.derailleur + left.avoid > 0 && left.frame == 0, "{left:?}");
        let (same, cleared) = counted(&[(Field::FrameRing, "40")]);
        assert!(cleared.frame > 100 && same == total, "{cleared:?}");
        let (same, counted_links) = counted(&[(Field::ChainLinks, "106")]);
        assert!(counted_links.chain > left.chain && same == total, "{counted_links:?}");
        assert_eq!(counted(&[(Field::SearchSprockets, "any")]).1.cassettes, 0);
    }

    #[test]
    fn a_typed_cassette_that_nothing_takes_is_named() {
        const LARGE: &str = "10-12-14-16-18-21-24-28-33-39-45";
        let typed = [(Field::MoreCassettes, "11-13-15-17-19-22-25-29-34\n10-12-14-16-18-21-24-28-33-39-45")];
        let (scenario, _) = space(&typed);
        let unfit: Vec<String> =
            Found::of(&scenario.basis(), None).unfit.iter().map(ToString::to_string).collect();
        assert_eq!(unfit, [LARGE]);
    }

    #[test]
    fn a_search_keeps_to_the_chain() {
        let (scenario, all) = space(&[]);
        let (_, counted) = space(&[(Field::ChainLinks, "106")]);
        assert!(counted.len() > 20 && counted.len() < all.len(), "{} of {}", counted.len(), all.len());
        assert!(counted.iter().all(|it| all.contains(it)));
        let (_, by_geometry) = space(&[(Field::Capacity, ""), (Field::PulleyCentres, "56")]);
        let (_, longer) = space(&[(Field::Capacity, ""), (Field::PulleyCentres, "95")]);
        assert!(by_geometry.len() < longer.len(), "{} and {}", by_geometry.len(), longer.len());
        for name in counted {
            let (rings, cassette) = name.split_once(' ').unwrap();
            let drivetrain =
                Drivetrain { chainset: rings.parse().unwrap(), cassette: cassette.parse().unwrap() };
            let window = scenario.chain.setup(Side::A, drivetrain).unwrap().0.window().unwrap();
            assert!(window.shortest.count() <= 106, "{name} needs {:?}", window.shortest);
        }
    }

    #[test]
    fn rows_come_back_as_they_went() {
        let scenario = Scenario::default();
        let mut hunt = Hunt::new(&scenario.basis(), &Demo::Meadow.course(), 3, 5).unwrap();
        let sent = hunt.advance(2);
        let mut found = Found::of(&scenario.basis(), None);
        found.take(&sent.iter().flat_map(row).collect::<Vec<_>>());
        found.rank();
        let mut back: Vec<Candidate> = found.order.iter().map(|it| it.candidate).collect();
        back.sort_by_key(|it| found.number(&it.drivetrain));
        assert_eq!(back, sent.iter().map(|(_, it)| *it).collect::<Vec<_>>());
    }
}
